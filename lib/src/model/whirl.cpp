#include <quillside/model/whirl.hpp>

#include <array>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <stdexcept>

#include <boost/math/tools/roots.hpp>

#include <quillside/quantity/angle.hpp>

namespace quillside {

namespace {

constexpr double least_overhang = 0.5; // in diameters
constexpr double most_overhang = 200;

bool above_nothing(double number) { return number > 0 && std::isfinite(number); }
bool nothing_or_more(double number) { return number >= 0 && std::isfinite(number); }

void require_shank(BurrShank shank) {
  if (!above_nothing(in_mm(shank.diameter))) throw std::domain_error{"whirl of a shank with no diameter"};
  if (!(shank.overhang >= least_overhang * shank.diameter) || !(shank.overhang <= most_overhang * shank.diameter))
    throw std::domain_error{"a shank stands out by half to 200 of its diameters"};
  if (!above_nothing(in_megapascals(shank.modulus)) || !above_nothing(in_kg_per_m3(shank.density)))
    throw std::domain_error{"a shank has a modulus of elasticity and a density above 0"};
}

void require_body(HeadBody head) {
  if (!nothing_or_more(in_grams(head.mass)) || !nothing_or_more(in_mm(head.centre)) ||
      !nothing_or_more(in_gram_mm2(head.across)) || !nothing_or_more(in_gram_mm2(head.along)))
    throw std::domain_error{"mass, centre and moments of a head are 0 or more"};
}

void require_speed(SpindleSpeed speed) {
  if (!nothing_or_more(in_rev_per_min(speed))) throw std::domain_error{"a spindle speed is 0 or more"};
}

/// Integrals over an outline r(s) of unit length and unit largest radius.
struct Outline {
  double volume;  // of r^2
  double centre;  // of s r^2, over volume
  double radial;  // of r^4, over volume
  double slender; // of (s - centre)^2 r^2, over volume
};

Outline outline_of(HeadShape shape) {
  switch (shape) {
  case HeadShape::cylinder: return {1, 1.0 / 2, 1, 1.0 / 12};
  case HeadShape::ball:
  case HeadShape::oval: return {2.0 / 3, 1.0 / 2, 4.0 / 5, 1.0 / 20};
  case HeadShape::cone: return {1.0 / 3, 1.0 / 4, 3.0 / 5, 3.0 / 80};
  case HeadShape::tree: return {8.0 / 15, 5.0 / 16, 16.0 / 21, 81.0 / 1792};
  case HeadShape::flame: return {8.0 / 15, 1.0 / 2, 16.0 / 21, 1.0 / 28};
  case HeadShape::inverted_cone: return {7.0 / 12, 17.0 / 28, 93.0 / 140, 291.0 / 3920};
  }
  throw std::domain_error{"no such shape of head"};
}

/// E I of the shank [N mm2].
auto bending_stiffness(BurrShank shank) {
  const auto square = shank.diameter * shank.diameter;
  return shank.modulus * (square * square) * (std::numbers::pi / 64);
}

Mass mass_of(BurrShank shank) {
  return shank.density * (shank.diameter * shank.diameter * shank.overhang) * (std::numbers::pi / 4);
}

SpindleSpeed turning_at(double rad_per_second) { return radians(rad_per_second) / seconds(1); }

/// sqrt(E I / (m L^3)) in rad/s: what every frequency of the shank is a multiple of.
double natural_rate(BurrShank shank) {
  const auto cube = shank.overhang * shank.overhang * shank.overhang;
  constexpr auto one = rad_per_s(1) * rad_per_s(1);
  return std::sqrt(bending_stiffness(shank) / (mass_of(shank) * cube) / one);
}

/// Head and seat against the shank: masses over its mass, lengths over its length, gives over its own, L / E I.
struct Ratios {
  double mass;
  double centre;
  double inertia;
  double give;
};

Ratios ratios_of(BurrShank shank, HeadBody head, RotationalStiffness grip) {
  const Mass mass = mass_of(shank);
  return {head.mass / mass, head.centre / shank.overhang, head.across / (mass * (shank.overhang * shank.overhang)),
          bending_stiffness(shank) / shank.overhang / (grip * radians(1))};
}

/// Deflection of the front end and its slopes, as shares of each other: w, w'/k, w''/k^2, w'''/k^3.
using Shape = std::array<double, 4>;

/// What is left over of shear and of moment where shank and head meet, when the shank bends in this shape at the rate
/// of wave number k: the head's inertia wants w''' = -k^4 mass (w + centre w') and w'' = k^4 (centre mass (w + centre
/// w') + inertia w').
struct Misfit {
  double shear;
  double moment;
};
Misfit misfit(const Shape& shape, Ratios ratios, double k) {
  const double of_centre = ratios.mass * (shape[0] + ratios.centre * k * shape[1]);
  return {shape[3] + k * of_centre, shape[2] - k * k * (ratios.centre * of_centre + ratios.inertia * k * shape[1])};
}

/// Zero where some shape that fits the seat also fits the head.
double characteristic(Ratios ratios, double k) {
  const double sine = std::sin(k);
  const double cosine = std::cos(k);
  const double sinh = std::sinh(k);
  const double cosh = std::cosh(k);
  const double tilt = 2 * ratios.give * k;
  // Two shapes that stay on the axis at the seat and bend it as its give says: sin - sinh, cos - cosh - tilt sinh.
  const Shape held{sine - sinh, cosine - cosh, -sine - sinh, -cosine - cosh};
  const Shape tilted{cosine - cosh - tilt * sinh, -sine - sinh - tilt * cosh, -cosine - cosh - tilt * sinh,
                     sine - sinh - tilt * cosh};
  const Misfit a = misfit(held, ratios, k);
  const Misfit b = misfit(tilted, ratios, k);
  return a.shear * b.moment - b.shear * a.moment;
}

/// Dunkerley: one over the square of the lowest rate is at most the sum of those of every mass alone [wave number k, as
/// k^4 is the square of the rate].
double wave_number_below(Ratios r) {
  const double reach = 1 + r.centre;
  const double sum =
      1.0 / 12 + r.give / 3 + r.mass * (1.0 / 3 + r.centre * reach + r.give * reach * reach) + r.inertia * (1 + r.give);
  return std::pow(sum, -0.25);
}

/// Rayleigh: the shape that a force at the head's centre bends gives no lower a rate than the lowest.
double wave_number_above(Ratios r) {
  const double reach = 1 + r.centre;
  // w(s) = a s + b s^2 + c s^3 for a force of 1
  const double a = r.give * reach;
  const double b = reach / 2;
  const double c = -1.0 / 6;
  const double slope = a + 2 * b + 3 * c;
  const double at_centre = a + b + c + r.centre * slope;
  const double shank = a * a / 3 + b * b / 5 + c * c / 7 + a * b / 2 + 2 * a * c / 5 + b * c / 3;
  return std::pow(at_centre / (shank + r.mass * at_centre * at_centre + r.inertia * slope * slope), 0.25);
}

double lowest_wave_number(Ratios ratios) {
  // The two bounds meet where only one mass counts: a little room for their last digits.
  constexpr double room = 1e-6;
  const auto function = [&](double k) { return characteristic(ratios, k); };
  std::uintmax_t steps = 100;
  const auto [low, high] = boost::math::tools::toms748_solve(function, wave_number_below(ratios) * (1 - room),
                                                             wave_number_above(ratios) * (1 + room),
                                                             boost::math::tools::eps_tolerance<double>(44), steps);
  return (low + high) / 2;
}

/// Work of a body that moves, from N mm as a torque has them.
Energy as_work(Torque product) { return joules(in_newton_metres(product)); }

} // namespace

HeadBody head_body(BurrHead head) {
  if (!above_nothing(in_mm(head.diameter)) || !above_nothing(in_mm(head.length)))
    throw std::domain_error{"a head has a diameter and a length"};
  if (!above_nothing(in_kg_per_m3(head.density))) throw std::domain_error{"a density is above 0"};
  if (!(head.fill > 0) || !(head.fill <= 1)) throw std::domain_error{"a fill is above 0 and at most 1"};
  const Outline outline = outline_of(head.shape);
  const auto square = head.diameter * head.diameter;
  const Mass mass = head.fill * outline.volume * (std::numbers::pi / 4) * (head.density * (square * head.length));
  const auto radial = outline.radial / 4 * square; // square of the radius, so shared out
  return {mass, outline.centre * head.length, mass * (radial / 4.0 + outline.slender * (head.length * head.length)),
          mass * (radial / 2.0)};
}

Spread<RotationalStiffness> usual_grip(Length shank) {
  if (!above_nothing(in_mm(shank))) throw std::domain_error{"grip on a shank with no diameter"};
  const double scale = std::pow(shank / inches(1, 8), 3);
  const auto newton_metres_a_radian = [](double amount) { return newton_metres(amount) / radians(1); };
  return {newton_metres_a_radian(50 * scale), newton_metres_a_radian(100 * scale), rigid_grip};
}

SpindleSpeed whirl_speed(BurrShank shank, HeadBody head, RotationalStiffness grip) {
  require_shank(shank);
  require_body(head);
  if (!(grip.value() > 0)) throw std::domain_error{"a seat that does not hold"};
  const double k = lowest_wave_number(ratios_of(shank, head, grip));
  return turning_at(k * k * natural_rate(shank));
}

Spread<SpindleSpeed> whirl_speed(BurrShank shank, HeadBody head, Spread<RotationalStiffness> grip) {
  return {whirl_speed(shank, head, grip.low), whirl_speed(shank, head, grip.value),
          whirl_speed(shank, head, grip.high)};
}

SpindleSpeed one_mass_whirl_speed(BurrShank shank, HeadBody head) {
  require_shank(shank);
  require_body(head);
  const double reach = 1 + head.centre / shank.overhang;
  const double mass = head.mass / mass_of(shank) + 33.0 / 140;
  return turning_at(std::sqrt(3 / (reach * reach * reach * mass)) * natural_rate(shank));
}

SpindleSpeed hand_whirl_limit(Spread<SpindleSpeed> whirl) {
  require_speed(whirl.value);
  return whirl.value / 2.0;
}

double run_out_gain(SpindleSpeed speed, SpindleSpeed whirl) {
  require_speed(speed);
  if (!(speed < whirl)) throw std::domain_error{"a shaft at its whirl speed or beyond has no bounded run-out here"};
  const double share = speed / whirl;
  return 1 / (1 - share * share);
}

Energy spin_energy(HeadBody head, SpindleSpeed speed) {
  require_body(head);
  require_speed(speed);
  const auto rate = angular_velocity(speed);
  return as_work(head.along * (rate * rate) / 2.0);
}

Energy thrown_energy(HeadBody head, SpindleSpeed speed, Length radius) {
  require_body(head);
  require_speed(speed);
  if (!nothing_or_more(in_mm(radius))) throw std::domain_error{"a circle has a radius of 0 or more"};
  const auto rate = angular_velocity(speed);
  return as_work(head.mass * (radius * radius) * (rate * rate) / 2.0);
}

} // namespace quillside
