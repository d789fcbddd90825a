// The models at their edges, and each formula against a second way to find the same number: a walk, a count or a sum in
// raw doubles that shares nothing with the formula.

#include "catch.hpp"
#include "worked_figures.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>
#include <stdexcept>
#include <vector>

#include <quillside/model/belt.hpp>
#include <quillside/model/chip.hpp>
#include <quillside/model/depth_stop.hpp>
#include <quillside/model/feed.hpp>
#include <quillside/model/peck.hpp>
#include <quillside/model/surface_speed.hpp>

using namespace quillside;
using quillside::test::no_number;
using quillside::test::WithinAbs;
using quillside::test::WithinRel;

namespace {

/// Circumference over diameter by Archimedes: polygons inside and outside a circle, from the hexagon on.
double pi_by_polygons() {
  double outside = 2 * std::sqrt(3.0); // half the way round a hexagon of apothem 1
  double inside = 3;                   // and of radius 1
  for (int doubling = 0; doubling < 26; ++doubling) {
    outside = 2 * outside * inside / (outside + inside);
    inside = std::sqrt(outside * inside);
  }
  return (outside + 2 * inside) / 3; // the two close in from either side, the inner one at half the distance
}

/// A hundred cutters somewhere in the work, the same ones each time.
struct RandomEngagements {
  std::mt19937_64 random{1941}; // any seed will do; a fixed one makes a failure repeat
  std::uniform_real_distribution<double> share{0.001, 1.0};
  std::uniform_real_distribution<double> diameter{0.5, 25.0};
  Engagement operator()() {
    const double across = diameter(random);
    return {.width = mm(share(random) * across), .diameter = mm(across)};
  }
};
constexpr int many = 100;

/// The angle from where a tooth enters, ae below the rim, to the rim, by walking the tooth along its circle.
double arc_by_walking(Engagement cut) {
  constexpr int steps = 400000; // to the half turn: 8e-6 rad each
  const double half_turn = pi_by_polygons();
  const double radius = in_mm(cut.diameter) / 2;
  int inside = 0;
  for (int i = 0; i < steps; ++i) {
    const double height = radius * std::cos((i + 0.5) / steps * half_turn); // above the axis
    if (radius - height < in_mm(cut.width)) ++inside;
  }
  return half_turn * inside / steps;
}

} // namespace

// --- surface speed ---

TEST_CASE("cutting speed is the length of rim that passes in a minute, by polygons round the tool") {
  // The polygons settle at pi to about 1e-15 by the 26th doubling: 6 x 2^26 sides.
  const double rim = pi_by_polygons() * 12; // mm round a 12 mm tool
  CHECK_THAT(in_m_per_min(cutting_speed(rev_per_min(663), mm(12))), WithinRel(rim * 663 / 1000, 1e-14));
  CHECK_THAT(in_rev_per_min(spindle_speed(m_per_min(25), mm(12))), WithinRel(25000 / rim, 1e-14));
}

TEST_CASE("spindle speed and cutting speed undo each other") {
  const double diameter = GENERATE(0.15, 3.175, 12.7, 150.0);
  const double speed = GENERATE(0.5, 27.432, 1200.0);
  const SpindleSpeed turning = spindle_speed(m_per_min(speed), mm(diameter));
  CHECK_THAT(in_m_per_min(cutting_speed(turning, mm(diameter))), WithinRel(speed, 1e-15)); // one quotient, one product
}

TEST_CASE("a tool that stands still does not cut") {
  CHECK(in_rev_per_min(spindle_speed(m_per_min(0), mm(3))) == 0);
  CHECK(in_m_per_min(cutting_speed(rev_per_min(0), mm(3))) == 0);
}

TEST_CASE("a tool of no diameter has no speed") {
  const double diameter = GENERATE(0.0, -0.0, -3.0, no_number);
  CHECK_THROWS_AS(spindle_speed(m_per_min(27), mm(diameter)), std::domain_error);
  CHECK_THROWS_AS(cutting_speed(rev_per_min(620), mm(diameter)), std::domain_error);
}

// --- belt ---

TEST_CASE("a belt carries as much of itself off one pulley as onto the other") {
  // Length of belt that passes in a minute, over the length once round the driven pulley.
  const double belt = pi_by_polygons() * 1.75 * 1725;
  const double driven = belt / (pi_by_polygons() * 4.25);
  CHECK_THAT(in_rev_per_min(driven_speed(rev_per_min(1725), {.driving = inches(1.75), .driven = inches(4.25)})),
             WithinRel(driven, 1e-14)); // a dozen roundings
}

