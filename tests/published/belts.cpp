// Speeds of belt-driven machines. The source stands in each case.

#include "catch.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include <quillside/data/tables.hpp>
#include <quillside/model/belt.hpp>

using namespace quillside;
using quillside::test::WithinAbs;
using quillside::test::WithinRel;

TEST_CASE("a drill press on one belt turns as a magazine answers its reader") {
  // Source: woodworking magazine, answer to a reader's question on drill-press pulleys: motor 1725 rev/min with a
  // pulley of 1-1/8 in, spindle pulley 4 in: 485 rev/min. Tolerance: the last printed digit.
  const auto spindle = driven_speed(rev_per_min(1725), {.driving = inches(1.125), .driven = inches(4.0)});
  CHECK_THAT(in_rev_per_min(spindle), WithinAbs(485, 1));
}

TEST_CASE("the twelve speeds of the demo's two-belt pillar drill follow from its pulleys") {
  // Source: none, the pulleys are invented for the demo; they stand here a second time, with the arithmetic in plain
  // numbers: motor over idler, idler over spindle. A belt lies on the same step of both its pulleys.
  struct Speed {
    std::string name; // motor belt first
    double rev_per_min;
  };
  const std::vector<double> motor{1.75, 2.25, 2.8, 3.4};
  const std::vector<double> idler_driven{4.25, 3.75, 3.2, 2.6};
  const std::vector<double> idler_driving{1.6, 2.5, 3.45};
  const std::vector<double> spindle{4.4, 3.5, 2.55};
  std::vector<Speed> expected;
  for (std::size_t first = 0; first < motor.size(); ++first) {
    for (std::size_t second = 0; second < spindle.size(); ++second) {
      const double turns = 1725.0 * motor[first] * idler_driving[second] / (idler_driven[first] * spindle[second]);
      expected.push_back({std::to_string(first + 1) + "-" + std::to_string(second + 1), turns});
    }
  }
  std::sort(expected.begin(), expected.end(),
            [](const Speed& a, const Speed& b) { return a.rev_per_min < b.rev_per_min; });
  REQUIRE(expected.size() == 12);

  const Tables tables = builtin_tables();
  const Machine& machine = find_machine(tables, "pillar12");
  REQUIRE(machine.steps.size() == 12);
  for (std::size_t i = 0; i < expected.size(); ++i) {
    INFO("step " << expected[i].name);
    CHECK(machine.steps[i].name == expected[i].name);
    // Some ten products and quotients of 1.1e-16 between the two.
    CHECK_THAT(in_rev_per_min(machine.steps[i].speed), WithinRel(expected[i].rev_per_min, 2e-15));
  }
  CHECK_THAT(in_rev_per_min(machine.range.low), WithinRel(expected.front().rev_per_min, 2e-15));
  CHECK_THAT(in_rev_per_min(machine.range.high), WithinRel(expected.back().rev_per_min, 2e-15));
}

TEST_CASE("a twelve-speed press of the demo spans about what such machines do") {
  // Source: a workshop blog on drill presses, 2014: twelve speeds by three pulleys and two belts, 250 to 3000 rev/min.
  // The demo's need not be that machine: within a fifth of both ends.
  const Tables tables = builtin_tables();
  const Machine& machine = find_machine(tables, "pillar12");
  CHECK_THAT(in_rev_per_min(machine.range.low), WithinRel(250.0, 0.2));
  CHECK_THAT(in_rev_per_min(machine.range.high), WithinRel(3000.0, 0.2));
}
