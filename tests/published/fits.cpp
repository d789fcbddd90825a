// Limits of size against the pages they were read from, against the formulas behind the standard, and against each
// other.

#include <cmath>
#include <map>
#include <string>
#include <vector>

#include <quillside/data/choose_fit.hpp>

#include "catch.hpp"

using namespace quillside;
using quillside::test::WithinAbs;

namespace {

double in_um(Length length) { return 1000 * in_mm(length); }

// Limits add and subtract in double: a ten-thousandth of a micrometre is far below any that is printed.
constexpr double exact_um = 1e-4;
constexpr double exact_thou = 1e-6;

} // namespace

TEST_CASE("fits of ISO 286 as printed") {
  struct Page {
    const char* source;
    const char* name;
    Length size;
    double low; // interference, um
    double high;
  };
  const auto page = GENERATE(
      // A public page of engineering rules of thumb, limits and fits, 50 mm: clearance 9 to 50, interference 1 to 42.
      Page{"rules of thumb, limits and fits", "H7/g6", mm(50), -50, -9},
      Page{"rules of thumb, limits and fits", "H7/p6", mm(50), 1, 42},
      // ANSI B4.2-1978 notes that H7/p6 is a transition fit from 0 through 3 mm, and one of interference over it.
      Page{"ANSI B4.2, note a: transition through 3 mm", "H7/p6", mm(3), -4, 12},
      Page{"ANSI B4.2, note a: interference over 3 mm", "H7/p6", mm(3.0001), 0, 20},
      // JIS B 0401 (1999) and the DIN extract, both limits of each.
      Page{"JIS B 0401, DIN ISO 286", "H7/h6", mm(2.997), -16, 0}, Page{"the same", "H7/g6", mm(2.997), -18, -2},
      Page{"the same", "H8/f7", mm(16), -61, -16}, Page{"the same", "H7/k6", mm(16), -17, 12},
      Page{"the same", "H7/n6", mm(8), -5, 19}, Page{"the same", "H7/s6", mm(25), 14, 48},
      Page{"the same", "H7/js6", mm(8), -19.5, 4.5}, Page{"the same", "H7/m6", mm(4), -8, 12},
      Page{"the same", "H7/r6", mm(12), 5, 34});
  INFO(page.source << ": " << in_mm(page.size) << " " << page.name);
  const FitLimits limits = fit_limits(builtin_tables(), page.name, page.size);
  CHECK_THAT(in_um(limits.interference.low), WithinAbs(page.low, exact_um));
  CHECK_THAT(in_um(limits.interference.high), WithinAbs(page.high, exact_um));
}

TEST_CASE("each row of ANSI B4.1 gives the interference that its page prints beside it") {
  struct Printed {
    const char* size_to; // in, the high end of the row
    double low;          // thousandths of an inch, clearance below zero
    double high;
  };
  const std::map<std::string, std::vector<Printed>> pages{
      // Machinery's Handbook, 31st edition, table 8a, class RC 2: clearance.
      {"RC2",
       {{"0.12", -0.55, -0.1},
        {"0.24", -0.65, -0.15},
        {"0.40", -0.85, -0.2},
        {"0.71", -0.95, -0.25},
        {"1.19", -1.2, -0.3},
        {"1.97", -1.4, -0.4}}},
      // 31st edition, page 660, table 12.
      {"LN1",
       {{"0.12", 0, 0.45}, {"0.24", 0, 0.5}, {"0.40", 0, 0.65}, {"0.71", 0, 0.8}, {"1.19", 0, 1.0}, {"1.97", 0, 1.1}}},
      {"LN2",
       {{"0.12", 0, 0.65}, {"0.24", 0, 0.8}, {"0.40", 0, 1.0}, {"0.71", 0, 1.1}, {"1.19", 0, 1.3}, {"1.97", 0, 1.6}}},
      {"LN3",
       {{"0.12", 0.1, 0.75},
        {"0.24", 0.1, 0.9},
        {"0.40", 0.2, 1.2},
        {"0.71", 0.3, 1.4},
        {"1.19", 0.4, 1.7},
        {"1.97", 0.4, 2.0}}},
      // 27th edition, page 663, table 11.
      {"FN1",
       {{"0.12", 0.05, 0.5},
        {"0.24", 0.1, 0.6},
        {"0.40", 0.1, 0.75},
        {"0.56", 0.1, 0.8},
        {"0.71", 0.2, 0.9},
        {"0.95", 0.2, 1.1},
        {"1.19", 0.3, 1.2},
        {"1.58", 0.3, 1.3},
        {"1.97", 0.4, 1.4}}},
      {"FN2",
       {{"0.12", 0.2, 0.85},
        {"0.24", 0.2, 1.0},
        {"0.40", 0.4, 1.4},
        {"0.56", 0.5, 1.6},
        {"0.71", 0.5, 1.6},
        {"0.95", 0.6, 1.9},
        {"1.19", 0.6, 1.9},
        {"1.58", 0.8, 2.4},
        {"1.97", 0.8, 2.4}}}};
  const Tables tables = builtin_tables();
  std::size_t rows = 0;
  for (const auto& [name, lines] : pages)
    for (const auto& line : lines) {
      INFO(name << " to " << line.size_to);
      const FitLimits limits = fit_limits(tables, name, inches(std::stod(line.size_to)));
      // The least interference of RC 2 and LN 1 up to 1.97 in, 0 and 0.1, is printed rounded: half of 0.1 is allowed.
      const double rounding = name == "LN1" ? 0.1 + exact_thou : exact_thou;
      CHECK_THAT(in_thou(limits.interference.low), WithinAbs(line.low, rounding));
      CHECK_THAT(in_thou(limits.interference.high), WithinAbs(line.high, exact_thou));
      ++rows;
    }
  CHECK(rows == tables.fit_classes.size());
}