TEST_CASE("equal pulleys leave the speed as it is, and swapped ones undo each other") {
  CHECK(in_rev_per_min(driven_speed(rev_per_min(1725), {.driving = inches(3.0), .driven = inches(3.0)})) == 1725);
  const auto slow = driven_speed(rev_per_min(1725), {.driving = inches(1.125), .driven = inches(4.0)});
  CHECK_THAT(in_rev_per_min(driven_speed(slow, {.driving = inches(4.0), .driven = inches(1.125)})),
             WithinRel(1725.0, 1e-15));
  CHECK(in_rev_per_min(driven_speed(rev_per_min(0), {.driving = inches(1.0), .driven = inches(4.0)})) == 0);
}

TEST_CASE("a pulley of no diameter drives nothing and is not driven") {
  const double nothing = GENERATE(0.0, -1.0, no_number);
  CHECK_THROWS_AS(driven_speed(rev_per_min(1725), {.driving = mm(nothing), .driven = mm(50)}), std::domain_error);
  CHECK_THROWS_AS(driven_speed(rev_per_min(1725), {.driving = mm(50), .driven = mm(nothing)}), std::domain_error);
}

// --- feed ---

TEST_CASE("feed rate is what a minute of teeth adds up to, counted one by one") {
  struct Row {
    double feed; // mm a tooth
    int teeth;
    int turns; // a minute
  };
  const auto row = GENERATE(Row{0.05, 2, 1500}, Row{0.065, 3, 663}, Row{0.0127, 4, 2500}, Row{0.1, 1, 100});
  double travelled = 0;
  for (int turn = 0; turn < row.turns; ++turn)
    for (int tooth = 0; tooth < row.teeth; ++tooth) travelled += row.feed;
  // A sum of n terms may be off by n roundings: 10 000 of 1.1e-16.
  CHECK_THAT(in_mm_per_min(feed_rate(mm_per_tooth(row.feed), flutes(row.teeth), rev_per_min(row.turns))),
             WithinRel(travelled, 1.2e-12));
  CHECK_THAT(in_mm_per_min(feed_rate(mm_per_rev(row.feed * row.teeth), rev_per_min(row.turns))),
             WithinRel(travelled, 1.2e-12));
}

TEST_CASE("the time of a cut takes it from one end to the other") {
  const Time time = time_to_travel(mm(30), mm_per_min(99.45));
  CHECK_THAT(in_mm(time * mm_per_min(99.45)), WithinRel(30.0, 5e-16)); // one quotient, one product
  CHECK(in_minutes(time_to_travel(mm(0), mm_per_min(99.45))) == 0);
}

TEST_CASE("a cut that does not advance takes no time that could be told") {
  const double rate = GENERATE(0.0, -1.0, no_number);
  CHECK_THROWS_AS(time_to_travel(mm(30), mm_per_min(rate)), std::domain_error);
}

// --- chip thickness ---

TEST_CASE("the arc of engagement is what a walk along the circle finds") {
  RandomEngagements engagement;
  for (int i = 0; i < 10; ++i) {
    const Engagement cut = engagement();
    INFO(in_mm(cut.width) << " of " << in_mm(cut.diameter));
    // One step of the walk is 8e-6 rad; the end may fall anywhere in it.
    CHECK_THAT(in_degrees(arc_of_engagement(cut)), WithinAbs(arc_by_walking(cut) * 180 / pi_by_polygons(), 5e-4));
  }
}

TEST_CASE("the mean chip is the integral of fz sin(phi) over the arc, and the largest its greatest") {
  RandomEngagements engagement;
  for (int i = 0; i < many; ++i) {
    const Engagement cut = engagement();
    const double arc = 2 * std::asin(std::sqrt(in_mm(cut.width) / in_mm(cut.diameter))); // by the half angle
    constexpr int strips = 20000;
    double sum = 0;
    double greatest = 0;
    for (int strip = 0; strip < strips; ++strip) {
      sum += 0.05 * std::sin((strip + 0.5) / strips * arc);
      greatest = std::max(greatest, 0.05 * std::sin(static_cast<double>(strip + 1) / strips * arc));
    }
    INFO(in_mm(cut.width) << " of " << in_mm(cut.diameter));
    // Midpoint rule: off by (arc/strips)^2/24, under 1e-9. The crest lies within half a strip: off by under 4e-9.
    CHECK_THAT(in_mm(mean_chip(mm_per_tooth(0.05), cut)), WithinRel(sum / strips, 2e-9));
    CHECK_THAT(in_mm(largest_chip(mm_per_tooth(0.05), cut)), WithinRel(greatest, 5e-9));
  }
}

