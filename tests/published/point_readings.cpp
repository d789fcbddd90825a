// What bench readings and photographs tell of a drill's point, and what a worn point costs. No page with worked numbers
// could be read: the figures below were worked out beside this project by a closed form and by a numeric method, which
// agreed; each is held to its last printed digit. The second derivations in this file are numeric too, and their own: a
// solid under two flanks is walked and measured, a V is lowered over it, it is photographed, a land is worn into a
// wedge and ground away, all in raw doubles.

#include "catch.hpp"
#include "worked_figures.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <stdexcept>
#include <string>
#include <vector>

#include <quillside/model/lip.hpp>
#include <quillside/model/notch.hpp>
#include <quillside/model/photo_marks.hpp>
#include <quillside/model/uneven_lips.hpp>
#include <quillside/model/wear.hpp>
#include <quillside/quantity/angle.hpp>

using namespace quillside;
using quillside::test::no_number;
using quillside::test::six_figures;
using quillside::test::to_radians;
using quillside::test::WithinAbs;
using quillside::test::WithinRel;

namespace {

/// Where a function that changes sign between two places does so, by halving.
template <class Function> double where_zero(const Function& function, double low, double high) {
  const bool below = function(low) < 0;
  if (below == (function(high) < 0)) throw std::logic_error{"no change of sign between two places of a test"};
  for (int halving = 0; halving < 200; ++halving) {
    const double middle = (low + high) / 2;
    ((function(middle) < 0) == below ? low : high) = middle;
  }
  return (low + high) / 2;
}

/// How far something can be moved while it stays clear, by steps that grow smaller; it does not stay clear for ever.
template <class Clear> double how_far(const Clear& clear, double step) {
  double far = 0;
  for (const double least = step * 1e-14; step > least; step /= 10)
    while (clear(far + step)) far += step;
  return far;
}

// --- a solid point ---
// z is the drill's axis, toward the work. Lip A lies at y = w on the side of x above 0, lip B at y = -w on the other;
// seen from the point the drill cuts counter-clockwise. The solid lies under both flanks and inside the cylinder.

struct Place {
  double x, y, z;
};

double distance(Place a, Place b) { return std::hypot(a.x - b.x, a.y - b.y, a.z - b.z); }

struct Solid {
  double radius, half_web;                    // mm
  std::function<double(double, double)> a, b; // heights of the flanks behind lip A and lip B

  [[nodiscard]] double height(double x, double y) const { return std::min(a(x, y), b(x, y)); }
  /// A place on the line of lip A (side 1) or lip B (side -1), so far out from the axis in the side view.
  [[nodiscard]] Place on_lip(int side, double out) const {
    const double x = side * out;
    const double y = side * half_web;
    return {x, y, side > 0 ? a(x, y) : b(x, y)};
  }
  /// Where the lip leaves the cylinder.
  [[nodiscard]] Place corner(int side) const {
    return on_lip(side, where_zero([&](double out) { return std::hypot(out, half_web) - radius; }, 0, 2 * radius));
  }
  /// Where the lip begins: walking outward on its line, the other flank stops being the lower one.
  [[nodiscard]] Place inner(int side) const {
    const double y = side * half_web;
    const auto other_higher = [&](double out) { return side * (b(side * out, y) - a(side * out, y)); };
    const double step = radius / 1000;
    double out = -radius / 2; // of uneven lips it may begin beyond the axis
    while (other_higher(out) < 0) out += step;
    return on_lip(side, where_zero(other_higher, out - step, out));
  }
  /// The tip: where the chisel edge crosses the axis, and highest there unless the lips are uneven.
  [[nodiscard]] Place tip() const { return {0, 0, height(0, 0)}; }
};

/// Height of a flank, plane: in the end view its slope square to its lip is \p slope; where its lip, carried on, passes
/// the axis it stands at \p at_axis.
auto plane(double half_angle, double slope, double half_web, double at_axis) {
  const double along = 1 / std::tan(half_angle * to_radians);
  return [=](double x, double y) { return at_axis - x * along + slope * (y - half_web); };
}

/// A point of two planes, each turned half a turn from the other, or not quite so.
struct Halves {
  double half_a, half_b;     // deg
  double height_a, height_b; // where the lips, carried on, pass the axis
};
Solid flat_solid(double diameter, double web, Halves halves, double slope) {
  const double w = web / 2;
  const auto flank_b = plane(halves.half_b, slope, w, halves.height_b);
  return {diameter / 2, w, plane(halves.half_a, slope, w, halves.height_a),
          [=](double x, double y) { return flank_b(-x, -y); }};
}

/// The relief of lip A at its outer corner: how fast its flank falls going back round the cylinder, in deg.
double relief_measured(const Solid& solid) {
  const Place corner = solid.corner(1);
  const double turn = std::atan2(corner.y, corner.x);
  const auto round = [&](double by) {
    return solid.a(solid.radius * std::cos(turn + by), solid.radius * std::sin(turn + by));
  };
  constexpr double step = 1e-4; // rad; what the flank bends leaves (1e-4)^2/6 of the fall
  return std::atan((round(step) - round(-step)) / (2 * step * solid.radius)) / to_radians;
}

/// The point of two planes whose relief, measured, is the one wanted.
Solid flat_of_relief(double diameter, double web, double point, double relief) {
  const auto with = [&](double slope) { return flat_solid(diameter, web, {point / 2, point / 2, 0, 0}, slope); };
  return with(where_zero([&](double slope) { return relief_measured(with(slope)) - relief; }, -1, 2));
}

/// Slope of flank A square to its lip, in the end view.
double slope_measured(const Solid& solid) {
  const Place corner = solid.corner(1);
  constexpr double step = 1e-5;
  return (solid.a(corner.x, corner.y + step) - solid.a(corner.x, corner.y - step)) / (2 * step);
}

/// Angle between chisel edge, corner to corner, and lip A in the end view, obtuse, in deg.
double chisel_edge_measured(const Solid& solid) {
  const Place in = solid.inner(1);
  const Place other = solid.inner(-1);
  return 180 - std::atan2(in.y - other.y, in.x - other.x) / to_radians;
}

double depth_measured(const Solid& solid) { return solid.inner(1).z - solid.corner(1).z; }
double length_over_tip(const Solid& solid) { return solid.tip().z - solid.corner(1).z; }

/// Length of lip A, walked.
double lip_walked(const Solid& solid) {
  const Place in = solid.inner(1);
  const Place out = solid.corner(1);
  constexpr int steps = 1000;
  double length = 0;
  Place last = in;
  for (int i = 1; i <= steps; ++i) {
    const Place next = solid.on_lip(1, in.x + (out.x - in.x) * i / steps);
    length += distance(last, next);
    last = next;
  }
  return length;
}

/// Length of the chisel edge in the end view, walked: at each height across the web, where the two flanks are level.
double chisel_walked(const Solid& solid) {
  const double w = solid.half_web;
  const auto edge = [&](double y) {
    return where_zero([&](double x) { return solid.a(x, y) - solid.b(x, y); }, -solid.radius, solid.radius);
  };
  constexpr int steps = 200;
  double length = 0;
  double last = edge(-w);
  for (int i = 1; i <= steps; ++i) {
    const double next = edge(-w + 2 * w * i / steps);
    length += std::hypot(next - last, 2 * w / steps);
    last = next;
  }
  return length;
}

/// A flank that is a cone: every place on it sees the apex at one angle to the cone's axis. The apex lies on the lip,
/// carried on beyond the axis by \p beyond; the tangent plane along the lip is the plane above.
auto cone(double half_angle, double slope, double half_web, double cone_half_angle, double beyond) {
  const double k = half_angle * to_radians;
  const double q = cone_half_angle * to_radians;
  const double cot = 1 / std::tan(k);
  const Place apex{-beyond, half_web, beyond * cot};
  const double steep = std::hypot(cot, slope, 1);
  // From the lip's outward direction toward the inside of the metal, by the cone's own half angle.
  const Place axis{std::cos(q) * std::sin(k) - std::sin(q) * cot / steep, std::sin(q) * slope / steep,
                   -std::cos(q) * std::cos(k) - std::sin(q) / steep};
  const auto tangent = plane(half_angle, slope, half_web, 0);
  return [=](double x, double y) {
    const auto outside = [&](double z) {
      const Place from{x - apex.x, y - apex.y, z - apex.z};
      return std::hypot(from.x, from.y, from.z) * std::cos(q) - (from.x * axis.x + from.y * axis.y + from.z * axis.z);
    };
    const double top = tangent(x, y); // the cone lies under it
    return where_zero(outside, top + 1e-9, top - 1000);
  };
}

Solid cone_solid(double diameter, double web, double point, double slope, double cone_half_angle, double beyond) {
  const auto flank = cone(point / 2, slope, web / 2, cone_half_angle, beyond);
  return {diameter / 2, web / 2, flank, [=](double x, double y) { return flank(-x, -y); }};
}

/// 12.7 mm, web 1.8, 118 deg, relief 12, chisel edge 130, ground as a cone of this half angle.
Solid cone_of_130(double cone_half_angle) {
  const double slope = slope_measured(flat_of_relief(12.7, 1.8, 118, 12)); // a cone has the relief of its tangent plane
  const auto with = [&](double beyond) { return cone_solid(12.7, 1.8, 118, slope, cone_half_angle, beyond); };
  // The chisel corner lies where a line at 50 deg through the axis meets the lip: both flanks are level there.
  const double x = 0.9 / std::tan(50 * to_radians);
  const auto apart = [&](double beyond) {
    const Solid solid = with(beyond);
    return solid.b(x, 0.9) - solid.a(x, 0.9);
  };
  return with(where_zero(apart, 1, 60));
}

/// Points of two flats: given, and the chisel edge and lip depth they have. Source: worked figures, six digits each.
struct Flat {
  double diameter, web, point, relief; // given, mm and deg
  double chisel_edge, depth;           // worked out
};
Flat one_of_the_flat_points() {
  return GENERATE(Flat{12.7, 1.8, 118, 12, 102.089, 3.66112}, Flat{6.35, 1.1, 118, 14, 103.79, 1.79778},
                  Flat{12.7, 1.8, 135, 10, 106.006, 2.49677}, Flat{3.175, 0.65, 118, 16, 105.557, 0.879298},
                  Flat{0.5, 0.075, 135, 10, 105.581, 0.0980505});
}
Solid solid_of(const Flat& flat) { return flat_of_relief(flat.diameter, flat.web, flat.point, flat.relief); }

/// What a doubt of half the last printed digit leaves of a relation's answer: the answer lies between the two ends.
template <class Relation> void check_holds(const Relation& relation, double printed, double half_digit, double truth) {
  const double one = relation(printed - half_digit);
  const double other = relation(printed + half_digit);
  CHECK(std::min(one, other) <= truth);
  CHECK(truth <= std::max(one, other));
}

} // namespace

