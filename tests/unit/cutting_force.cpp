// Cutting force at its edges, and the closed forms against a cutter turned through its cut in small steps, cut into
// thin discs: raw doubles that share nothing with the formulas but what a tooth meets.

#include "catch.hpp"
#include "worked_figures.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <numbers>
#include <random>
#include <stdexcept>
#include <vector>

#include <boost/math/special_functions/beta.hpp>

#include <quillside/model/force_doubt.hpp>
#include <quillside/model/mill_pass.hpp>
#include <quillside/model/milling_forces.hpp>
#include <quillside/model/milling_load.hpp>
#include <quillside/model/specific_force.hpp>
#include <quillside/model/tooth_chip.hpp>
#include <quillside/quantity/angle.hpp>

using namespace quillside;
using quillside::test::no_number;
using quillside::test::WithinAbs;
using quillside::test::WithinRel;

namespace {

constexpr double pi = std::numbers::pi;

/// A pass in bare numbers: mm, deg, N/mm2.
struct Bare {
  double diameter, width, depth, feed;
  int teeth;
  double helix;
  MillSide side;
  double kc11, mc, radial_ratio, least_chip;
};

MillPass pass_of(const Bare& bare) {
  return {.engagement = {.width = mm(bare.width), .diameter = mm(bare.diameter)},
          .depth = mm(bare.depth),
          .feed = mm_per_tooth(bare.feed),
          .teeth = flutes(bare.teeth),
          .helix = degrees(bare.helix),
          .side = bare.side};
}
ToothForce tooth_of(const Bare& bare) {
  return {{megapascals(bare.kc11), bare.mc}, bare.radial_ratio, mm(bare.least_chip)};
}
MillingLoad load_of(const Bare& bare) { return {pass_of(bare), tooth_of(bare)}; }

/// A cut that could be met with, the same ones each time.
class RandomCuts {
public:
  Bare operator()() {
    const double diameter = between(0.8, 12);
    const bool slot = between(0, 1) < 0.4;
    return {.diameter = diameter,
            .width = slot ? diameter : diameter * between(0.02, 0.99),
            .depth = diameter * between(0.05, 2.5),
            .feed = diameter * between(0.001, 0.012),
            .teeth = static_cast<int>(between(1, 12.99)),
            .helix = between(0, 1) < 0.15 ? 0 : between(1, 60),
            .side = between(0, 1) < 0.5 ? MillSide::conventional : MillSide::climb,
            .kc11 = between(500, 3000),
            .mc = between(0, 1) < 0.2 ? 0 : between(0.1, 0.4),
            .radial_ratio = between(0, 1),
            .least_chip = between(0, 1) < 0.3 ? 0 : between(0, 0.004)};
  }

private:
  double between(double low, double high) { return std::uniform_real_distribution<double>(low, high)(random_); }
  std::mt19937_64 random_{1952};
};

struct Summed {
  double feed = 0, across = 0, torque = 0, feed_moment = 0, across_moment = 0;
};

/// One moment of the cut: discs stacked on the tip, each with its teeth; a tooth in the work meets kc h dz.
Summed by_discs(const Bare& bare, double turn, int discs) {
  Summed sum;
  const double radius = bare.diameter / 2;
  const double arc = std::acos(1 - 2 * bare.width / bare.diameter);
  const bool climb = bare.side == MillSide::climb && bare.width < bare.diameter;
  const double from = climb ? pi - arc : 0;
  const double to = climb ? pi : arc;
  const double thick = bare.depth / discs;
  for (int disc = 0; disc < discs; ++disc) {
    const double height = (disc + 0.5) * thick;
    const double behind = height * std::tan(bare.helix * pi / 180) / radius;
    for (int tooth = 0; tooth < bare.teeth; ++tooth) {
      double phi = std::fmod(turn - behind + 2 * pi * tooth / bare.teeth, 2 * pi);
      if (phi < 0) phi += 2 * pi;
      if (phi < from || phi > to) continue;
      const double h = bare.feed * std::sin(phi);
      const double tangential = bare.kc11 * std::pow(std::max(h, bare.least_chip), -bare.mc) * h * thick;
      if (!(h > 0)) continue;
      const double radial = bare.radial_ratio * tangential;
      const double feed = -tangential * std::cos(phi) - radial * std::sin(phi);
      const double across = tangential * std::sin(phi) - radial * std::cos(phi);
      sum.feed += feed;
      sum.across += across;
      sum.torque += tangential * radius;
      sum.feed_moment += feed * height;
      sum.across_moment += across * height;
    }
  }
  return sum;
}

/// The largest force and moment that the pass could reach, for tolerances.
double whole_force(const Bare& bare) {
  return bare.kc11 * std::pow(bare.feed, 1 - bare.mc) * bare.depth * std::hypot(1, bare.radial_ratio);
}

} // namespace

