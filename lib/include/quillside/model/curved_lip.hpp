#pragma once
// The lip that a flank really makes with a flute: not quite straight where the drill was clocked otherwise than its
// fixture wants, or where the flute was made for another point angle; and what a protractor then finds.
// Frame as in lip_angles.hpp, fixed to the drill; lip and flank of the flute's own straight lip lie as there.
// Assumes: the flute is the surface that the straight lip of its own point angle sweeps along the helix.
// Leaves out: how a real flute departs from that away from its lip (so trust small errors more than large ones), back
// taper, web taper, thinned and split points.

#include <variant>

#include <quillside/model/cone_flank.hpp>
#include <quillside/model/flat_facet.hpp>
#include <quillside/model/law.hpp>
#include <quillside/model/lip.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law flute_trace_law{"flute-trace",
                                     "polar angle = asin(w/r) + (tan(helix)/R) (sqrt(r^2 - w^2) cot k0 + z)",
                                     "a straight lip swept along its helix", "derived"};
inline constexpr Law curved_lip_law{"curved-lip", "z = F(r, polar angle + clocking)", "where flute and flank meet",
                                    "derived"};
inline constexpr Law clock_on_corner_law{"clock-on-corner",
                                         "clocking = -(tan(helix)/R) sqrt(R^2 - w^2) (cot k0 - cot k)",
                                         "where flute and straight lip meet at the margin", "derived"};

/// made_for: diameter and web of the drill, web above 0, and the included angle whose lip its flutes make straight.
/// helix 0 or more and under 60 deg. Anything else throws std::domain_error.
struct Flute {
  PointShape made_for;
  Angle helix;
};

/// What is ground behind the lip. A FlatFlank or ConeFlank brings the point it was meant for; a ConeSetup is a fixture
/// as it stands, in error or not.
using GroundFlank = std::variant<FlatFlank, ConeFlank, ConeSetup>;

/// clocking: by how much the drill was turned in its cutting direction, against what its hold wants; -30 to 30 deg. A
/// drill that stands out too far along its axis is clocked too: by tan(helix)/R of the length, against the cutting
/// direction.
struct GroundLip {
  Flute flute;
  GroundFlank flank;
  Angle clocking;
};

/// A place of the lip.
struct LipPlace {
  Length height; // along the axis, from where the flute's own straight lips, carried on, pass it
  Angle polar;   // about the axis, from the x axis in the cutting direction
  Angle side_clearance;
};
/// \param radius above half the web and at most half the diameter; a lip that the flank does not reach throws
/// std::domain_error
LipPlace lip_place(const GroundLip& lip, Length radius);

/// What is found on the ground point: angles of the chord from the lip's inner end to its outer corner.
struct MeasuredPoint {
  Angle included;
  Angle chisel_edge; // obtuse
  Angle relief;      // at the outer corner
  Length lip;        // length of the chord
  Length inner_radius;
};
/// A lip that meets no chisel edge throws std::domain_error.
MeasuredPoint measured_point(const GroundLip& lip);

/// How far the lip stands out from its chord in the end view, toward where it cuts; below 0 it is hollow [mm].
/// \param radius as above
Length lip_bow(const GroundLip& lip, Length radius);

/// The clocking with which a flank for another point angle meets the margin where its straight lip would: relief and
/// point come out as meant and only a bow is left. Look at the outer corner, not at the lip, when a drill is set.
/// \param included of the point to be ground, above 0 and under 180 deg
Angle clocking_on_corner(Flute flute, Angle included);

} // namespace quillside
