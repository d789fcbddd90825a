#pragma once
// Integrals along the arc that one tooth cuts: of its force, of the force's two parts, and of their moments.
// Assumes: each tooth moves in a circle, h = fz sin(phi).

#include <array>
#include <cstddef>

namespace quillside::detail {

/// Integrals along the arc of the force f of one tooth over its force at the full feed; f is sin^p of the angle, and
/// straight below the least chip.
struct ArcIntegrals {
  double along = 0;         // of f
  double sine = 0;          // of f sin
  double cosine = 0;        // of f cos
  double sine_moment = 0;   // of angle f sin
  double cosine_moment = 0; // of angle f cos
};
inline ArcIntegrals operator+(const ArcIntegrals& a, const ArcIntegrals& b) {
  return {a.along + b.along, a.sine + b.sine, a.cosine + b.cosine, a.sine_moment + b.sine_moment,
          a.cosine_moment + b.cosine_moment};
}

inline ArcIntegrals operator-(const ArcIntegrals& a, const ArcIntegrals& b) {
  return {a.along - b.along, a.sine - b.sine, a.cosine - b.cosine, a.sine_moment - b.sine_moment,
          a.cosine_moment - b.cosine_moment};
}

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

/// What one tooth does, as its angle grows from 0.
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

} // namespace quillside::detail
