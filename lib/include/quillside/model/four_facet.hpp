#pragma once
// A second, steeper flat facet behind the first: it takes the heel down, and ground up to the axis it makes the chisel
// edge a ridge.
// Frame as in lip_angles.hpp; the boundary between the facets runs parallel to the lip.
// Assumes: both facets at the same point angle (the same fence), straight lips, both sides alike. Each facet is held as
// a flat one (flat_facet.hpp), the second with second_slope.
// Leaves out: split and thinned points, whose notch is another grind; the flutes, which end the land where land says.

#include <quillside/model/flat_facet.hpp>
#include <quillside/model/law.hpp>
#include <quillside/model/lip.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law second_slope_law{"second-slope",
                                      "tan(second relief) = m2 cos o2 + cot(point/2) sin o2, sin o2 = y2/R",
                                      "geometry just behind the boundary at the margin", "derived"};
inline constexpr Law four_facet_chisel_law{
    "four-facet-chisel", "cot(acute chisel edge angle) = tan(point/2) [(m1 + m2) w + (m2 - m1) y2] / (2 w)",
    "where four planes meet", "derived"};
inline constexpr Law chisel_ridge_law{"chisel-ridge", "tan(fall) = (m2 - m1)/2 sin a, cot a = (m1 + m2)/2 tan(point/2)",
                                      "where two second facets meet two first ones", "derived"};
inline constexpr Law chisel_flat_law{"chisel-flat",
                                     "2 |y2| / sin a, cot a = tan(point/2) m1 short of the axis, m2 past it",
                                     "where two planes meet", "derived"};
inline constexpr Law clearance_left_law{"clearance-left", "(m2 - m1) (w - y2) cos(tilt2) sin(point/2)",
                                        "the lip before the plane of the second facet", "derived"};
inline constexpr Law second_infeed_law{"second-infeed",
                                       "(m2 - m1) (y2 - R sin(asin(w/R) - land)) cos(tilt2) sin(point/2)",
                                       "the heel of the first facet before the plane of the second", "derived"};
inline constexpr Law four_facet_heel_law{
    "four-facet-heel",
    "T = o + a2 + acos{[cot(point/2) cos o - m1 (sin o - y2/R) - m2 y2/R] / sqrt(cot^2 + m2^2)}, "
    "sin o = w/R, tan a2 = m2 tan(point/2)",
    "where the second plane is as high again as the lip", "derived"};

/// Slopes as of a FlatFlank: first_slope above 0, second_slope above it. boundary (y2): where the second facet begins,
/// from the axis toward the lip: 0 on the axis, above 0 ground too far, below 0 not far enough; less than half the web
/// (it must not reach the lip) and behind it at the margin, so above minus half the diameter. The web above 0. Anything
/// else throws std::domain_error.
struct FourFacet {
  PointShape point;
  double first_slope;
  double second_slope;
  Length boundary;
};

/// Slope of the second facet from its relief, taken just behind the boundary at the margin.
/// \param relief above 0 and under 90 deg
/// \param boundary within half the diameter either way
double second_slope(PointShape point, Angle relief, Length boundary = mm(0));
/// The inverse.
Angle second_relief(FourFacet point);

/// The second slope that this chisel edge shows, corner to corner, with the boundary on the axis.
/// \param first slope above 0
/// \param chisel_edge acute or obtuse; one that needs no second facet, or a second one flatter than the first, throws
/// std::domain_error
double second_slope_of_chisel(Facet first, Angle chisel_edge);

/// Distance along the lip from the foot of the axis to its inner end, x_c [mm].
Length chisel_corner(FourFacet point);
/// Chisel edge angle from corner to corner, obtuse: the one measured.
Angle chisel_edge_of_four(FourFacet point);
/// How steeply the ridge of the chisel edge falls from its highest part to the corners, along the edge; 0 where the
/// second facet stops short of the chisel edge.
Angle chisel_ridge_fall(FourFacet point);
/// Length of what is left level at the middle of the chisel edge; 0 with the boundary on the axis [mm].
Length chisel_flat(FourFacet point);
/// Axial distance from outer corner to the highest part of the chisel edge [mm].
Length point_length(FourFacet point);

/// How far the lip stands clear of the disk when the second facet is done, square to the disk [mm]. Not what is fed.
Length clearance_left(FourFacet point);
/// How far the drill is fed to the disk, square to it, from the first touch at the heel of the first facet until the
/// boundary is where it is wanted [mm].
/// \param land outer corner to heel, above 0 and under 180 deg; a land that ends before the second facet begins throws
/// std::domain_error
Length second_infeed(FourFacet point, Angle land);

/// Drop of the flank at the margin, along the axis; below 0 it stands higher than the lip [mm].
/// \param turn 0 or more and under 180 deg
Length four_facet_drop(FourFacet point, Angle turn);
/// Where the flank at the margin has come up to the lip again. A first facet so wide that it rises before the boundary
/// ends it there.
Angle heel_clear_angle(FourFacet point);
/// The greatest feed whose path the whole land at the margin clears: the least of drop / turn, found over the land.
/// \param land above 0 and under 180 deg; a flank that stands above its lip on it throws std::domain_error
FeedPerRev greatest_feed(FourFacet point, Angle land);

} // namespace quillside