// --- lip.hpp ---

TEST_CASE("the solids of this file are the worked points: chisel edge and lip depth as printed") {
  // Source: worked figures, six digits each; no published page.
  const Flat flat = one_of_the_flat_points();
  INFO(flat.diameter << " mm, " << flat.point << " deg");
  const Solid solid = solid_of(flat);
  CHECK_THAT(chisel_edge_measured(solid), WithinAbs(flat.chisel_edge, six_figures(flat.chisel_edge)));
  CHECK_THAT(depth_measured(solid), WithinAbs(flat.depth, six_figures(flat.depth)));
}

TEST_CASE("the included angle of two flats from their lip depth and relief alone") {
  // Source: worked figures, six digits each, then a solid of two planes measured; no published page.
  const Flat flat = one_of_the_flat_points();
  INFO(flat.diameter << " mm, " << flat.point << " deg");
  const auto included = [&](double depth) {
    return in_degrees(included_from_flat_lip_depth({mm(flat.diameter), mm(flat.web), degrees(flat.relief), mm(depth)}));
  };
  check_holds(included, flat.depth, six_figures(flat.depth), flat.point);
  // Tolerance: the relief is measured over 1e-4 rad, which leaves 2e-9 of it.
  CHECK_THAT(included(depth_measured(solid_of(flat))), WithinRel(flat.point, 1e-8));
}

TEST_CASE("the included angle from a lip's length and depth, walked on two planes and on a cone") {
  // Source: an independent numeric derivation in this test. Tolerance: a thousand steps round off.
  const Flat flat = one_of_the_flat_points();
  const Solid solid = solid_of(flat);
  CHECK_THAT(in_degrees(included_from_lip_triangle({mm(lip_walked(solid)), mm(depth_measured(solid))})),
             WithinRel(flat.point, 1e-11));
  const Solid conical = cone_of_130(30);
  CHECK_THAT(in_degrees(included_from_lip_triangle({mm(lip_walked(conical)), mm(depth_measured(conical))})),
             WithinRel(118, 1e-9));
}

TEST_CASE("the included angle from a lip's length, walked on two planes and on a cone") {
  // Source: worked length of the first flat point, 7.10845 mm, then an independent numeric derivation in this test.
  check_holds(
      [](double length) {
        return in_degrees(included_from_lip_length({mm(12.7), mm(1.8), degrees(102.089), mm(length)}));
      },
      7.10845, 0.000005 + 0.00001, 118); // the last digit of the chisel edge moves the lip's end by the greater part
  const Flat flat = one_of_the_flat_points();
  const Solid solid = solid_of(flat);
  const auto included = [&](double edge, double length) {
    return in_degrees(included_from_lip_length({mm(flat.diameter), mm(flat.web), degrees(edge), mm(length)}));
  };
  CHECK_THAT(included(chisel_edge_measured(solid), lip_walked(solid)), WithinRel(flat.point, 1e-11));
  const Solid conical = cone_of_130(35);
  CHECK_THAT(in_degrees(included_from_lip_length(
                 {mm(12.7), mm(1.8), degrees(chisel_edge_measured(conical)), mm(lip_walked(conical))})),
             WithinRel(118, 1e-9));
}

TEST_CASE("the length over the tip of a cone decides its angle no closer than 115.05 to 119.90 deg") {
  // Source: a worked cone (12.7 mm, web 1.8, 118 deg, relief 12, chisel edge 130: length over the tip 3.52032 mm, slope
  // 0.128694), bounds to the two decimals printed; no published page.
  const PointLengthReading reading{mm(12.7), mm(1.8), degrees(130), mm(3.52032)};
  const IncludedBounds bounds = included_from_point_length(reading, 0.128694);
  CHECK_THAT(in_degrees(bounds.least), WithinAbs(115.05, 0.005));
  CHECK_THAT(in_degrees(bounds.most), WithinAbs(119.90, 0.005));
  CHECK_THAT(in_degrees(included_ignoring_web({mm(12.7), mm(3.52032)})), WithinAbs(121.99, 0.005));
  // The same cone by its own equation, a half angle of 30 deg, measured.
  CHECK_THAT(length_over_tip(cone_of_130(30)), WithinAbs(3.52032, 0.000005));
}

