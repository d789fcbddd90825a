// The geometry of a drill's point. No page with worked numbers could be read: the figures below were worked out beside
// this project by a closed form and by a numeric method (bisection of two planes, a wedge lowered by steps, half a turn
// simulated), which agreed; each is held to its last printed digit. The second derivations in this file are numeric
// too, and their own.

#include "catch.hpp"
#include "worked_figures.hpp"

#include <cmath>

#include <quillside/model/lip.hpp>
#include <quillside/model/notch.hpp>
#include <quillside/model/uneven_lips.hpp>

using namespace quillside;
using quillside::test::six_figures;
using quillside::test::to_radians;
using quillside::test::WithinAbs;
using quillside::test::WithinRel;

namespace {

struct Flat {
  double diameter, web, point, relief;                         // given, mm and deg
  double slope, chisel_edge, depth, lip, chisel, ignoring_web; // worked out
};

Flat one_of_the_flat_points() {
  return GENERATE(Flat{12.7, 1.8, 118, 12, 0.128694, 102.089, 3.66112, 7.10845, 1.84082, 120.068},
                  Flat{6.35, 1.1, 118, 14, 0.147471, 103.79, 1.79778, 3.49058, 1.13265, 120.96},
                  Flat{12.7, 1.8, 135, 10, 0.118819, 106.006, 2.49677, 6.52437, 1.87259, 137.071},
                  Flat{3.175, 0.65, 118, 16, 0.167278, 105.557, 0.879298, 1.70725, 0.674719, 122.037},
                  Flat{0.5, 0.075, 135, 10, 0.115502, 105.581, 0.0980505, 0.256218, 0.0778612, 137.17});
}

PointShape shape(const Flat& flat) { return {mm(flat.diameter), mm(flat.web), degrees(flat.point)}; }

} // namespace

TEST_CASE("a flat-ground point: slope, chisel edge, lip and what the tip would read") {
  // Source: worked figures (closed form and bisection of two planes), six digits each; no published page.
  const Flat flat = one_of_the_flat_points();
  INFO(flat.diameter << " mm, " << flat.point << " deg");
  const double slope = flank_slope(shape(flat), degrees(flat.relief));
  const Angle edge = chisel_edge_of_flat(shape(flat), slope);
  const Length depth = lip_depth(shape(flat), edge);
  CHECK_THAT(slope, WithinAbs(flat.slope, six_figures(flat.slope)));
  CHECK_THAT(in_degrees(edge), WithinAbs(flat.chisel_edge, six_figures(flat.chisel_edge)));
  CHECK_THAT(in_mm(depth), WithinAbs(flat.depth, six_figures(flat.depth)));
  CHECK_THAT(in_mm(lip_length(shape(flat), edge)), WithinAbs(flat.lip, six_figures(flat.lip)));
  CHECK_THAT(in_mm(chisel_length(mm(flat.web), edge)), WithinAbs(flat.chisel, six_figures(flat.chisel)));
  CHECK_THAT(in_degrees(included_ignoring_web({mm(flat.diameter), depth})),
             WithinAbs(flat.ignoring_web, six_figures(flat.ignoring_web)));
}

TEST_CASE("lip depth tells the included angle exactly; over the tip without the web it reads 2 deg high") {
  // Source: the same worked case, to the digits it was given with.
  // 12.7 mm, web 1.8, relief 12, flat: 3.6611 mm to the end of the lip is 118.0; taken for a sharp point it is 120.07.
  const PointShape point{mm(12.7), mm(1.8), degrees(118)};
  const Angle edge = chisel_edge_of_flat(point, flank_slope(point, degrees(12)));
  CHECK_THAT(in_degrees(included_from_lip_depth({point.diameter, point.web, edge, mm(3.6611)})),
             WithinAbs(118.0, 0.001));
  CHECK_THAT(in_degrees(included_ignoring_web({mm(12.7), mm(3.6611)})), WithinAbs(120.07, 0.005));
}

TEST_CASE("there and back: lip depth, chisel length, relief") {
  // Source: none needed, the inverse of the same relations; tolerance: a few roundings.
  const Flat flat = one_of_the_flat_points();
  const Angle edge = degrees(flat.chisel_edge);
  const Length depth = lip_depth(shape(flat), edge);
  CHECK_THAT(in_degrees(included_from_lip_depth({mm(flat.diameter), mm(flat.web), edge, depth})),
             WithinRel(flat.point, 1e-13));
  CHECK_THAT(in_mm(web_from_chisel({chisel_length(mm(flat.web), edge), edge})), WithinRel(flat.web, 1e-14));
  CHECK_THAT(in_degrees(relief_of_slope(shape(flat), flank_slope(shape(flat), degrees(flat.relief)))),
             WithinRel(flat.relief, 1e-13));
}

