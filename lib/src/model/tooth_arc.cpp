#include <quillside/model/tooth_arc.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace quillside {

namespace {

constexpr double half_turn = std::numbers::pi;
constexpr double quarter_turn = half_turn / 2;

/// The integrals of f = slope sin.
detail::ArcIntegrals of_sine(double angle, double slope) {
  const double sine = std::sin(angle);
  const double cosine = std::cos(angle);
  const double half_sine = std::sin(angle / 2);
  const double square = (angle - sine * cosine) / 2; // integral of sin^2
  return {.along = slope * 2 * half_sine * half_sine,
          .sine = slope * square,
          .cosine = slope * sine * sine / 2,
          .sine_moment = slope * (angle * angle - 2 * angle * sine * cosine + sine * sine) / 4,
          .cosine_moment = slope * (angle * sine * sine - square) / 2};
}

double power_series(const std::array<double, 16>& coefficients, double square) {
  double sum = 0;
  for (auto it = coefficients.rbegin(); it != coefficients.rend(); ++it) sum = sum * square + *it;
  return sum;
}

} // namespace

namespace detail {

SinePower::SinePower(double exponent) : exponent_(exponent), integral_{}, moment_{} {
  // sin x / x = sum of s_k x^2k; its power by comparing coefficients of y' s = e s' y (Euler's recurrence).
  std::array<double, terms> s{1};
  std::array<double, terms> power{1};
  for (std::size_t n = 1; n < terms; ++n) {
    const auto count = static_cast<double>(n);
    s[n] = -s[n - 1] / (2 * count * (2 * count + 1));
    for (std::size_t k = 1; k <= n; ++k)
      power[n] += (static_cast<double>(k) * (exponent + 1) - count) * s[k] * power[n - k] / count;
  }
  for (std::size_t n = 0; n < terms; ++n) {
    const double degree = exponent + 2 * static_cast<double>(n);
    integral_[n] = power[n] / (degree + 1);
    moment_[n] = power[n] / (degree + 2);
  }
}

double SinePower::integral(double angle, double power) const { return power * power_series(integral_, angle * angle); }
double SinePower::moment(double angle, double power) const {
  return power * angle * power_series(moment_, angle * angle);
}

ToothArc::ToothArc(double exponent, double least)
    : tangential_(exponent), lateral_(exponent + 1), least_angle_(least < 1 ? std::asin(least) : quarter_turn),
      least_slope_(least > 0 ? std::pow(least, exponent - 1) : 1) {
  if (least > 0) shift_ = of_sine(least_angle_, least_slope_) - of_power(least_angle_);
  quarter_ = in_first_quarter(quarter_turn);
}

double ToothArc::force(double angle, double sine) const {
  if (sine <= 0) return 0;
  return std::min(angle, half_turn - angle) < least_angle_ ? least_slope_ * sine
                                                           : std::pow(sine, tangential_.exponent());
}

ArcIntegrals ToothArc::of_power(double angle) const {
  const double power = std::pow(angle, lateral_.exponent());
  const double cosine = std::pow(std::sin(angle), lateral_.exponent()) / lateral_.exponent();
  const double sine = lateral_.integral(angle, power * angle);
  return {.along = tangential_.integral(angle, power),
          .sine = sine,
          .cosine = cosine,
          .sine_moment = lateral_.moment(angle, power * angle),
          .cosine_moment = angle * cosine - sine / lateral_.exponent()};
}

ArcIntegrals ToothArc::in_first_quarter(double angle) const {
  return angle < least_angle_ ? of_sine(angle, least_slope_) : of_power(angle) + shift_;
}

ArcIntegrals ToothArc::up_to(double angle) const {
  if (angle <= quarter_turn) return in_first_quarter(angle);
  // The second quarter is the first in a mirror: sine and f alike, cosine with its sign turned.
  const ArcIntegrals left = in_first_quarter(std::max(0.0, half_turn - angle));
  const ArcIntegrals mirrored = quarter_ - left;
  return {.along = quarter_.along + mirrored.along,
          .sine = quarter_.sine + mirrored.sine,
          .cosine = left.cosine,
          .sine_moment = left.sine_moment + half_turn * mirrored.sine,
          .cosine_moment = quarter_.cosine_moment + mirrored.cosine_moment - half_turn * mirrored.cosine};
}

} // namespace detail

} // namespace quillside