TEST_CASE("each bound of the length over the tip is a point that can be built, and cones lie between") {
  // Source: an independent numeric derivation in this test.
  const double half_angle = GENERATE(30.0, 35.0, 40.0, 45.0);
  INFO("cone of half angle " << half_angle);
  const Solid solid = cone_of_130(half_angle);
  const double edge = chisel_edge_measured(solid);
  const double slope = slope_measured(solid);
  const double length = length_over_tip(solid);
  CHECK_THAT(edge, WithinAbs(130, 1e-9));
  CHECK_THAT(relief_measured(solid), WithinAbs(12, 1e-6)); // measured over 1e-4 rad of a bent flank
  // The chisel edge is highest where it crosses the axis.
  double highest = -1e9;
  for (int i = -10; i <= 10; ++i)
    for (int j = -10; j <= 10; ++j) highest = std::max(highest, solid.height(0.09 * i, 0.09 * j));
  CHECK_THAT(highest, WithinAbs(solid.tip().z, 1e-12));
  const IncludedBounds bounds = included_from_point_length({mm(12.7), mm(1.8), degrees(edge), mm(length)}, slope);
  CHECK(in_degrees(bounds.least) < 118);
  CHECK(in_degrees(bounds.most) > 118);
  // Sharp end: a lip from the same chisel corner, its inner end as high as the tip.
  const double from = solid.inner(1).x;
  const double to = solid.corner(1).x;
  const auto level = [&](double point) {
    const auto flank = plane(point / 2, slope, 0.9, 0);
    return flank(from, 0.9) - flank(to, 0.9) - length;
  };
  CHECK_THAT(in_degrees(bounds.least), WithinRel(where_zero(level, 60, 170), 1e-10));
  // Blunt end: two flats of the same slope as long over the tip, whatever chisel edge they have.
  const auto two_flats = [&](double point) {
    return length_over_tip(flat_solid(12.7, 1.8, {point / 2, point / 2, 0, 0}, slope)) - length;
  };
  CHECK_THAT(in_degrees(bounds.most), WithinRel(where_zero(two_flats, 60, 170), 1e-8)); // slope measured by steps
}

TEST_CASE("on two flats the length over the tip leaves nothing between its bounds") {
  // Source: an independent numeric derivation in this test. Tolerance: slope and chisel edge are measured by steps.
  const Flat flat = one_of_the_flat_points();
  const Solid solid = solid_of(flat);
  const IncludedBounds bounds = included_from_point_length(
      {mm(flat.diameter), mm(flat.web), degrees(chisel_edge_measured(solid)), mm(length_over_tip(solid))},
      slope_measured(solid));
  CHECK_THAT(in_degrees(bounds.least), WithinRel(flat.point, 1e-8));
  CHECK_THAT(in_degrees(bounds.most), WithinRel(flat.point, 1e-8));
}

TEST_CASE("bounds of a length over the tip stay in order when the chisel edge is sharper than its slope allows") {
  // Source: definition; a chisel edge misread as square to the lips.
  const IncludedBounds bounds = included_from_point_length({mm(12.7), mm(1.8), degrees(90), mm(3.66112)}, 0.128694);
  CHECK(bounds.least < bounds.most);
  CHECK_THAT(in_degrees(bounds.least), WithinAbs(118, 0.0001)); // the flat's own length and slope
}

TEST_CASE("the chisel edge from its length and the web, both measured on the solid") {
  // Source: worked figures of the flat points, then a solid of two planes walked; no published page.
  const Flat flat = one_of_the_flat_points();
  const Solid solid = solid_of(flat);
  const Place a = solid.inner(1);
  const Place b = solid.inner(-1);
  const double edge = in_degrees(chisel_edge_from_lengths({mm(a.y - b.y), mm(chisel_walked(solid))}));
  CHECK(edge < 90);
  // Tolerance: near a right angle a rounding of the length counts by tan(edge), 5 times.
  CHECK_THAT(edge, WithinAbs(180 - chisel_edge_measured(solid), 1e-9));
  CHECK_THAT(edge, WithinAbs(180 - flat.chisel_edge, six_figures(flat.chisel_edge)));
  // On a cone the edge is bent like an S: its length from corner to corner tells the angle from corner to corner.
  const Solid conical = cone_of_130(40);
  const Place in = conical.inner(1);
  const Place other = conical.inner(-1);
  CHECK_THAT(in_degrees(chisel_edge_from_lengths({mm(1.8), mm(std::hypot(in.x - other.x, in.y - other.y))})),
             WithinAbs(50, 1e-9));
}

TEST_CASE("a chisel edge tells the relief of two flats, and that a cone has no more") {
  // Source: an independent numeric derivation in this test.
  const Flat flat = one_of_the_flat_points();
  const Solid solid = solid_of(flat);
  const PointShape shape{mm(flat.diameter), mm(flat.web), degrees(flat.point)};
  // Tolerance: the relief is measured over 1e-4 rad.
  CHECK_THAT(in_degrees(most_relief_of_chisel(shape, degrees(chisel_edge_measured(solid)))),
             WithinRel(flat.relief, 1e-8));
  CHECK_THAT(in_degrees(most_relief_of_chisel(shape, degrees(180 - chisel_edge_measured(solid)))),
             WithinRel(flat.relief, 1e-8));
  for (const double half_angle : {30.0, 35.0, 40.0, 45.0}) {
    const Solid conical = cone_of_130(half_angle);
    const Angle most = most_relief_of_chisel({mm(12.7), mm(1.8), degrees(118)}, degrees(chisel_edge_measured(conical)));
    CHECK(in_degrees(most) > relief_measured(conical));
    // The bound itself: two flats with this chisel edge, their relief measured.
    const auto edge_apart = [](double relief) {
      return chisel_edge_measured(flat_of_relief(12.7, 1.8, 118, relief)) - 130;
    };
    if (half_angle == 30) CHECK_THAT(in_degrees(most), WithinRel(where_zero(edge_apart, 10, 45), 1e-8));
  }
}

TEST_CASE("the least relief of a straight lip: with more its flank falls behind the lip, with less it rises") {
  // Source: an independent numeric derivation in this test.
  const Flat flat = one_of_the_flat_points();
  const double least = in_degrees(least_relief_of_straight_lip({mm(flat.diameter), mm(flat.web), degrees(flat.point)}));
  const auto behind_middle_of_lip = [&](double relief) {
    const Solid solid = flat_of_relief(flat.diameter, flat.web, flat.point, relief);
    const double x = solid.radius / 2;
    return solid.a(x, solid.half_web - 0.01 * solid.radius) - solid.a(x, solid.half_web);
  };
  CHECK(behind_middle_of_lip(least + 0.01) < 0);
  CHECK(behind_middle_of_lip(least - 0.01) > 0);
  // A flank level square to its lip, measured at the corner. Tolerance: measured over 1e-4 rad.
  const Solid level = flat_solid(flat.diameter, flat.web, {flat.point / 2, flat.point / 2, 0, 0}, 0);
  CHECK_THAT(least, WithinRel(relief_measured(level), 1e-8));
}

// --- notch.hpp ---

namespace {

/// A V upside down, its bottom on the drill's axis, lowered over a solid until it touches.
struct Lowered {
  double bottom;          // height of the V's corner
  double light_at_corner; // least distance from the outer corner to the V's side
  double light_under_tip; // along the axis
};
Lowered lower_over(const Solid& solid, double notch) {
  const double cot = 1 / std::tan(notch / 2 * to_radians);
  std::vector<Place> lips;
  for (const int side : {1, -1}) {
    const Place in = solid.inner(side);
    const Place out = solid.corner(side);
    for (int i = 0; i <= 100; ++i) lips.push_back(solid.on_lip(side, side * (in.x + (out.x - in.x) * i / 100)));
  }
  const double start = 10 * solid.radius;
  const auto clear = [&](double lowered) {
    return std::all_of(lips.begin(), lips.end(),
                       [&](Place lip) { return start - lowered - std::abs(lip.x) * cot > lip.z; });
  };
  const double bottom = start - how_far(clear, solid.radius);
  // The nearest place on the V's side, closed in on from both ends by thirds.
  const Place corner = solid.corner(1);
  const auto to_side = [&](double x) { return std::hypot(x - corner.x, bottom - x * cot - corner.z); };
  double low = 0;
  double high = 2 * solid.radius;
  for (int i = 0; i < 200; ++i) {
    const double third = (high - low) / 3;
    if (to_side(low + third) < to_side(high - third))
      high -= third;
    else
      low += third;
  }
  return {bottom, to_side(low), bottom - solid.tip().z};
}

} // namespace

