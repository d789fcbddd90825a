#pragma once
// A conical flank behind a straight lip: the drill swings before a flat wheel face, about an axis at an angle to its
// own.
// Frame as in lip_angles.hpp. The lip is a line of the cone, so the slope m behind it does not change along it, and a
// cone has the very clearances of a flat facet with the same relief; it changes what lies behind the lip, and the
// chisel edge. A point angle, a relief and a chisel edge leave one number free: the half angle of the cone, or the
// angle of its axis. It sets how far the heel drops.
// Assumes: straight lips (a flute made for this point), a flat wheel face, a fixture without play, both lips alike.
// Leaves out: lips bent by another point angle, by clocking or by an error of the fixture (curved_lip.hpp); thinned and
// split points; the ridge a dressed wheel leaves.

#include <optional>

#include <quillside/model/law.hpp>
#include <quillside/model/lip.hpp>
#include <quillside/model/lip_angles.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law cone_surface_law{
    "cone-surface",
    "t^2 + (1 - tan^2 q) n^2 - 2 tan q E n = 0: E along the lip from the apex, n under its tangent plane, "
    "t across; q half the cone's angle",
    "equation of a cone about one of its lines", "derived"};
inline constexpr Law cone_setup_law{
    "cone-setup",
    "cos p = cos q cos k + sin q sin k cos n; S = (d cy + w cx)/sin p; dc = (d cx - w cy)/sin^2 p; "
    "clock = atan2(cy, cx)",
    "the cone's axis from one of its lines", "derived"};
inline constexpr Law cone_chisel_law{"cone-chisel",
                                     "F(-x, -w) = -x cot k on the lip; cot(acute chisel edge angle) = x/w",
                                     "where the two flanks meet on the lip", "derived"};
inline constexpr Law cone_inverse_law{"cone-inverse",
                                      "E = (X^2 + w^2 - tan^2 q g^2) / (tan q g), d = E sin k - X cos 2k / cos k, "
                                      "X = w cos k cot(acute chisel edge angle), g = X cos n - w sin n",
                                      "the same, solved for the cone", "derived"};
inline constexpr Law cone_drop_law{"cone-drop", "drop = -cot k sqrt(r^2 - w^2) - F(r cos(o - T), r sin(o - T))",
                                   "height of a cone round a circle", "derived"};
inline constexpr Law cone_swing_law{
    "cone-swing",
    "needed: to the cone's line through the heel corner; limit: where the wheel's face reaches the other "
    "lip's outer corner",
    "planes that touch a cone", "derived"};

/// apex_offset (d): how far the apex lies beyond the axis along the lip. Range: web above 0; slope (m) above 0;
/// cone_half_angle above 0 and under half the point angle; an apex that lies behind the whole chisel edge. Anything
/// else, and a cone that meets the other flank nowhere on the lip, throws std::domain_error.
struct ConeFlank {
  PointShape point;
  double slope;
  Angle cone_half_angle;
  Length apex_offset;
};

/// The numbers of a swing fixture.
struct ConeSetup {
  Angle cone_half_angle; // between wheel face and pivot axis
  Angle axis_angle;      // between pivot axis and drill axis; above 0 and under 90 deg
  Length skew;           // least distance of the two axes; above 0 toward a quarter turn past lip_clock
  Angle lip_clock;      // in the end view, from the lip's outward direction to the pivot axis, in the cutting direction
  Length axis_distance; // along the pivot axis, from where it pierces the wheel face to the foot of the skew
  Length foot_height;   // of the foot on the drill's axis: along it, from where the lips, carried on, pass the axis
};
/// The fixture that grinds this flank.
ConeSetup cone_setup(ConeFlank flank);

/// A place in the end view.
struct EndPlace {
  Length along;  // x, along lip 1
  Length across; // y, square to it, toward where lip 1 cuts
};
/// Height F of the flank behind lip 1 along the axis, from where the lips, carried on, pass it [mm]. A place that the
/// cone does not reach throws std::domain_error.
Length flank_height(ConeFlank flank, EndPlace place);
/// The same of a cone as a fixture makes it: it need not pass through a lip. Range of its members as above,
/// cone_half_angle above 0 and under 90 deg.
Length flank_height(ConeSetup setup, EndPlace place);
/// How steeply that height grows, along x and along y.
struct FlankGradient {
  double along;
  double across;
};
FlankGradient flank_gradient(ConeFlank flank, EndPlace place);
FlankGradient flank_gradient(ConeSetup setup, EndPlace place);