// --- closed forms against steps ---

TEST_CASE("the load at any moment is the sum over thin discs, for a hundred cuts") {
  // Source: an independent sum in this test, each tooth on a circle (h = fz sin phi). 4000 discs: a disc at the end of
  // an arc counts whole or not at all, so that a sum is off by one disc of a tooth, 1/4000 of the depth, for each tooth
  // in the work; where two walls of a slot are near, both.
  RandomCuts cuts;
  std::mt19937_64 random{7};
  for (int i = 0; i < 100; ++i) {
    const Bare bare = cuts();
    const MillingLoad load = load_of(bare);
    const double turn = std::uniform_real_distribution<double>(0, 2 * pi)(random);
    const Summed sum = by_discs(bare, turn, 4000);
    const CutterLoad at = load.at(radians(turn));
    const double near_enough = whole_force(bare) * 0.001;
    CAPTURE(bare.diameter, bare.width, bare.depth, bare.teeth, bare.helix, bare.mc, bare.least_chip, turn);
    CHECK_THAT(in_newtons(at.feed), WithinAbs(sum.feed, near_enough));
    CHECK_THAT(in_newtons(at.across), WithinAbs(sum.across, near_enough));
    CHECK_THAT(in_newton_metres(at.torque), WithinAbs(sum.torque / 1000, near_enough * bare.diameter / 2000));
    CHECK_THAT(in_newton_metres(at.feed_moment), WithinAbs(sum.feed_moment / 1000, near_enough * bare.depth / 1000));
    CHECK_THAT(in_newton_metres(at.across_moment),
               WithinAbs(sum.across_moment / 1000, near_enough * bare.depth / 1000));
  }
}