TEST_CASE("half a point's angle from the light it shows in a notch, as worked") {
  // Source: worked figures (closed form and a wedge lowered numerically), four digits each; no published page.
  using Where = LightGap::Where;
  const auto half = [](double edge, Where where, double gap) {
    return in_degrees(half_angle_from_light(degrees(120), {mm(12.7), mm(1.8), degrees(edge), {where, mm(gap)}}));
  };
  // The ends of the last digit hold the point between them: 0.1241 at the corner is 118, 1.132 under the tip is 135.
  check_holds([&](double gap) { return half(102.089, Where::corner, gap); }, 0.1241, 0.00005, 59);
  check_holds([&](double gap) { return half(106.006, Where::tip, gap); }, 1.132, 0.0005, 67.5);
}

TEST_CASE("half a point's angle from the light under a V lowered over its solid") {
  // Source: an independent numeric derivation in this test.
  const double notch = GENERATE(110.0, 120.0, 135.0);
  const double point = GENERATE(100.0, 116.0, 118.0, 119.9, 120.1, 125.0, 135.0, 140.0);
  if (point == notch) return;
  INFO(point << " in " << notch);
  const Solid solid = flat_of_relief(12.7, 1.8, point, 12);
  const Lowered lowered = lower_over(solid, notch);
  const LightGap light = point < notch ? LightGap{LightGap::Where::corner, mm(lowered.light_at_corner)}
                                       : LightGap{LightGap::Where::tip, mm(lowered.light_under_tip)};
  // It touches at the other end: there is no light at the corners of a blunt point.
  if (point > notch) CHECK_THAT(lowered.light_at_corner, WithinAbs(0, 1e-7));
  const LightReading reading{mm(12.7), mm(1.8), degrees(chisel_edge_measured(solid)), light};
  // Tolerance: nearest places are found to the root of a rounding, 1e-8 of the radius, over half the lip's length.
  CHECK_THAT(in_degrees(half_angle_from_light(degrees(notch), reading)), WithinAbs(point / 2, 2e-6));
}

TEST_CASE("a lip that shows no light lies along the side, and so does one with no more than its chisel edge shows") {
  // Source: an independent numeric derivation in this test.
  const Solid solid = flat_of_relief(12.7, 1.8, 120, 12);
  const Lowered lowered = lower_over(solid, 120);
  CHECK_THAT(lowered.light_at_corner, WithinAbs(0, 1e-7));
  CHECK(lowered.light_under_tip > 0.1); // the chisel edge clears the corner all the same
  const auto half = [&](LightGap light) {
    return in_degrees(
        half_angle_from_light(degrees(120), {mm(12.7), mm(1.8), degrees(chisel_edge_measured(solid)), light}));
  };
  CHECK_THAT(half({LightGap::Where::none, mm(0)}), WithinRel(60, 1e-15));
  CHECK_THAT(half({LightGap::Where::corner, mm(0)}), WithinRel(60, 1e-15));
  CHECK_THAT(half({LightGap::Where::tip, mm(lowered.light_under_tip)}), WithinRel(60, 1e-9));
  CHECK_THAT(half({LightGap::Where::tip, mm(lowered.light_under_tip / 2)}), WithinRel(60, 1e-15));
  CHECK_THAT(half({LightGap::Where::tip, mm(0)}), WithinRel(60, 1e-15));
}

// --- uneven_lips.hpp ---

namespace {

/// An uneven point of two planes and where its lips, carried on, meet in the side view: toward lip A when above 0.
struct Uneven {
  Halves halves;
  Solid solid;
  double apex;
};
Uneven uneven(double diameter, double web, Halves halves) {
  const Solid solid = flat_solid(diameter, web, halves, 0.13);
  const double w = web / 2;
  const double apex = where_zero([&](double x) { return solid.a(x, w) - solid.b(x, -w); }, -diameter / 2, diameter / 2);
  return {halves, solid, apex};
}
Uneven one_of_the_uneven_points() {
  const double web = GENERATE(0.0, 1.8);
  return uneven(12.7, web,
                GENERATE(Halves{59, 59, 0.0381, -0.0381}, Halves{59, 59, 0, -0.1}, Halves{58, 60, 0, 0.07},
                         Halves{61, 58.5, 0.02, 0}, Halves{67.5, 67.5, -0.04, 0.04}));
}

} // namespace

TEST_CASE("the apex offset from the lengths of two lips, as worked") {
  // Source: worked figures (closed form and bisection of two lines), six digits each; no published page.
  // 12.7 mm, 59 and 59 deg, heights 0.0381 up and down: 7.33415 and 7.4821 mm from the apex, 0.063409 off the axis.
  const Length offset = apex_offset_of_lengths({mm(7.33415), mm(7.4821), degrees(59), degrees(59)});
  // Tolerance: half a last digit of both lengths.
  CHECK_THAT(in_mm(offset), WithinAbs(0.063409, 0.000005));
}

TEST_CASE("the apex offset from the lengths of two lips, measured on a solid from apex and from chisel edge") {
  // Source: an independent numeric derivation in this test.
  const Uneven point = one_of_the_uneven_points();
  const auto [half_a, half_b, height_a, height_b] = point.halves;
  INFO(half_a << " and " << half_b << " deg, web " << 2 * point.solid.half_web);
  const Place corner_a = point.solid.corner(1);
  const Place corner_b = point.solid.corner(-1);
  const Place apex_a{point.apex, corner_a.y, point.solid.a(point.apex, corner_a.y)};
  const Place apex_b{point.apex, corner_b.y, point.solid.b(point.apex, corner_b.y)};
  const auto offset = [&](double a, double b) {
    return in_mm(apex_offset_of_lengths({mm(a), mm(b), degrees(half_a), degrees(half_b)}));
  };
  CHECK_THAT(offset(distance(apex_a, corner_a), distance(apex_b, corner_b)), WithinAbs(point.apex, 1e-13));
  // From the ends at the chisel edge the same comes out while both flanks have one slope, as these have.
  CHECK_THAT(offset(distance(point.solid.inner(1), corner_a), distance(point.solid.inner(-1), corner_b)),
             WithinAbs(point.apex, 1e-13));
}

TEST_CASE("the height of one lip over the other, from where their lines meet") {
  // Source: an independent numeric derivation in this test.
  const Uneven point = one_of_the_uneven_points();
  const double radius = GENERATE(0.0, 1.0, 3.175, 6.0);
  const double w = point.solid.half_web;
  const double higher = point.solid.a(radius, w) - point.solid.b(-radius, -w);
  const Angle half_a = degrees(point.halves.half_a);
  const Angle half_b = degrees(point.halves.half_b);
  CHECK_THAT(in_mm(height_difference({mm(point.apex), half_a, half_b, mm(radius)})), WithinAbs(higher, 1e-13));
}

TEST_CASE("the least height difference for an oversize: raising one lip until a free point sweeps that hole") {
  // Source: an independent numeric derivation in this test.
  const double half = GENERATE(45.0, 59.0, 67.5);
  const double oversize = GENERATE(0.02, 0.126818, 0.3);
  INFO(half << " deg, " << oversize << " mm");
  // The hole swept by the farther corner about the apex of a point with one lip raised by so much.
  const auto over = [&](double web, double raised) {
    const Uneven point = uneven(12.7, web, {half, half, raised, 0});
    const auto from_apex = [&](Place corner) { return std::hypot(corner.x - point.apex, corner.y); };
    return 2 * std::max(from_apex(point.solid.corner(1)), from_apex(point.solid.corner(-1))) - 12.7;
  };
  const auto raised = [&](double web) {
    return where_zero([&](double height) { return over(web, height) - oversize; }, 0, 2);
  };
  const double least = in_mm(least_height_difference(mm(oversize), degrees(half)));
  CHECK_THAT(least, WithinRel(raised(0), 1e-11));
  // A web sets the corners back from the line through the apex: it takes a little more, and never less.
  CHECK(least < raised(1.8));
  CHECK(least > 0.98 * raised(1.8));
}

