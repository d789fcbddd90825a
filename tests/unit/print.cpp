// Quantities to words. What is expected follows from the rule of rounding stated in words/print.hpp, applied by hand;
// no value stands so near to half of its last digit that binary could decide it.

#include "catch.hpp"

#include <charconv>
#include <cmath>
#include <random>
#include <string>

#include <quillside/words/print.hpp>

using namespace quillside;

namespace {
constexpr auto inch = UnitSystem::inch;
constexpr auto metric = UnitSystem::metric;
} // namespace

TEST_CASE("the shortest decimal is written without an exponent at the sizes of a workshop") {
  struct Row {
    double number;
    std::string text;
  };
  const auto row =
      GENERATE(Row{0, "0"}, Row{-0.0, "0"}, Row{1, "1"}, Row{0.1, "0.1"}, Row{4.8, "4.8"}, Row{4.7625, "4.7625"},
               Row{-0.25, "-0.25"}, Row{25000, "25000"}, Row{1e-7, "0.0000001"}, Row{1e14, "100000000000000"},
               Row{123456789012345, "123456789012345"}, Row{1.0 / 3, "0.3333333333333333"});
  CHECK(shortest_decimal(row.number) == row.text);
}

TEST_CASE("the shortest decimal reads back as the same number, and no digit of it is idle") {
  std::mt19937_64 random{20240501}; // any seed will do; this one makes a failure repeat
  std::uniform_real_distribution<double> exponent{-6.9, 14.9};
  std::uniform_real_distribution<double> sign{-1, 1};
  for (int i = 0; i < 1000; ++i) {
    const double number = std::copysign(std::pow(10.0, exponent(random)), sign(random));
    const std::string text = shortest_decimal(number);
    INFO(text);
    const auto read_back = [](const std::string& decimal) {
      double value = 0;
      const auto end = std::from_chars(decimal.data(), decimal.data() + decimal.size(), value).ptr;
      return end == decimal.data() + decimal.size() ? value : std::nan("");
    };
    CHECK(read_back(text) == number);
    CHECK(text.find('e') == std::string::npos);
    if (text.find('.') != std::string::npos) CHECK(read_back(text.substr(0, text.size() - 1)) != number);
  }
}

TEST_CASE("a fixed decimal has the digits it was asked for and no minus before nothing") {
  CHECK(fixed_decimal(0.1285, 4) == "0.1285");
  CHECK(fixed_decimal(0.12854, 4) == "0.1285");
  CHECK(fixed_decimal(0.12856, 4) == "0.1286");
  CHECK(fixed_decimal(2, 3) == "2.000");
  CHECK(fixed_decimal(2.7, 0) == "3");
  CHECK(fixed_decimal(-2.71, 1) == "-2.7");
  CHECK(fixed_decimal(-0.00001, 4) == "0.0000");
  CHECK(fixed_decimal(-0.0, 0) == "0");
}

TEST_CASE("significant figures are counted from the first that is not nothing") {
  struct Row {
    double number;
    int figures;
    std::string text;
  };
  const auto row =
      GENERATE(Row{2528, 3, "2530"}, Row{0.00204, 2, "0.0020"}, // the two the header gives
               Row{999.6, 3, "1000"},                           // rounds into a fourth digit
               Row{99.96, 3, "100"}, Row{9.996, 3, "10.0"}, Row{0.00996, 2, "0.010"}, Row{0.000999, 2, "0.0010"},
               Row{1000, 3, "1000"}, Row{0.001, 2, "0.0010"}, Row{1, 3, "1.00"}, Row{12.34, 3, "12.3"},
               Row{12.36, 3, "12.4"}, Row{123456, 3, "123000"}, Row{620, 3, "620"}, Row{-2528, 3, "-2530"},
               Row{0, 3, "0"}, Row{7, 1, "7"}, Row{0.0001, 2, "0.00010"});
  INFO(row.number << " to " << row.figures);
  CHECK(significant(row.number, row.figures) == row.text);
}

TEST_CASE("powers of ten keep their figures, where a logarithm may fall on either side") {
  std::string whole = "1";
  for (double power = 1; power < 1e9; power *= 10) {
    const std::string expected = power < 100 ? (power < 10 ? "1.00" : "10.0") : whole;
    CHECK(significant(power, 3) == expected);
    whole += "0";
  }
  // 0.10, 0.010, 0.0010 ...: as many noughts before the 1 as the power says, and one behind.
  std::string noughts;
  for (const double power : {1e-1, 1e-2, 1e-3, 1e-4, 1e-5, 1e-6}) {
    CHECK(significant(power, 2) == "0." + noughts + "10");
    noughts += "0";
  }
}

TEST_CASE("an inch length has four decimals and a metric one three") {
  CHECK(print_length(inches(0.1285), inch) == "0.1285");
  CHECK(print_length(inches(0.1285), metric) == "3.264 mm"); // 0.1285 x 25.4 = 3.2639
  CHECK(print_length(mm(4.8), metric) == "4.800 mm");
  CHECK(print_length(mm(4.8), inch) == "0.1890"); // 4.8 / 25.4 = 0.188976
  CHECK(print_length(inches(0.0), inch) == "0.0000");
  CHECK(print_length(inches(-0.00001), inch) == "0.0000");
  CHECK(print_length(inches(-0.082), inch) == "-0.0820");
  CHECK(print_length_with_unit(inches(0.1285), inch) == "0.1285 in");
  CHECK(print_length_with_unit(inches(0.1285), metric) == "3.264 mm");
}

