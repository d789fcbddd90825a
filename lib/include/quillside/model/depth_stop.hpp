#pragma once
// Where the tip of a drill stands, where its full diameter begins, and where to lock the stop.
// Assumes: straight lips, a true cone of the included point angle, the tip on the axis.
// Leaves out: the chisel edge (the tip is shorter than the cone by half the web over tan(point/2)), give of table and
// quill, and the burr at the back. All depths are measured from the face the drill enters.

#include <quillside/model/law.hpp>
#include <quillside/quantity/spread.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law point_allowance_law{"point-allowance", "A = (D/2) / tan(point/2)", "geometry of a cone",
                                         "derived"};
inline constexpr Law depth_stop_law{"depth-stop", "tip = thickness - left under the tip = depth to full diameter + A",
                                    "geometry of the section", "derived"};
inline constexpr Law spot_diameter_law{"spot-diameter", "d = 2 depth tan(point/2)", "geometry of a cone", "derived"};

/// The cone a drill's point cuts. Diameter above 0, point above 0 and under 180 deg; otherwise the functions throw
/// std::domain_error.
struct DrillPoint {
  Length diameter;
  Angle included;
};

/// Axial length of the cone, from tip to outer corner [mm].
Length point_allowance(DrillPoint point);
/// Diameter of the cone \p depth behind its tip, never more than the drill's [mm]. \param depth 0 or more
Length width_behind_tip(DrillPoint point, Length depth);

/// Depth of the tip when \p left stays under it, in a part of this thickness; the part's doubt is carried into what is
/// left.
struct Stop {
  Length tip_depth;
  Spread<Length> left_under_tip;    // below 0: the tip stands out at the back
  Spread<Length> left_under_corner; // from full diameter to the back
};
/// \param tip_depth above 0
/// \param thickness of the part, with its doubt
Stop stop_at(Length tip_depth, Spread<Length> thickness, DrillPoint point);

} // namespace quillside
