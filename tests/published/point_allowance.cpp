// How far the tip of a drill goes past the full diameter, in diameters.
// The formula A = (D/2)/tan(point/2) is that of a textbook answer on drilling time (a homework-help page, name
// withheld); the ratios were worked out from it apart from this library, with three to six digits.

#include "catch.hpp"

#include <quillside/model/depth_stop.hpp>

using namespace quillside;
using quillside::test::WithinAbs;

TEST_CASE("the point allowance in diameters is that of the table") {
  // Source: a textbook answer on drilling time (homework-help page, name withheld), ratios worked out from its formula.
  struct Row {
    double included;     // deg
    double in_diameters; // A / D
    double last_digit;
  };
  const auto row =
      GENERATE(Row{90, 0.500, 0.001}, Row{118, 0.3004, 0.0001}, Row{130, 0.233, 0.001}, Row{135, 0.2071, 0.0001},
               Row{140, 0.182, 0.001},
               // The same ratios from the geometry of drill points, worked out a second time to six digits.
               Row{60, 0.866025, 1e-6}, Row{90, 0.500000, 1e-6}, Row{118, 0.300430, 1e-6}, Row{120, 0.288675, 1e-6},
               Row{130, 0.233154, 1e-6}, Row{135, 0.207107, 1e-6}, Row{140, 0.181985, 1e-6});
  const Length diameter = GENERATE(inches(9, 64), mm(6), inches(1, 2));
  INFO(row.included << " deg");
  const Length allowance = point_allowance({.diameter = diameter, .included = degrees(row.included)});
  CHECK_THAT(allowance / diameter, WithinAbs(row.in_diameters, row.last_digit));
}

TEST_CASE("the allowance of a printed drilling example") {
  // Source: M. P. Groover, Fundamentals of Modern Manufacturing, drilling example: 20 mm drill, 118 deg, A = 6.01 mm;
  // from memory.
  CHECK_THAT(in_mm(point_allowance({.diameter = mm(20), .included = degrees(118)})), WithinAbs(6.01, 0.01));
}