TEST_CASE("a hole no larger than usual asks nothing of the lips") {
  // Source: definition.
  CHECK(least_height_difference(mm(0), degrees(59)) == mm(0));
}

// --- wear.hpp ---

namespace {

/// A lip's wedge as seen from outside at the outer corner, unrolled: s along the cut, z toward the work, both 0 at the
/// sharp corner. Wear takes it down to a flat land; a new point is the old one screwed back along its flute.
struct Wedge {
  double relief, helix; // deg

  /// Height of the flank that begins at a corner this far back along the flute.
  [[nodiscard]] double flank(double s, double back) const {
    return (s - face(-back)) * std::tan(relief * to_radians) - back;
  }
  /// How far forward the face of the flute stands at a height.
  [[nodiscard]] double face(double z) const { return z * std::tan(helix * to_radians); }
  /// The hind end of a land worn down by so much.
  [[nodiscard]] double hind(double worn) const {
    return where_zero([&](double s) { return flank(s, 0) + worn; }, -100 * worn - 1e-9, 0);
  }
  /// How far down wear has gone when its land is so wide.
  [[nodiscard]] double worn_to(double land) const {
    return how_far([&](double worn) { return face(-worn) - hind(worn) < land; }, land);
  }
  /// Whether any of the land still stands, the corner ground back by so much: its fore end goes last.
  [[nodiscard]] bool land_left(double worn, double back) const {
    constexpr int steps = 50;
    for (int i = 0; i <= steps; ++i)
      if (flank(hind(worn) + (face(-worn) - hind(worn)) * i / steps, back) > -worn) return true;
    return false;
  }
  [[nodiscard]] double ground_until_gone(double land) const {
    const double worn = worn_to(land);
    return how_far([&](double back) { return land_left(worn, back); }, land);
  }
};

} // namespace

TEST_CASE("worn drills as worked: the length their land costs, and the web after many regrinds") {
  // Source: worked figures, six digits each; no published page.
  struct Row {
    double land, relief, helix, clean_up, web; // given, mm and deg
    int regrinds;
    double taper;
    double axial, lost, web_after, chisel; // worked out, mm
  };
  const auto row = GENERATE(Row{0.3, 12, 30, 0.2, 1.8, 20, 0.016, 0.0726871, 5.45374, 1.88726, 2.46364},
                            Row{0.2, 14, 28, 0.15, 1.1, 30, 0.016, 0.0574866, 6.2246, 1.19959, 1.56596});
  INFO("land " << row.land);
  const FlankWear wear{mm(row.land), degrees(row.relief), degrees(row.helix)};
  CHECK_THAT(in_mm(length_for_land(wear)), WithinAbs(row.axial, six_figures(row.axial)));
  const Length lost = double(row.regrinds) * length_to_grind_off({wear, mm(0), mm(row.clean_up)});
  CHECK_THAT(in_mm(lost), WithinAbs(row.lost, six_figures(row.lost)));
  const Length web = web_after({mm(row.web), row.taper, lost});
  CHECK_THAT(in_mm(web), WithinAbs(row.web_after, six_figures(row.web_after)));
  CHECK_THAT(in_mm(chisel_length(web, degrees(130))), WithinAbs(row.chisel, six_figures(row.chisel)));
}

TEST_CASE("a land worn into a wedge by steps, and ground away by steps") {
  // Source: an independent numeric derivation in this test. Tolerance: steps down to 1e-14 of the land.
  const double relief = GENERATE(6.0, 12.0, 24.0);
  const double helix = GENERATE(0.0, 15.0, 30.0, 40.0);
  const double land = GENERATE(0.02, 0.3);
  INFO(relief << " and " << helix << " deg");
  const double off = Wedge{relief, helix}.ground_until_gone(land);
  CHECK_THAT(in_mm(length_for_land({mm(land), degrees(relief), degrees(helix)})), WithinRel(off, 1e-10));
}

TEST_CASE("grinding off a worn point slice by slice until neither land nor worn margin is left") {
  // Source: an independent numeric derivation in this test.
  const Wedge wedge{12, 30};
  const double worn = wedge.worn_to(0.3);
  const double margin = GENERATE(0.0, 0.05, 0.072, 0.074, 0.4); // the land takes 0.0727
  const double clean_up = GENERATE(0.0, 0.2);
  INFO("margin " << margin);
  const double gone =
      how_far([&](double back) { return wedge.land_left(worn, back) || back < margin; }, 0.1) + clean_up;
  const PointWear wear{{mm(0.3), degrees(12), degrees(30)}, mm(margin), mm(clean_up)};
  CHECK_THAT(in_mm(length_to_grind_off(wear)), WithinRel(gone, 1e-10));
}

TEST_CASE("a point that is not worn costs nothing") {
  // Source: definition.
  CHECK(length_to_grind_off({{mm(0), degrees(12), degrees(30)}, mm(0), mm(0)}) == mm(0));
}

TEST_CASE("a tapered web, measured along a drill that grows shorter") {
  // Source: an independent numeric derivation in this test: the web grows by a hair with each hair ground off.
  double web = 1.8;
  constexpr int slices = 5000;
  for (int slice = 0; slice < slices; ++slice) web += 0.016 * (5.0 / slices);
  CHECK_THAT(in_mm(web_after({mm(1.8), 0.016, mm(5)})), WithinRel(web, 1e-12));
  CHECK(web_after({mm(1.8), 0, mm(5)}) == mm(1.8)); // parallel webs stay
}

// --- photo_marks.hpp ---

namespace {

/// A camera far off, and how it and the drill lie.
struct Camera {
  double turned; // the picture, in its own plane, deg
  double scale;  // pixels a mm
  bool mirrored; // y of the picture upward, or downward
  double tilt;   // the lens along the drill's axis, deg
  double rolled; // the drill about its axis, deg
  double off_x, off_y;

  [[nodiscard]] Mark picture(double x, double y) const {
    const double c = std::cos(turned * to_radians);
    const double s = std::sin(turned * to_radians);
    return {off_x + scale * (c * x - s * y), off_y + (mirrored ? -1 : 1) * scale * (s * x + c * y)};
  }
  /// Where a place shows that turns with the drill, seen from the side: along y, or tilted from there toward the axis.
  [[nodiscard]] Mark side(Place p) const {
    const double c = std::cos(rolled * to_radians);
    const double s = std::sin(rolled * to_radians);
    return outline({c * p.x - s * p.y, s * p.x + c * p.y, p.z});
  }
  /// The same of a place that does not: the drill's outline.
  [[nodiscard]] Mark outline(Place p) const {
    return picture(p.x, p.z * std::cos(tilt * to_radians) + p.y * std::sin(tilt * to_radians));
  }
  [[nodiscard]] Mark end(Place p) const { return picture(p.x, p.y); }
};

/// \param up how far the marks up the margins lie behind their outer corners
SideMarks side_photo(const Solid& solid, const Camera& camera, double up_a, double up_b) {
  const Place a = solid.corner(1);
  const Place b = solid.corner(-1);
  return {camera.side(a),
          camera.side(solid.inner(1)),
          camera.side(solid.inner(-1)),
          camera.side(b),
          camera.outline({solid.radius, 0, a.z - up_a}),
          camera.outline({-solid.radius, 0, b.z - up_b})};
}
EndMarks end_photo(const Solid& solid, const Camera& camera) {
  return {camera.end(solid.corner(1)), camera.end(solid.inner(1)), camera.end(solid.inner(-1)),
          camera.end(solid.corner(-1))};
}

constexpr Camera upright{0, 40, false, 0, 0, 0, 0};

Camera one_of_the_cameras() {
  return GENERATE(Camera{0, 40, false, 0, 0, 0, 0}, Camera{0, 40, true, 0, 0, 1000, 700},
                  Camera{17.3, 31.7, false, 0, 0, 512, 384}, Camera{90, 8, true, 0, 0, -300, 20},
                  Camera{-133, 250, false, 0, 0, 0, 4000}, Camera{180, 1.5, true, 0, 0, 64, 64},
                  Camera{271, 40, false, 0, 0, 0, 0});
}

} // namespace

