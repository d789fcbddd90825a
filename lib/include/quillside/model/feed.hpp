#pragma once
// Feed per tooth, feed per turn, feed rate, and the time a cut takes.
// Assumes: a steady hand or a steady screw; all teeth cut alike.
// Leaves out: approach and overtravel (the caller gives the whole path), run-out, slow-down in corners, lifting to
// clear chips.

#include <quillside/model/law.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law feed_per_tooth_law{"feed-rate-milling", "vf = fz z n",
                                        "Oberg et al., Machinery's Handbook, 31st ed., 2020, milling feed formulas",
                                        "from memory"};
inline constexpr Law feed_per_rev_law{"feed-rate-drilling", "vf = f n",
                                      "Oberg et al., Machinery's Handbook, 31st ed., 2020, drilling feed formulas",
                                      "from memory"};
inline constexpr Law cut_time_law{"cut-time", "t = L / vf", "definition of a feed rate", "derived"};
inline constexpr Law turn_time_law{"handwheel-turn", "t = dial travel / vf", "definition of a feed rate", "derived"};

/// [mm/min] from a feed per tooth, the number of teeth and the spindle speed; all 0 or more.
FeedRate feed_rate(FeedPerTooth feed, TeethPerTurn teeth, SpindleSpeed speed);
/// [mm/min] from a feed per turn and the spindle speed; both 0 or more.
FeedRate feed_rate(FeedPerRev feed, SpindleSpeed speed);

/// Time to travel \p path at \p rate [min]. \param rate above 0; zero, less or no number throws std::domain_error
Time time_to_travel(Length path, FeedRate rate);

} // namespace quillside
