// Clearances and rakes along a straight lip. No published numeric case could be read: the figures below were worked out
// beside this project by a closed form and by vectors on a helicoid swept numerically, which agreed. Each is held to
// its last printed digit, the sixth. The clearances' figures are in cone_flank.cpp, with the cones they belong to. The
// second derivation in this file is its own: planes of ISO 3002-1 (from memory) built by vectors.

#include "catch.hpp"
#include "worked_figures.hpp"

#include <cmath>
#include <numbers>
#include <stdexcept>

#include <Eigen/Geometry>

#include <quillside/model/lip_angles.hpp>
#include <quillside/quantity/angle.hpp>

using namespace quillside;
using quillside::test::no_number;
using quillside::test::shape;
using quillside::test::six_figures;
using quillside::test::to_radians;
using quillside::test::WithinAbs;
using quillside::test::WithinRel;

namespace {

/// A lip point with the planes of the tool in hand, by vectors.
struct Planes {
  Eigen::Vector3d lip;     // outward along it
  Eigen::Vector3d cutting; // direction the point moves in
  Eigen::Vector3d radial;

  Planes(PointShape point, double radius) {
    const double w = in_mm(point.web) / 2;
    const double x = std::sqrt(radius * radius - w * w);
    radial = Eigen::Vector3d{x, w, 0}.normalized();
    cutting = Eigen::Vector3d::UnitZ().cross(radial);
    lip = {sine(point.included / 2.0), 0, -cosine(point.included / 2.0)};
  }
  /// Square to the cutting direction, and with the lip in it.
  [[nodiscard]] Eigen::Vector3d reference_normal() const { return cutting; }
  [[nodiscard]] Eigen::Vector3d cutting_plane_normal() const { return lip.cross(cutting).normalized(); }
  /// Square to the lip's shadow in the reference plane, in that plane: the orthogonal plane's own normal.
  [[nodiscard]] Eigen::Vector3d orthogonal_normal() const { return (lip - lip.dot(cutting) * cutting).normalized(); }
  /// The angle between two surfaces where a plane cuts both.
  [[nodiscard]] static double between(const Eigen::Vector3d& a, const Eigen::Vector3d& b, const Eigen::Vector3d& cut) {
    const Eigen::Vector3d trace_a = a.cross(cut).normalized();
    const Eigen::Vector3d trace_b = b.cross(cut).normalized();
    const double angle = std::atan2(trace_a.cross(trace_b).norm(), std::abs(trace_a.dot(trace_b)));
    return angle / to_radians;
  }
};

} // namespace

TEST_CASE("rake and inclination along the lip of a common flute, six figures each") {
  // Source: worked cases K01 to K04: closed form, and a helicoid swept by the lip with planes built by vectors, agree;
  // derived. No published numeric case could be read.
  struct Rake {
    double share, normal, orthogonal, inclination, side;
  };
  struct Row {
    double diameter, web, point, helix;
    Rake at[4];
  };
  const auto row = GENERATE(Row{12.7,
                                1.8,
                                118,
                                30,
                                {{1, 30.822, 31.0098, 6.978, 30},
                                 {0.75, 21.8914, 22.1562, 9.3221, 23.4132},
                                 {0.5, 10.1046, 10.4101, 14.0623, 16.1021},
                                 {0.25, -11.2171, -12.7845, 29.0749, 8.21321}}},
                            Row{6.35,
                                1.1,
                                118,
                                28,
                                {{1, 27.7155, 27.9793, 8.53918, 28},
                                 {0.75, 18.6318, 18.9813, 11.4189, 21.7412},
                                 {0.5, 6.34827, 6.64557, 17.2758, 14.888},
                                 {0.25, -19.5832, -23.855, 36.4373, 7.57179}}},
                            Row{12.7,
                                1.8,
                                135,
                                32,
                                {{1, 31.664, 31.8858, 7.52412, 32},
                                 {0.75, 23.1313, 23.4534, 10.0549, 25.1102},
                                 {0.5, 12.1524, 12.5781, 15.1821, 17.3506},
                                 {0.25, -6.52727, -7.64994, 31.5858, 8.87883}}},
                            Row{10,
                                1.5,
                                118,
                                12,
                                {{1, 9.56601, 9.64458, 7.38726, 12},
                                 {0.75, 4.52305, 4.59073, 9.87117, 9.05773},
                                 {0.5, -2.32448, -2.40528, 14.901, 6.06652},
                                 {0.25, -18.2259, -21.0045, 30.9507, 3.04179}}});
  const PointShape point = shape(row.diameter, row.web, row.point);
  for (const Rake& rake : row.at) {
    INFO(row.diameter << " mm, " << row.point << " deg, helix " << row.helix << ", at " << rake.share);
    const Length radius = point.diameter / 2.0 * rake.share;
    const auto prints = [](Angle found, double printed) {
      CHECK_THAT(in_degrees(found), WithinAbs(printed, six_figures(printed)));
    };
    prints(normal_rake(point, degrees(row.helix), radius), rake.normal);
    prints(orthogonal_rake(point, degrees(row.helix), radius), rake.orthogonal);
    prints(lip_inclination(point, radius), rake.inclination);
    prints(side_rake(point, degrees(row.helix), radius), rake.side);
  }
}