TEST_CASE("peaks and means over a turn are those of a cutter turned in small steps") {
  // Source: an independent simulation in this test: 2000 discs, 720 steps a tooth pitch, circular path. Tolerance 0.1
  // %. A straight tooth that enters or leaves at full chip makes a jump that steps can miss by one: those cuts have the
  // helix they would have on a bench.
  struct Named {
    const char* what;
    Bare bare;
  };
  const auto conventional = MillSide::conventional;
  const auto climb = MillSide::climb;
  const auto named = GENERATE_COPY(
      Named{"slot, 2 flutes, 416", {3.175, 3.175, 1.5, 0.0127, 2, 30, conventional, 1875, 0.21, 0.3, 0.002}},
      Named{"slot, 3 flutes, 304", {6.35, 6.35, 3, 0.025, 3, 38, conventional, 2150, 0.20, 0.4, 0.002}},
      Named{"slot, 4 flutes, brass", {6, 6, 6, 0.03, 4, 45, conventional, 700, 0.27, 0.3, 0.003}},
      Named{"slot, 2 straight flutes", {4, 4, 2, 0.02, 2, 0, conventional, 1700, 0.24, 0.5, 0.0}},
      Named{"half width, climb, 4 flutes", {8, 4, 8, 0.03, 4, 30, climb, 1500, 0.22, 0.3, 0.002}},
      Named{"narrow, conventional, 4 flutes", {6, 0.3, 9, 0.04, 4, 30, conventional, 2450, 0.23, 0.5, 0.002}},
      Named{"wide, climb, 6 flutes", {10, 7, 12, 0.02, 6, 45, climb, 1100, 0.25, 0.7, 0.002}},
      Named{"deep, steep helix, 3 flutes", {3, 2, 9, 0.012, 3, 55, conventional, 1100, 0.25, 0.3, 0.001}});
  INFO(named.what);
  const Bare& bare = named.bare;
  constexpr int steps = 720;
  double peak = 0;
  double mean = 0;
  double peak_torque = 0;
  double mean_torque = 0;
  double mean_feed = 0;
  double mean_across = 0;
  for (int step = 0; step < steps; ++step) {
    const Summed sum = by_discs(bare, 2 * pi / bare.teeth * (step + 0.5) / steps, 2000);
    peak = std::max(peak, std::hypot(sum.feed, sum.across));
    peak_torque = std::max(peak_torque, sum.torque);
    mean += std::hypot(sum.feed, sum.across) / steps;
    mean_torque += sum.torque / steps;
    mean_feed += sum.feed / steps;
    mean_across += sum.across / steps;
  }
  const MillingForces forces = milling_forces(load_of(bare));
  CHECK_THAT(in_newtons(forces.peak_resultant), WithinRel(peak, 0.001));
  CHECK_THAT(in_newtons(forces.mean_resultant), WithinRel(mean, 0.001));
  CHECK_THAT(in_newton_metres(forces.peak_torque), WithinRel(peak_torque / 1000, 0.001));
  CHECK_THAT(in_newton_metres(forces.mean_torque), WithinRel(mean_torque / 1000, 0.001));
  CHECK_THAT(in_newtons(forces.mean_tangential), WithinRel(mean_torque / (bare.diameter / 2), 0.001));
  CHECK_THAT(in_newtons(forces.mean_feed), WithinAbs(mean_feed, 0.001 * mean));
  CHECK_THAT(in_newtons(forces.mean_across), WithinAbs(mean_across, 0.001 * mean));
  CHECK_THAT(in_newtons(resultant(load_of(bare).at(forces.peak_turn))), WithinRel(peak, 0.001));
  // Power: the torque goes once round in a turn.
  CHECK_THAT(in_watts(mean_power(load_of(bare), rev_per_min(1200))),
             WithinRel(mean_torque / 1000 * 2 * pi * 20, 0.001));
}

TEST_CASE("the circle a tooth is taken to run on, against the path it truly runs") {
  // Source: an independent simulation in this test: each tooth of a slot on its trochoid, the chip measured along the
  // radius from the centre, to the path of the tooth before. Feed 0.4 and 1.6 % of the diameter, the ends of what small
  // cutters run at. What the circle leaves out is of the first order in feed over diameter: that share is the
  // tolerance (the most that was seen is 1.2 %, of the mean at 1.6 %).
  const double feed = GENERATE(0.004, 0.016);
  const int teeth = GENERATE(2, 4);
  const Bare bare{1, 1, 0.5, feed, teeth, 0, MillSide::conventional, 1500, 0.22, 0.3, 0};
  const double radius = 0.5;
  const double advance = feed * teeth / (2 * pi); // of the centre, in a radian
  const double pitch = 2 * pi / teeth;
  /// Chip at phi, with the centre at 0: the tooth before stood at `then` when the centre was a little behind.
  const auto chip = [&](double phi) {
    const auto aside = [&](double then) { // how far that tooth's place lies off the ray, to be brought to none
      const double centre = -advance * (phi - then + pitch);
      const double x = centre + radius * std::sin(then);
      const double y = radius * std::cos(then);
      return x * std::cos(phi) - y * std::sin(phi);
    };
    double low = phi - 0.2;
    double high = phi + 0.2;
    for (int i = 0; i < 80; ++i) {
      const double middle = (low + high) / 2;
      (aside(middle) < 0 ? low : high) = middle;
    }
    const double centre = -advance * (phi - low + pitch);
    const double reach = (centre + radius * std::sin(low)) * std::sin(phi) + radius * std::cos(low) * std::cos(phi);
    return std::max(0.0, radius - reach);
  };
  double peak = 0;
  double mean = 0;
  constexpr int steps = 720;
  for (int step = 0; step < steps; ++step) {
    double x = 0;
    double y = 0;
    for (int tooth = 0; tooth < teeth; ++tooth) {
      const double phi = pitch * (tooth + (step + 0.5) / steps);
      if (phi > pi) continue;
      const double h = chip(phi);
      if (h <= 0) continue;
      const double force = bare.kc11 * std::pow(h, 1 - bare.mc) * bare.depth;
      x += -force * std::cos(phi) - bare.radial_ratio * force * std::sin(phi);
      y += force * std::sin(phi) - bare.radial_ratio * force * std::cos(phi);
    }
    peak = std::max(peak, std::hypot(x, y));
    mean += std::hypot(x, y) / steps;
  }
  const MillingForces forces = milling_forces(load_of(bare));
  CHECK_THAT(in_newtons(forces.peak_resultant), WithinRel(peak, feed));
  CHECK_THAT(in_newtons(forces.mean_resultant), WithinRel(mean, feed));
}