TEST_CASE("an acute chisel edge angle and its supplement are the same edge") {
  // Source: British practice gives the obtuse angle (BS 328, as a page relays it), other texts its acute supplement.
  const PointShape point{mm(6.35), mm(1.1), degrees(118)};
  CHECK_THAT(in_mm(lip_length(point, degrees(55))), WithinRel(in_mm(lip_length(point, degrees(125))), 1e-14));
}

TEST_CASE("the chisel edge is where two flank planes meet, found by walking along it") {
  // Source: an independent numeric derivation in this test.
  // Second derivation: plane 1 is z = -x cot k + m (y - w), plane 2 the same turned half about the axis. They meet
  // where both give one z; the lip y = w crosses that line at the chisel corner, found here by bisection in x.
  const Flat flat = one_of_the_flat_points();
  const double w = flat.web / 2;
  const double cot = 1 / std::tan(flat.point / 2 * to_radians);
  const double m = flank_slope(shape(flat), degrees(flat.relief));
  const auto apart = [&](double x) { return (-x * cot) - (x * cot + m * (-w - w)); };
  double low = 0;
  double high = flat.diameter / 2;
  for (int i = 0; i < 200; ++i) {
    const double middle = (low + high) / 2;
    (apart(middle) > 0 ? low : high) = middle;
  }
  const double corner = std::sqrt(flat.diameter * flat.diameter / 4 - w * w);
  const Angle edge = chisel_edge_of_flat(shape(flat), m);
  // The lip runs from that corner outward.
  CHECK_THAT(in_mm(lip_reach(shape(flat), edge)), WithinRel(corner - low, 1e-10));
}

TEST_CASE("uneven lips: where the apex lies, and the most a free point drills over size") {
  // Source: worked figures (closed form and bisection of two lines), six digits each; no published page.
  struct Row {
    double diameter, half_a, half_b, height_a, height_b, offset, oversize;
  };
  const auto row =
      GENERATE(Row{12.7, 59, 59, 0.0381, -0.0381, 0.063409, 0.126818}, Row{12.7, 59, 59, 0, -0.1, 0.083214, 0.166428},
               Row{12.7, 58, 60, 0, 0, 0.125495, 0.250991}, Row{6.35, 59, 59, 0.025, -0.025, 0.041607, 0.083214},
               Row{12.7, 67.5, 67.5, 0.0381, -0.0381, 0.0919815, 0.183963});
  const UnevenLips lips{mm(row.diameter), degrees(row.half_a), degrees(row.half_b),
                        mm(row.height_a), mm(row.height_b),    mm(row.diameter / 4)};
  CHECK_THAT(in_mm(apex_offset(lips)), WithinAbs(row.offset, six_figures(row.offset)));
  CHECK_THAT(in_mm(free_point_oversize(lips)), WithinAbs(row.oversize, six_figures(row.oversize)));
  // Second derivation: step along both lip lines until they meet.
  const double cot_a = 1 / std::tan(row.half_a * to_radians);
  const double cot_b = 1 / std::tan(row.half_b * to_radians);
  const double radius = row.diameter / 4; // the heights are those of mid lip
  const auto gap = [&](double x) {
    return (row.height_a + (radius - x) * cot_a) - (row.height_b + (radius + x) * cot_b);
  };
  double low = -radius;
  double high = radius;
  for (int i = 0; i < 200; ++i) {
    const double middle = (low + high) / 2;
    (gap(middle) > 0 ? low : high) = middle;
  }
  CHECK_THAT(in_mm(apex_offset(lips)), WithinAbs(low, 1e-10 * radius));
}

TEST_CASE("equal angles: the oversize is the lip height difference times the tangent of half the point") {
  // Source: the closed form; a trade article (low trust) gives the factor 2 between the two.
  // 1.664 times it at 118, 2.414 at 135: on either side of the shop rule of twice (a trade article, low trust).
  const auto factor = [](double point) {
    return in_mm(free_point_oversize({mm(10), degrees(point / 2), degrees(point / 2), mm(0.1), mm(0), mm(5)})) / 0.1;
  };
  CHECK_THAT(factor(118), WithinAbs(1.664, 0.0005));
  CHECK_THAT(factor(135), WithinAbs(2.414, 0.0005));
}

