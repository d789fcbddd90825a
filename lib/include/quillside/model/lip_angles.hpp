#pragma once
// The angles a straight lip has along its length: clearances of the flank behind it, rakes of the flute before it, and
// what a dial indicator on the flank reads. All static, as the drill lies in the hand.
// Frame, here and in the other models of a ground point: z is the drill's axis, from the shank toward the work; seen
// from the point the drill cuts counter-clockwise. Lip 1 lies at y = w (half the web) on the side of x above 0; carried
// on to x = 0 it reaches z = 0. Lip 2 is lip 1 turned by half a turn. A lip point at radius r stands off the x axis by
// o = asin(w/r). The flank is z = F(x, y); on a straight lip its slope along x is -cot(point/2), and the one free
// number is m, its slope along y.
// Holds for every flank whose lip is straight: flat facets and cones alike, for m does not change along such a lip.
// Leaves out: lips that are not straight (curved_lip.hpp), thinned and split points, the chisel edge's own angles.

#include <quillside/model/law.hpp>
#include <quillside/model/lip.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law side_clearance_law{"side-clearance", "tan(af) = m cos o + cot(point/2) sin o, sin o = w/r",
                                        "geometry of the plane square to the radius", "derived"};
inline constexpr Law normal_clearance_law{"normal-clearance", "an = atan(m sin(point/2)) + atan(cos(point/2) tan o)",
                                          "geometry of the plane square to the lip", "derived"};
inline constexpr Law orthogonal_clearance_law{"orthogonal-clearance", "tan(ao) = tan(an) cos(ls)",
                                              "geometry of the plane square to the lip's shadow", "derived"};
inline constexpr Law inclination_law{"lip-inclination", "sin(ls) = sin(point/2) w/r", "geometry of the lip", "derived"};
inline constexpr Law side_rake_law{"side-rake", "tan(gf) = (r/R) tan(helix)",
                                   "the lead of a helix is one at every radius", "derived"};
inline constexpr Law normal_rake_law{
    "normal-rake", "gn = atan(tan gf cos o / (sin(point/2) - tan gf cos(point/2) sin o)) - atan(cos(point/2) tan o)",
    "geometry of the flute a straight lip sweeps", "derived"};
inline constexpr Law working_clearance_law{"working-clearance", "a = af - atan(f / (2 pi r))",
                                           "geometry of the path of a lip point", "derived"};
inline constexpr Law mean_relief_law{"mean-relief", "tan(relief) = drop / (r turn)",
                                     "definition, turn as arc over radius", "derived"};

/// A flank as it lies at its lip, whatever the size of the drill. included above 0 and under 180 deg, slope (m, a pure
/// number) above 0; anything else throws std::domain_error.
struct Facet {
  Angle included;
  double slope;
};
/// The angle between the flank and the plane through the lip that is square to the lip's own cutting plane: atan(m
/// sin(point/2)), above 0 and under 90 deg. What a sloping table is set to (flat_facet.hpp).
Angle flank_tilt(Facet facet);
/// The angle between the flank's level line and the y axis in the end view: atan(m tan(point/2)), above 0 and under 90
/// deg. How far a drill is rolled on a level table; 90 deg and this is the chisel edge of a flat point.
Angle flank_roll(Facet facet);

/// The angle between the x axis and a lip point, seen along the axis: asin(w/r).
/// \param radius above half the web and at most half the diameter; outside it throws std::domain_error
Angle lip_offset(PointShape point, Length radius);

/// Clearance in the plane square to the radius, from the plane square to the axis: at the corner, the lip relief.
/// \param slope above 0
/// \param radius as above
Angle side_clearance(PointShape point, double slope, Length radius);
/// Clearance between flank and cutting plane, measured square to the lip (ISO 3002-1, from memory).
Angle normal_clearance(PointShape point, double slope, Length radius);
/// The same in the orthogonal plane of ISO 3002-1 (from memory).
Angle orthogonal_clearance(PointShape point, double slope, Length radius);
/// The lip against the plane square to the cutting direction, measured in the cutting plane; 0 or more, its sign left
/// out.
Angle lip_inclination(PointShape point, Length radius);

/// Rake in the plane square to the radius: the flute's helix at this radius.
/// \param helix at the full diameter, 0 or more and under 90 deg; anything else throws std::domain_error
Angle side_rake(PointShape point, Angle helix, Length radius);
/// Rake measured square to the lip (ISO 3002-1, from memory); below 0 near the web. Holds for the flute that this very
/// lip sweeps.
Angle normal_rake(PointShape point, Angle helix, Length radius);
/// The same in the orthogonal plane of ISO 3002-1 (from memory).
Angle orthogonal_rake(PointShape point, Angle helix, Length radius);

/// What is left of a side clearance once the drill is fed: the lip runs down a helix. 0 or less means it rubs.
/// \param side_clearance above 0 and under 90 deg
/// \param radius above 0
/// \param feed 0 or more
Angle working_clearance(Angle side_clearance, Length radius, FeedPerRev feed);

/// Where a dial indicator stands on a flank: at a radius, and the drill turned by so much in its cutting direction
/// since the lip was under it. (Turned back, the flute would come under the dial.)
struct FlankPlace {
  Length radius;
  Angle turn;
};
/// How far a flank with this relief all along (a helix) drops along the axis [mm].
/// \param place radius above 0, turn 0 to a whole turn
/// \param relief above 0 and under 90 deg
Length uniform_drop(FlankPlace place, Angle relief);
/// The mean relief over the turn, from a drop. Not the relief at the lip: a flat facet falls off less and less (true 12
/// over 10 deg reads 9.2), a cone more and more (12.5 to 14). Turn by 5 deg or less, or use the exact drop of the
/// model.
/// \param place radius and turn above 0
/// \param drop along the axis, above 0
Angle mean_relief(FlankPlace place, Length drop);

} // namespace quillside
