// A row of holes that opens a slot: printed ratios, and circles cut by steps.

#include "catch.hpp"

#include <algorithm>
#include <cmath>

#include <quillside/model/chain_holes.hpp>

using namespace quillside;
using quillside::test::WithinAbs;

TEST_CASE("points and clear width between holes that meet, in diameters") {
  // Source: a table of chain drilling worked out from h = (D/2)(1 - sqrt(1 - (p/D)^2)) apart from this library, three
  // digits. Tolerance: half of the last.
  struct Row {
    double pitch; // p / D
    double point; // h / D
    double clear; // w / D
  };
  const auto row = GENERATE(Row{0.25, 0.016, 0.968}, Row{0.4, 0.042, 0.917}, Row{0.5, 0.067, 0.866},
                            Row{0.6, 0.100, 0.800}, Row{0.7, 0.143, 0.714}, Row{0.75, 0.169, 0.661},
                            Row{0.8, 0.200, 0.600}, Row{0.9, 0.282, 0.436}, Row{1.0, 0.500, 0.000});
  const Length diameter = GENERATE(inches(9, 64), mm(6));
  INFO("pitch " << row.pitch);
  const HolePair pair{.diameter = diameter, .pitch = row.pitch * diameter};
  CHECK_THAT(cusp_height(pair) / diameter, WithinAbs(row.point, 0.0006));
  CHECK_THAT(clear_width(pair) / diameter, WithinAbs(row.clear, 0.0006));
}

TEST_CASE("the clear width is the narrowest place of two circles walked across") {
  // Second way: the two circles in steps of 1/20000 of the pitch, the wider of the two at each, its narrowest kept.
  // Tolerance: what a step hides at the meeting, under 1e-4 of the diameter for these pitches.
  const double pitch = GENERATE(0.3, 0.55, 0.85, 0.97);
  double narrowest = 1;
  for (int i = 0; i <= 20000; ++i) {
    const double x = pitch * i / 20000;
    const auto width_at = [](double from_centre) {
      return 2 * std::sqrt(std::max(0.0, 0.25 - from_centre * from_centre));
    };
    narrowest = std::min(narrowest, std::max(width_at(x), width_at(pitch - x)));
  }
  INFO("pitch " << pitch);
  CHECK_THAT(clear_width({.diameter = mm(1), .pitch = mm(pitch)}) / mm(1), WithinAbs(narrowest, 1e-4));
  CHECK_THAT(cusp_height({.diameter = mm(1), .pitch = mm(pitch)}) / mm(1), WithinAbs((1 - narrowest) / 2, 1e-4));
}

TEST_CASE("holes further apart than they are wide leave a web and no clear width") {
  // Source: geometry; 3 mm holes at 3.2 mm.
  const HolePair apart{.diameter = mm(3), .pitch = mm(3.2)};
  CHECK_THAT(in_mm(web_between(apart)), WithinAbs(0.2, 1e-12));
  CHECK_THAT(in_mm(clear_width(apart)), WithinAbs(0, 1e-12));
  CHECK_THAT(in_mm(cusp_height(apart)), WithinAbs(1.5, 1e-12));
  CHECK_THAT(in_mm(web_between({.diameter = mm(3), .pitch = mm(2)})), WithinAbs(-1, 1e-12));
}

TEST_CASE("a row of holes fills its slot end to end") {
  // Source: p = (S - D)/(n - 1) (geometry). Checked the long way round: the outer holes touch both ends, each hole is
  // one pitch from the next, one more hole would come too near, one fewer too far. Tolerance: rounding.
  const Length diameter = inches(9, 64);
  const double lengths = GENERATE(1.0, 1.7, 2.04, 2.051, 3.1, 4.15, 5.0, 9.99);
  const HoleRow row{.slot_length = lengths * diameter, .diameter = diameter};
  INFO(lengths << " diameters long");
  const auto ends_meet = [&](const HolesPlaced& holes) {
    REQUIRE(holes.centres.size() == static_cast<std::size_t>(holes.count));
    if (holes.count == 1) {
      CHECK(holes.centres.front() == mm(0));
      return;
    }
    CHECK_THAT(in_mm(holes.centres.back() - holes.centres.front() + diameter), WithinAbs(in_mm(row.slot_length), 1e-9));
    CHECK_THAT(in_mm(holes.centres.back() + holes.centres.front()), WithinAbs(0, 1e-9));
    for (std::size_t i = 1; i < holes.centres.size(); ++i)
      CHECK_THAT(in_mm(holes.centres[i] - holes.centres[i - 1]), WithinAbs(in_mm(holes.pitch), 1e-9));
  };
  const Length run = row.slot_length - diameter;
  const HolesPlaced apart = holes_apart(row, 1.05 * diameter);
  ends_meet(apart);
  CHECK((apart.count == 1 || apart.pitch >= 1.05 * diameter - mm(1e-9)));
  CHECK(run / apart.count < 1.05 * diameter);
  const HolesPlaced together = holes_together(row, 0.5 * diameter);
  ends_meet(together);
  CHECK(together.pitch <= 0.5 * diameter + mm(1e-9));
  CHECK((together.count <= 2 || run / (together.count - 2) > 0.5 * diameter));
}

TEST_CASE("a pitch that fits to the last digit is not lost to rounding") {
  // Source: geometry: 4 holes of 3 mm at 3.15 mm are 12.45 mm over their ends.
  CHECK(holes_apart({.slot_length = mm(12.45), .diameter = mm(3)}, mm(3.15)).count == 4);
  CHECK(holes_together({.slot_length = mm(12.45), .diameter = mm(3)}, mm(3.15)).count == 4);
}

TEST_CASE("no row of holes without sizes") {
  CHECK_THROWS_AS(holes_apart({.slot_length = mm(2), .diameter = mm(3)}, mm(3)), std::domain_error);
  CHECK_THROWS_AS(holes_apart({.slot_length = mm(9), .diameter = mm(0)}, mm(3)), std::domain_error);
  CHECK_THROWS_AS(holes_apart({.slot_length = mm(9), .diameter = mm(3)}, mm(0)), std::domain_error);
  CHECK_THROWS_AS(holes_together({.slot_length = mm(9), .diameter = mm(3)}, mm(-1)), std::domain_error);
  CHECK_THROWS_AS(clear_width({.diameter = mm(0), .pitch = mm(1)}), std::domain_error);
  CHECK_THROWS_AS(web_between({.diameter = mm(1), .pitch = mm(0)}), std::domain_error);
}
