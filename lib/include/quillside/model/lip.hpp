#pragma once
// The straight lips of a two-lip drill point, and what lengths tell of its angles.
// Frame: the lips are parallel, one web apart; each runs from the chisel corner out to the outer corner.
// Assumes: straight lips (flutes made for this point), a point true to its axis.
// Leaves out: lips curved because the flutes were made for another angle; split and thinned points, whose lip ends
// elsewhere. The length over the tip decides an angle only on a flat-ground point: a cone's chisel edge stands out, and
// the reading is high by 2 to 4 deg. Read to the inner end of the lip instead.

#include <quillside/model/law.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law lip_reach_law{"lip-reach", "X = sqrt(R^2 - w^2) - w cot(acute chisel edge angle)",
                                   "geometry of the end view", "derived"};
inline constexpr Law lip_length_law{"lip-length", "L = X / sin(point/2)", "geometry of the side view", "derived"};
inline constexpr Law lip_depth_law{"lip-depth", "h = X cot(point/2)", "geometry of the side view", "derived"};
inline constexpr Law chisel_web_law{"chisel-web", "W = c sin(acute chisel edge angle)", "geometry of the end view",
                                    "derived"};
inline constexpr Law flat_lip_depth_law{"flat-lip-depth", "cot(point/2) = (h sqrt(R^2 - w^2)/R + w tan(relief)) / R",
                                        "lip depth and the chisel edge of two flats", "derived"};
inline constexpr Law point_length_law{"point-length", "(h + m w)/x_o <= cot(point/2) <= h/(x_o - x_c)",
                                      "a chisel edge between level and crowned", "derived"};
inline constexpr Law depth_over_length_law{"lip-depth-over-length", "cos(point/2) = h/L", "geometry of the side view",
                                           "derived"};
inline constexpr Law lip_length_angle_law{"lip-length-angle", "sin(point/2) = X/L", "geometry of the side view",
                                          "derived"};
inline constexpr Law flank_slope_law{"flank-slope", "tan(relief) = m cos(w/R) + cot(point/2) sin(w/R)",
                                     "geometry of a flank along its lip", "derived"};
inline constexpr Law chisel_edge_law{"chisel-edge", "cot(acute chisel edge angle) >= m tan(point/2), = on two flats",
                                     "where the two flanks meet", "derived"};

/// Diameter above 0; web 0 or more and less than the diameter; included angle above 0 and under 180 deg. Anything else
/// throws std::domain_error.
struct PointShape {
  Length diameter;
  Length web;
  Angle included;
};

/// Radial distance of the outer corner along a lip from the foot of the axis: sqrt(R^2 - w^2) [mm].
Length corner_reach(PointShape point);
/// Radial length of a lip, chisel corner to outer corner [mm].
/// \param chisel_edge acute or obtuse, above 0 and under 180 deg; so flat that no lip is left throws std::domain_error
Length lip_reach(PointShape point, Angle chisel_edge);
/// Length of a lip [mm].
Length lip_length(PointShape point, Angle chisel_edge);
/// Axial distance from outer corner to the inner end of the lip [mm]; exact for every straight lip, flat or conical.
Length lip_depth(PointShape point, Angle chisel_edge);

/// What a depth gauge or a photo gives; all above 0.
struct LipDepthReading {
  Length diameter;
  Length web;
  Angle chisel_edge;
  Length depth;
};
/// The included angle of a point with this lip depth; the inverse of lip_depth.
Angle included_from_lip_depth(LipDepthReading reading);

/// The same for a point of two flats, whose relief is known and whose chisel edge follows from it.
struct FlatLipDepthReading {
  Length diameter;
  Length web;
  Angle relief; // at the outer corner, above 0 and under 90 deg
  Length depth;
};
Angle included_from_flat_lip_depth(FlatLipDepthReading reading);

/// The included angle of a point whose lip is so long and so deep: no web is needed. \param depth above 0 and less than
/// the length, else std::domain_error
struct LipTriangle {
  Length length;
  Length depth;
};
Angle included_from_lip_triangle(LipTriangle lip);

/// The included angle from the length of the lips alone. A shallow relation: an error in the length counts two to three
/// times over. A lip shorter than its own reach throws std::domain_error.
struct LipLengthReading {
  Length diameter;
  Length web;
  Angle chisel_edge;
  Length length;
};
Angle included_from_lip_length(LipLengthReading reading);

/// Between which angles the point lies when its length was read over the tip: sharp where the chisel edge is level with
/// the ends of the lips (two flats), blunt as far as the edge stands out (a cone). With two flats the blunt end is the
/// truth; on a cone the reading decides no more than this.
struct PointLengthReading {
  Length diameter;
  Length web;
  Angle chisel_edge;
  Length length; // axial, outer corner to tip
};
struct IncludedBounds {
  Angle least;
  Angle most;
};
/// \param slope of the flank (flank_slope), 0 or more
IncludedBounds included_from_point_length(PointLengthReading reading, double slope);

/// What the same point would be taken for over its tip with the web left out: 2 atan(D / 2h). Always high; for showing
/// how much.
struct TipReading {
  Length diameter;
  Length length; // axial, outer corner to tip
};
Angle included_ignoring_web(TipReading reading);

/// Length of the chisel edge in the end view [mm]. \param chisel_edge as above
Length chisel_length(Length web, Angle chisel_edge);
/// The web from a chisel edge of this length [mm]; the inverse of chisel_length.
struct ChiselReading {
  Length length;
  Angle edge;
};
Length web_from_chisel(ChiselReading reading);
/// The acute chisel edge angle of a web and its chisel edge. Near a right angle an error in either length counts many
/// times over. A chisel edge shorter than the web throws std::domain_error.
struct ChiselLengths {
  Length web;
  Length chisel;
};
Angle chisel_edge_from_lengths(ChiselLengths lengths);

/// Slope of a flank square to its lip in the end view, from the lip relief at the outer corner (a pure number).
/// tan(relief) = m cos(w/R) + cot(point/2) sin(w/R). \param relief above 0 and under 90 deg
double flank_slope(PointShape point, Angle relief);
/// The inverse.
Angle relief_of_slope(PointShape point, double slope);

/// Chisel edge angle of a two-facet point, obtuse: 90 deg + atan(m tan(point/2)).
Angle chisel_edge_of_flat(PointShape point, double slope);
/// The relief that a chisel edge allows: exact for two flats; any other flank, falling away faster behind its lip, has
/// less. Not for a point that was thinned or split. \param chisel_edge as above, acute or obtuse
Angle most_relief_of_chisel(PointShape point, Angle chisel_edge);
/// The least relief of a straight lip: with less its flank would rise behind the lip. tan = cot(point/2) w/R
Angle least_relief_of_straight_lip(PointShape point);

} // namespace quillside
