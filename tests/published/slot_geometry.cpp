// The walls and the ends of a slot: facts of the trade, and the same figures another way.

#include "catch.hpp"

#include <cmath>

#include <Eigen/Dense>

#include <quillside/model/slot_ends.hpp>
#include <quillside/model/slot_walls.hpp>

using namespace quillside;
using quillside::test::WithinAbs;
using quillside::test::WithinRel;

TEST_CASE("a part of 0.162 in with a 1/8 in cutter wants 0.0185 in each side") {
  // Source: common practice, no source: (part - cutter)/2 at no clearance. Exact.
  CHECK_THAT(in_inches(side_offset({.slot = inches(0.162), .first_cut = inches(1, 8)})), WithinAbs(0.0185, 1e-12));
}

TEST_CASE("a slot for a part") {
  // Source: the definition of interference: part less opening. Exact.
  CHECK_THAT(in_mm(slot_opening({.part = mm(3), .interference = mm(0.01)})), WithinAbs(2.99, 1e-12));
  CHECK_THAT(in_mm(slot_opening({.part = mm(3), .interference = mm(-0.02)})), WithinAbs(3.02, 1e-12));
  CHECK_THROWS_AS(slot_opening({.part = mm(0), .interference = mm(-1)}), std::domain_error);
  CHECK_THROWS_AS(slot_opening({.part = mm(3), .interference = mm(3)}), std::domain_error);
}

TEST_CASE("a slot is as wide as the cutter at both walls covers") {
  // Second way: the cutter's two sides put back where the offset sends them. Exact but for rounding.
  const Length cut = GENERATE(mm(2.4), mm(2.53));
  const Length slot = GENERATE(mm(2.53), mm(3));
  const Length offset = side_offset({.slot = slot, .first_cut = cut});
  CHECK_THAT(in_mm((offset + cut / 2.0) - (-offset - cut / 2.0)), WithinAbs(in_mm(slot), 1e-12));
}

TEST_CASE("a first cut wider than the slot has no offset") {
  // Source: geometry; the ranges that the header states.
  CHECK_THROWS_AS(side_offset({.slot = mm(3), .first_cut = mm(3.001)}), std::domain_error);
  CHECK_THROWS_AS(side_offset({.slot = mm(3), .first_cut = mm(0)}), std::domain_error);
  CHECK(side_offset({.slot = mm(3), .first_cut = mm(3)}) == mm(0));
}

TEST_CASE("spring passes, taken one by one") {
  // Second way: a cutter that gives way by a length in proportion to what it bites, bite after bite. The first bites
  // the width of cut; each that follows bites what the last one left. Tolerance: rounding.
  const double left_of_first = GENERATE(0.004, 0.02, 0.049);
  const Length width = mm(0.05);
  const double give = left_of_first / in_mm(width);
  double left = in_mm(width);
  for (int passes = 0; passes < 4; ++passes) {
    left *= give;
    INFO("share " << give << ", spring passes " << passes);
    CHECK_THAT(in_mm(left_after_spring_passes({.width_of_cut = width, .left = mm(left_of_first)}, passes)),
               WithinRel(left, 1e-12));
  }
}

TEST_CASE("a spring pass outside its ranges") {
  // Source: the ranges that the header states.
  CHECK_THROWS_AS(left_after_spring_passes({.width_of_cut = mm(0), .left = mm(0)}, 1), std::domain_error);
  CHECK_THROWS_AS(left_after_spring_passes({.width_of_cut = mm(1), .left = mm(1)}, 1), std::domain_error);
  CHECK_THROWS_AS(left_after_spring_passes({.width_of_cut = mm(1), .left = mm(-0.1)}, 1), std::domain_error);
  CHECK_THROWS_AS(left_after_spring_passes({.width_of_cut = mm(1), .left = mm(0.1)}, -1), std::domain_error);
  CHECK(left_after_spring_passes({.width_of_cut = mm(1), .left = mm(0)}, 0) == mm(0));
}

TEST_CASE("what a cutter leaves in a corner is 0.207 of its diameter") {
  // Source: a table of slots worked out apart from this library: (sqrt 2 - 1) D/2 = 0.207 D; half the last digit.
  CHECK_THAT(corner_left(mm(1)) / mm(1), WithinAbs(0.207, 0.0005));
  // Second way: the corner as a point, the cutter's circle as a centre and a radius, the distance between them.
  const double cutter = GENERATE(2.381, 3.175, 6.0);
  const Eigen::Vector2d corner{0, 0};
  const Eigen::Vector2d centre{cutter / 2, cutter / 2};
  CHECK_THAT(in_mm(corner_left(mm(cutter))), WithinAbs((centre - corner).norm() - cutter / 2, 1e-12));
  CHECK_THROWS_AS(corner_left(mm(-1)), std::domain_error);
}

TEST_CASE("round ends just clear the corners of the part") {
  // Second way: the corner of a part as thick as the slot is wide, against the circle at the slot's end: it lies on it;
  // in a slot shorter by 0.01 mm it is outside, in the metal.
  const double cutter = 2.381;
  const double part = 16.0;
  const auto beyond = [&](double slot_length) {
    // A slot of the cutter's own width: its end is a half circle.
    const Eigen::Vector2d centre{slot_length / 2 - cutter / 2, 0};
    const Eigen::Vector2d corner{part / 2, cutter / 2};
    return corner.x() <= centre.x() ? (corner.y() - cutter / 2) : (corner - centre).norm() - cutter / 2;
  };
  const double length = in_mm(cleared_length({.part_width = mm(part), .cutter = mm(cutter)}));
  CHECK_THAT(beyond(length), WithinAbs(0, 1e-12));
  CHECK(beyond(length - 0.01) > 0);
  CHECK_THROWS_AS(cleared_length({.part_width = mm(0), .cutter = mm(1)}), std::domain_error);
  CHECK_THROWS_AS(cleared_length({.part_width = mm(1), .cutter = mm(0)}), std::domain_error);
}

TEST_CASE("a pocket behind just reaches the corners of its slot") {
  // Second way: the slot's corner against the circle at the pocket's end: on it, and outside where the pocket is
  // 0.001 mm shorter. Tolerance: rounding.
  struct Given {
    double length, width, pocket;
  };
  const auto given = GENERATE(Given{16.0, 3.0, 3.572}, Given{12.0, 3.18, 3.969}, Given{16.0, 3.0, 3.0});
  const auto beyond = [&](double pocket_length) {
    const Eigen::Vector2d centre{pocket_length / 2 - given.pocket / 2, 0};
    const Eigen::Vector2d corner{given.length / 2, given.width / 2};
    return (corner - centre).norm() - given.pocket / 2;
  };
  const double length = in_mm(pocket_length(
      {.slot_length = mm(given.length), .slot_width = mm(given.width), .pocket_width = mm(given.pocket)}));
  INFO("pocket " << given.pocket << " wide");
  CHECK_THAT(beyond(length), WithinAbs(0, 1e-9));
  CHECK(beyond(length - 0.001) > 0);
  CHECK_THROWS_AS(pocket_length({.slot_length = mm(1), .slot_width = mm(3), .pocket_width = mm(2.9)}),
                  std::domain_error);
  CHECK_THROWS_AS(pocket_length({.slot_length = mm(0), .slot_width = mm(3), .pocket_width = mm(4)}), std::domain_error);
}
