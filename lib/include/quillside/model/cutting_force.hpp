#pragma once
// Force, torque and power of an end mill, from the thickness of the chip each tooth takes.
// Frame: the spindle turns clockwise seen from the shank; `feed` points the way the cutter travels over the work,
// `across` to the left of it. A tooth's angle counts from the left, with the turn: 0 on the wall that is milled
// conventionally, a quarter turn straight ahead, half a turn on the wall that is climb milled. Forces are those on the
// cutter.
// Assumes: each tooth moves in a circle, h = fz sin(phi); every tooth takes the same chip; a radial force that stays in
// one ratio to the tangential; a cutter that does not give way.
// Leaves out: run-out (but for the largest chip it makes), rake, vibration, the corner radius and the end teeth, the
// axial force of a helix, heat, wear.

#include <array>
#include <cstddef>
#include <functional>
#include <span>
#include <vector>

#include <quillside/model/chip.hpp>
#include <quillside/model/law.hpp>
#include <quillside/quantity/spread.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law kienzle_law{"kienzle-force", "kc = kc11 h^-mc, h no less than the least chip",
                                 "Kienzle, Die Bestimmung von Kraeften und Leistungen an spanenden Werkzeugen und "
                                 "Werkzeugmaschinen, VDI-Z 94, 1952",
                                 "from memory"};
inline constexpr Law least_chip_law{"least-chip", "h_min = lambda r_edge",
                                    "Wojciechowski, Estimation of Minimum Uncut Chip Thickness (review), Materials 15, "
                                    "2022",
                                    "from memory"};
inline constexpr Law size_effect_law{
    "size-effect", "force up to 1.5 times under 0.02 mm of chip, 2 times under 0.005 mm",
    "how far published power laws part company below the feeds they were fitted to", "derived"};
inline constexpr Law unit_power_law{"unit-power", "kc = Kp C W, P = kc Q",
                                    "Oberg et al., Machinery's Handbook, 31st ed., 2020, machining power",
                                    "from memory"};
inline constexpr Law tooth_force_law{"tooth-force",
                                     "dFt = kc11 h^(1-mc) dz, dFr = kr dFt, h = fz sin(phi), summed along the helix",
                                     "Altintas, Manufacturing Automation, 2nd ed., 2012, chapter 2", "from memory"};
inline constexpr Law tooth_load_law{"tooth-load",
                                    "h = least over k = 1..z of k fz + 2 e sin(pi k/z) sin(pi k/z - a), at the worst a",
                                    "each tooth against every surface left before it", "derived"};

// --- the metal ---

/// A chip, and the thinnest that the edge still cuts; below it the edge rubs.
struct Chip {
  Length thickness; // 0 or more
  Length least;     // 0 or more; one of the two above 0
};
/// How a metal resists a sharp edge.
struct Kienzle {
  Stress kc11; // specific force of a chip 1 mm thick and 1 mm wide; above 0
  double mc;   // 0 or more, less than 1
};
/// Force on a square mm of chip section [MPa]. Below the least chip it stays what it is there.
/// Throws std::domain_error outside the ranges of its parts.
Stress specific_force(Kienzle metal, Chip chip);

/// The thinnest chip that an edge cuts [mm].
/// \param edge_radius 0 or more \param lambda 0 or more, 0.14 to 0.43 for most metals, 0.60 to 0.68 for C260 brass
/// (micro-milling papers, from memory). Less than 0 or no number throws std::domain_error.
Length minimum_chip_thickness(Length edge_radius, double lambda);

/// By how many times the force may lie above a power law fitted to thicker chips: 2 under 0.005 mm, 1.5 under 0.02 mm,
/// else 1. \param chip the largest of the cut, above 0; otherwise throws std::domain_error
double size_effect_doubt(Length chip);

/// The handbooks' way to the same force, a second model with figures of its own.
struct HandbookPower {
  Stress unit_power;  // Kp: hp_per_in3_per_min(0.82); above 0
  double feed_factor; // C; above 0
  double wear;        // W: 1 sharp, 1.10 end milling, to 1.6 and over for a dull edge; 1 or more
};
/// Kp C W as a specific force [MPa]; throws std::domain_error outside the ranges of its parts.
Stress specific_force(HandbookPower power);

