#pragma once
// Load on an end mill at any moment of its turn, from the thickness of the chip each tooth takes.
// Frame: the spindle turns clockwise seen from the shank; `feed` points the way the cutter travels over the work,
// `across` to the left of it. A tooth's angle counts from the left, with the turn: 0 on the wall that is milled
// conventionally, a quarter turn straight ahead, half a turn on the wall that is climb milled. Forces are those on the
// cutter.
// Assumes: each tooth moves in a circle, h = fz sin(phi); every tooth takes the same chip; a radial force that stays in
// one ratio to the tangential; a cutter that does not give way.
// Leaves out: run-out, rake, vibration, the corner radius and the end teeth, the axial force of a helix, heat, wear.

#include <vector>

#include <quillside/model/law.hpp>
#include <quillside/model/mill_pass.hpp>
#include <quillside/model/specific_force.hpp>
#include <quillside/model/tooth_arc.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law tooth_force_law{"tooth-force",
                                     "dFt = kc11 h^(1-mc) dz, dFr = kr dFt, h = fz sin(phi), summed along the helix",
                                     "Altintas, Manufacturing Automation, 2nd ed., 2012, chapter 2", "from memory"};

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

} // namespace quillside
