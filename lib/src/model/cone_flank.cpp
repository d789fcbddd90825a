#include <quillside/model/cone_flank.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <limits>
#include <stdexcept>

#include <boost/math/tools/roots.hpp>
#include <boost/math/tools/toms748_solve.hpp>

#include <quillside/quantity/angle.hpp>

#include "least_drop.hpp"

namespace quillside {

namespace {

double cotangent(Angle angle) { return cosine(angle) / sine(angle); }
double square(double number) { return number * number; }
Angle half(PointShape point) { return point.included / 2.0; }
double half_web(PointShape point) { return in_mm(point.web) / 2; }
double corner_radius(PointShape point) { return in_mm(point.diameter) / 2; }
Facet at_lip(ConeFlank flank) { return {flank.point.included, flank.slope}; }

// --- the surface, in mm ---

/// A length that grows evenly over space.
struct Linear {
  double at_origin;
  std::array<double, 3> growth;
  [[nodiscard]] double at(double x, double y, double z) const {
    return at_origin + growth[0] * x + growth[1] * y + growth[2] * z;
  }
};

/// A cone about one of its lines: run along that line from the apex, depth under the plane that touches there, and
/// across it.
struct Cone {
  Linear run;
  Linear depth;
  Linear across;
  double half_angle; // rad
};

/// Along the axis of the cone from its apex; below 0 on the half of it that is not ground.
double along_axis(const Cone& cone, double run, double depth) {
  return run * std::cos(cone.half_angle) + depth * std::sin(cone.half_angle);
}

std::optional<double> height(const Cone& cone, double x, double y) {
  const double t = std::tan(cone.half_angle);
  const double run = cone.run.at(x, y, 0);
  const double depth = cone.depth.at(x, y, 0);
  const double across = cone.across.at(x, y, 0);
  const double run_z = cone.run.growth[2];
  const double depth_z = cone.depth.growth[2];
  const double across_z = cone.across.growth[2];
  const auto [low, high] = boost::math::tools::quadratic_roots(
      square(across_z) + (1 - t * t) * square(depth_z) - 2 * t * run_z * depth_z,
      2 * (across * across_z + (1 - t * t) * depth * depth_z - t * (run * depth_z + depth * run_z)),
      square(across) + (1 - t * t) * square(depth) - 2 * t * run * depth);
  const auto ground = [&](double z) { return along_axis(cone, run + run_z * z, depth + depth_z * z) > 0; };
  if (ground(high)) return high;
  if (ground(low)) return low;
  return std::nullopt; // no root at all is no number, and no number is above 0
}

double reached(std::optional<double> height) {
  if (!height) throw std::domain_error{"the cone does not reach this place"};
  return *height;
}

FlankGradient gradient(const Cone& cone, double x, double y) {
  const double z = reached(height(cone, x, y));
  const double t = std::tan(cone.half_angle);
  const double run = cone.run.at(x, y, z);
  const double depth = cone.depth.at(x, y, z);
  const double across = cone.across.at(x, y, z);
  const auto slope = [&](std::size_t i) {
    return across * cone.across.growth[i] + (1 - t * t) * depth * cone.depth.growth[i] -
           t * (run * cone.depth.growth[i] + depth * cone.run.growth[i]);
  };
  return {.along = -slope(0) / slope(2), .across = -slope(1) / slope(2)};
}

/// About the lip.
Cone cone_of(ConeFlank flank) {
  const Angle k = half(flank.point);
  const Angle tilt = flank_tilt(at_lip(flank));
  const double w = half_web(flank.point);
  return {.run = {in_mm(flank.apex_offset) / sine(k), {sine(k), 0, -cosine(k)}},
          .depth = {-w * sine(tilt), {-cosine(k) * cosine(tilt), sine(tilt), -sine(k) * cosine(tilt)}},
          .across = {-w * cosine(tilt), {cosine(k) * sine(tilt), cosine(tilt), sine(k) * sine(tilt)}},
          .half_angle = in_radians(flank.cone_half_angle)};
}

using Vector = std::array<double, 3>;
double dot(const Vector& a, const Vector& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }

/// About the cone's uppermost line.
Cone cone_of(ConeSetup setup) {
  if (!(setup.cone_half_angle > turns(0)) || !(setup.cone_half_angle < turns(0.25)))
    throw std::domain_error{"half the angle of a cone is above 0 and under 90 deg"};
  if (!(setup.axis_angle > turns(0)) || !(setup.axis_angle < turns(0.25)))
    throw std::domain_error{"a pivot axis stands above 0 and under 90 deg to the drill"};
  const double sin_p = sine(setup.axis_angle);
  const double cos_p = cosine(setup.axis_angle);
  const double sin_b = sine(setup.lip_clock);
  const double cos_b = cosine(setup.lip_clock);
  const Vector axis{sin_p * cos_b, sin_p * sin_b, -cos_p}; // from the apex toward the shank
  const Vector up{cos_p * cos_b, cos_p * sin_b, sin_p};
  const Vector sideways{sin_b, -cos_b, 0}; // axis x up
  const double distance = in_mm(setup.axis_distance);
  const double skew = in_mm(setup.skew);
  const Vector apex{-skew * sin_b - distance * axis[0], skew * cos_b - distance * axis[1],
                    in_mm(setup.foot_height) - distance * axis[2]};
  const double sin_q = sine(setup.cone_half_angle);
  const double cos_q = cosine(setup.cone_half_angle);
  Vector along{};
  Vector inward{};
  for (std::size_t i = 0; i < 3; ++i) {
    along[i] = cos_q * axis[i] + sin_q * up[i];
    inward[i] = sin_q * axis[i] - cos_q * up[i];
  }
  return {.run = {-dot(along, apex), along},
          .depth = {-dot(inward, apex), inward},
          .across = {-dot(sideways, apex), sideways},
          .half_angle = in_radians(setup.cone_half_angle)};
}

// --- the chisel edge ---

void require_numbers(ConeFlank flank) {
  corner_reach(flank.point); // refuses what is no point
  flank_tilt(at_lip(flank)); // and a flank that does not fall
  if (!(flank.point.web > mm(0))) throw std::domain_error{"a conical flank needs a web"};
  if (!(flank.cone_half_angle > turns(0)) || !(flank.cone_half_angle < half(flank.point)))
    throw std::domain_error{"half the angle of the cone is above 0 and under half the point angle"};
  if (!std::isfinite(in_mm(flank.apex_offset))) throw std::domain_error{"a cone without an apex"};
}

/// How the run at the other lip's inner end grows with its distance along the lip, both as seen along the normal.
double run_growth(Angle k) { return cosine(2.0 * k) / cosine(k); }

/// Where the cone behind lip 1 cuts lip 2, along that lip.
double inner_end(ConeFlank flank) {
  require_numbers(flank);
  const Angle k = half(flank.point);
  const Angle tilt = flank_tilt(at_lip(flank));
  const double w = half_web(flank.point);
  const double d = in_mm(flank.apex_offset);
  const double t = tangent(flank.cone_half_angle);
  const double c = cosine(tilt);
  const double s = sine(tilt);
  const double growth = run_growth(k);
  // X^2 + w^2 - t^2 g^2 - t E g = 0 with g = X c - w s, E = (d + X growth) / sin k
  const auto roots = boost::math::tools::quadratic_roots(1 - square(t * c) - t * c * growth / sine(k),
                                                         2 * t * t * c * s * w - t * (d * c - growth * w * s) / sine(k),
                                                         square(w) - square(t * w * s) + t * d * w * s / sine(k));
  for (const double root : {roots.first, roots.second}) {
    if (!(root * c - w * s > 0) || !(d + root * growth > 0)) continue;
    const double x = root / cosine(k);
    if (!(x < in_mm(corner_reach(flank.point)))) throw std::domain_error{"a chisel edge that leaves no lip"};
    const auto there = height(cone_of(flank), -x, -w);
    if (there && std::abs(*there + x * cotangent(k)) < 1e-7 * corner_radius(flank.point)) return x;
  }
  throw std::domain_error{"no chisel edge: the cone's apex lies too near for it"};
}

struct Checked {
  Cone cone;
  double inner_end;
};
Checked checked(ConeFlank flank) {
  const double inner = inner_end(flank);
  return {cone_of(flank), inner};
}

// --- the heel ---

std::optional<double> drop_at(const Cone& cone, PointShape point, FlankPlace place) {
  const Angle lip = lip_offset(point, place.radius);
  const double r = in_mm(place.radius);
  const auto here = height(cone, r * cosine(lip - place.turn), r * sine(lip - place.turn));
  if (!here) return std::nullopt;
  return -r * cosine(lip) * cotangent(half(point)) - *here;
}

void require_turn(Angle behind) {
  if (!(behind >= turns(0)) || !(behind < turns(0.5)))
    throw std::domain_error{"a flank is followed from its lip on, less than half a turn"};
}

void require_land(Angle land) {
  if (!(land > turns(0)) || !(land < turns(0.5))) throw std::domain_error{"a land angle is above 0 and under 180 deg"};
}

double relief_of(ConeFlank flank) { return tangent(relief_of_slope(flank.point, flank.slope)); }

/// What the wanted point fixes of its cone, whatever the half angle.
struct Fixed {
  double slope;
  double along;  // X: of the chisel corner, as seen along the lip's normal
  double depth;  // g: half of how deep that corner of the other lip lies under the plane that touches along this one
  double widest; // half angle whose apex would lie in that corner [rad]
};
Fixed fixed_by(WantedPoint wanted) {
  const double slope = flank_slope(wanted.point, wanted.relief);
  if (!(slope > 0)) throw std::domain_error{"a relief that leaves no flank falling from its lip"};
  if (!(wanted.point.web > mm(0))) throw std::domain_error{"a conical flank needs a web"};
  if (!(wanted.chisel_edge > turns(0)) || !(wanted.chisel_edge < turns(0.5)))
    throw std::domain_error{"a chisel edge angle is above 0 and under 180 deg"};
  const Angle tilt = flank_tilt({wanted.point.included, slope});
  const double w = half_web(wanted.point);
  const double along = w * cosine(half(wanted.point)) * std::abs(cotangent(wanted.chisel_edge));
  const double depth = along * cosine(tilt) - w * sine(tilt);
  if (!(depth > 0))
    throw std::domain_error{"a cone turns the chisel edge further than a flat flank of this relief, never less"};
  return {slope, along, depth, std::atan(std::hypot(along, w) / depth)};
}

ConeFlank cone_from(WantedPoint wanted, const Fixed& fixed, Angle half_angle) {
  const Angle k = half(wanted.point);
  const double t = tangent(half_angle);
  const double run =
      (square(fixed.along) + square(half_web(wanted.point)) - square(t * fixed.depth)) / (t * fixed.depth);
  return {.point = wanted.point,
          .slope = fixed.slope,
          .cone_half_angle = half_angle,
          .apex_offset = mm(run * sine(k) - fixed.along * run_growth(k))};
}

// --- the swing ---

/// How far the plane that touches the cone has turned about its axis, from the lip, when it touches along the line
/// through this place [rad]. No flank reaches half a turn.
double turned_to(const Cone& cone, const Vector& place) {
  const double run = cone.run.at(place[0], place[1], place[2]);
  const double depth = cone.depth.at(place[0], place[1], place[2]);
  const double across = cone.across.at(place[0], place[1], place[2]);
  return std::atan2(-across, run * std::sin(cone.half_angle) - depth * std::cos(cone.half_angle));
}

/// The turn at which that plane first reaches a place outside the cone; nothing for one inside.
std::optional<double> reached_at(const Cone& cone, const Vector& place) {
  const double run = cone.run.at(place[0], place[1], place[2]);
  const double depth = cone.depth.at(place[0], place[1], place[2]);
  const double across = cone.across.at(place[0], place[1], place[2]);
  const double from_axis = std::hypot(across, run * std::sin(cone.half_angle) - depth * std::cos(cone.half_angle));
  const double inside = along_axis(cone, run, depth) * std::tan(cone.half_angle) / from_axis;
  if (!(inside < 1)) return std::nullopt;
  return turned_to(cone, place) - std::acos(std::max(inside, -1.0));
}

} // namespace

ConeSetup cone_setup(ConeFlank flank) {
  inner_end(flank); // refuses what is no flank
  const Angle k = half(flank.point);
  const Angle q = flank.cone_half_angle;
  const Angle tilt = flank_tilt(at_lip(flank));
  // 1 - cos(tilt) apart, so that a cone nearly as wide as the point keeps its digits.
  const double bent = 2 * square(sine(tilt / 2.0)) * sine(q);
  const double x = sine(k - q) + bent * cosine(k);
  const double y = sine(q) * sine(tilt);
  const double z = -cosine(k - q) + bent * sine(k);
  const double sin_p = std::hypot(x, y);
  const Length distance = (x * flank.apex_offset - y / 2.0 * flank.point.web) / square(sin_p);
  return {.cone_half_angle = q,
          .axis_angle = radians(std::atan2(sin_p, -z)),
          .skew = (y * flank.apex_offset + x / 2.0 * flank.point.web) / sin_p,
          .lip_clock = radians(std::atan2(y, x)),
          .axis_distance = distance,
          .foot_height = cotangent(k) * flank.apex_offset + z * distance};
}

Length flank_height(ConeFlank flank, EndPlace place) {
  return mm(reached(height(checked(flank).cone, in_mm(place.along), in_mm(place.across))));
}

Length flank_height(ConeSetup setup, EndPlace place) {
  return mm(reached(height(cone_of(setup), in_mm(place.along), in_mm(place.across))));
}

FlankGradient flank_gradient(ConeFlank flank, EndPlace place) {
  return gradient(checked(flank).cone, in_mm(place.along), in_mm(place.across));
}

FlankGradient flank_gradient(ConeSetup setup, EndPlace place) {
  return gradient(cone_of(setup), in_mm(place.along), in_mm(place.across));
}

ConeFlank cone_of_half_angle(WantedPoint wanted, Angle cone_half_angle) {
  const Fixed fixed = fixed_by(wanted);
  if (!(cone_half_angle > turns(0)) || !(cone_half_angle < half(wanted.point)))
    throw std::domain_error{"half the angle of the cone is above 0 and under half the point angle"};
  if (!(in_radians(cone_half_angle) < fixed.widest))
    throw std::domain_error{"a cone so wide would have its apex inside the chisel edge"};
  const ConeFlank flank = cone_from(wanted, fixed, cone_half_angle);
  const double met = inner_end(flank);
  const double asked = fixed.along / cosine(half(wanted.point));
  if (!(std::abs(met - asked) < 1e-9 * corner_radius(wanted.point)))
    throw std::domain_error{"the cone meets the other flank before this chisel edge"};
  return flank;
}

ConeFlank cone_of_axis_angle(WantedPoint wanted, Angle axis_angle) {
  const Fixed fixed = fixed_by(wanted);
  if (!(axis_angle > turns(0)) || !(axis_angle < turns(0.25)))
    throw std::domain_error{"a pivot axis stands above 0 and under 90 deg to the drill"};
  const Angle k = half(wanted.point);
  const double upright = cosine(k);
  const double level = sine(k) * cosine(flank_tilt({wanted.point.included, fixed.slope}));
  const double most = std::hypot(upright, level);
  if (!(cosine(axis_angle) < most)) throw std::domain_error{"a pivot axis too near the drill's for this relief"};
  return cone_of_half_angle(wanted, radians(std::atan2(level, upright) - std::acos(cosine(axis_angle) / most)));
}

ConeFlank cone_of_heel_drop(WantedPoint wanted, HeelDrop heel) {
  const Fixed fixed = fixed_by(wanted);
  require_land(heel.land);
  if (!(heel.ratio > 0)) throw std::domain_error{"a heel has to drop"};
  const FlankPlace corner{wanted.point.diameter / 2.0, heel.land};
  const double wanted_drop = heel.ratio * in_mm(uniform_drop(corner, wanted.relief));
  // The heel drops the more the narrower the cone, until the cone does not reach it at all.
  const auto too_far = [&](double half_angle) {
    const auto drop = drop_at(cone_of(cone_from(wanted, fixed, radians(half_angle))), wanted.point, corner);
    return !drop || *drop > wanted_drop ? 1.0 : -1.0;
  };
  const double narrowest = in_radians(degrees(0.001));
  const double widest = std::min(in_radians(half(wanted.point)), fixed.widest) * (1 - 1e-9);
  if (!(narrowest < widest) || too_far(narrowest) < 0 || too_far(widest) > 0)
    throw std::domain_error{"no cone with this chisel edge drops its heel so"};
  std::uintmax_t steps = 200;
  const auto found =
      boost::math::tools::bisect(too_far, narrowest, widest, boost::math::tools::eps_tolerance<double>(52), steps);
  const ConeFlank flank = cone_of_half_angle(wanted, radians(found.second));
  if (!(std::abs(heel_drop_ratio(flank, heel.land) - heel.ratio) < 1e-6 * heel.ratio))
    throw std::domain_error{"no cone with this chisel edge drops its heel so"};
  return flank;
}

double heel_drop_ratio(ConeFlank flank, Angle land) {
  require_land(land);
  const Length drop = cone_drop(flank, land);
  return drop / (relief_of(flank) * in_radians(land) * (flank.point.diameter / 2.0));
}

Length chisel_corner(ConeFlank flank) { return mm(inner_end(flank)); }

Angle chisel_edge_of_cone(ConeFlank flank) {
  return turns(0.25) + radians(std::atan(inner_end(flank) / half_web(flank.point)));
}

Angle chisel_edge_at_axis(ConeFlank flank) {
  const FlankGradient slope = gradient(checked(flank).cone, 0, 0);
  return turns(0.5) - radians(std::atan2(-slope.along, slope.across));
}

Length tip_height(ConeFlank flank) { return mm(reached(height(checked(flank).cone, 0, 0))); }

Length point_length(ConeFlank flank) {
  return cotangent(half(flank.point)) * corner_reach(flank.point) + tip_height(flank);
}

Length point_overhang(ConeFlank flank) { return tip_height(flank) - cone_setup(flank).foot_height; }

Length cone_drop(ConeFlank flank, Angle turn) { return cone_drop(flank, {flank.point.diameter / 2.0, turn}); }

Length cone_drop(ConeFlank flank, FlankPlace place) {
  const Cone cone = checked(flank).cone;
  require_turn(place.turn);
  return mm(reached(drop_at(cone, flank.point, place)));
}

std::optional<Angle> heel_clear_angle(ConeFlank flank) {
  const Cone cone = checked(flank).cone;
  const auto drop = [&](double behind) {
    const FlankPlace margin{flank.point.diameter / 2.0, degrees(behind)};
    // Where the cone ends there is nothing left to rub.
    return drop_at(cone, flank.point, margin).value_or(std::numeric_limits<double>::infinity());
  };
  double clear = 1e-3; // deg: at the lip itself nothing has dropped yet
  for (int i = 1; i < 180; ++i) {
    const double next = i;
    const double there = drop(next);
    if (std::isinf(there)) return std::nullopt;
    if (there < 0) {
      std::uintmax_t steps = 200;
      const auto found =
          boost::math::tools::toms748_solve(drop, clear, next, boost::math::tools::eps_tolerance<double>(52), steps);
      return degrees((found.first + found.second) / 2);
    }
    clear = next;
  }
  return std::nullopt;
}

FeedPerRev greatest_feed(ConeFlank flank, Angle land) {
  const Cone cone = checked(flank).cone;
  const Length radius = flank.point.diameter / 2.0;
  return detail::least_drop_per_turn(land, relief_of(flank) * radius / radians(1), [&](Angle behind) {
    return mm(reached(drop_at(cone, flank.point, {radius, behind})));
  });
}

Swing swing_of(ConeFlank flank, Angle land) {
  const auto [cone, inner] = checked(flank);
  require_land(land);
  const double w = half_web(flank.point);
  const double r = corner_radius(flank.point);
  const double outer = in_mm(corner_reach(flank.point));
  const double cot = cotangent(half(flank.point));
  const Angle heel = lip_offset(flank.point, flank.point.diameter / 2.0) - land;
  const double x = r * cosine(heel);
  const double y = r * sine(heel);
  const double to_heel = turned_to(cone, {x, y, reached(height(cone, x, y))});
  const double to_chisel = turned_to(cone, {-inner, -w, -inner * cot});
  const auto to_other_lip = reached_at(cone, {-outer, -w, -outer * cot});
  return {.needed = radians(std::max(to_heel, to_chisel)),
          .limit = to_other_lip ? std::optional{radians(*to_other_lip)} : std::nullopt};
}

Angle relief_of_cone_drop(const ConeDropReading& reading) {
  if (!(reading.drop > mm(0))) throw std::domain_error{"a flank that does not fall away"};
  const auto too_deep = [&](double relief) {
    const ConeFlank flank =
        cone_of_half_angle({reading.point, turns(relief), reading.chisel_edge}, reading.cone_half_angle);
    return in_mm(cone_drop(flank, reading.place) - reading.drop);
  };
  // Just inside what a straight lip and this chisel edge allow.
  constexpr Angle inside = degrees(0.05);
  const double least = in_turns(least_relief_of_straight_lip(reading.point) + inside);
  const double most = in_turns(most_relief_of_chisel(reading.point, reading.chisel_edge) - inside);
  if (!(least < most) || !(too_deep(least) < 0) || !(too_deep(most) > 0))
    throw std::domain_error{"no such cone shows that drop"};
  std::uintmax_t steps = 100;
  const auto root =
      boost::math::tools::toms748_solve(too_deep, least, most, boost::math::tools::eps_tolerance<double>(48), steps);
  return turns((root.first + root.second) / 2);
}

} // namespace quillside