TEST_CASE("a side view gives the half angles, lengths and heights of the lips, however the photograph lies") {
  // Source: an independent numeric derivation in this test: a solid measured, and its photograph read.
  const Halves halves = GENERATE(Halves{59, 59, 0, 0}, Halves{59, 59, 0.0381, -0.0381}, Halves{58, 60.5, 0, 0.03},
                                 Halves{68, 67, -0.1, 0.02});
  const Camera camera = one_of_the_cameras();
  INFO(halves.half_a << " and " << halves.half_b << " deg, turned " << camera.turned);
  const Uneven point = uneven(12.7, 1.8, halves);
  const Solid& solid = point.solid;
  const SideView seen = side_view(side_photo(solid, camera, 12, 12), mm(12.7));
  CHECK_THAT(in_degrees(seen.half_a), WithinAbs(halves.half_a, 1e-9));
  CHECK_THAT(in_degrees(seen.half_b), WithinAbs(halves.half_b, 1e-9));
  CHECK_THAT(in_mm(seen.length_a), WithinRel(distance(solid.inner(1), solid.corner(1)), 1e-11));
  CHECK_THAT(in_mm(seen.length_b), WithinRel(distance(solid.inner(-1), solid.corner(-1)), 1e-11));
  // At half the radius, out from the axis in the side view.
  CHECK_THAT(in_mm(seen.height_difference), WithinAbs(solid.on_lip(1, 3.175).z - solid.on_lip(-1, 3.175).z, 1e-11));
}

TEST_CASE("marks unlike far up the two margins tell of the same point") {
  // Source: an independent numeric derivation in this test.
  const Uneven point = uneven(12.7, 1.8, GENERATE(Halves{59, 59, 0, 0}, Halves{58, 60.5, 0, 0.03}));
  const Camera camera = one_of_the_cameras();
  const SideView seen = side_view(side_photo(point.solid, camera, 6, 14), mm(12.7));
  CHECK_THAT(in_degrees(seen.half_a), WithinAbs(point.halves.half_a, 1e-9));
  CHECK_THAT(in_degrees(seen.half_b), WithinAbs(point.halves.half_b, 1e-9));
  CHECK_THAT(in_mm(seen.height_difference),
             WithinAbs(point.solid.on_lip(1, 3.175).z - point.solid.on_lip(-1, 3.175).z, 1e-11));
}

TEST_CASE("a side view with its lips exchanged is the same point, the heights the other way round") {
  // Source: definition.
  const Uneven point = uneven(12.7, 1.8, {58, 60.5, 0, 0.03});
  const SideMarks marks = side_photo(point.solid, upright, 12, 12);
  const SideView seen = side_view(marks, mm(12.7));
  const SideView other = side_view(
      {marks.corner_b, marks.inner_b, marks.inner_a, marks.corner_a, marks.margin_b, marks.margin_a}, mm(12.7));
  CHECK_THAT(in_degrees(other.half_a), WithinRel(in_degrees(seen.half_b), 1e-14));
  CHECK_THAT(in_degrees(other.half_b), WithinRel(in_degrees(seen.half_a), 1e-14));
  CHECK_THAT(in_mm(other.length_a), WithinRel(in_mm(seen.length_b), 1e-14));
  CHECK_THAT(in_mm(other.height_difference), WithinAbs(-in_mm(seen.height_difference), 1e-14));
}

TEST_CASE("an end view gives web, chisel edge and its length, however the photograph lies") {
  // Source: an independent numeric derivation in this test: a solid measured, and its photograph read.
  const Camera camera = one_of_the_cameras();
  const int kind = GENERATE(0, 1, 2);
  const Solid solid = kind == 0   ? flat_of_relief(12.7, 1.8, 118, 12)
                      : kind == 1 ? cone_of_130(30)
                                  : uneven(12.7, 1.8, {58, 60.5, 0, 0.03}).solid;
  INFO("turned " << camera.turned << ", solid " << kind);
  const EndView seen = end_view(end_photo(solid, camera), mm(12.7));
  const Place a = solid.inner(1);
  const Place b = solid.inner(-1);
  CHECK_THAT(in_mm(seen.web), WithinRel(1.8, 1e-11));
  CHECK_THAT(in_mm(seen.chisel_length), WithinRel(std::hypot(a.x - b.x, a.y - b.y), 1e-11));
  CHECK_THAT(in_degrees(seen.chisel_edge), WithinAbs(chisel_edge_measured(solid), 1e-9));
}

TEST_CASE("an end view of the worked flat point gives its printed chisel edge and chisel length") {
  // Source: worked figures of 12.7 mm, web 1.8, 118 deg, relief 12: 102.089 deg and 1.84082 mm; no published page.
  const EndView seen = end_view(end_photo(flat_of_relief(12.7, 1.8, 118, 12), upright), mm(12.7));
  CHECK_THAT(in_degrees(seen.chisel_edge), WithinAbs(102.089, 0.0005));
  CHECK_THAT(in_mm(seen.chisel_length), WithinAbs(1.84082, 0.000005));
}

TEST_CASE("a lens tilted along the axis sees the point blunter") {
  // Source: an independent numeric derivation in this test: the solid photographed with the lens tilted; 118.2 at 5 deg
  // and 118.8 at 10 are what docs/models/photo_marks.md says.
  const double point = GENERATE(60.0, 90.0, 118.0, 140.0);
  const double tilt = GENERATE(0.0, 5.0, 10.0, 45.0);
  INFO(point << " deg, tilted by " << tilt);
  Camera camera = one_of_the_cameras();
  camera.tilt = tilt;
  const Solid sharp = flat_solid(12.7, 0, {point / 2, point / 2, 0, 0}, 0.13);
  const SideView seen = side_view(side_photo(sharp, camera, 12, 12), mm(12.7));
  const double foreseen = in_degrees(foreshortened({degrees(point), degrees(tilt)}));
  CHECK_THAT(in_degrees(seen.half_a + seen.half_b), WithinAbs(foreseen, 1e-9));
  // With a web the corners lie before and behind the outline, which the tilt moves apart: the axis leans by next to
  // nothing, and what one half angle gains the other loses.
  const Solid webbed = flat_solid(12.7, 1.8, {point / 2, point / 2, 0, 0}, 0.13);
  const SideView also = side_view(side_photo(webbed, camera, 12, 12), mm(12.7));
  CHECK_THAT(in_degrees(also.half_a + also.half_b), WithinAbs(foreseen, 1e-9));
  if (point == 118 && tilt == 5) CHECK_THAT(foreseen, WithinAbs(118.2, 0.05));
  if (point == 118 && tilt == 10) CHECK_THAT(foreseen, WithinAbs(118.8, 0.05));
}

TEST_CASE("a drill turned about its own axis by 5 or 10 deg looks 117.8 or 117.2 for a true 118") {
  // Source: an independent numeric derivation in this test; the figures are those of docs/models/photo_marks.md.
  Camera camera = one_of_the_cameras();
  const auto included = [&](double rolled) {
    camera.rolled = rolled;
    const SideView seen = side_view(side_photo(flat_of_relief(12.7, 1.8, 118, 12), camera, 12, 12), mm(12.7));
    return in_degrees(seen.half_a + seen.half_b);
  };
  CHECK_THAT(included(5), WithinAbs(117.8, 0.05));
  CHECK_THAT(included(-5), WithinAbs(117.8, 0.05));
  CHECK_THAT(included(10), WithinAbs(117.2, 0.05));
}