TEST_CASE("the thickest chip comes back as the feed that made it") {
  RandomEngagements engagement;
  for (int i = 0; i < many; ++i) {
    const Engagement cut = engagement();
    INFO(in_mm(cut.width) << " of " << in_mm(cut.diameter));
    const FeedPerTooth feed = mm_per_tooth(0.001 * (i + 1));
    CHECK_THAT(in_mm_per_tooth(feed_for_chip(largest_chip(feed, cut), cut)), WithinRel(in_mm_per_tooth(feed), 1e-15));
    const Length chip = mm(0.001 * (i + 1));
    CHECK_THAT(in_mm(largest_chip(feed_for_chip(chip, cut), cut)), WithinRel(in_mm(chip), 1e-15));
  }
}

TEST_CASE("a full slot is half a turn of cutting, with the whole feed in the middle") {
  const Engagement slot{.width = mm(3), .diameter = mm(3)};
  CHECK(arc_of_engagement(slot) == turns(0.5));
  CHECK(in_mm(largest_chip(mm_per_tooth(0.02), slot)) == 0.02);
  // The mean of a sine over half a turn is 2/pi.
  CHECK_THAT(in_mm(mean_chip(mm_per_tooth(0.02), slot)), WithinRel(0.02 * 2 / pi_by_polygons(), 1e-14));
}

TEST_CASE("from half engagement on the largest chip is the feed, and the two branches meet there") {
  const Engagement half{.width = mm(1.5), .diameter = mm(3)};
  CHECK_THAT(in_degrees(arc_of_engagement(half)), WithinRel(90.0, 1e-15));
  CHECK(in_mm(largest_chip(mm_per_tooth(0.02), half)) == 0.02);
  const Engagement just_under{.width = mm(1.5 * (1 - 1e-7)), .diameter = mm(3)};
  // Square root of 1 - e^2 with e = 1e-7: 5e-15 under 1.
  CHECK_THAT(in_mm(largest_chip(mm_per_tooth(0.02), just_under)), WithinRel(0.02, 1e-14));
}

TEST_CASE("a wider cut never thins the chip, and the mean is never above the largest") {
  double last = 0;
  for (int hundredth = 1; hundredth <= 100; ++hundredth) {
    const Engagement cut{.width = mm(0.03 * hundredth), .diameter = mm(3.0000001)};
    const double largest = in_mm(largest_chip(mm_per_tooth(0.02), cut));
    CHECK(largest >= last);
    CHECK(in_mm(mean_chip(mm_per_tooth(0.02), cut)) < largest);
    last = largest;
  }
}

TEST_CASE("a cutter outside the work, or wider in it than it is, makes no chip") {
  struct Row {
    double width, diameter;
  };
  const auto row = GENERATE(Row{0, 3}, Row{-1, 3}, Row{3.001, 3}, Row{1, 0}, Row{0, 0}, Row{-1, -3}, Row{no_number, 3},
                            Row{1, no_number});
  const Engagement cut{.width = mm(row.width), .diameter = mm(row.diameter)};
  INFO(row.width << " of " << row.diameter);
  CHECK_THROWS_AS(arc_of_engagement(cut), std::domain_error);
  CHECK_THROWS_AS(largest_chip(mm_per_tooth(0.02), cut), std::domain_error);
  CHECK_THROWS_AS(mean_chip(mm_per_tooth(0.02), cut), std::domain_error);
  CHECK_THROWS_AS(feed_for_chip(mm(0.02), cut), std::domain_error);
}

// --- the point and the stop ---

TEST_CASE("the allowance for the point is how far down the cone reaches its full width, by walking along a lip") {
  struct Row {
    double diameter; // mm
    double included; // deg
  };
  const auto row = GENERATE(Row{3.572, 118}, Row{6, 135}, Row{12.7, 90}, Row{1, 60}, Row{20, 140}, Row{3, 179});
  const double half = row.included / 360 * pi_by_polygons();
  // Steps along the slant of the cone, each as much outward and downward as the angle says.
  const double step = row.diameter * 1e-6;
  double out = 0;
  double down = 0;
  while (out < row.diameter / 2) {
    out += step * std::sin(half);
    down += step * std::cos(half);
  }
  INFO(row.diameter << " mm, " << row.included << " deg");
  // The last step overshoots by at most one: a millionth of the diameter.
  CHECK_THAT(in_mm(point_allowance({.diameter = mm(row.diameter), .included = degrees(row.included)})),
             WithinAbs(down, row.diameter * 1.1e-6));
}

