// Every conversion factor against GNU units, a program with definitions of its own (Debian package `units`): the tests
// fail where it is not installed, since a factor that nobody checked is no factor.

#include "catch.hpp"

#include <array>
#include <cstdio>
#include <stdexcept>
#include <string>

#include <quillside/quantity/factor.hpp>
#include <quillside/quantity/units.hpp>

using namespace quillside;
using quillside::test::WithinAbs;
using quillside::test::WithinRel;

namespace {

/// What GNU units answers: so many of \p to are one \p from. Seventeen digits, which is all that a double has.
double gnu_units(const std::string& from, const std::string& to) {
  const std::string command = "LC_ALL=C units --terse --output-format %.17g '" + from + "' '" + to + "' 2>&1";
  std::FILE* pipe = popen(command.c_str(), "r");
  if (pipe == nullptr) throw std::runtime_error{"no shell to run GNU units in"};
  std::string answer;
  std::array<char, 256> line{};
  while (std::fgets(line.data(), static_cast<int>(line.size()), pipe) != nullptr) answer += line.data();
  const int status = pclose(pipe);
  if (status != 0) throw std::runtime_error{"GNU units (Debian package: units) is needed; it said: " + answer};
  std::size_t read = 0;
  const double number = std::stod(answer, &read);
  if (answer.substr(read) != "\n") throw std::runtime_error{"GNU units gave no plain number: " + answer};
  return number;
}

} // namespace

TEST_CASE("each factor is that of GNU units") {
  struct Row {
    const char* name;
    Factor factor;
    const char* from;
    const char* to;
  };
  const auto row = GENERATE(
      Row{"inch", factor::inch_in_mm, "inch", "mm"}, Row{"thou", factor::thou_in_mm, "mil", "mm"},
      Row{"foot", factor::foot_in_mm, "foot", "mm"}, Row{"metre", factor::metre_in_mm, "meter", "mm"},
      Row{"micrometre", factor::micrometre_in_mm, "micrometer", "mm"},
      Row{"second", factor::second_in_min, "second", "minute"}, Row{"degree", factor::degree_in_turn, "degree", "turn"},
      Row{"degree Fahrenheit", factor::degree_fahrenheit_in_kelvin, "degF", "K"},
      Row{"newton metre", factor::newton_metre_in_newton_mm, "N m", "N mm"},
      Row{"watt", factor::watt_in_newton_mm_per_min, "W", "N mm/min"},
      Row{"kilowatt", factor::kilowatt_in_watt, "kW", "W"},
      Row{"horsepower", factor::horsepower_in_watt, "horsepower", "W"},
      Row{"pound-force", factor::pound_force_in_newton, "lbf", "N"});
  INFO(row.name);
  // Ours has two roundings of 1.1e-16. Theirs is a chain of products of its own, up to half a dozen roundings.
  constexpr double both_roundings = 1e-15;
  CHECK_THAT(row.factor.into(1), WithinRel(gnu_units(row.from, row.to), both_roundings));
  CHECK_THAT(row.factor.out_of(1), WithinRel(gnu_units(row.to, row.from), both_roundings));
}

TEST_CASE("each way in or out of a unit takes the factor of that unit") {
  struct Row {
    const char* name;
    double ours;
    const char* from;
    const char* to;
  };
  const auto row = GENERATE(
      Row{"inches", in_mm(inches(0.1285)), "0.1285 inch", "mm"}, Row{"thou", in_mm(thou(128.5)), "128.5 mil", "mm"},
      Row{"in inches", in_inches(mm(4.8)), "4.8 mm", "inch"}, Row{"in thou", in_thou(mm(4.8)), "4.8 mm", "mil"},
      Row{"a fraction", in_mm(inches(9, 64)), "9|64 inch", "mm"}, Row{"feet", in_mm(feet(3)), "3 foot", "mm"},
      Row{"metres", in_mm(metres(0.3)), "0.3 m", "mm"}, Row{"micrometres", in_mm(micrometres(12)), "12 um", "mm"},
      Row{"seconds", in_minutes(seconds(18.1)), "18.1 s", "min"},
      Row{"in seconds", in_seconds(minutes(0.302)), "0.302 min", "s"},
      Row{"degrees", in_turns(degrees(118)), "118 degree", "turn"},
      Row{"in degrees", in_degrees(turns(0.375)), "0.375 turn", "degree"},
      Row{"ft/min", in_m_per_min(ft_per_min(90)), "90 ft/min", "m/min"},
      Row{"in ft/min", in_ft_per_min(m_per_min(27)), "27 m/min", "ft/min"},
      Row{"in/rev", in_mm_per_rev(in_per_rev(0.002)), "0.002 inch", "mm"},
      Row{"in inches a turn", in_inches_per_rev(mm_per_rev(0.05)), "0.05 mm", "inch"},
      Row{"in/tooth", in_mm_per_tooth(in_per_tooth(0.0005)), "0.0005 inch", "mm"},
      Row{"in inches a tooth", in_inches_per_tooth(mm_per_tooth(0.013)), "0.013 mm", "inch"},
      Row{"in/min", in_mm_per_min(in_per_min(4.4)), "4.4 inch/min", "mm/min"},
      Row{"in inches a minute", in_inches_per_min(mm_per_min(112)), "112 mm/min", "inch/min"},
      Row{"rad/s", rad_per_s(314).value(), "314 radian/s", "radian/min"},
      Row{"in rad/s", in_rad_per_s(rad_per_s(314)), "314 radian/s", "radian/s"},
      Row{"pounds-force", in_newtons(pounds_force(12)), "12 lbf", "N"},
      Row{"in pounds-force", in_pounds_force(newtons(53)), "53 N", "lbf"},
      Row{"newton metres", newton_metres(1.8).value(), "1.8 N m", "N mm"},
      Row{"in newton metres", in_newton_metres(newton_metres(1.8)), "1.8 N m", "N m"},
      Row{"watts", watts(350).value(), "350 W", "N mm/min"},
      Row{"horsepower", in_watts(horsepower(0.5)), "0.5 horsepower", "W"},
      Row{"megapascals", in_megapascals(megapascals(210)), "210 MPa", "N/mm^2"});
  INFO(row.name);
  // Twice the roundings of a factor alone, since some go in by one and out by another.
  CHECK_THAT(row.ours, WithinRel(gnu_units(row.from, row.to), 2e-15));
}