TEST_CASE("rake and clearance again, by vectors: the flute swept by the lip, the flank a plane through it") {
  // Source: an independent derivation in this test. The face is spanned by the lip and by the helix through its point,
  // the flank by the lip and by what falls m along y. Tolerance: a hundred roundings.
  const double point_angle = GENERATE(90.0, 118.0, 135.0);
  const double share = GENERATE(0.3, 0.6, 1.0);
  const PointShape point = shape(12.7, 1.8, point_angle);
  const double radius = share * 6.35;
  const double slope = 0.13;
  const Planes at{point, radius};
  const Eigen::Vector3d helix = at.cutting + Eigen::Vector3d{0, 0, 6.35 / std::tan(30 * to_radians) / radius};
  const Eigen::Vector3d face = at.lip.cross(helix).normalized();
  const Eigen::Vector3d flank = at.lip.cross(Eigen::Vector3d{0, 1, slope}).normalized();

  const double normal_clear = Planes::between(flank, at.cutting_plane_normal(), at.lip);
  const double orthogonal_clear = Planes::between(flank, at.cutting_plane_normal(), at.orthogonal_normal());
  const double side_clear = Planes::between(flank, Eigen::Vector3d::UnitZ(), at.radial);
  CHECK_THAT(in_degrees(normal_clearance(point, slope, mm(radius))), WithinAbs(normal_clear, 1e-10));
  CHECK_THAT(in_degrees(orthogonal_clearance(point, slope, mm(radius))), WithinAbs(orthogonal_clear, 1e-10));
  CHECK_THAT(in_degrees(side_clearance(point, slope, mm(radius))), WithinAbs(side_clear, 1e-10));

  // The reference plane's trace square to the lip is square to that of the cutting plane.
  const double normal = Planes::between(face, at.lip.cross(at.cutting_plane_normal()), at.lip);
  const double orthogonal = Planes::between(face, at.reference_normal(), at.orthogonal_normal());
  CHECK_THAT(std::abs(in_degrees(normal_rake(point, degrees(30), mm(radius)))), WithinAbs(normal, 1e-10));
  CHECK_THAT(std::abs(in_degrees(orthogonal_rake(point, degrees(30), mm(radius)))), WithinAbs(orthogonal, 1e-10));
  CHECK_THAT(sine(lip_inclination(point, mm(radius))), WithinRel(std::abs(at.lip.dot(at.cutting)), 1e-12));
}

TEST_CASE("with no web the lip is radial: no inclination, one clearance, and the plain rake") {
  // Source: limits of the formulas: tan(normal rake) = tan(helix at the radius) / sin(point/2).
  const PointShape sharp = shape(10, 0, 118);
  CHECK(in_degrees(lip_inclination(sharp, mm(3))) == 0);
  CHECK_THAT(in_degrees(side_clearance(sharp, 0.2, mm(3))), WithinRel(std::atan(0.2) / to_radians, 1e-14));
  CHECK(side_clearance(sharp, 0.2, mm(1)) == side_clearance(sharp, 0.2, mm(5)));
  CHECK_THAT(tangent(normal_rake(sharp, degrees(30), mm(3))),
             WithinRel(0.6 * std::tan(30 * to_radians) / std::sin(59 * to_radians), 1e-13));
}

TEST_CASE("at the inner end of a flat lip the clearance is that of the chisel edge") {
  // Source: geometry, tan(clearance) = cot(point/2) / sin(acute chisel edge angle).
  const PointShape point = shape(12.7, 1.8, 118);
  const double slope = flank_slope(point, degrees(12));
  const Angle edge = chisel_edge_of_flat(point, slope);
  const Length inner = chisel_length(point.web, edge) / 2.0;
  CHECK_THAT(tangent(side_clearance(point, slope, inner)), WithinRel(1 / tangent(degrees(59)) / sine(edge), 1e-12));
}

