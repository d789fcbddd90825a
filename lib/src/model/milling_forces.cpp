#include <quillside/model/milling_forces.hpp>

#include <algorithm>
#include <limits>

#include <boost/math/quadrature/gauss.hpp>
#include <boost/math/tools/minima.hpp>

#include <quillside/quantity/angle.hpp>

#include "checked.hpp"

namespace quillside {

using detail::require;

Angle turn_of_largest(const MillingLoad& load, const std::function<double(const CutterLoad&)>& rank) {
  constexpr int steps = 8;
  constexpr double inside = 1e-7; // a straight tooth's load jumps at the ends of a stretch
  const auto stretches = load.smooth_stretches();
  const auto at = [&](double turn) { return rank(load.at(turns(turn))); };
  double best = -std::numeric_limits<double>::infinity();
  double best_turn = 0;
  double low = 0;
  double high = 0;
  for (std::size_t i = 1; i < stretches.size(); ++i) {
    const double length = in_turns(stretches[i] - stretches[i - 1]);
    const double from = in_turns(stretches[i - 1]) + inside * length;
    const double to = in_turns(stretches[i]) - inside * length;
    for (int step = 0; step <= steps; ++step) {
      const double turn = from + (to - from) * step / steps;
      const double value = at(turn);
      if (value <= best) continue;
      best = value;
      best_turn = turn;
      low = std::max(from, turn - (to - from) / steps);
      high = std::min(to, turn + (to - from) / steps);
    }
  }
  constexpr int bits = 20;
  const auto [turn, negative] =
      boost::math::tools::brent_find_minima([&](double t) { return -at(t); }, low, high, bits);
  return turns(-negative > best ? turn : best_turn);
}

MillingForces milling_forces(const MillingLoad& load) {
  const Angle strongest = turn_of_largest(load, [](const CutterLoad& at) { return in_newtons(resultant(at)); });
  const Angle tightest = turn_of_largest(load, [](const CutterLoad& at) { return in_newton_metres(at.torque); });
  const auto stretches = load.smooth_stretches();
  const auto at = [&](double turn) { return in_newtons(resultant(load.at(turns(turn)))); };
  double summed = 0;
  for (std::size_t i = 1; i < stretches.size(); ++i)
    summed +=
        boost::math::quadrature::gauss<double, 10>::integrate(at, in_turns(stretches[i - 1]), in_turns(stretches[i]));
  const CutterLoad mean = load.mean();
  const Length radius = load.pass().engagement.diameter / 2.0;
  return {.peak_resultant = resultant(load.at(strongest)),
          .peak_turn = strongest,
          .mean_resultant = newtons(summed / in_turns(stretches.back())),
          .mean_feed = mean.feed,
          .mean_across = mean.across,
          .mean_tangential = mean.torque / radius,
          .peak_torque = load.at(tightest).torque,
          .mean_torque = mean.torque};
}

Power mean_power(const MillingLoad& load, SpindleSpeed speed) {
  require(speed >= rev_per_min(0), "a spindle speed is 0 or more");
  return load.mean().torque * angular_velocity(speed);
}

Angle turn_at_wall(const MillingLoad& load, WallPoint point) {
  require(forms_wall(load.pass(), point.side), "a wall that this pass does not form");
  require(point.height >= mm(0) && point.height <= load.pass().depth, "a height above the pass");
  const Angle wall = point.side == MillSide::conventional ? turns(0) : turns(0.5);
  return wall + load.lag_at(point.height);
}

Force force_at_wall(const MillingLoad& load, WallPoint point) { return load.at(turn_at_wall(load, point)).across; }

} // namespace quillside