/// One line of a feed factor table.
struct FeedFactor {
  FeedPerTooth feed;
  double factor;
};
/// The feed factor C at a feed: a power law of the feed between two printed lines, the nearest pair's beyond the ends.
/// \param printed two lines or more, feeds rising, all above 0; \param feed above 0; otherwise throws std::domain_error
double feed_factor(std::span<const FeedFactor> printed, FeedPerTooth feed);

// --- the pass ---

/// The two ways an edge meets a wall; both happen in a full slot, one on each wall.
enum class MillSide { conventional, climb };

/// One pass of an end mill. Whatever is outside its range throws std::domain_error where it is used.
struct MillPass {
  Engagement engagement; // width of cut, and diameter; a width equal to the diameter is a full slot
  Length depth;          // axial, above 0
  FeedPerTooth feed;     // above 0
  TeethPerTurn teeth;    // 1 to 12
  Angle helix;           // 0 to 60 deg, right hand
  MillSide side;         // of a pass that is no full slot; in a slot it is not read
};
/// Whether the pass leaves a wall on that side: both in a full slot, else its own.
bool forms_wall(const MillPass& pass, MillSide side);

/// Metal removed by a pass [mm3/min]. \param speed 0 or more; otherwise throws std::domain_error
RemovalRate removal_rate(const MillPass& pass, SpindleSpeed speed);
/// P = kc Q [W].
Power cutting_power(Stress specific, RemovalRate rate);
/// The mean tangential force that a specific force makes in a pass, kc ae ap fz z / (pi D): the same whatever the
/// speed.
Force mean_tangential_force(const MillPass& pass, Stress specific);

/// What a tooth meets. Ranges as in Kienzle and Chip.
struct ToothForce {
  Kienzle metal;
  double radial_ratio; // radial over tangential, 0 or more: 0.3 to 0.5 sharp, to 1 and over worn or in thin chips
  Length least_chip;   // 0 or more: below it the specific force stays what it is there
};

/// What the work does to the cutter at one moment, and its moments about the tip [N mm]: force times height above it.
struct CutterLoad {
  Force feed;
  Force across;
  Torque torque;
  Torque feed_moment;
  Torque across_moment;
};
Force resultant(const CutterLoad& load);

/// A share of the load, at a height above the tip.
struct PointLoad {
  Length height;
  Force feed;
  Force across;
};

namespace detail {

/// Integrals along the arc of the force f of one tooth over its force at the full feed; f is sin^p of the angle, and
/// straight below the least chip.
struct ArcIntegrals {
  double along = 0;         // of f
  double sine = 0;          // of f sin
  double cosine = 0;        // of f cos
  double sine_moment = 0;   // of angle f sin
  double cosine_moment = 0; // of angle f cos
};

/// Integral of sin^e from 0, and of its product with the angle, for 0 < angle <= a quarter turn. Since
/// (sin x / x)^e is a power series in x^2 that reaches to x = pi, sixteen terms are good to 1e-10. The incomplete beta
/// function gives the first of the two as well, three times slower, and not the second.
class SinePower {
public:
  explicit SinePower(double exponent);
  [[nodiscard]] double exponent() const { return exponent_; }
  /// \param power angle^(exponent + 1), which the caller has at hand
  [[nodiscard]] double integral(double angle, double power) const;
  [[nodiscard]] double moment(double angle, double power) const;

private:
  static constexpr std::size_t terms = 16;
  double exponent_;
  std::array<double, terms> integral_;
  std::array<double, terms> moment_;
};

class ToothArc {
public:
  /// \param exponent 1 - mc \param least least chip over feed per tooth, as pure ratios
  ToothArc(double exponent, double least);
  [[nodiscard]] double force(double angle, double sine) const;
  /// From angle 0 to this one, which is at most half a turn [rad].
  [[nodiscard]] ArcIntegrals up_to(double angle) const;

private:
  [[nodiscard]] ArcIntegrals in_first_quarter(double angle) const;
  [[nodiscard]] ArcIntegrals of_power(double angle) const;
  SinePower tangential_;
  SinePower lateral_;
  double least_angle_; // below it a tooth takes less than the least chip
  double least_slope_; // f over the sine there
  ArcIntegrals shift_; // what the straight part adds to the power's integrals
  ArcIntegrals quarter_;
};

} // namespace detail

/// The load on a cutter in a pass, ready to be asked at any moment of its turn. Exact along the helix: each tooth's
/// engaged arc is integrated in closed form. A helix that lags by less than 1e-4 rad over the depth counts as straight.
class MillingLoad {
public:
  /// Throws std::domain_error outside the ranges of MillPass and ToothForce.
  MillingLoad(const MillPass& pass, const ToothForce& tooth);

