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

/// Slope of a flank square to its lip in the end view, from the lip relief at the outer corner (a pure number).
/// tan(relief) = m cos(w/R) + cot(point/2) sin(w/R). \param relief above 0 and under 90 deg
double flank_slope(PointShape point, Angle relief);
/// The inverse.
Angle relief_of_slope(PointShape point, double slope);

/// Chisel edge angle of a two-facet point, obtuse: 90 deg + atan(m tan(point/2)).
Angle chisel_edge_of_flat(PointShape point, double slope);

} // namespace quillside