TEST_CASE("the mean torque of a slot in closed form, by the beta function") {
  // Source: the integral of sin^p over half a turn is B((p + 1)/2, 1/2); Boost.Math gives it by other means. To 1e-10,
  // what the series is good to.
  const double mc = GENERATE(0.0, 0.14, 0.21, 0.25, 0.4, 0.9, 0.999);
  const Bare bare{6, 6, 2, 0.02, 3, 30, MillSide::conventional, 1000, mc, 0.3, 0};
  const double arc = boost::math::beta((2 - mc) / 2, 0.5);
  const double expected = 3 / (2 * pi) * 1000 * std::pow(0.02, 1 - mc) * 2 * arc * 3 / 1000;
  CHECK_THAT(in_newton_metres(load_of(bare).mean().torque), WithinRel(expected, 1e-10));
  const CutterLoad mean = load_of(bare).mean();
  const double lateral = boost::math::beta((3 - mc) / 2, 0.5);
  CHECK_THAT(in_newtons(mean.across), WithinRel(3 / (2 * pi) * 1000 * std::pow(0.02, 1 - mc) * 2 * lateral, 1e-10));
}

TEST_CASE("the point loads of a moment add up to its load, and to its moments") {
  // Source: none needed, two ways to the same sum. Seven Gauss points a tooth, on a power of the angle that starts at 0
  // and has a kink at the least chip: 0.2 % of the peak, or of one tooth's largest force where that is more.
  RandomCuts cuts;
  for (int i = 0; i < 100; ++i) {
    const Bare bare = cuts();
    const MillingLoad load = load_of(bare);
    const Angle turn = turns(0.0137 * i);
    Summed sum;
    for (const PointLoad& part : load.along(turn)) {
      CHECK(part.height >= mm(0));
      CHECK(part.height <= mm(bare.depth));
      sum.feed += in_newtons(part.feed);
      sum.across += in_newtons(part.across);
      sum.across_moment += in_newtons(part.across) * in_mm(part.height);
    }
    const CutterLoad at = load.at(turn);
    const double near_enough = 0.002 * std::max(whole_force(bare), in_newtons(milling_forces(load).peak_resultant));
    CAPTURE(bare.diameter, bare.width, bare.depth, bare.teeth, bare.helix, bare.mc, bare.least_chip);
    CHECK_THAT(sum.feed, WithinAbs(in_newtons(at.feed), near_enough));
    CHECK_THAT(sum.across, WithinAbs(in_newtons(at.across), near_enough));
    CHECK_THAT(sum.across_moment / 1000,
               WithinAbs(in_newton_metres(at.across_moment), near_enough * bare.depth / 1000));
  }
}

TEST_CASE("the turn comes round: a pitch further on the load is the same") {
  RandomCuts cuts;
  for (int i = 0; i < 30; ++i) {
    const Bare bare = cuts();
    const MillingLoad load = load_of(bare);
    const Angle turn = turns(0.021 * i + 0.0017);
    const Angle pitch = turns(1) / bare.teeth;
    const double scale = whole_force(bare);
    CHECK_THAT(in_newtons(load.at(turn + pitch).feed), WithinAbs(in_newtons(load.at(turn).feed), 1e-9 * scale));
    CHECK_THAT(in_newtons(load.at(turn - 3.0 * pitch).across),
               WithinAbs(in_newtons(load.at(turn).across), 1e-9 * scale));
  }
}