TEST_CASE("points of the temperature scales are those of GNU units") {
  const double amount = GENERATE(-459.0, -40.0, 0.0, 32.0, 68.0, 212.0, 300.0, 1000.0);
  const std::string text = std::to_string(amount);
  // 273.15 is added and taken away on either side: a place of 1000 is 1.1e-13, and each side has two or three.
  constexpr double places = 5e-13;
  CHECK_THAT(in_celsius(fahrenheit(amount)), WithinAbs(gnu_units("tempF(" + text + ")", "tempC"), places));
  CHECK_THAT(fahrenheit(amount).value(), WithinAbs(gnu_units("tempF(" + text + ")", "K"), places));
  if (amount < -273) return; // below absolute zero in Celsius
  CHECK_THAT(in_fahrenheit(celsius(amount)), WithinAbs(gnu_units("tempC(" + text + ")", "tempF"), places));
  CHECK_THAT(celsius(amount).value(), WithinAbs(gnu_units("tempC(" + text + ")", "K"), places));
}

TEST_CASE("a difference of temperature has no zero to shift") {
  CHECK_THAT(in_kelvins(fahrenheit(68) - fahrenheit(59)),
             WithinAbs(gnu_units("9 degF", "K"), 1.2e-13)); // places of 293
}

TEST_CASE("the ratios are those of the definitions, whole number by whole number") {
  // Pound-force: 0.45359237 kg x 9.80665 m/s^2 = 45359237 x 980665 / (10^8 x 10^5). Horsepower: 550 ft lbf/s
  // = 550 x 0.3048 x that. Each fraction is the same fraction when crosswise products agree; all fit in 63 bits.
  constexpr long long pound_gravity = 45359237LL * 980665LL; // over 10^13
  STATIC_REQUIRE(factor::pound_force_in_newton.numerator == pound_gravity);
  STATIC_REQUIRE(factor::pound_force_in_newton.denominator == 10000000000000LL);
  constexpr long long horsepower_by_ten_to_16 = 55LL * 3048LL * pound_gravity; // 550 x 3048 / 10^4 = 55 x 3048 / 10^3
  STATIC_REQUIRE(factor::horsepower_in_watt.numerator * 200 == horsepower_by_ten_to_16);
  STATIC_REQUIRE(factor::horsepower_in_watt.denominator * 200 == 10000000000000000LL);
  STATIC_REQUIRE(factor::foot_in_mm.numerator * factor::inch_in_mm.denominator ==
                 12 * factor::inch_in_mm.numerator * factor::foot_in_mm.denominator);
  STATIC_REQUIRE(1000 * factor::thou_in_mm.numerator * factor::inch_in_mm.denominator ==
                 factor::inch_in_mm.numerator * factor::thou_in_mm.denominator);
}

TEST_CASE("every factor names its source") {
  for (const auto& one :
       {factor::inch_in_mm, factor::thou_in_mm, factor::foot_in_mm, factor::metre_in_mm, factor::micrometre_in_mm,
        factor::second_in_min, factor::degree_in_turn, factor::degree_fahrenheit_in_kelvin,
        factor::newton_metre_in_newton_mm, factor::watt_in_newton_mm_per_min, factor::kilowatt_in_watt,
        factor::horsepower_in_watt, factor::pound_force_in_newton})
    CHECK_FALSE(std::string(one.source).empty());
}