TEST_CASE("thousandths have one decimal") {
  CHECK(print_thou(inches(0.1285)) == "128.5 thou");
  CHECK(print_thou(thou(1)) == "1.0 thou");
  CHECK(print_thou(mm(1)) == "39.4 thou"); // 1 / 0.0254 = 39.370
}

TEST_CASE("a whole number of 64ths of an inch has its fraction in lowest terms") {
  struct Row {
    int sixty_fourths;
    std::string text;
  };
  const auto row = GENERATE(Row{1, "1/64"}, Row{2, "1/32"}, Row{4, "1/16"}, Row{9, "9/64"}, Row{12, "3/16"},
                            Row{32, "1/2"}, Row{48, "3/4"}, Row{63, "63/64"}, Row{64, "1"}, Row{65, "1-1/64"},
                            Row{72, "1-1/8"}, Row{128, "2"}, Row{160, "2-1/2"});
  CHECK(print_fraction(inches(row.sixty_fourths, 64)) == row.text);
}

TEST_CASE("a fraction is there to a millionth of an inch and no further") {
  CHECK(print_fraction(inches(0.140625 + 0.9e-6)) == "9/64");
  CHECK(print_fraction(inches(0.140625 - 0.9e-6)) == "9/64");
  CHECK(print_fraction(inches(0.140625 + 1.1e-6)) == std::nullopt);
  CHECK(print_fraction(inches(0.140625 - 1.1e-6)) == std::nullopt);
  CHECK(print_fraction(mm(4.7625)) == "3/16"); // 3/16 x 25.4
  CHECK(print_fraction(inches(0.1285)) == std::nullopt);
  CHECK(print_fraction(mm(4.8)) == std::nullopt);
  CHECK(print_fraction(mm(0)) == std::nullopt);
  CHECK(print_fraction(inches(-1, 4)) == std::nullopt);
}

TEST_CASE("every printed fraction reads back as the same length") {
  for (int sixty_fourths = 1; sixty_fourths <= 200; ++sixty_fourths) {
    const Length length = inches(sixty_fourths, 64);
    const auto text = print_fraction(length);
    REQUIRE(text.has_value());
    INFO(*text);
    // A whole number of inches has no stroke, and so takes the unit of its system: inch here. Read and made by the same
    // multiplication but for the order of a division, so to a rounding.
    const double apart = in_inches(read_length(*text, inch) - length);
    CHECK(std::abs(apart) < 1e-15 * sixty_fourths);
  }
}

TEST_CASE("an angle has a tenth of a degree, and none when it is whole") {
  CHECK(print_angle(degrees(118)) == "118");
  CHECK(print_angle(degrees(118.04)) == "118");
  CHECK(print_angle(degrees(118.06)) == "118.1");
  CHECK(print_angle(degrees(59.96)) == "60");
  CHECK(print_angle(degrees(0)) == "0");
  CHECK(print_angle(degrees(-0.04)) == "0");
  CHECK(print_angle(degrees(10.5)) == "10.5");
}

TEST_CASE("speeds and feed rates have three figures") {
  CHECK(print_spindle_speed(rev_per_min(2528.4)) == "2530");
  CHECK(print_spindle_speed(rev_per_min(2528)) == "2528");           // a whole number may be a step or a mark: as it is
  CHECK(print_spindle_speed_limit(rev_per_min(24999.9)) == "24999"); // never rounded up
  CHECK(print_spindle_speed(rev_per_min(18334.6)) == "18300");
  CHECK(print_spindle_speed(rev_per_min(229.18)) == "229");
  CHECK(print_spindle_speed(rev_per_min(61.12)) == "61.1");
  CHECK(print_cutting_speed(ft_per_min(92.36), inch) == "92.4 ft/min");
  CHECK(print_cutting_speed(ft_per_min(90), metric) == "27.4 m/min"); // 90 x 0.3048 = 27.432
  CHECK(print_cutting_speed(m_per_min(100), inch) == "328 ft/min");   // 100 / 0.3048 = 328.08
  CHECK(print_feed_rate(mm_per_min(112), metric) == "112 mm/min");
  CHECK(print_feed_rate(mm_per_min(112), inch) == "4.41 in/min"); // 112 / 25.4 = 4.4094
  CHECK(print_feed_rate(in_per_min(11.264), inch) == "11.3 in/min");
}

TEST_CASE("feeds have two figures") {
  CHECK(print_feed_per_rev(in_per_rev(0.00204), inch) == "0.0020");
  CHECK(print_feed_per_rev(in_per_rev(0.002), metric) == "0.051 mm"); // 0.002 x 25.4 = 0.0508
  CHECK(print_feed_per_rev(in_per_rev(0.0123), inch) == "0.012");
  CHECK(print_feed_per_tooth(in_per_tooth(0.00052), inch) == "0.00052");
  CHECK(print_feed_per_tooth(in_per_tooth(0.0005), metric) == "0.013 mm"); // 0.0005 x 25.4 = 0.0127
  CHECK(print_feed_per_tooth(mm_per_tooth(0.05), metric) == "0.050 mm");
}

TEST_CASE("a time is in seconds under a minute and a half, then in minutes") {
  CHECK(print_time(seconds(4)) == "4.0 s");
  CHECK(print_time(seconds(138)) == "2.3 min"); // 138 / 60
  // Which unit follows from the time itself, so only the unit is looked at where it changes.
  const auto unit_of = [](const std::string& text) { return text.substr(text.find(' ') + 1); };
  CHECK(unit_of(print_time(seconds(89))) == "s");
  CHECK(unit_of(print_time(seconds(91))) == "min");
}