TEST_CASE("what a feed takes of a clearance: the path of a lip point unrolled") {
  // Source: worked figures: 0.2 mm a turn takes 0.29 deg at a radius of 6.35 mm, 1.56 at 1.17; derived. Second
  // derivation: rise over run of the unrolled helix.
  struct Row {
    double radius, taken;
  };
  const auto row = GENERATE(Row{6.35, 0.29}, Row{1.17, 1.56});
  const double left = in_degrees(working_clearance(degrees(12), mm(row.radius), mm_per_rev(0.2)));
  CHECK_THAT(12 - left, WithinAbs(row.taken, 0.00501));
  CHECK_THAT(12 - left, WithinAbs(std::atan2(0.2, 2 * std::numbers::pi * row.radius) / to_radians, 1e-12));
  CHECK(in_degrees(working_clearance(degrees(12), mm(row.radius), mm_per_rev(0))) == in_degrees(degrees(12)));
  CHECK(working_clearance(degrees(1), mm(1), mm_per_rev(0.2)) < degrees(0)); // it rubs, and says so
}

TEST_CASE("a uniform relief over a turn is a helix: there and back") {
  // Source: none needed, a definition and its inverse.
  const FlankPlace place{mm(6.35), degrees(10)};
  const Length drop = uniform_drop(place, degrees(12));
  CHECK_THAT(in_mm(drop), WithinRel(6.35 * 10 * to_radians * std::tan(12 * to_radians), 1e-14));
  CHECK_THAT(in_degrees(mean_relief(place, drop)), WithinRel(12.0, 1e-14));
  CHECK(in_mm(uniform_drop({mm(6.35), degrees(0)}, degrees(12))) == 0);
}

TEST_CASE("off the lip, and outside the angles, there is no answer") {
  const PointShape point = shape(12.7, 1.8, 118);
  CHECK_THROWS_AS(lip_offset(point, mm(0.9)), std::domain_error);
  CHECK_THROWS_AS(lip_offset(point, mm(6.36)), std::domain_error);
  CHECK_THROWS_AS(lip_offset(point, mm(no_number)), std::domain_error);
  CHECK_THROWS_AS(lip_offset(shape(12.7, 12.7, 118), mm(6.35)), std::domain_error);
  CHECK_THROWS_AS(side_clearance(point, 0, mm(5)), std::domain_error);
  CHECK_THROWS_AS(side_clearance(point, no_number, mm(5)), std::domain_error);
  CHECK_THROWS_AS(normal_clearance(point, -0.1, mm(5)), std::domain_error);
  CHECK_THROWS_AS(orthogonal_clearance(point, 0.1, mm(7)), std::domain_error);
  CHECK_THROWS_AS(flank_tilt({degrees(180), 0.1}), std::domain_error);
  CHECK_THROWS_AS(flank_roll({degrees(0), 0.1}), std::domain_error);
  CHECK_THROWS_AS(flank_roll({degrees(118), no_number}), std::domain_error);
  CHECK_THROWS_AS(side_rake(point, degrees(-1), mm(5)), std::domain_error);
  CHECK_THROWS_AS(normal_rake(point, degrees(90), mm(5)), std::domain_error);
  CHECK_THROWS_AS(orthogonal_rake(point, degrees(no_number), mm(5)), std::domain_error);
  CHECK_THROWS_AS(working_clearance(degrees(0), mm(5), mm_per_rev(0.1)), std::domain_error);
  CHECK_THROWS_AS(working_clearance(degrees(12), mm(0), mm_per_rev(0.1)), std::domain_error);
  CHECK_THROWS_AS(working_clearance(degrees(12), mm(5), mm_per_rev(-0.1)), std::domain_error);
  CHECK_THROWS_AS(uniform_drop({mm(0), degrees(5)}, degrees(12)), std::domain_error);
  CHECK_THROWS_AS(uniform_drop({mm(5), degrees(361)}, degrees(12)), std::domain_error);
  CHECK_THROWS_AS(uniform_drop({mm(5), degrees(5)}, degrees(90)), std::domain_error);
  CHECK_THROWS_AS(mean_relief({mm(5), degrees(0)}, mm(0.1)), std::domain_error);
  CHECK_THROWS_AS(mean_relief({mm(5), degrees(5)}, mm(0)), std::domain_error);
  CHECK_THROWS_AS(mean_relief({mm(no_number), degrees(5)}, mm(0.1)), std::domain_error);
}