TEST_CASE("a helix next to none is a straight flute") {
  // At 0.01 deg over 2 mm the lag is 1e-4 rad, where the two ways of summing meet: the load differs by half of it.
  const Bare straight{5, 5, 2, 0.02, 2, 0, MillSide::conventional, 1500, 0.22, 0.3, 0.002};
  for (const double helix : {0.001, 0.007, 0.0075, 0.02}) {
    Bare slight = straight;
    slight.helix = helix;
    const double scale = whole_force(straight);
    for (const double turn : {0.03, 0.2, 0.31, 0.49}) {
      const CutterLoad one = load_of(straight).at(turns(turn));
      const CutterLoad other = load_of(slight).at(turns(turn));
      CHECK_THAT(in_newtons(other.across), WithinAbs(in_newtons(one.across), 3e-4 * scale));
      CHECK_THAT(in_newton_metres(other.across_moment),
                 WithinAbs(in_newton_metres(one.across_moment), 3e-4 * scale * 2 / 1000));
    }
  }
}

TEST_CASE("force at a wall is the load when a tooth stands there at that height") {
  // Source: the sum over discs, turned to that moment. Tolerance as above.
  RandomCuts cuts;
  int walls = 0;
  for (int i = 0; i < 60; ++i) {
    const Bare bare = cuts();
    const MillingLoad load = load_of(bare);
    for (const MillSide side : {MillSide::conventional, MillSide::climb}) {
      if (!forms_wall(load.pass(), side)) continue;
      ++walls;
      const double height = bare.depth * (i % 5) / 4;
      const double turn =
          (side == MillSide::climb ? pi : 0) + height * std::tan(bare.helix * pi / 180) / (bare.diameter / 2);
      // A straight tooth elsewhere that stands just at the edge of the cut counts as in it; a disc sum can miss it.
      if (bare.helix == 0 &&
          std::abs(std::remainder(std::acos(1 - 2 * bare.width / bare.diameter), 2 * pi / bare.teeth)) < 1e-6)
        continue;
      CAPTURE(bare.diameter, bare.width, bare.depth, bare.teeth, bare.helix, height);
      CHECK_THAT(in_newtons(force_at_wall(load, {side, mm(height)})),
                 WithinAbs(by_discs(bare, turn, 4000).across, 0.001 * whole_force(bare)));
    }
  }
  CHECK(walls > 60);
}

// --- the metal at its edges ---

TEST_CASE("below the least chip the specific force stays what it is there") {
  const Kienzle metal{megapascals(2000), 0.25};
  const Stress at_least = specific_force(metal, {mm(0.002), mm(0.002)});
  CHECK_THAT(in_megapascals(at_least), WithinRel(2000 * std::pow(0.002, -0.25), 1e-14));
  CHECK(specific_force(metal, {mm(0.0001), mm(0.002)}) == at_least);
  CHECK(specific_force(metal, {mm(0), mm(0.002)}) == at_least);
  CHECK(specific_force(metal, {mm(0.003), mm(0.002)}) < at_least);
  CHECK(specific_force(metal, {mm(1), mm(0)}) == megapascals(2000));
}

TEST_CASE("a least chip that no tooth reaches makes the force a straight line of the chip") {
  // The whole arc then has one specific force: as a constant of that height.
  const Bare rubbing{3, 3, 1, 0.003, 2, 30, MillSide::conventional, 1500, 0.22, 0.3, 0.004};
  Bare constant = rubbing;
  constant.kc11 = 1500 * std::pow(0.004, -0.22);
  constant.mc = 0;
  constant.least_chip = 0;
  for (const double turn : {0.05, 0.2, 0.33, 0.47})
    CHECK_THAT(in_newtons(load_of(rubbing).at(turns(turn)).across),
               WithinRel(in_newtons(load_of(constant).at(turns(turn)).across), 1e-9));
}

TEST_CASE("the least chip is a share of the edge radius; the doubt steps up at 0.02 and 0.005 mm") {
  // Source: least chip 0.14 to 0.43 of the edge (micro-milling papers, from memory): 5 um at 0.4 is 2 um.
  CHECK_THAT(in_mm(minimum_chip_thickness(micrometres(5), 0.4)), WithinRel(0.002, 1e-14));
  CHECK(minimum_chip_thickness(mm(0), 0.4) == mm(0));
  CHECK(size_effect_doubt(mm(0.3)) == 1);
  CHECK(size_effect_doubt(mm(0.02)) == 1);
  CHECK(size_effect_doubt(mm(0.0199)) == 1.5);
  CHECK(size_effect_doubt(mm(0.005)) == 1.5);
  CHECK(size_effect_doubt(mm(0.0049)) == 2);
}

