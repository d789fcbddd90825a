#include <quillside/model/cutter_bend.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include <boost/math/quadrature/gauss.hpp>

#include <quillside/quantity/angle.hpp>

#include "checked.hpp"

namespace quillside {

using detail::require;

namespace {

void check(const EndMill& cutter) {
  require(cutter.diameter > mm(0) && cutter.shank > mm(0), "an end mill has a diameter and a shank");
  require(cutter.flute_length > mm(0), "an end mill has flutes of some length");
  require(cutter.overhang >= cutter.flute_length && std::isfinite(in_mm(cutter.overhang)),
          "an overhang shorter than the flutes: they cannot be held");
  require(cutter.modulus > megapascals(0), "a modulus of elasticity is above 0");
  require(cutter.core > 0 && cutter.core <= 1, "the core of an end mill is above 0 and at most its diameter");
  require(!cutter.machine.sideways || *cutter.machine.sideways > newtons_per_mm(0), "a stiffness is above 0");
  require(!cutter.machine.tilting || *cutter.machine.tilting > newton_metres_per_degree(0), "a stiffness is above 0");
}

void check(const EndMill& cutter, Length height) {
  require(height >= mm(0) && height <= cutter.overhang, "a height above the tip is 0 to the overhang");
}

void check(const EndMill& cutter, const MillingLoad& load) {
  check(cutter);
  require(load.pass().engagement.diameter == cutter.diameter, "the load of a cutter of another diameter");
  require(load.pass().depth <= cutter.flute_length, "a pass deeper than the flutes");
}

/// Bend by a force, of an end mill whose figures were looked at once.
class Beam {
public:
  explicit Beam(const EndMill& cutter)
      : flutes_(in_mm(cutter.flute_length)), overhang_(in_mm(cutter.overhang)),
        per_flute_(1 / (in_megapascals(cutter.modulus) * in_mm4(second_moment(cutter.core * cutter.diameter)))),
        per_shank_(1 / (in_megapascals(cutter.modulus) * in_mm4(second_moment(cutter.shank)))) {
    if (cutter.machine.sideways) sideways_ = 1 / in_newtons_per_mm(*cutter.machine.sideways);
    if (cutter.machine.tilting)
      tilting_ = in_radians((newtons(1) * mm(1)) / *cutter.machine.tilting); // slope by a moment of 1 N mm
  }