TEST_CASE("a right-angled point is as long as the drill is thick from axis to rim") {
  // tan 45 = 1; a few roundings.
  CHECK_THAT(in_mm(point_allowance({.diameter = mm(6), .included = degrees(90)})), WithinRel(3.0, 1e-15));
}

TEST_CASE("the cone is as wide as the drill just where the allowance ends, and no wider behind") {
  const double included = GENERATE(60.0, 90.0, 118.0, 135.0, 150.0);
  const DrillPoint point{.diameter = mm(3.572), .included = degrees(included)};
  const Length allowance = point_allowance(point);
  CHECK(in_mm(width_behind_tip(point, mm(0))) == 0);
  CHECK_THAT(in_mm(width_behind_tip(point, allowance)), WithinRel(3.572, 1e-15));
  CHECK_THAT(in_mm(width_behind_tip(point, allowance / 2.0)),
             WithinRel(1.786, 1e-15)); // a cone: half way, half as wide
  CHECK(width_behind_tip(point, 1.0001 * allowance) == point.diameter);
  CHECK(width_behind_tip(point, metres(10)) == point.diameter);
}

TEST_CASE("a drill of no diameter, or with a point that is none, has no cone") {
  struct Row {
    double diameter, included;
  };
  const auto row = GENERATE(Row{0, 118}, Row{-3, 118}, Row{no_number, 118}, Row{3, 0}, Row{3, -118}, Row{3, 180},
                            Row{3, 200}, Row{3, no_number});
  const DrillPoint point{.diameter = mm(row.diameter), .included = degrees(row.included)};
  INFO(row.diameter << " mm, " << row.included << " deg");
  CHECK_THROWS_AS(point_allowance(point), std::domain_error);
  CHECK_THROWS_AS(width_behind_tip(point, mm(1)), std::domain_error);
  CHECK_THROWS_AS(stop_at(mm(1), give_or_take(mm(3), mm(0)), point), std::domain_error);
}

TEST_CASE("where the stop is locked, the tip, the corner and the back add up to the part") {
  // A latch plate of 4.75 give or take 0.125 mm, 90 deg point on 4 mm: the cone is 2 mm long. Quarters and eighths, but
  // for the tangent of 45 deg: a few roundings.
  const DrillPoint point{.diameter = mm(4), .included = degrees(90)};
  const Stop stop = stop_at(mm(3.75), give_or_take(mm(4.75), mm(0.125)), point);
  CHECK(in_mm(stop.tip_depth) == 3.75);
  CHECK(in_mm(stop.left_under_tip.low) == 0.875);
  CHECK(in_mm(stop.left_under_tip.value) == 1);
  CHECK(in_mm(stop.left_under_tip.high) == 1.125);
  CHECK_THAT(in_mm(stop.left_under_corner.low), WithinRel(2.875, 1e-15));
  CHECK_THAT(in_mm(stop.left_under_corner.value), WithinRel(3.0, 1e-15));
  CHECK_THAT(in_mm(stop.left_under_corner.high), WithinRel(3.125, 1e-15));
}

TEST_CASE("a tip that stands out at the back leaves less than nothing under it") {
  const DrillPoint point{.diameter = mm(4), .included = degrees(90)};
  const Stop stop = stop_at(mm(6), give_or_take(mm(4.75), mm(0.125)), point);
  CHECK(in_mm(stop.left_under_tip.value) == -1.25);
  CHECK(stop.left_under_tip.low < stop.left_under_tip.value);
  CHECK(stop.left_under_tip.value < stop.left_under_tip.high);
  CHECK_THAT(in_mm(stop.left_under_corner.value), WithinRel(0.75, 1e-14));
}

TEST_CASE("the two sides of the part's doubt stay apart") {
  const Spread<Length> lopsided{mm(4.5), mm(4.75), mm(4.875)};
  const Stop stop = stop_at(mm(3.75), lopsided, {.diameter = mm(4), .included = degrees(90)});
  CHECK(in_mm(stop.left_under_tip.value - stop.left_under_tip.low) == 0.25);
  CHECK(in_mm(stop.left_under_tip.high - stop.left_under_tip.value) == 0.125);
}

// --- pecks ---

namespace {

/// First bite three diameters, then one each, and half of one beyond five: numbers made for the test.
constexpr PeckSchedule deep{.first = 3, .next = 1, .deep_from = 5, .deep_next = 0.5};

std::vector<double> in_diameters(const std::vector<Length>& depths, Length diameter) {
  std::vector<double> ratios;
  for (const auto& depth : depths) ratios.push_back(depth / diameter);
  return ratios;
}

} // namespace

