#include <quillside/model/curved_lip.hpp>

#include <cmath>
#include <cstdint>
#include <numbers>
#include <stdexcept>
#include <utility>

#include <boost/math/policies/error_handling.hpp>
#include <boost/math/tools/roots.hpp>
#include <boost/math/tools/toms748_solve.hpp>

#include <quillside/quantity/angle.hpp>

namespace quillside {

namespace {

double cotangent(Angle angle) { return cosine(angle) / sine(angle); }

void require(Flute flute) {
  corner_reach(flute.made_for); // refuses what is no point
  if (!(flute.made_for.web > mm(0))) throw std::domain_error{"a flute leaves a web"};
  if (!(flute.helix >= turns(0)) || !(flute.helix < degrees(60)))
    throw std::domain_error{"a helix angle is 0 or more and under 60 deg"};
}

void require(const GroundLip& lip) {
  require(lip.flute);
  if (!(lip.clocking >= degrees(-30)) || !(lip.clocking <= degrees(30)))
    throw std::domain_error{"a drill is clocked by 30 deg at most"};
  if (const auto* flat = std::get_if<FlatFlank>(&lip.flank))
    side_clearance(flat->point, flat->slope, flat->point.diameter / 2.0); // refuses what is no flank
}

// --- flank and flute, in mm and rad ---

double height(const GroundFlank& flank, double x, double y) {
  struct Of {
    double x, y;
    double operator()(const FlatFlank& flat) const {
      return -x * cotangent(flat.point.included / 2.0) + flat.slope * (y - in_mm(flat.point.web) / 2);
    }
    double operator()(const ConeFlank& cone) const { return in_mm(flank_height(cone, {mm(x), mm(y)})); }
    double operator()(const ConeSetup& setup) const { return in_mm(flank_height(setup, {mm(x), mm(y)})); }
  };
  return std::visit(Of{x, y}, flank);
}

FlankGradient gradient(const GroundFlank& flank, double x, double y) {
  struct Of {
    double x, y;
    FlankGradient operator()(const FlatFlank& flat) const {
      return {.along = -cotangent(flat.point.included / 2.0), .across = flat.slope};
    }
    FlankGradient operator()(const ConeFlank& cone) const { return flank_gradient(cone, {mm(x), mm(y)}); }
    FlankGradient operator()(const ConeSetup& setup) const { return flank_gradient(setup, {mm(x), mm(y)}); }
  };
  return std::visit(Of{x, y}, flank);
}

/// How far the flute turns about the axis in a millimetre of height [rad/mm].
double twist(Flute flute) { return tangent(flute.helix) / (in_mm(flute.made_for.diameter) / 2); }

/// Where the flute's own straight lip lies at this radius.
double straight_height(Flute flute, double radius) {
  const double w = in_mm(flute.made_for.web) / 2;
  return -std::sqrt(radius * radius - w * w) * cotangent(flute.made_for.included / 2.0);
}

double polar(Flute flute, double radius, double z) {
  return std::asin(in_mm(flute.made_for.web) / 2 / radius) + twist(flute) * (z - straight_height(flute, radius));
}

/// How the flank falls off round the axis, per radian over the radius: the tangent of the side clearance.
double fall(const GroundLip& lip, double radius, double turned) {
  const FlankGradient slope = gradient(lip.flank, radius * std::cos(turned), radius * std::sin(turned));
  return std::cos(turned) * slope.across - std::sin(turned) * slope.along;
}

struct Place {
  double radius, height, polar;
  [[nodiscard]] double x() const { return radius * std::cos(polar); }
  [[nodiscard]] double y() const { return radius * std::sin(polar); }
};

Place place_at(const GroundLip& lip, double radius) {
  const double clocking = in_radians(lip.clocking);
  const auto apart = [&](double z) {
    const double turned = polar(lip.flute, radius, z) + clocking;
    const double flank = height(lip.flank, radius * std::cos(turned), radius * std::sin(turned));
    return std::pair{z - flank, 1 - twist(lip.flute) * radius * fall(lip, radius, turned)};
  };
  const double start = straight_height(lip.flute, radius);
  const double within = in_mm(lip.flute.made_for.diameter);
  const auto meet = [&] {
    std::uintmax_t steps = 100;
    try {
      return boost::math::tools::newton_raphson_iterate(apart, start, start - within, start + within, 50, steps);
    } catch (const boost::math::evaluation_error&) { // it says so where it finds no root
      throw std::domain_error{"the flank does not meet the flute here"};
    }
  };
  const double z = meet();
  if (!(std::abs(apart(z).first) < 1e-12 * within)) throw std::domain_error{"the flank does not meet the flute here"};
  return {radius, z, polar(lip.flute, radius, z)};
}

/// How much higher the lip lies than the flank of the other one: above 0 that flank has cut it away.
double above_other_flank(const GroundLip& lip, double radius) {
  const Place place = place_at(lip, radius);
  const double opposite = place.polar + in_radians(lip.clocking) + std::numbers::pi;
  return place.height - height(lip.flank, radius * std::cos(opposite), radius * std::sin(opposite));
}

Place inner_end(const GroundLip& lip) {
  const double innermost = in_mm(lip.flute.made_for.web) / 2 * (1 + 1e-9);
  const double outermost = in_mm(lip.flute.made_for.diameter) / 2;
  const auto apart = [&](double radius) { return above_other_flank(lip, radius); };
  if (!(apart(innermost) > 0)) throw std::domain_error{"a lip that meets no chisel edge"};
  constexpr int steps = 200;
  double cut = innermost;
  for (int i = 1; i <= steps; ++i) {
    const double next = innermost + (outermost - innermost) * i / steps;
    if (apart(next) > 0) {
      cut = next;
      continue;
    }
    std::uintmax_t tries = 200;
    const auto found =
        boost::math::tools::toms748_solve(apart, cut, next, boost::math::tools::eps_tolerance<double>(50), tries);
    return place_at(lip, (found.first + found.second) / 2);
  }
  throw std::domain_error{"a lip that meets no chisel edge"};
}

Place corner(const GroundLip& lip) { return place_at(lip, in_mm(lip.flute.made_for.diameter) / 2); }

} // namespace

LipPlace lip_place(const GroundLip& lip, Length radius) {
  require(lip);
  lip_offset(lip.flute.made_for, radius); // refuses a radius off the lip
  const Place place = place_at(lip, in_mm(radius));
  const double turned = place.polar + in_radians(lip.clocking);
  return {.height = mm(place.height),
          .polar = radians(place.polar),
          .side_clearance = radians(std::atan(fall(lip, place.radius, turned)))};
}

MeasuredPoint measured_point(const GroundLip& lip) {
  require(lip);
  const Place inner = inner_end(lip);
  const Place outer = corner(lip);
  const double x = outer.x() - inner.x();
  const double y = outer.y() - inner.y();
  const double depth = inner.height - outer.height;
  if (!(depth > 0)) throw std::domain_error{"a lip that makes no point"};
  return {.included = 2.0 * radians(std::atan2(std::hypot(x, y), depth)),
          .chisel_edge = turns(0.5) - radians(inner.polar - std::atan2(y, x)),
          .relief = lip_place(lip, lip.flute.made_for.diameter / 2.0).side_clearance,
          .lip = mm(std::hypot(x, y, depth)),
          .inner_radius = mm(inner.radius)};
}

Length lip_bow(const GroundLip& lip, Length radius) {
  require(lip);
  lip_offset(lip.flute.made_for, radius); // refuses a radius off the lip
  const Place inner = inner_end(lip);
  const Place outer = corner(lip);
  const Place place = place_at(lip, in_mm(radius));
  const double x = outer.x() - inner.x();
  const double y = outer.y() - inner.y();
  return mm((x * (place.y() - inner.y()) - y * (place.x() - inner.x())) / std::hypot(x, y));
}

Angle clocking_on_corner(Flute flute, Angle included) {
  require(flute);
  if (!(included > turns(0)) || !(included < turns(0.5)))
    throw std::domain_error{"a point angle is above 0 and under 180 deg"};
  const double further_out = cotangent(flute.made_for.included / 2.0) - cotangent(included / 2.0);
  return radians(-twist(flute) * in_mm(corner_reach(flute.made_for)) * further_out);
}

} // namespace quillside