TEST_CASE("the feed factor follows the nearest pair beyond the ends of its table") {
  // 0.1 to 0.2 at 1.2 to 1.0, then flat: exponents -0.263 and 0.
  const std::vector<FeedFactor> printed{{mm_per_tooth(0.1), 1.2}, {mm_per_tooth(0.2), 1.0}, {mm_per_tooth(0.4), 1.0}};
  CHECK_THAT(feed_factor(printed, mm_per_tooth(0.05)), WithinRel(1.44, 1e-14)); // half the feed, 1.2 times again
  CHECK_THAT(feed_factor(printed, mm_per_tooth(0.1 * std::sqrt(2.0))), WithinRel(std::sqrt(1.2), 1e-14));
  CHECK(feed_factor(printed, mm_per_tooth(4)) == 1);
  CHECK_THROWS_AS(feed_factor({}, mm_per_tooth(0.1)), std::domain_error);
  CHECK_THROWS_AS(feed_factor(std::span(printed).first(1), mm_per_tooth(0.1)), std::domain_error);
  CHECK_THROWS_AS(feed_factor(printed, mm_per_tooth(0)), std::domain_error);
  CHECK_THROWS_AS(feed_factor(printed, mm_per_tooth(no_number)), std::domain_error);
  const std::vector<FeedFactor> falling{{mm_per_tooth(0.2), 1.2}, {mm_per_tooth(0.1), 1.0}};
  CHECK_THROWS_AS(feed_factor(falling, mm_per_tooth(0.1)), std::domain_error);
  const std::vector<FeedFactor> none{{mm_per_tooth(0.1), 0}, {mm_per_tooth(0.2), 1.0}};
  CHECK_THROWS_AS(feed_factor(none, mm_per_tooth(0.1)), std::domain_error);
}

TEST_CASE("figures of a metal outside their range are refused") {
  const Chip chip{mm(0.02), mm(0)};
  CHECK_THROWS_AS(specific_force({megapascals(0), 0.2}, chip), std::domain_error);
  CHECK_THROWS_AS(specific_force({megapascals(1000), -0.1}, chip), std::domain_error);
  CHECK_THROWS_AS(specific_force({megapascals(1000), 1}, chip), std::domain_error);
  CHECK_THROWS_AS(specific_force({megapascals(1000), no_number}, chip), std::domain_error);
  CHECK_THROWS_AS(specific_force({megapascals(1000), 0.2}, {mm(0), mm(0)}), std::domain_error);
  CHECK_THROWS_AS(specific_force({megapascals(1000), 0.2}, {mm(-1), mm(1)}), std::domain_error);
  CHECK_THROWS_AS(specific_force({megapascals(0), 1, 1}), std::domain_error);
  CHECK_THROWS_AS(specific_force({megapascals(1000), 0, 1}), std::domain_error);
  CHECK_THROWS_AS(specific_force({megapascals(1000), 1, 0.9}), std::domain_error);
  CHECK_THROWS_AS(size_effect_doubt(mm(0)), std::domain_error);
  CHECK_THROWS_AS(size_effect_doubt(mm(no_number)), std::domain_error);
  CHECK_THROWS_AS(minimum_chip_thickness(mm(-1), 0.4), std::domain_error);
  CHECK_THROWS_AS(minimum_chip_thickness(mm(1), no_number), std::domain_error);
}

