#pragma once
// How far an end mill bends under its load, how hard it is stressed, and what that leaves on the walls.
// Assumes: a straight beam in two steps, fluted part and shank, held without give but for what is said of the machine;
// small bends; a load that is always that of a stiff cutter; the wall takes its shape as a tooth passes it.
// Leaves out: shear of a stubby cutter, neck and taper, the give of the collet's mouth and of the work, vibration,
// bending that changes the chip, the tooth that stands out by run-out, flaws of the cutter.

#include <optional>

#include <quillside/model/law.hpp>
#include <quillside/model/milling_forces.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law equivalent_diameter_law{"equivalent-diameter", "de = 0.80 D",
                                             "Kops and Vo, Determination of the Equivalent Diameter of an End Mill "
                                             "Based on its Compliance, CIRP Annals 39, 1990",
                                             "published"};
inline constexpr Law cutter_bend_law{
    "cutter-bend", "bend = sum of F (x - load) (x - place) / (E I), x along the cutter",
    "Young and Budynas, Roark's Formulas for Stress and Strain, 7th ed., 2002", "from memory"};
inline constexpr Law root_stress_law{"root-stress", "s = sqrt((M D/2 / I)^2 + 3 (T D/2 / 2I)^2)",
                                     "Young and Budynas, Roark's Formulas for Stress and Strain, 7th ed., 2002",
                                     "from memory"};
inline constexpr Law wall_error_law{"wall-error", "bend where a tooth forms the wall, at the moment it does",
                                    "Kline, DeVor and Shareef, The Prediction of Surface Accuracy in End Milling, "
                                    "J. Eng. Ind. 104, 1982",
                                    "from memory"};

/// What the machine adds to the bend; each part left out where it is not known, and then taken as stiff.
struct MachineGive {
  std::optional<Stiffness> sideways = {};          // above 0
  std::optional<RotationalStiffness> tilting = {}; // about the mouth of the holder; above 0
};

/// An end mill as it stands out of its holder. The functions throw std::domain_error where a length is not above 0, the
/// overhang is shorter than the flutes, or the modulus or the core is none.
struct EndMill {
  Length diameter;
  Length flute_length; // at most the overhang
  Length overhang;     // holder to tip
  Length shank;        // its diameter
  Stress modulus;      // of elasticity: about 207 000 MPa HSS, 580 000 MPa carbide (from memory)
  double core = 0.80;  // diameter of the round bar that bends as the fluted part does, over D; above 0, at most 1
  MachineGive machine = {};
};

/// pi d^4 / 64 of a round bar [mm4]. \param diameter above 0
SecondMoment second_moment(Length diameter);
/// Of the fluted part, at its equivalent diameter.
SecondMoment fluted_second_moment(const EndMill& cutter);

/// Two heights above the tip, each 0 to the overhang.
struct BendPoints {
  Length load;
  Length read;
};
/// Bend at one height by a force at another [mm/N]; the same with the two changed over.
Compliance compliance(const EndMill& cutter, BendPoints heights);

struct SideForce {
  Force force;
  Length height; // above the tip, 0 to the overhang
};
/// Bend at a height above the tip, to the side the force pushes.
Length deflection(const EndMill& cutter, SideForce load, Length at);
/// A force spread evenly over a length of the cutter.
struct SpreadForce {
  Force force; // in all
  Length from; // heights above the tip, 0 to the overhang, `from` below `to`
  Length to;
};
Length deflection(const EndMill& cutter, SpreadForce load, Length at);

/// How far the tip turns behind the holder under a torque at the tip [turn], the fluted part as stiff as its equivalent
/// diameter. \param shear_modulus above 0: about 80 000 MPa HSS, 240 000 MPa carbide (from memory)
Angle twist(const EndMill& cutter, Torque torque, Stress shear_modulus);

/// Bending and torsion combined (von Mises) at the flute end: at radius D/2, with the section of the core. That is more
/// than the core's own surface bears; the edges of the flutes do reach out there.
Stress flute_end_stress(const EndMill& cutter, const CutterLoad& load);
/// The same at the mouth of the holder, on the shank.
Stress shank_stress(const EndMill& cutter, const CutterLoad& load);
/// The larger of the two, the flute end's raised by its notch.
/// \param notch 1 or more; 1.2 to 1.5 where the flute runs out (our own assumption, no source)
Stress root_stress(const EndMill& cutter, const CutterLoad& load, double notch);

// With the load of a pass. A pass deeper than the flutes, or of another diameter, throws std::domain_error.

/// The most that root_stress comes to in a turn.
Stress peak_root_stress(const EndMill& cutter, const MillingLoad& load, double notch);
/// Bend of the tip when the resultant is largest, whichever way it points.
Length peak_deflection(const EndMill& cutter, const MillingLoad& load);

/// How far a wall is off, square to it: above 0 where metal is left standing, below 0 where it is cut too deep.
struct WallError {
  Length bottom;  // at the tip
  Length top;     // at the top of the pass
  Length largest; // anywhere on the wall, by its amount; the sign is kept
};
/// \param side a wall that the pass forms; otherwise throws std::domain_error
WallError wall_error(const EndMill& cutter, const MillingLoad& load, MillSide side);
/// The same at one height above the tip, 0 to the depth of the pass.
Length wall_error_at(const EndMill& cutter, const MillingLoad& load, WallPoint point);

} // namespace quillside
