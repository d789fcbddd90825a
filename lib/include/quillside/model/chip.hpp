#pragma once
// Chip thickness of an end mill whose radial width is less than its diameter.
// Assumes: each tooth moves in a circle, so h(phi) = fz sin(phi); good while the feed per tooth is small against the
// diameter (under 2 % of it the error in h is under 1 %; end mills here run at 0.1 to 1.6 %). Leaves out: run-out, the
// trochoid, the radius of the edge (see the least chip that cuts), helix (it does not change h).

#include <quillside/model/law.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law largest_chip_law{
    "largest-chip", "h = 2 fz sqrt(ae/D - (ae/D)^2) under half engagement, else h = fz",
    "Martellotti, An Analysis of the Milling Process, Trans. ASME 63, 1941", "from memory"};
inline constexpr Law mean_chip_law{"mean-chip", "hm = 2 fz (ae/D) / arc", "Martellotti, Trans. ASME 63, 1941",
                                   "from memory"};

/// How a cutter stands in the work. Both above 0, width at most the diameter; otherwise the functions throw
/// std::domain_error.
struct Engagement {
  Length width;    // radial width of cut, ae
  Length diameter; // of the cutter, D
};

/// Angle through which a tooth is in the work: arccos(1 - 2 ae/D); half a turn in a full slot.
Angle arc_of_engagement(Engagement engagement);
/// The thickest chip a tooth takes at this feed [mm].
Length largest_chip(FeedPerTooth feed, Engagement engagement);
/// The mean thickness over the arc [mm].
Length mean_chip(FeedPerTooth feed, Engagement engagement);
/// The feed per tooth at which the thickest chip is \p chip; the inverse of largest_chip.
FeedPerTooth feed_for_chip(Length chip, Engagement engagement);

} // namespace quillside
