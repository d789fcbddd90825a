#pragma once
// A row of holes that opens a slot: how many, how far apart, and what stands between them.
// Assumes: round holes of one size on a straight line, evenly spread, the first and the last up to the slot's ends.
// Leaves out: wander of a drill that meets the hole beside it (so a twist drill is kept clear of it, and an end mill is
// plunged), oversize of the holes, run-out.

#include <vector>

#include <quillside/model/law.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law hole_pitch_law{"hole-pitch", "p = (L - D) / (n - 1)", "geometry of the row", "derived"};
inline constexpr Law hole_web_law{"hole-web", "web = p - D", "geometry of the row", "derived"};
inline constexpr Law hole_cusp_law{"hole-cusp", "h = (D/2) (1 - sqrt(1 - (p/D)^2))", "two circles that meet",
                                   "derived"};
inline constexpr Law hole_clear_width_law{"hole-clear-width", "w = D sqrt(1 - (p/D)^2)", "two circles that meet",
                                          "derived"};

/// The slot to be opened, and the holes that open it. The functions throw std::domain_error unless the diameter is
/// above 0 and the slot at least as long.
struct HoleRow {
  Length slot_length; // over the ends of the first and the last hole
  Length diameter;
};

/// Where the holes stand.
struct HolesPlaced {
  int count = 1;
  Length pitch{};              // centre to centre; 0 for one hole
  std::vector<Length> centres; // along the slot from its middle, ascending; the row is symmetrical
};

/// As many holes as leave the pitch at \p least_pitch or more. A slot too short for two gets one in its middle.
/// \param least_pitch above 0
HolesPlaced holes_apart(HoleRow row, Length least_pitch);
/// As few holes as hold the pitch at \p most_pitch or less: for a cutter that is plunged into the hole beside it.
/// \param most_pitch above 0
HolesPlaced holes_together(HoleRow row, Length most_pitch);

/// Two holes side by side. The functions throw std::domain_error unless both lengths are above 0.
struct HolePair {
  Length diameter;
  Length pitch;
};
/// Metal that stands between them at the narrowest; below 0 where they overlap.
Length web_between(HolePair pair);
/// How far the point between two holes stands into the slot, from its side; the radius where they do not overlap.
Length cusp_height(HolePair pair);
/// Width that is clear between the points on either side; 0 where the holes do not overlap.
Length clear_width(HolePair pair);

} // namespace quillside