TEST_CASE("pecks follow the schedule to the full depth") {
  // 2 mm: every depth is a multiple of 1 mm, exact in binary.
  const auto to = [](double depth) {
    return in_diameters(pecks_to({.diameter = mm(2), .depth = mm(depth)}, deep), mm(2));
  };
  CHECK(to(14) == std::vector<double>{3, 4, 5, 5.5, 6, 6.5, 7});
  CHECK(to(9) == std::vector<double>{3, 4, 4.5});
  CHECK(to(8) == std::vector<double>{3, 4});
  CHECK(to(7) == std::vector<double>{3, 3.5});
}

TEST_CASE("a hole that the first bite reaches has no pecks") {
  for (const double depth : {0.0, 0.001, 1.0, 5.9, 6.0})
    CHECK(pecks_to({.diameter = mm(2), .depth = mm(depth)}, deep).empty());
}

TEST_CASE("pecks go deeper each time, end at the bottom, and no bite is a shaving") {
  std::mt19937_64 random{304};
  std::uniform_real_distribution<double> diameters{0.01, 20};
  for (int i = 0; i < many; ++i) {
    const Length depth = mm(2 * diameters(random));
    const auto depths = pecks_to({.diameter = mm(2), .depth = depth}, deep);
    if (depths.empty()) continue;
    INFO(in_mm(depth));
    CHECK(depths.back() == depth);
    Length from = mm(0);
    for (const auto& to : depths) {
      CHECK(to > from);
      from = to;
    }
    // The shortest bite of the schedule is half a diameter, 1 mm; whatever is left over for the last bite is worth the
    // trip: a twentieth of a diameter at least (our own choice, no source).
    const Length before_last = depths.size() > 1 ? depths[depths.size() - 2] : mm(0);
    CHECK(depth - before_last >= mm(0.1 - 1e-12));
  }
}

TEST_CASE("pecks scale with the drill") {
  const auto small = in_diameters(pecks_to({.diameter = mm(1), .depth = mm(7)}, deep), mm(1));
  const auto large = in_diameters(pecks_to({.diameter = mm(16), .depth = mm(112)}, deep), mm(16));
  CHECK(small == large);
}

TEST_CASE("a schedule of a thousand bites is followed, and one of more is refused") {
  const PeckSchedule ones{.first = 1, .next = 1, .deep_from = 1e6, .deep_next = 1};
  CHECK(pecks_to({.diameter = mm(1), .depth = mm(1000)}, ones).size() == 1000);
  CHECK_THROWS_AS(pecks_to({.diameter = mm(1), .depth = mm(1001)}, ones), std::domain_error);
  CHECK_THROWS_AS(pecks_to({.diameter = mm(1), .depth = mm(1e9)}, ones), std::domain_error);
  // Bites too small to add anything to the depth end all the same.
  const PeckSchedule crumbs{.first = 1, .next = 1e-300, .deep_from = 1e6, .deep_next = 1};
  CHECK_THROWS_AS(pecks_to({.diameter = mm(1), .depth = mm(5)}, crumbs), std::domain_error);
  CHECK_THROWS_AS(pecks_to({.diameter = mm(1), .depth = mm(std::numeric_limits<double>::infinity())}, ones),
                  std::domain_error);
}

TEST_CASE("every figure of a schedule is above nothing") {
  const double nothing = GENERATE(0.0, -1.0, no_number);
  const DrilledDepth hole{.diameter = mm(2), .depth = mm(14)};
  CHECK_THROWS_AS(pecks_to(hole, {.first = nothing, .next = 1, .deep_from = 5, .deep_next = 0.5}), std::domain_error);
  CHECK_THROWS_AS(pecks_to(hole, {.first = 3, .next = nothing, .deep_from = 5, .deep_next = 0.5}), std::domain_error);
  CHECK_THROWS_AS(pecks_to(hole, {.first = 3, .next = 1, .deep_from = nothing, .deep_next = 0.5}), std::domain_error);
  CHECK_THROWS_AS(pecks_to(hole, {.first = 3, .next = 1, .deep_from = 5, .deep_next = nothing}), std::domain_error);
  CHECK_THROWS_AS(pecks_to({.diameter = mm(nothing), .depth = mm(14)}, deep), std::domain_error);
}

TEST_CASE("a depth that is no number has no pecks to it") {
  CHECK_THROWS_AS(pecks_to({.diameter = mm(2), .depth = mm(no_number)}, deep), std::domain_error);
}