  [[nodiscard]] const MillPass& pass() const { return pass_; }
  /// \param turn where the tip of one tooth stands, any angle
  [[nodiscard]] CutterLoad at(Angle turn) const;
  /// The same load as forces at heights above the tip, seven to each tooth's engaged length (Gauss points).
  [[nodiscard]] std::vector<PointLoad> along(Angle turn) const;
  /// Moments between which the load runs smoothly, from 0 to one tooth pitch, both ends among them.
  [[nodiscard]] std::vector<Angle> smooth_stretches() const;
  /// How far the turn is ahead of a tooth's place at a height, by the helix.
  [[nodiscard]] Angle lag_at(Length height) const;
  [[nodiscard]] CutterLoad mean() const;

private:
  struct Arc {
    double tip, lower, upper; // of one tooth: angle of its tip, engaged from and to [rad]
  };
  template <class Visit> void each_engaged(double turn, Visit visit) const;
  [[nodiscard]] bool straight() const { return lag_ == 0; }

  MillPass pass_;
  ToothForce tooth_;
  detail::ToothArc arc_;
  double force_per_mm_; // of a tooth at the full feed, N per mm of depth
  double entry_, exit_; // rad
  double pitch_;        // rad
  double lag_;          // over the depth, rad
  detail::ArcIntegrals at_entry_, at_exit_;
};

/// The moment, within one tooth pitch, at which a measure of the load is largest.
/// \param rank any number that grows with what is looked for
Angle turn_of_largest(const MillingLoad& load, const std::function<double(const CutterLoad&)>& rank);

struct MillingForces {
  Force peak_resultant;
  Angle peak_turn; // when
  Force mean_resultant;
  Force mean_feed;       // below 0: the work holds the cutter back; above 0 it pulls it in
  Force mean_across;     // above 0: to the left of the travel
  Force mean_tangential; // mean torque over the radius
  Torque peak_torque;
  Torque mean_torque;
};
/// Peaks and means over a turn; the peaks to about 1e-6 of themselves.
MillingForces milling_forces(const MillingLoad& load);
/// Mean power at the cutter [N mm/min]. \param speed 0 or more; otherwise throws std::domain_error
Power mean_power(const MillingLoad& load, SpindleSpeed speed);

/// A place on a wall.
struct WallPoint {
  MillSide side;
  Length height; // above the tip, 0 to the depth
};
/// Where the turn stands when a tooth passes that place, and so gives it its final shape. A wall the pass does not
/// form, or a height out of it, throws std::domain_error.
Angle turn_at_wall(const MillingLoad& load, WallPoint point);
/// Force across the travel at that moment, above 0 to the left: into a wall milled conventionally, away from one that
/// is climb milled.
Force force_at_wall(const MillingLoad& load, WallPoint point);

// --- run-out ---

/// The thickest chip that any tooth takes when the cutter's axis is off the spindle's, the worst way round [mm].
/// With 2 and 3 flutes it is fz + 2 e sin(pi/z), at most z fz; with more, that closed form is too high (3.3 % at most
/// with 4 flutes, 15 % with 6, 41 % with 12), because a tooth two or more ahead has cut deeper there.
/// \param feed above 0 \param teeth 1 to 12 \param offset half the total indicator reading, 0 or more. Anything else
/// throws std::domain_error.
Length largest_tooth_chip(FeedPerTooth feed, TeethPerTurn teeth, Length offset);

// --- doubt ---

struct TwoForces {
  Force kienzle;
  Force handbook;
};
struct ForceScatter {
  double scatter;     // of each model, as a share: 0 or more, less than 1
  double size_effect; // size_effect_doubt of the largest chip; 1 or more
};
/// Where the truth lies: the value is Kienzle's; low and high are the lower and the higher of the two models with their
/// scatter, and the size effect on top of the high one: at thin chips the published laws
/// that were compared lie above a family's own, none below.
/// Both forces above 0; otherwise throws std::domain_error.
Spread<Force> joined_force(TwoForces forces, ForceScatter doubt);

/// What is in proportion to a force (torque, power, bend, stress), with the doubt of the force.
template <class Quantity> Spread<Quantity> in_proportion(Quantity value, const Spread<Force>& force) {
  return {value * (force.low / force.value), value, value * (force.high / force.value)};
}

} // namespace quillside
