#pragma once
// Whirl of an overhung burr: the spindle speed at which shank and head bow out, and what the head then carries.
// Assumes: a straight round shank of one diameter from the chuck nose to the back of the head, a rigid head on its end,
// a seat that gives to a tilt in proportion and not to a push; small bows.
// Leaves out: the turning of the head about its own axis, which raises the speed (up to 4 % at 10 mm of overhang, more
// for wide wheels); shear of the shank and bending of the head, which lower it (each under 2 % from 10 mm on); damping,
// a bent shank, the give of bearings and hand piece. A shank gripped at a shallow depth is softer than any figure here.

#include <limits>

#include <quillside/model/law.hpp>
#include <quillside/quantity/spread.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law whirl_law{
    "whirl",
    "first root of the bending of a shank with mass, sprung at the chuck, with a rigid head: mass, centre, rotary "
    "inertia",
    "Euler-Bernoulli beam; bare shank 1.8751^2 sqrt(E I / (m L^3)): Thomson, Theory of Vibration with Applications, "
    "appendix D",
    "derived"};
inline constexpr Law one_mass_whirl_law{"one-mass-whirl",
                                        "n = (60 / 2 pi) sqrt(3 E I / (a^3 (head + 33/140 shank))), a = L + lh/2",
                                        "Young, Roark's Formulas for Stress and Strain, natural frequencies of beams; "
                                        "edition not seen",
                                        "from memory"};
inline constexpr Law hand_whirl_law{"hand-whirl", "half the whirl speed in a usual collet",
                                    "common practice, no source", "common practice"};
inline constexpr Law run_out_gain_law{"run-out-gain", "1 / (1 - (n/nc)^2)", "forced whirl of a shaft without damping",
                                      "derived"};
inline constexpr Law head_body_law{"head-body", "m = fill x share x density x pi D^2 l / 4",
                                   "integrals of bodies of revolution", "derived"};
inline constexpr Law thrown_head_law{"thrown-head", "E = m (w r)^2 / 2", "kinetic energy on leaving a circle",
                                     "derived"};

/// Diameter above 0; overhang, chuck nose to back of head, from half to 200 diameters (shorter, it is no beam); modulus
/// and density above 0. Anything else throws std::domain_error.
struct BurrShank {
  Length diameter;
  Length overhang;
  Stress modulus;
  Density density;
};
/// Steel as in handbooks of mechanics (common practice): 205 GPa, 7850 kg/m3.
inline constexpr Stress steel_modulus = gigapascals(205);
inline constexpr Density steel_density = kg_per_m3(7850);

/// Outlines of heads, from the back (s = 0) to the front (s = 1), radius over the largest radius:
/// cylinder 1; ball and oval sqrt(4 s (1-s)); cone 1 - s; tree 1 - s^2; flame 4 s (1-s); inverted_cone (1 + s)/2.
/// Wheels and disks are cylinders; a cylinder with a round end lies between cylinder and oval.
enum class HeadShape { cylinder, ball, oval, cone, tree, flame, inverted_cone };

/// Diameter, length and density above 0; fill, the share of the outline that is not cut away between the teeth, above 0
/// and at most 1. Anything else throws std::domain_error. A full head is heavier and whirls sooner: 1 is the safe side.
struct BurrHead {
  HeadShape shape;
  Length diameter;
  Length length;
  Density density;
  double fill = 1;
};
/// Cemented carbide with 6 % cobalt or a little more (from memory).
inline constexpr Density carbide_density = kg_per_m3(14500);

/// A head as a rigid body. All 0 or more and finite; a mass of 0 stands for no head.
struct HeadBody {
  Mass mass;
  Length centre;     // from the back of the head
  MassMoment across; // about an axis through the centre, square to the shank
  MassMoment along;  // about the shank's axis
};
HeadBody head_body(BurrHead head);

/// The seat of the shank does not give.
inline constexpr RotationalStiffness rigid_grip =
    RotationalStiffness::from_value(std::numeric_limits<double>::infinity());
/// What a collet or small chuck may be: 50 (soft), 100 (usual) N m/rad and rigid for a shank of 1/8 in, and as the cube
/// of the diameter for others, since a seat that is alike in all its lengths gives so (common practice, no source).
/// \param shank diameter above 0
Spread<RotationalStiffness> usual_grip(Length shank);

/// First whirl speed [turn/min]. \param grip above 0
SpindleSpeed whirl_speed(BurrShank shank, HeadBody head, RotationalStiffness grip);
/// The same for a seat known with doubt: low with the soft one, high with the stiff one.
Spread<SpindleSpeed> whirl_speed(BurrShank shank, HeadBody head, Spread<RotationalStiffness> grip);

/// The handbook's formula for a rigid seat, the head a point at its centre; 60 / 2 pi counts turns a minute. Within 6 %
/// of whirl_speed from 10 mm of overhang on, for heads from the shank's diameter to three times it; at 5 mm it is 11 %
/// low for a long head and 14 % and more too high for a wheel.
SpindleSpeed one_mass_whirl_speed(BurrShank shank, HeadBody head);

/// The fastest for a tool in the hand: half of the value. A seat half as stiff as the usual one still leaves it at 0.71
/// of the whirl speed or less, where run-out is doubled.
SpindleSpeed hand_whirl_limit(Spread<SpindleSpeed> whirl);

/// How many times a shaft turns its run-out out: 1 standing still, without bound at the whirl speed.
/// \param speed 0 or more and under \p whirl; at the whirl speed and beyond it throws std::domain_error
double run_out_gain(SpindleSpeed speed, SpindleSpeed whirl);

/// Work in a head that turns about its own axis. \param speed 0 or more
Energy spin_energy(HeadBody head, SpindleSpeed speed);
/// Work in a head that leaves a circle of this radius, its own turning not counted: the run-out of a bowed shank, or
/// the whole overhang of one that folded. \param speed 0 or more \param radius 0 or more
Energy thrown_energy(HeadBody head, SpindleSpeed speed, Length radius);

} // namespace quillside
