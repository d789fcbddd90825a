#pragma once
// The conversion factors of the project, each an exact ratio of whole numbers with its source.
// Nothing above this floor knows one: words name a unit, and a function of units.hpp carries the number over.

namespace quillside {

/// One unit as an exact multiple of another: numerator / denominator.
struct Factor {
  long long numerator;
  long long denominator;
  const char* source;

  /// \p amount of the unit, in the other; one multiplication and one division, so at most two roundings.
  [[nodiscard]] constexpr double into(double amount) const {
    return amount * static_cast<double>(numerator) / static_cast<double>(denominator);
  }
  /// The way back.
  [[nodiscard]] constexpr double out_of(double amount) const {
    return amount * static_cast<double>(denominator) / static_cast<double>(numerator);
  }
};

namespace factor {

// Every ratio here is held against the definitions of GNU units when the tests run (tests/published/factors.cpp).
inline constexpr Factor inch_in_mm{
    254, 10, "international inch of 1959: 25.4 mm exactly (NIST SP 811, appendix B; from memory)"};
inline constexpr Factor thou_in_mm{254, 10000, "a thousandth of the international inch"};
inline constexpr Factor foot_in_mm{3048, 10, "twelve international inches"};
inline constexpr Factor metre_in_mm{1000, 1, "SI prefix (SI brochure, 9th edition, 2019; from memory)"};
inline constexpr Factor micrometre_in_mm{1, 1000, "SI prefix (SI brochure, 9th edition, 2019; from memory)"};
inline constexpr Factor second_in_min{1, 60, "minute: 60 s (SI brochure, 9th edition, 2019, table 8; from memory)"};
inline constexpr Factor degree_in_turn{1, 360, "degree: 1/360 of a turn (ISO 80000-3:2019; from memory)"};
inline constexpr Factor degree_fahrenheit_in_kelvin{
    5, 9, "Fahrenheit interval: 5/9 K (NIST SP 811, appendix B; from memory)"};
inline constexpr Factor newton_metre_in_newton_mm{1000, 1, "SI prefix"};
inline constexpr Factor watt_in_newton_mm_per_min{60000, 1, "1 W = 1 N m/s; 1000 mm in a metre, 60 s in a minute"};
inline constexpr Factor kilowatt_in_watt{1000, 1, "SI prefix"};
/// 550 ft lbf/s with the foot of 0.3048 m and the pound-force of 0.45359237 kg x 9.80665 m/s^2, as one ratio of whole
/// numbers.
inline constexpr Factor horsepower_in_watt{
    37284993579113511, 50000000000000,
    "mechanical horsepower: 550 ft lbf/s exactly (NIST SP 811, appendix B; from memory)"};
/// 0.45359237 kg x 9.80665 m/s^2.
inline constexpr Factor pound_force_in_newton{
    44482216152605, 10000000000000, "avoirdupois pound and standard gravity (NIST SP 811, appendix B; from memory)"};

/// The zero of the Celsius scale, in kelvin (SI brochure, 9th edition, 2019: t/degC = T/K - 273.15; from memory).
inline constexpr double celsius_zero_in_kelvin = 273.15;
/// The same point on the Fahrenheit scale: 0 degC = 32 degF (NIST SP 811, appendix B; from memory).
inline constexpr double celsius_zero_in_fahrenheit = 32.0;

} // namespace factor
} // namespace quillside