TEST_CASE("a pass that no end mill makes is refused") {
  const Bare good{5, 5, 2, 0.02, 2, 30, MillSide::conventional, 1500, 0.22, 0.3, 0.002};
  CHECK_NOTHROW(load_of(good));
  const auto refused = [&](const std::function<void(Bare&)>& spoil) {
    Bare bad = good;
    spoil(bad);
    CHECK_THROWS_AS(load_of(bad), std::domain_error);
  };
  for (const double nothing : {0.0, -1.0, no_number}) {
    refused([&](Bare& b) { b.width = nothing; });
    refused([&](Bare& b) { b.diameter = nothing; });
    refused([&](Bare& b) { b.depth = nothing; });
    refused([&](Bare& b) { b.feed = nothing; });
    refused([&](Bare& b) { b.kc11 = nothing; });
  }
  refused([](Bare& b) { b.width = 5.001; });
  refused([](Bare& b) { b.teeth = 0; });
  refused([](Bare& b) { b.teeth = 13; });
  refused([](Bare& b) { b.helix = -1; });
  refused([](Bare& b) { b.helix = 60.5; });
  refused([](Bare& b) { b.radial_ratio = -0.1; });
  refused([](Bare& b) { b.least_chip = -0.1; });
  refused([](Bare& b) { b.least_chip = std::numeric_limits<double>::infinity(); });
  CHECK_THROWS_AS(mean_power(load_of(good), rev_per_min(-1)), std::domain_error);
  CHECK_THROWS_AS(removal_rate(pass_of(good), rev_per_min(no_number)), std::domain_error);
}

TEST_CASE("one to twelve flutes and helices to 60 deg are taken") {
  const int teeth = GENERATE(range(1, 13));
  const double helix = GENERATE(0.0, 60.0);
  const Bare bare{5, 5, 2, 0.02, teeth, helix, MillSide::conventional, 1500, 0.22, 0.3, 0.002};
  const MillingForces forces = milling_forces(load_of(bare));
  CHECK(forces.peak_resultant >= forces.mean_resultant);
  CHECK(forces.peak_torque >= forces.mean_torque * (1 - 1e-9));
}

TEST_CASE("a slot has both walls, a side pass its own; a place off the wall is refused") {
  Bare bare{5, 5, 2, 0.02, 2, 30, MillSide::climb, 1500, 0.22, 0.3, 0.002};
  CHECK(forms_wall(pass_of(bare), MillSide::conventional));
  CHECK(forms_wall(pass_of(bare), MillSide::climb));
  bare.width = 1;
  CHECK_FALSE(forms_wall(pass_of(bare), MillSide::conventional));
  CHECK(forms_wall(pass_of(bare), MillSide::climb));
  const MillingLoad load = load_of(bare);
  CHECK_THROWS_AS(force_at_wall(load, {MillSide::conventional, mm(0)}), std::domain_error);
  CHECK_THROWS_AS(force_at_wall(load, {MillSide::climb, mm(-0.1)}), std::domain_error);
  CHECK_THROWS_AS(force_at_wall(load, {MillSide::climb, mm(2.1)}), std::domain_error);
  CHECK_NOTHROW(force_at_wall(load, {MillSide::climb, mm(2)}));
}

// --- run-out ---

namespace {

/// The thickest chip that any tooth takes with the run-out turned to this phase [turns], by what is left standing:
/// every tooth in turn pares the work down to its own reach, seen along the feed; after some turns the chips repeat.
double thickest_at(double phase, int teeth, double offset) {
  double face = 0; // of the work ahead, from where the centre started; the feed is 1
  double thickest = 0;
  for (int pass = 0; pass < 4 * teeth; ++pass) {
    const double reach = pass + offset * std::cos(2 * pi * (phase + pass / static_cast<double>(teeth)));
    if (pass >= 2 * teeth) thickest = std::max(thickest, reach - face);
    face = std::max(face, reach);
  }
  return thickest;
}

/// The worst of 720 phases, and then of 720 about that one.
double largest_by_paring(int teeth, double offset) {
  constexpr int phases = 720;
  double worst = 0;
  double largest = 0;
  for (const double width : {1.0, 2.0 / phases}) {
    const double from = worst - width / 2;
    for (int i = 0; i <= phases; ++i) {
      const double phase = from + width * i / phases;
      const double thickest = thickest_at(phase, teeth, offset);
      if (thickest <= largest) continue;
      largest = thickest;
      worst = phase;
    }
  }
  return largest;
}

} // namespace

