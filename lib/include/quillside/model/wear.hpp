#pragma once
// What a worn drill costs: the length to take off its point, and the web it has after that.
// Assumes: a wear land on the flank at the outer corner, square to the cut; margins worn evenly.
// Leaves out: chipped lips (measure the depth of the chip as margin wear), cracks from heat.

#include <quillside/model/law.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law wear_land_law{"wear-land", "dz = VB / (cot(relief) - tan(helix))",
                                   "a flank ground back past its land, seen from the side", "derived"};
inline constexpr Law grind_off_law{"grind-off", "off = max(dz of the land, worn length of margin) + clean-up",
                                   "the margin behind the corner has to be whole again", "derived"};
inline constexpr Law web_growth_law{"web-growth", "W = W0 + taper x length lost", "a web tapered evenly", "derived"};

/// Axial length to grind off until a wear land on the flank is gone [mm].
struct FlankWear {
  Length land;  // VB, along the cutting direction at the outer corner; 0 or more
  Angle relief; // at the outer corner, above 0
  Angle helix;  // at the outer corner, 0 or more; relief and helix together under 90 deg
};
/// Throws std::domain_error outside these.
Length length_for_land(FlankWear wear);

/// Axial length to grind off until land and worn margin are both gone [mm].
struct PointWear {
  FlankWear flank;
  Length margin;   // worn length of the margin behind the corner, along the axis; 0 or more
  Length clean_up; // taken off beyond that; 0 or more
};
Length length_to_grind_off(PointWear wear);

/// Web at the new point [mm]; all 0 or more, the taper a pure number (mm a mm).
struct WebGrowth {
  Length web;
  double taper;
  Length lost;
};
Length web_after(WebGrowth growth);

} // namespace quillside