// --- refusals ---

namespace {

/// Why a call was refused, or that it was not.
std::string refusal(const std::function<void()>& call) {
  try {
    call();
  } catch (const std::domain_error& error) {
    return error.what();
  }
  return "not refused";
}

struct Refused {
  const char* call;
  std::function<void()> made;
  const char* because; // words of the refusal, so that none stands in for another
};

void check_refused(const std::vector<Refused>& table) {
  for (const Refused& row : table) {
    INFO(row.call);
    const std::string why = refusal(row.made);
    INFO(why);
    CHECK(why.find(row.because) != std::string::npos);
  }
}

} // namespace

TEST_CASE("readings of lips outside their range are refused, each for its own reason") {
  // Source: the ranges that quillside/model/lip.hpp states.
  const auto flat = [](double d, double w, double relief, double depth) {
    return [=] { included_from_flat_lip_depth({mm(d), mm(w), degrees(relief), mm(depth)}); };
  };
  const auto triangle = [](double length, double depth) {
    return [=] { included_from_lip_triangle({mm(length), mm(depth)}); };
  };
  const auto length = [](double d, double w, double edge, double lip) {
    return [=] { included_from_lip_length({mm(d), mm(w), degrees(edge), mm(lip)}); };
  };
  const auto tip = [](double d, double w, double edge, double over_tip, double slope) {
    return [=] { included_from_point_length({mm(d), mm(w), degrees(edge), mm(over_tip)}, slope); };
  };
  const auto chisel = [](double web, double edge) { return [=] { chisel_edge_from_lengths({mm(web), mm(edge)}); }; };
  const auto most = [](double d, double w, double point, double edge) {
    return [=] { most_relief_of_chisel({mm(d), mm(w), degrees(point)}, degrees(edge)); };
  };
  const auto least = [](double d, double w, double point) {
    return [=] { least_relief_of_straight_lip({mm(d), mm(w), degrees(point)}); };
  };
  check_refused({
      {"flat depth, none", flat(12.7, 1.8, 12, 0), "no depth"},
      {"flat depth, below 0", flat(12.7, 1.8, 12, -1), "no depth"},
      {"flat depth, no number", flat(12.7, 1.8, 12, no_number), "no depth"},
      {"flat depth, no diameter", flat(0, 0, 12, 3.66), "no diameter"},
      {"flat depth, web as thick as the drill", flat(12.7, 12.7, 12, 3.66), "web"},
      {"flat depth, web below 0", flat(12.7, -0.1, 12, 3.66), "web"},
      {"flat depth, no relief", flat(12.7, 1.8, 0, 3.66), "relief"},
      {"flat depth, relief below 0", flat(12.7, 1.8, -5, 3.66), "relief"},
      {"flat depth, relief of a right angle", flat(12.7, 1.8, 90, 3.66), "relief"},
      {"flat depth, relief over a right angle", flat(12.7, 1.8, 95, 3.66), "relief"},
      {"flat depth, relief no number", flat(12.7, 1.8, no_number, 3.66), "relief"},
      {"triangle, no depth", triangle(7, 0), "longer than it is deep"},
      {"triangle, as deep as long", triangle(7, 7), "longer than it is deep"},
      {"triangle, no number", triangle(no_number, 3), "longer than it is deep"},
      {"lip length, shorter than its reach", length(12.7, 1.8, 102, 6.0), "shorter than its own reach"},
      {"lip length, none", length(12.7, 1.8, 102, 0), "shorter than its own reach"},
      {"lip length, no number", length(12.7, 1.8, 102, no_number), "shorter than its own reach"},
      {"lip length, no diameter", length(0, 0, 102, 7.1), "no diameter"},
      {"lip length, web as thick as the drill", length(12.7, 12.7, 102, 7.1), "web"},
      {"lip length, chisel edge along the lip", length(12.7, 1.8, 180, 7.1), "chisel edge angle"},
      {"lip length, no chisel edge angle", length(12.7, 1.8, 0, 7.1), "chisel edge angle"},
      {"lip length, so flat that no lip is left", length(12.7, 1.8, 175, 7.1), "leaves no lip"},
      {"point length, none", tip(12.7, 1.8, 130, 0, 0.13), "no length"},
      {"point length, no number", tip(12.7, 1.8, 130, no_number, 0.13), "no length"},
      {"point length, flank that rises", tip(12.7, 1.8, 130, 3.5, -0.01), "does not fall away"},
      {"point length, slope no number", tip(12.7, 1.8, 130, 3.5, no_number), "does not fall away"},
      {"point length, no diameter", tip(0, 0, 130, 3.5, 0.13), "no diameter"},
      {"point length, web as thick as the drill", tip(12.7, 12.7, 130, 3.5, 0.13), "web"},
      {"point length, no chisel edge angle", tip(12.7, 1.8, 0, 3.5, 0.13), "chisel edge angle"},
      {"point length, so flat that no lip is left", tip(12.7, 1.8, 175, 3.5, 0.13), "leaves no lip"},
      {"chisel edge, shorter than the web", chisel(1.8, 1.79), "as long as the web"},
      {"chisel edge, no web", chisel(0, 1.8), "as long as the web"},
      {"chisel edge, no number", chisel(1.8, no_number), "as long as the web"},
      {"most relief, no diameter", most(0, 0, 118, 102), "no diameter"},
      {"most relief, web as thick as the drill", most(12.7, 12.7, 118, 102), "web"},
      {"most relief, no point", most(12.7, 1.8, 180, 102), "point angle"},
      {"most relief, no chisel edge angle", most(12.7, 1.8, 118, 0), "chisel edge angle"},
      {"most relief, chisel edge along the lip", most(12.7, 1.8, 118, 180), "chisel edge angle"},
      {"least relief, no diameter", least(0, 0, 118), "no diameter"},
      {"least relief, web below 0", least(12.7, -1, 118), "web"},
      {"least relief, web as thick as the drill", least(12.7, 12.7, 118), "web"},
      {"least relief, point of no angle", least(12.7, 1.8, 0), "point angle"},
      {"least relief, no point", least(12.7, 1.8, 180), "point angle"},
  });
}

TEST_CASE("light that no lip shows is refused") {
  // Source: the ranges that quillside/model/notch.hpp states.
  using Where = LightGap::Where;
  const auto light = [](double notch, LightReading reading) {
    return [=] { half_angle_from_light(degrees(notch), reading); };
  };
  const auto shows = [](Where where, double gap) {
    return LightReading{mm(12.7), mm(1.8), degrees(102), {where, mm(gap)}};
  };
  check_refused({
      {"no notch", light(0, shows(Where::none, 0)), "no notch"},
      {"a flat for a notch", light(180, shows(Where::none, 0)), "no notch"},
      {"a notch of no number", light(no_number, shows(Where::none, 0)), "no notch"},
      {"corner, below 0", light(120, shows(Where::corner, -0.01)), "0 or more"},
      {"tip, below 0", light(120, shows(Where::tip, -0.01)), "0 or more"},
      {"tip, no number", light(120, shows(Where::tip, no_number)), "0 or more"},
      {"tip, more than the notch is deep", light(120, shows(Where::tip, 3.7)), "than the notch is deep"},
      {"no diameter", light(120, {mm(0), mm(0), degrees(102), {Where::tip, mm(1)}}), "no diameter"},
      {"web as thick as the drill", light(120, {mm(1), mm(1), degrees(102), {Where::corner, mm(1)}}), "web"},
      {"no chisel edge angle", light(120, {mm(9), mm(1), degrees(0), {Where::corner, mm(1)}}), "chisel edge angle"},
      {"no lip left", light(120, {mm(9), mm(2), degrees(175), {Where::corner, mm(1)}}), "leaves no lip"},
  });
  // The notch is so deep under the outer corners: just under it, light still tells an angle.
  CHECK(in_degrees(half_angle_from_light(degrees(120), shows(Where::tip, 3.6))) < 90);
  // Where no light shows, the gap is not looked at.
  CHECK_THAT(in_degrees(half_angle_from_light(degrees(120), shows(Where::none, -1))), WithinRel(60, 1e-15));
}

