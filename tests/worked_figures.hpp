#pragma once
// What the tests of worked figures share: how far a printed figure may be off, a drill's point from bare numbers, and a
// number that is none.

#include <cmath>
#include <limits>
#include <numbers>

#include <quillside/model/lip.hpp>

#include "catch.hpp"

namespace quillside::test {

inline constexpr double to_radians = std::numbers::pi / 180;
inline constexpr double no_number = std::numeric_limits<double>::quiet_NaN();

/// Six figures are printed: half of the last one, and a rounding on top.
inline double six_figures(double printed) {
  return 0.5 * std::pow(10.0, std::floor(std::log10(std::abs(printed))) - 5) * 1.01;
}

/// To its last printed figure.
inline void prints(double found, double printed) { CHECK_THAT(found, WithinAbs(printed, six_figures(printed))); }

/// In mm and deg.
inline PointShape shape(double diameter, double web, double point) { return {mm(diameter), mm(web), degrees(point)}; }

} // namespace quillside::test