/// A point as it is wanted. chisel_edge acute or obtuse; more obtuse than a flat flank of the same relief gives.
struct WantedPoint {
  PointShape point;
  Angle relief; // at the corner; one that leaves no flank falling from its lip throws std::domain_error
  Angle chisel_edge;
};
/// The flank that makes this point, by a fixture whose wheel face stands at this angle to the pivot axis. A half angle
/// outside the range of ConeFlank throws std::domain_error, and so does a chisel edge that would not be the first to
/// meet the other flank.
ConeFlank cone_of_half_angle(WantedPoint wanted, Angle cone_half_angle);
/// The same, by a fixture whose pivot axis stands at this angle to the drill. It may suit two cones: of those the
/// narrower.
/// \param axis_angle above 0, under 90 deg; one nearer to the drill than the flank's steepest fall to its lip's plane,
/// or one that no cone of the range has, throws std::domain_error
ConeFlank cone_of_axis_angle(WantedPoint wanted, Angle axis_angle);
/// The same, by what is wanted of the heel: drop at the heel over that of a uniform relief. 1.0 to 1.5 is suggested
/// (judgement, no source); more only weakens the heel.
struct HeelDrop {
  Angle land; // outer corner to heel, above 0 and under 180 deg
  double ratio;
};
/// A ratio that no cone gives with this chisel edge throws std::domain_error.
ConeFlank cone_of_heel_drop(WantedPoint wanted, HeelDrop heel);
/// The inverse: the drop at the heel over R land tan(relief).
double heel_drop_ratio(ConeFlank flank, Angle land);

/// Distance along the lip from the foot of the axis to its inner end, x_c [mm].
Length chisel_corner(ConeFlank flank);
/// Chisel edge angle from corner to corner, obtuse: the one measured.
Angle chisel_edge_of_cone(ConeFlank flank);
/// The same where the edge crosses the axis: some degrees less (6 on a point of 90 deg), for the edge is bent like an
/// S.
Angle chisel_edge_at_axis(ConeFlank flank);
/// Height of the chisel edge on the axis, from where the lips, carried on, pass it: below 0 [mm].
Length tip_height(ConeFlank flank);
/// Axial distance from outer corner to the chisel edge on the axis [mm].
Length point_length(ConeFlank flank);
/// How far the tip stands out past the foot of the skew: how the drill is set into the fixture [mm].
Length point_overhang(ConeFlank flank);

/// How far the flank lies lower than its lip, along the axis; below 0 it stands higher [mm]. Where the cone does not
/// reach the place throws std::domain_error.
/// \param turn 0 or more and under 180 deg; at the margin
Length cone_drop(ConeFlank flank, Angle turn);
/// The same anywhere.
/// \param place radius above half the web and at most half the diameter, turn as above
Length cone_drop(ConeFlank flank, FlankPlace place);
/// Where the flank at the margin has come up to its lip again; nothing if it does not within half a turn.
std::optional<Angle> heel_clear_angle(ConeFlank flank);
/// The greatest feed whose path the whole land at the margin clears: the least of drop / turn, found over the land.
/// \param land above 0 and under 180 deg; a flank that stands above its lip on it throws std::domain_error
FeedPerRev greatest_feed(ConeFlank flank, Angle land);

/// From where the wheel's face lies along the lip, about the pivot axis.
struct Swing {
  Angle needed;               // until it has passed the heel corner and the whole chisel edge
  std::optional<Angle> limit; // where it reaches the outer corner of the other lip; nothing if it never does
};
/// needed must stay under limit: whoever asks has to see to it.
/// \param land outer corner to heel, above 0 and under 180 deg
Swing swing_of(ConeFlank flank, Angle land);

/// What a dial on the flank of a cone reads.
struct ConeDropReading {
  PointShape point;
  Angle chisel_edge;     // as of WantedPoint
  Angle cone_half_angle; // as of ConeFlank
  FlankPlace place;
  Length drop; // along the axis, above 0
};
/// The relief at the corner of a cone of this half angle and chisel edge whose flank drops by so much there. A drop
/// that no such cone shows throws std::domain_error.
Angle relief_of_cone_drop(const ConeDropReading& reading);

} // namespace quillside