TEST_CASE("the tolerance classes against the formulas of ISO 286-1") {
  // From memory of ISO 286-1: i = 0.45 D^(1/3) + 0.001 D um with D the geometric mean of the range's ends in mm (1 and
  // 3 for the first), IT6 = 10 i, IT7 = 16 i, IT8 = 25 i; the standard rounds to whole micrometres, mostly upwards. The
  // nearest limit of a shaft: f 5.5 D^0.41 below, g 2.5 D^0.34 below, k 0.6 D^(1/3), m IT7 - IT6, n 5 D^0.34,
  // p IT7 and 0 to 5, s IT8 and 1 to 4, r the geometric mean of p and s.
  const Tables tables = builtin_tables();
  std::size_t checked = 0;
  for (const auto& row : tables.tolerance_classes) {
    INFO(row.name << " " << row.size.text);
    const double from = std::max(1.0, in_mm(row.size.range.low));
    const double mean = std::sqrt(from * in_mm(row.size.range.high));
    const double unit = 0.45 * std::cbrt(mean) + 0.001 * mean;
    const char grade = row.name.back();
    const double width = (grade == '6' ? 10 : grade == '7' ? 16 : 25) * unit;
    // Up to 3 mm the standard departs from its own formulas by up to 2 um; above it by its rounding alone.
    const bool first = in_mm(row.size.range.high) <= 3;
    const double low = in_um(row.limits.range.low);
    const double high = in_um(row.limits.range.high);
    CHECK_THAT(high - low, WithinAbs(width, first ? 1.4 : 0.9));
    const std::string letter(row.name.substr(0, row.name.size() - 1));
    const double it7 = 16 * unit;
    const double p = it7 + 2.5;
    const double s = 25 * unit + 2.5;
    if (letter == "H") {
      CHECK(low == 0);
    } else if (letter == "h") {
      CHECK(high == 0);
    } else if (letter == "js") {
      CHECK(low == -high);
    } else if (letter == "f") {
      CHECK_THAT(-high, WithinAbs(5.5 * std::pow(mean, 0.41), 0.9));
    } else if (letter == "g") {
      CHECK_THAT(-high, WithinAbs(2.5 * std::pow(mean, 0.34), first ? 1.1 : 0.6));
    } else if (letter == "k") {
      CHECK_THAT(low, WithinAbs(0.6 * std::cbrt(mean), 0.8));
    } else if (letter == "m") {
      CHECK_THAT(low, WithinAbs(it7 - 10 * unit, first ? 1.3 : 1.0));
    } else if (letter == "n") {
      CHECK_THAT(low, WithinAbs(5 * std::pow(mean, 0.34), first ? 2.1 : 0.6));
    } else if (letter == "p") {
      CHECK_THAT(low, WithinAbs(p, first ? 5.3 : 2.6));
    } else if (letter == "s") {
      CHECK_THAT(low, WithinAbs(s, 2.6));
    } else if (letter == "r") {
      CHECK_THAT(low, WithinAbs(std::sqrt(p * s), first ? 4.0 : 2.6));
    } else {
      FAIL("no formula for this class");
    }
    ++checked;
  }
  CHECK(checked == 13 * 6);
}

TEST_CASE("classes of one grade are of one width at one size") {
  const Tables tables = builtin_tables();
  std::map<std::pair<char, std::string>, double> widths;
  for (const auto& row : tables.tolerance_classes) {
    INFO(row.name << " " << row.size.text);
    const double width = in_um(row.limits.range.high - row.limits.range.low);
    const auto [at, fresh] = widths.emplace(std::pair{row.name.back(), std::string(row.size.text)}, width);
    CHECK_THAT(width, WithinAbs(at->second, exact_um));
  }
  CHECK(widths.size() == 18);
}

TEST_CASE("the inch and the metric form of one class agree to the inch's rounding") {
  // LN2 is H7/p6 (so its page heads the columns), printed to 0.1 thou in steps of other size ranges: two roundings.
  for (const double size : {4.0, 8.0, 14.0, 25.0, 45.0}) {
    INFO(size);
    const Tables tables = builtin_tables();
    const auto inch = fit_limits(tables, "LN2", mm(size)).interference;
    const auto metric = fit_limits(tables, "H7/p6", mm(size)).interference;
    CHECK_THAT(in_thou(inch.high), WithinAbs(in_thou(metric.high), 0.1));
    CHECK_THAT(in_thou(inch.low), WithinAbs(in_thou(metric.low), 0.1));
  }
}
