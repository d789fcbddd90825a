#pragma once
// Pecks: the depths at which a drill is drawn out to clear its flutes.
// Assumes: a schedule in diameters, from a table row; each peck ends at full retraction.
// Leaves out: what the chip itself says. When it jams or turns blue, draw out, whatever the schedule says.

#include <vector>

#include <quillside/model/law.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law peck_law{"pecks",
                              "first bite, then equal bites, shorter ones beyond the deep mark; all in diameters",
                              "common practice, no source", "common practice"};

/// All in diameters of the drill; all above 0, otherwise pecks_to throws std::domain_error.
struct PeckSchedule {
  double first;     // the first bite
  double next;      // every bite after it
  double deep_from; // beyond this depth
  double deep_next; // this bite
};

/// A bite that would leave less than this share of a diameter takes it along: no peck for a shaving (common practice,
/// no source).
inline constexpr double shaving_left = 0.05;

struct DrilledDepth {
  Length diameter; // above 0
  Length depth;    // of the tip, 0 or more
};

/// The depths to draw out at, the last being the full depth; empty when the first bite does it all.
/// A schedule of more than 1000 bites throws std::domain_error.
std::vector<Length> pecks_to(DrilledDepth hole, PeckSchedule schedule);

} // namespace quillside
