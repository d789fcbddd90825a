#pragma once
// A number with its unit in its type.
//
// The algebra of dimensions is Boost.Units'. The number itself is held by a class of our own, because
// boost::units::quantity has a copy constructor that somebody wrote: it then goes through memory in every call, which
// cost 15 to 20 % of a call against a bare double (tests/speed), and it takes a bare 0 for any quantity. This one is as
// large as a double, is handed over in a register as one, and takes no number without the name of its unit.

#include <boost/units/base_dimension.hpp>
#include <boost/units/base_unit.hpp>
#include <boost/units/make_system.hpp>
#include <boost/units/operators.hpp>
#include <boost/units/unit.hpp>

namespace quillside {

template <class Unit> class Quantity {
public:
  constexpr Quantity() = default;

  /// For the named functions of units.hpp, which know what the number counts.
  [[nodiscard]] static constexpr Quantity from_value(double number) {
    Quantity made;
    made.number_ = number;
    return made;
  }
  [[nodiscard]] constexpr double value() const { return number_; }

  friend constexpr Quantity operator+(Quantity a, Quantity b) { return from_value(a.number_ + b.number_); }
  friend constexpr Quantity operator-(Quantity a, Quantity b) { return from_value(a.number_ - b.number_); }
  friend constexpr Quantity operator-(Quantity a) { return from_value(-a.number_); }
  friend constexpr Quantity operator*(Quantity a, double ratio) { return from_value(a.number_ * ratio); }
  friend constexpr Quantity operator*(double ratio, Quantity a) { return from_value(ratio * a.number_); }
  friend constexpr Quantity operator/(Quantity a, double ratio) { return from_value(a.number_ / ratio); }

  friend constexpr bool operator==(Quantity a, Quantity b) = default;
  // Written out: the comparisons made of a defaulted <=> cost up to a fifth more in a single call (measured, g++ 12).
  friend constexpr bool operator<(Quantity a, Quantity b) { return a.number_ < b.number_; }
  friend constexpr bool operator>(Quantity a, Quantity b) { return a.number_ > b.number_; }
  friend constexpr bool operator<=(Quantity a, Quantity b) { return a.number_ <= b.number_; }
  friend constexpr bool operator>=(Quantity a, Quantity b) { return a.number_ >= b.number_; }

private:
  double number_ = 0;
};

/// A point on a scale that has a zero of its own: two points have a difference, and no sum.
template <class Unit> class ScalePoint {
public:
  constexpr ScalePoint() = default;
  [[nodiscard]] static constexpr ScalePoint from_value(double number) {
    ScalePoint made;
    made.number_ = number;
    return made;
  }
  [[nodiscard]] constexpr double value() const { return number_; }

  friend constexpr ScalePoint operator+(ScalePoint a, Quantity<Unit> b) { return from_value(a.number_ + b.value()); }
  friend constexpr ScalePoint operator-(ScalePoint a, Quantity<Unit> b) { return from_value(a.number_ - b.value()); }
  friend constexpr Quantity<Unit> operator-(ScalePoint a, ScalePoint b) {
    return Quantity<Unit>::from_value(a.number_ - b.number_);
  }
  friend constexpr bool operator==(ScalePoint a, ScalePoint b) = default;
  friend constexpr bool operator<(ScalePoint a, ScalePoint b) { return a.number_ < b.number_; }
  friend constexpr bool operator>(ScalePoint a, ScalePoint b) { return a.number_ > b.number_; }
  friend constexpr bool operator<=(ScalePoint a, ScalePoint b) { return a.number_ <= b.number_; }
  friend constexpr bool operator>=(ScalePoint a, ScalePoint b) { return a.number_ >= b.number_; }

private:
  double number_ = 0;
};

namespace detail {

template <class Unit, class Other> using per = typename boost::units::divide_typeof_helper<Unit, Other>::type;
template <class Unit, class Other> using times = typename boost::units::multiply_typeof_helper<Unit, Other>::type;

/// What a product or quotient is: a quantity, or a pure ratio where the units cancel.
template <class Unit> struct Result {
  static constexpr Quantity<Unit> of(double number) { return Quantity<Unit>::from_value(number); }
};
template <class System> struct Result<boost::units::unit<boost::units::dimensionless_type, System>> {
  static constexpr double of(double number) { return number; }
};

} // namespace detail

template <class Unit, class Other> constexpr auto operator*(Quantity<Unit> a, Quantity<Other> b) {
  return detail::Result<detail::times<Unit, Other>>::of(a.value() * b.value());
}
template <class Unit, class Other> constexpr auto operator/(Quantity<Unit> a, Quantity<Other> b) {
  return detail::Result<detail::per<Unit, Other>>::of(a.value() / b.value());
}

} // namespace quillside
