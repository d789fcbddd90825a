#pragma once
// One flat facet behind each lip, ground on the face of a flat disk: how to hold the drill for it, what point a hold
// gives, and whether the heel clears.
// Frame as in lip_angles.hpp. The disk's face stands upright. The drill lies with its flute up and its shank toward the
// operator and to the left; the lip being ground is the upper one. Swing is the angle between the drill's axis and the
// disk in plan; tilt, how far the point lies higher than the shank; roll, the drill turned about its own axis in its
// cutting direction since its lip lay level in the end view. All three are read against the shop, not against one
// another.
// Assumes: straight lips, a disk that runs true, both lips held alike.
// Leaves out: wear of the disk, the spring of the hold, lips bent by a flute made for another angle (curved_lip.hpp).

#include <quillside/model/law.hpp>
#include <quillside/model/lip.hpp>
#include <quillside/model/lip_angles.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law facet_forward_law{
    "facet-forward", "cot(point/2) = cos r cot s / cos t - sin r tan t,  m = sin r cot s / cos t + cos r tan t",
    "rotations of the drill before an upright plane", "derived"};
inline constexpr Law facet_fence_law{"facet-fence", "fence = point/2, table = atan(m sin(point/2))",
                                     "rotations of the drill before an upright plane", "derived"};
inline constexpr Law facet_wedge_law{
    "facet-wedge",
    "s = atan(tan(point/2) cos n), t = asin(sin(point/2) sin n), r = atan(cos(point/2) tan n), "
    "n = atan(m sin(point/2))",
    "rotations of the drill before an upright plane", "derived"};
inline constexpr Law facet_flat_law{"facet-flat", "s = asin(sin(point/2) cos n), t = 0, r = atan(m tan(point/2))",
                                    "rotations of the drill before an upright plane", "derived"};
inline constexpr Law facet_level_law{"facet-level", "t = atan m, s = atan(tan(point/2) / cos t), r = 0",
                                     "rotations of the drill before an upright plane", "derived"};
inline constexpr Law flat_drop_law{"flat-drop",
                                   "drop = r {cot(point/2) [cos(o - T) - cos o] + m [sin o - sin(o - T)]}, sin o = w/r",
                                   "height of a plane round a circle", "derived"};
inline constexpr Law flat_heel_law{"flat-heel", "T = 2 (asin(w/R) + atan(m tan(point/2)))",
                                   "where a plane is as high again as its lip", "derived"};
inline constexpr Law least_slope_law{"least-slope", "m = cot(point/2) tan(land/2 - asin(w/R))",
                                     "the same, for the heel of a land", "derived"};
inline constexpr Law rim_hollow_law{"rim-hollow", "depth = rw - sqrt(rw^2 - b^2/4), relief + asin(b / (2 rw))",
                                    "chord of a circle", "derived"};
inline constexpr Law index_error_law{"index-error", "dH = R tan(relief) e / (1 - tan(relief) tan(helix))",
                                     "a plane turned against a helix, to the first order", "derived"};

/// A fence across a table that slopes up toward the disk: the drill lies along the fence, its lip level with the table.
/// Both above 0 and under 90 deg; anything else throws std::domain_error where it is read.
struct FenceSetup {
  Angle fence; // between drill axis and disk, in the plane of the table
  Angle table_tilt;
};
/// A V-block on a wedge. swing above 0 and under 90 deg; tilt (point up above 0) and roll between -90 and 90 deg.
struct WedgeSetup {
  Angle swing;
  Angle tilt;
  Angle roll;
};

/// What a hold grinds. One that grinds no point, or a flank that does not fall away from its lip, throws
/// std::domain_error.
Facet facet_ground(FenceSetup setup);
Facet facet_ground(WedgeSetup setup);

/// The holds that grind a wanted facet. The easiest: the two settings do not mix.
FenceSetup fence_setup(Facet facet);
/// On a wedge, the lip truly level.
WedgeSetup level_lip_setup(Facet facet);
/// On a level table: swing and roll alone. The chisel edge to be ground stands upright.
WedgeSetup level_table_setup(Facet facet);
/// On a wedge, the lip level as seen along the drill: no roll.
WedgeSetup level_end_view_setup(Facet facet);
/// On a wedge in hand.
/// \param tilt of the wedge, point up above 0; as steep as the flank or steeper throws std::domain_error
WedgeSetup setup_on_wedge(Facet facet, Angle tilt);

/// A flank ground flat. slope (m) above 0, the point as in lip.hpp; anything else throws std::domain_error.
struct FlatFlank {
  PointShape point;
  double slope;
};

/// How far the flank lies lower than its lip, along the axis; below 0 it stands higher [mm]. Exact.
/// \param turn 0 or more and under 180 deg; at the margin
Length flat_drop(FlatFlank flank, Angle turn);
/// The same anywhere.
/// \param place radius above half the web and at most half the diameter, turn as above
Length flat_drop(FlatFlank flank, FlankPlace place);
/// The slope whose flank drops by so much; exact. relief_of_slope makes the lip relief of it.
/// \param place turn above 0 and under 180 deg; a drop that no falling flank shows throws std::domain_error
double slope_of_flat_drop(PointShape point, FlankPlace place, Length drop);

/// Where the drop at the margin is greatest, from the lip: from there on the flank rises again.
Angle turn_of_greatest_drop(FlatFlank flank);
/// Where the flank at the margin has come up to the path of its lip again: a land that reaches further rubs there.
/// \param feed 0 or more; one steeper than the relief throws std::domain_error
Angle heel_clear_angle(FlatFlank flank, FeedPerRev feed = mm_per_rev(0));

/// The least slope with which one flat facet clears the heel; at the bound itself the heel just touches. 0 where any
/// falling flank clears.
/// \param land angle from the outer corner back to the heel, above 0 and under 180 deg
/// \param feed 0 or more
double least_slope(PointShape point, Angle land, FeedPerRev feed = mm_per_rev(0));
/// The same as a lip relief at the corner.
Angle least_relief(PointShape point, Angle land, FeedPerRev feed = mm_per_rev(0));
/// The greatest feed whose path the whole land at the margin clears: the least of drop / turn.
/// \param land as above; a heel that stands above the lip throws std::domain_error
FeedPerRev greatest_feed(FlatFlank flank, Angle land);

/// A facet ground on the rim of a wheel, with the wheel's axis along the lip, is hollow.
struct RimFacet {
  Length width; // of the facet, across the lip: above 0 and under twice the wheel's radius
  Length wheel_radius;
};
struct RimHollow {
  Length depth;      // under the chord across the facet
  Angle relief_gain; // by which the flank at the lip is steeper than that chord, square to the lip
};
/// Outside the range of RimFacet throws std::domain_error.
/// \sa flank_tilt, which the gain adds to
RimHollow rim_hollow(RimFacet facet);

/// The second lip held a little off half a turn from the first.
struct IndexError {
  Angle relief; // at the corner, above 0
  Angle helix;  // of the flute, 0 or more; the two together under 90 deg
  Angle error;  // above 0: too far in the cutting direction; at most 5 deg either way
};
/// How much higher that lip comes out (error above 0) or lower [mm]. To the first order: 2 to 3 % too small for a
/// degree too far and as much too large for one too few, at reliefs of 10 to 14 deg. An error of an axial stop goes
/// into the height whole.
/// \param diameter above 0; outside the range of IndexError throws std::domain_error
Length height_of_index_error(Length diameter, IndexError index);

} // namespace quillside