  /// [mm/N] at one height by a force at the other.
  [[nodiscard]] double bend(double load, double read) const {
    const double from = std::max(load, read);
    // The integral of a product of two straight lines: Simpson's rule gives it exactly.
    const auto between = [&](double a, double b) {
      const double middle = (a + b) / 2;
      const auto arms = [&](double x) { return (x - load) * (x - read); };
      return a < b ? (b - a) / 6 * (arms(a) + 4 * arms(middle) + arms(b)) : 0.0;
    };
    return between(from, flutes_) * per_flute_ + between(std::max(from, flutes_), overhang_) * per_shank_ + sideways_ +
           tilting_ * (overhang_ - load) * (overhang_ - read);
  }

private:
  double flutes_, overhang_;     // mm
  double per_flute_, per_shank_; // 1 / EI, per N mm2
  double sideways_ = 0;          // mm/N
  double tilting_ = 0;           // per N mm
};

/// Bending moment at a height, whichever way it points.
Torque moment_at(const CutterLoad& load, Length height) {
  const Torque feed = height * load.feed - load.feed_moment;
  const Torque across = height * load.across - load.across_moment;
  return newton_metres(std::hypot(in_newton_metres(feed), in_newton_metres(across)));
}

/// Equivalent stress at a radius of a round section.
Stress combined(Torque bending, Torque torque, Length radius, SecondMoment section) {
  const Stress normal = bending * radius / section;
  const Stress shear = torque * radius / (2.0 * section);
  return megapascals(std::hypot(in_megapascals(normal), std::sqrt(3.0) * in_megapascals(shear)));
}

double bend_across(const Beam& beam, const MillingLoad& load, WallPoint point) {
  double bend = 0;
  for (const PointLoad& part : load.along(turn_at_wall(load, point)))
    bend += in_newtons(part.across) * beam.bend(in_mm(part.height), in_mm(point.height));
  // To the left is into the wall that is milled conventionally, and away from the other.
  return point.side == MillSide::conventional ? -bend : bend;
}

/// The heights between which the error runs smoothly, tip and top of the pass among them: a tooth elsewhere enters or
/// leaves the work at one of them.
std::vector<Length> smooth_heights(const MillingLoad& load, MillSide side) {
  const Length depth = load.pass().depth;
  const Angle from = turn_at_wall(load, {side, mm(0)});
  const Angle whole = load.lag_at(depth);
  const auto edges = load.smooth_stretches();
  const Angle pitch = edges.back();
  std::vector<Length> heights{mm(0)};
  for (const Angle edge : edges) {
    // The first time after the tip's moment that the turn comes by this edge, then once a pitch.
    for (Angle ahead = edge - from + std::ceil((from - edge) / pitch) * pitch; ahead < whole; ahead = ahead + pitch)
      heights.push_back(ahead / whole * depth);
  }
  heights.push_back(depth);
  std::ranges::sort(heights, [](Length a, Length b) { return a < b; });
  return heights;
}

/// The extreme of a parabola through three values a step apart, where it lies between them; else the middle one.
double vertex(double before, double middle, double after) {
  const double bow = before - 2 * middle + after;
  const double slope = (after - before) / 2;
  return std::abs(slope) < std::abs(bow) ? middle - slope * slope / (2 * bow) : middle;
}

} // namespace

SecondMoment second_moment(Length diameter) {
  require(diameter > mm(0), "a section has a diameter");
  const auto square = diameter * diameter;
  return std::numbers::pi / 64 * (square * square);
}

SecondMoment fluted_second_moment(const EndMill& cutter) {
  check(cutter);
  return second_moment(cutter.core * cutter.diameter);
}

Compliance compliance(const EndMill& cutter, BendPoints heights) {
  check(cutter);
  check(cutter, heights.load);
  check(cutter, heights.read);
  return mm_per_newton(Beam(cutter).bend(in_mm(heights.load), in_mm(heights.read)));
}

Length deflection(const EndMill& cutter, SideForce load, Length at) {
  return load.force * compliance(cutter, {load.height, at});
}

Length deflection(const EndMill& cutter, SpreadForce load, Length at) {
  check(cutter);
  check(cutter, load.from);
  check(cutter, load.to);
  check(cutter, at);
  require(load.from < load.to, "a spread load has a length");
  const Beam beam(cutter);
  const auto bend = [&](double height) { return beam.bend(height, in_mm(at)); };
  // A cubic between the flute end and the place where the bend is read; the rule is exact for one.
  const auto part = [&](Length from, Length to) {
    const Length low = std::clamp(from, load.from, load.to);
    const Length high = std::clamp(to, load.from, load.to);
    return low < high ? boost::math::quadrature::gauss<double, 7>::integrate(bend, in_mm(low), in_mm(high)) : 0.0;
  };
  const Length first = std::min(at, cutter.flute_length);
  const Length second = std::max(at, cutter.flute_length);
  const double whole = part(mm(0), first) + part(first, second) + part(second, cutter.overhang);
  return load.force * mm_per_newton(whole / in_mm(load.to - load.from));
}

Angle twist(const EndMill& cutter, Torque torque, Stress shear_modulus) {
  check(cutter);
  require(shear_modulus > megapascals(0), "a shear modulus is above 0");
  const auto part = [&](Length length, SecondMoment section) {
    return torque * length / (shear_modulus * (2.0 * section));
  };
  return radians(part(cutter.flute_length, fluted_second_moment(cutter)) +
                 part(cutter.overhang - cutter.flute_length, second_moment(cutter.shank)));
}

Stress flute_end_stress(const EndMill& cutter, const CutterLoad& load) {
  return combined(moment_at(load, cutter.flute_length), load.torque, cutter.diameter / 2.0,
                  fluted_second_moment(cutter));
}

Stress shank_stress(const EndMill& cutter, const CutterLoad& load) {
  check(cutter);
  return combined(moment_at(load, cutter.overhang), load.torque, cutter.shank / 2.0, second_moment(cutter.shank));
}

Stress root_stress(const EndMill& cutter, const CutterLoad& load, double notch) {
  require(notch >= 1, "a notch raises a stress: 1 or more");
  return std::max(notch * flute_end_stress(cutter, load), shank_stress(cutter, load));
}

Stress peak_root_stress(const EndMill& cutter, const MillingLoad& load, double notch) {
  check(cutter, load);
  const auto stress = [&](const CutterLoad& at) { return root_stress(cutter, at, notch); };
  return stress(load.at(turn_of_largest(load, [&](const CutterLoad& at) { return in_megapascals(stress(at)); })));
}

Length peak_deflection(const EndMill& cutter, const MillingLoad& load) {
  check(cutter, load);
  const Beam beam(cutter);
  double feed = 0;
  double across = 0;
  const Angle turn = turn_of_largest(load, [](const CutterLoad& at) { return in_newtons(resultant(at)); });
  for (const PointLoad& part : load.along(turn)) {
    const double bend = beam.bend(in_mm(part.height), 0);
    feed += in_newtons(part.feed) * bend;
    across += in_newtons(part.across) * bend;
  }
  return mm(std::hypot(feed, across));
}

Length wall_error_at(const EndMill& cutter, const MillingLoad& load, WallPoint point) {
  check(cutter, load);
  return mm(bend_across(Beam(cutter), load, point));
}

WallError wall_error(const EndMill& cutter, const MillingLoad& load, MillSide side) {
  check(cutter, load);
  const Beam beam(cutter);
  const auto at = [&](Length height) { return bend_across(beam, load, {side, height}); };
  const auto heights = smooth_heights(load, side);
  WallError error{.bottom = mm(at(heights.front())), .top = mm(at(heights.back())), .largest = mm(0)};
  const auto look_at = [&](double bend) {
    if (std::abs(bend) > std::abs(in_mm(error.largest))) error.largest = mm(bend);
  };
  look_at(in_mm(error.bottom));
  look_at(in_mm(error.top));
  for (std::size_t i = 1; i < heights.size(); ++i) {
    constexpr Angle longest = degrees(15); // of the turn that goes by between two looks
    const Angle ahead = load.lag_at(heights[i] - heights[i - 1]);
    const int steps = std::max(4, static_cast<int>(std::ceil(ahead / longest)));
    const Length step = (heights[i] - heights[i - 1]) / steps;
    double before = at(heights[i - 1]);
    double here = at(heights[i - 1] + step);
    for (int k = 1; k < steps; ++k) {
      const double after = k + 1 == steps ? at(heights[i]) : at(heights[i - 1] + step * (k + 1.0));
      look_at(here);
      look_at(vertex(before, here, after));
      before = here;
      here = after;
    }
    look_at(here);
  }
  return error;
}

} // namespace quillside