TEST_CASE("uneven lips outside their range are refused, each for its own reason") {
  // Source: the ranges that quillside/model/uneven_lips.hpp states.
  const auto lengths = [](double a, double b, double half_a, double half_b) {
    return [=] { apex_offset_of_lengths({mm(a), mm(b), degrees(half_a), degrees(half_b)}); };
  };
  const auto height = [](double half_a, double half_b, double radius) {
    return [=] { height_difference({mm(0.1), degrees(half_a), degrees(half_b), mm(radius)}); };
  };
  const auto least = [](double oversize, double half) {
    return [=] { least_height_difference(mm(oversize), degrees(half)); };
  };
  check_refused({
      {"lengths, lip A none", lengths(0, 7, 59, 59), "has a length"},
      {"lengths, lip B none", lengths(7, 0, 59, 59), "has a length"},
      {"lengths, no number", lengths(7, no_number, 59, 59), "has a length"},
      {"lengths, half A none", lengths(7, 7, 0, 59), "half a point angle"},
      {"lengths, half B none", lengths(7, 7, 59, 0), "half a point angle"},
      {"lengths, half A a right angle", lengths(7, 7, 90, 59), "half a point angle"},
      {"lengths, half B a right angle", lengths(7, 7, 59, 90), "half a point angle"},
      {"height, half A none", height(0, 59, 3), "half a point angle"},
      {"height, half B none", height(59, 0, 3), "half a point angle"},
      {"height, half A a right angle", height(90, 59, 3), "half a point angle"},
      {"height, half B a right angle", height(59, 90, 3), "half a point angle"},
      {"height, beyond the axis", height(59, 59, -0.1), "distance from the axis"},
      {"height, no number", height(59, 59, no_number), "distance from the axis"},
      {"least height, hole under size", least(-0.01, 59), "oversize is 0 or more"},
      {"least height, no number", least(no_number, 59), "oversize is 0 or more"},
      {"least height, no half angle", least(0.1, 0), "half a point angle"},
      {"least height, a right angle", least(0.1, 90), "half a point angle"},
  });
}

TEST_CASE("wear outside its range is refused, each for its own reason") {
  // Source: the ranges that quillside/model/wear.hpp states.
  const auto land = [](double width, double relief, double helix) {
    return [=] { length_for_land({mm(width), degrees(relief), degrees(helix)}); };
  };
  const auto point = [](double width, double margin, double clean_up) {
    return [=] { length_to_grind_off({{mm(width), degrees(12), degrees(30)}, mm(margin), mm(clean_up)}); };
  };
  const auto web = [](double thick, double taper, double lost) {
    return [=] { web_after({mm(thick), taper, mm(lost)}); };
  };
  check_refused({
      {"land below 0", land(-0.1, 12, 30), "wear land"},
      {"land no number", land(no_number, 12, 30), "wear land"},
      {"no relief", land(0.3, 0, 30), "no lip between"},
      {"helix below 0", land(0.3, 12, -1), "no lip between"},
      {"relief and helix a right angle", land(0.3, 50, 40), "no lip between"},
      {"relief no number", land(0.3, no_number, 30), "no lip between"},
      {"grind off, land below 0", point(-0.1, 0, 0), "wear land"},
      {"grind off, margin below 0", point(0.3, -0.1, 0), "worn margin"},
      {"grind off, clean-up below 0", point(0.3, 0, -0.1), "clean-up"},
      {"grind off, margin no number", point(0.3, no_number, 0), "worn margin"},
      {"web below 0", web(-0.1, 0.016, 5), "web"},
      {"taper below 0", web(1.8, -0.016, 5), "taper"},
      {"length lost below 0", web(1.8, 0.016, -5), "length lost"},
      {"taper no number", web(1.8, no_number, 5), "taper"},
  });
}

TEST_CASE("marks that cannot be those of a point are refused, each for its own reason") {
  // Source: what quillside/model/photo_marks.hpp states. The marks of a point of 100 pixels, one or two of them moved.
  const SideMarks side{{50, 0}, {2, 29}, {-2, 29}, {-50, 0}, {50, -80}, {-50, -80}};
  REQUIRE(refusal([&] { side_view(side, mm(12.7)); }) == "not refused");
  const auto moved = [&](auto... changes) {
    SideMarks marks = side;
    (changes(marks), ...);
    return [=] { side_view(marks, mm(12.7)); };
  };
  const auto to = [](Mark SideMarks::*which, Mark where) { return [=](SideMarks& marks) { marks.*which = where; }; };
  const EndMarks end{{50, 7}, {2, 7}, {-2, -7}, {-50, -7}};
  REQUIRE(refusal([&] { end_view(end, mm(12.7)); }) == "not refused");
  const auto seen = [](EndMarks marks) { return [=] { end_view(marks, mm(12.7)); }; };
  const auto tilted = [](double included, double tilt) {
    return [=] { foreshortened({degrees(included), degrees(tilt)}); };
  };
  check_refused({
      {"side, no diameter", [&] { side_view(side, mm(0)); }, "no diameter"},
      {"side, diameter no number", [&] { side_view(side, mm(no_number)); }, "no diameter"},
      {"side, margin A on its corner", moved(to(&SideMarks::margin_a, side.corner_a)), "lies on the outer corner"},
      {"side, margin B on its corner", moved(to(&SideMarks::margin_b, side.corner_b)), "lies on the outer corner"},
      {"side, a margin toward the tip", moved(to(&SideMarks::margin_b, {-50, 80})), "point apart"},
      {"side, both margins on one line", moved(to(&SideMarks::margin_a, {0, -80}), to(&SideMarks::margin_b, {0, -80})),
       "one line of the axis"},
      {"side, lip A behind its corner", moved(to(&SideMarks::inner_a, {2, -29})), "inward and toward the tip"},
      {"side, lip B outward", moved(to(&SideMarks::inner_b, {-60, 29})), "inward and toward the tip"},
      {"side, lip A a mark", moved(to(&SideMarks::inner_a, side.corner_a)), "inward and toward the tip"},
      {"side, a mark no number", moved(to(&SideMarks::inner_a, {no_number, 29})), "inward and toward the tip"},
      {"end, no diameter", [&] { end_view(end, mm(0)); }, "no diameter"},
      {"end, lip A a mark", seen({end.inner_a, end.inner_a, end.inner_b, end.corner_b}), "on one point"},
      {"end, lip B a mark", seen({end.corner_a, end.inner_a, end.inner_b, end.inner_b}), "on one point"},
      {"end, corners A and B exchanged", seen({end.corner_b, end.inner_a, end.inner_b, end.corner_a}), "wrong way"},
      {"end, lips across each other", seen({{50, 7}, {2, 7}, {-50, -7}, {-2, -7}}), "side by side"},
      {"end, corners on one point", seen({{0, 0}, {-20, 0}, {20, 0}, {0, 0}}), "two marks lie on one point"},
      {"end, no chisel edge", seen({{50, 0}, {0, 0}, {0, 0}, {-50, 0}}), "two marks lie on one point"},
      {"end, inner ends exchanged", seen({{50, 7}, {-2, 7}, {2, -7}, {-50, -7}}), "wrong way"},
      {"end, no web", seen({{50, 0}, {2, 0}, {-2, 0}, {-50, 0}}), "wrong way"},
      {"tilt, point of no angle", tilted(0, 5), "point angle"},
      {"tilt, no point", tilted(180, 5), "point angle"},
      {"tilt, below 0", tilted(118, -1), "tilted"},
      {"tilt, along the axis", tilted(118, 90), "tilted"},
      {"tilt, no number", tilted(118, no_number), "tilted"},
  });
}