TEST_CASE("each lip's share of the chip; from half the feed on, one cuts alone") {
  // Source: worked figures (closed form and half a turn simulated); no published page.
  struct Row {
    double feed, difference, higher, lower;
  };
  const auto row = GENERATE(Row{0.1, 0.03, 0.08, 0.02}, Row{0.15, 0.05, 0.125, 0.025}, Row{0.1, 0.06, 0.1, 0},
                            Row{0.1, 0, 0.05, 0.05});
  const ChipShare share = chip_share(mm_per_rev(row.feed), mm(row.difference));
  CHECK_THAT(in_mm(share.higher), WithinAbs(row.higher, 1e-15));
  CHECK_THAT(in_mm(share.lower), WithinAbs(row.lower, 1e-15));
}

TEST_CASE("notches of regular figures: a pair of hexagons makes 120 and not 135; octagon and square make 135") {
  // Source: angles of regular figures, elementary geometry.
  const auto notch = [](int a, int b) { return in_degrees(notch_between(interior_angle(a), interior_angle(b))); };
  CHECK_THAT(notch(6, 6), WithinAbs(120, 1e-12));
  CHECK_THAT(notch(8, 4), WithinAbs(135, 1e-12));
  CHECK_THAT(notch(6, 4), WithinAbs(150, 1e-12));
  CHECK_THAT(in_degrees(notch_between(interior_angle(6), turns(0.5))), WithinAbs(60, 1e-12)); // on a flat plate
  CHECK_THROWS_AS(notch_between(interior_angle(4), interior_angle(4)), std::domain_error);    // 180: no notch
  CHECK_THROWS_AS(interior_angle(2), std::domain_error);
}

TEST_CASE("light in a notch: a sharp point, and a flat-ground one with its web") {
  // Source: worked figures (closed form and a wedge lowered numerically); no published page.
  struct Row {
    double notch, point, diameter, web;
    LightGap::Where where;
    double gap, last_digit;
  };
  using Where = LightGap::Where;
  const auto row = GENERATE(
      Row{120, 118, 12.7, 0, Where::corner, 0.12929, 0.000005}, Row{120, 135, 12.7, 0, Where::tip, 1.03592, 0.000005},
      Row{120, 118, 6.35, 0, Where::corner, 0.0646448, 0.00000005}, Row{135, 135, 12.7, 0, Where::none, 0, 1e-12},
      Row{120, 118, 12.7, 1.8, Where::corner, 0.1241, 0.00005}, Row{120, 135, 12.7, 1.8, Where::tip, 1.132, 0.0005});
  const PointShape point{mm(row.diameter), mm(row.web), degrees(row.point)};
  const double relief = row.point == 135 ? 10 : 12;
  const Angle edge = row.web == 0 ? degrees(90) : chisel_edge_of_flat(point, flank_slope(point, degrees(relief)));
  const LightGap light = light_gap(degrees(row.notch), point, edge);
  CHECK(light.where == row.where);
  CHECK_THAT(in_mm(light.gap), WithinAbs(row.gap, row.last_digit));
}

TEST_CASE("the light of a notch again, by lowering the V over the lip in steps") {
  // Source: an independent numeric derivation in this test.
  // Second derivation: a V z = |x| cot(v) is lowered over the profile of one lip until it touches; the gap at the other
  // end is what is left, along the axis under the tip, square to the side at the corner.
  const double notch = GENERATE(110.0, 117.0, 119.0, 120.0, 130.0);
  const PointShape point{mm(12.7), mm(1.8), degrees(118)};
  const Angle edge = chisel_edge_of_flat(point, flank_slope(point, degrees(12)));
  const double outer = in_mm(corner_reach(point));
  const double inner = outer - in_mm(lip_reach(point, edge));
  const double cot_v = 1 / std::tan(notch / 2 * to_radians);
  const double cot_k = 1 / std::tan(59 * to_radians);
  double clearance_inner = 1e9;
  double clearance_outer = 0;
  double least = 1e9;
  constexpr int steps = 20000;
  for (int i = 0; i <= steps; ++i) {
    const double x = inner + (outer - inner) * i / steps;
    const double clearance = (x * cot_k) - (x * cot_v); // of the V's side behind the lip, up to one constant
    least = std::min(least, clearance);
    if (i == 0) clearance_inner = clearance;
    if (i == steps) clearance_outer = clearance;
  }
  const LightGap light = light_gap(degrees(notch), point, edge);
  if (light.where == LightGap::Where::corner) {
    CHECK_THAT(in_mm(light.gap), WithinRel((clearance_outer - least) * std::sin(notch / 2 * to_radians), 1e-9));
  } else {
    // Under the tip the chisel edge is level: the bottom of the V lies below it by that of the inner end and by inner
    // cot v.
    CHECK(light.where == LightGap::Where::tip);
    CHECK_THAT(in_mm(light.gap), WithinRel(clearance_inner - least + inner * cot_v, 1e-9));
  }
}