TEST_CASE("the largest tooth load is the one found by paring the work down, tooth by tooth") {
  // Source: an independent simulation in this test; The worst phase is found to 2e-6 turns, and the chip changes
  // by at most 4 pi times the offset in a turn: 2.5e-5 of it.
  const int teeth = GENERATE(range(1, 13));
  for (const double offset : {0.0, 0.1, 0.5, 1.0, 2.0, 3.4, 5.0, 9.0, 20.0}) {
    CAPTURE(teeth, offset);
    const double chip = in_mm(largest_tooth_chip(mm_per_tooth(1), flutes(teeth), mm(offset)));
    CHECK_THAT(chip, WithinAbs(largest_by_paring(teeth, offset), 3e-5 * offset + 1e-12));
    const double closed = std::min(1.0 * teeth, 1 + 2 * offset * std::sin(pi / teeth));
    if (teeth <= 3) CHECK_THAT(chip, WithinRel(closed, 1e-9));
    CHECK(chip <= closed * (1 + 1e-12));
  }
}

TEST_CASE("how far the closed form of the tooth load is too high, by flutes") {
  // Source: the paring above, at the offset over feed where it is worst; the figures of the header and the page.
  struct Row {
    int teeth;
    double offset, percent;
  };
  const auto row =
      GENERATE(Row{4, 2.12, 3.3}, Row{5, 3.40, 9.1}, Row{6, 5.00, 15.0}, Row{9, 11.70, 30.0}, Row{12, 21.25, 41.0});
  const double closed = std::min(1.0 * row.teeth, 1 + 2 * row.offset * std::sin(pi / row.teeth));
  const double chip = largest_by_paring(row.teeth, row.offset);
  CHECK_THAT(in_mm(largest_tooth_chip(mm_per_tooth(1), flutes(row.teeth), mm(row.offset))), WithinRel(chip, 1e-4));
  CHECK_THAT(100 * (closed / chip - 1), WithinAbs(row.percent, 0.06));
}

TEST_CASE("run-out outside its range is refused") {
  CHECK_THROWS_AS(largest_tooth_chip(mm_per_tooth(0), flutes(2), mm(0.01)), std::domain_error);
  CHECK_THROWS_AS(largest_tooth_chip(mm_per_tooth(0.01), flutes(0), mm(0.01)), std::domain_error);
  CHECK_THROWS_AS(largest_tooth_chip(mm_per_tooth(0.01), flutes(13), mm(0.01)), std::domain_error);
  CHECK_THROWS_AS(largest_tooth_chip(mm_per_tooth(0.01), flutes(2), mm(-0.01)), std::domain_error);
  CHECK_THROWS_AS(largest_tooth_chip(mm_per_tooth(0.01), flutes(2), mm(no_number)), std::domain_error);
}

// --- doubt ---

TEST_CASE("two models of one force make a spread: both with their scatter, the size effect on the high side") {
  // Quarters and powers of two: exact in binary.
  const Spread<Force> joined = joined_force({newtons(64), newtons(96)}, {.scatter = 0.25, .size_effect = 1.5});
  CHECK(joined.low == newtons(48));
  CHECK(joined.value == newtons(64));
  CHECK(joined.high == newtons(180));
  const Spread<Force> other = joined_force({newtons(96), newtons(64)}, {.scatter = 0.25, .size_effect = 1});
  CHECK(other.low == newtons(48));
  CHECK(other.value == newtons(96));
  CHECK(other.high == newtons(120));
  const Spread<Power> power = in_proportion(watts(128), joined);
  CHECK(power.low == watts(96));
  CHECK(power.value == watts(128));
  CHECK(power.high == watts(360));
  CHECK_THROWS_AS(joined_force({newtons(0), newtons(1)}, {0.25, 1}), std::domain_error);
  CHECK_THROWS_AS(joined_force({newtons(1), newtons(no_number)}, {0.25, 1}), std::domain_error);
  CHECK_THROWS_AS(joined_force({newtons(1), newtons(1)}, {1, 1}), std::domain_error);
  CHECK_THROWS_AS(joined_force({newtons(1), newtons(1)}, {-0.1, 1}), std::domain_error);
  CHECK_THROWS_AS(joined_force({newtons(1), newtons(1)}, {0.25, 0.5}), std::domain_error);
}
