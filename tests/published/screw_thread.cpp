// Screw threads and countersinks against printed figures, each group under its page.

#include "catch.hpp"

#include <cmath>

#include <quillside/model/countersink.hpp>
#include <quillside/model/screw_thread.hpp>

using namespace quillside;
using quillside::test::WithinAbs;

namespace {

Thread unified(Length major, double threads_per_inch) { return {major, inches(1.0 / threads_per_inch)}; }

} // namespace

TEST_CASE("pitch and minor diameters of coarse threads, as a screw maker prints them") {
  // Source: a screw maker's page, thread geometry of the Unified coarse series (name withheld): pitch diameter, minor
  // diameter of the female thread. Printed to 0.0001 in; the last digit is rounded.
  struct Row {
    const char* name;
    Length major;
    double threads_per_inch;
    double pitch_diameter; // in
    double minor_diameter;
  };
  const auto row =
      GENERATE(Row{"1-64", inches(0.0730), 64, 0.0629, 0.0561}, Row{"2-56", inches(0.0860), 56, 0.0744, 0.0667},
               Row{"3-48", inches(0.0990), 48, 0.0855, 0.0764}, Row{"4-40", inches(0.1120), 40, 0.0958, 0.0849},
               Row{"5-40", inches(0.1250), 40, 0.1088, 0.0979}, Row{"6-32", inches(0.1380), 32, 0.1177, 0.1042},
               Row{"8-32", inches(0.1640), 32, 0.1437, 0.1302}, Row{"10-24", inches(0.1900), 24, 0.1629, 0.1449},
               Row{"12-24", inches(0.2160), 24, 0.1889, 0.1709}, Row{"1/4-20", inches(1, 4), 20, 0.2175, 0.1959},
               Row{"5/16-18", inches(5, 16), 18, 0.2764, 0.2524}, Row{"3/8-16", inches(3, 8), 16, 0.3344, 0.3073},
               Row{"7/16-14", inches(7, 16), 14, 0.3911, 0.3602}, Row{"1/2-13", inches(1, 2), 13, 0.4500, 0.4167});
  INFO(row.name);
  const Thread thread = unified(row.major, row.threads_per_inch);
  CHECK_THAT(in_inches(pitch_diameter(thread)), WithinAbs(row.pitch_diameter, 0.000051));
  CHECK_THAT(in_inches(basic_minor_diameter(thread)), WithinAbs(row.minor_diameter, 0.000051));
}

TEST_CASE("the whole of a thread in the trade's count ends at the root diameter of the handbook") {
  // Source: E. Oberg and others, Machinery's Handbook, 31st ed., 2020, p. 2168, table 4, root diameters of the American
  // National form, whose depth is 0.6495 pitches. Printed to 0.0001 in. 5/64-60 is left out: 0.0563 is printed where
  // D - 1.2990 P is 0.0565.
  struct Row {
    Length major;
    double threads_per_inch;
    double root; // in
  };
  const auto row =
      GENERATE(Row{inches(1, 16), 64, 0.0422}, Row{inches(5, 64), 72, 0.0601}, Row{inches(3, 32), 48, 0.0667},
               Row{inches(7, 64), 48, 0.0823}, Row{inches(1, 8), 32, 0.0844}, Row{inches(5, 32), 32, 0.1157},
               Row{inches(3, 16), 24, 0.1334}, Row{inches(7, 32), 24, 0.1646}, Row{inches(1, 4), 20, 0.1850},
               Row{inches(1, 4), 28, 0.2036}, Row{inches(5, 16), 18, 0.2403}, Row{inches(3, 8), 16, 0.2938});
  const Thread thread = unified(row.major, row.threads_per_inch);
  CHECK_THAT(in_inches(tap_hole(thread, 1)), WithinAbs(row.root, 0.000051));
}

TEST_CASE("percentages of thread of small tap drills, as the handbook prints them") {
  // Source: E. Oberg and others, Machinery's Handbook, 31st ed., 2020, p. 2155, table 2, tap drill sizes and percentage
  // of full thread. Printed in whole parts of a hundred, of drills printed to 0.0001 in (0.4 to 0.6 parts): some of
  // them cut off, some rounded, one part either way is left. Two rows are left out for what they print: 0-80 with
  // 1.25 mm (68 where the count gives 66) and 3-56 with no46 (0.0801 where the drill is 0.0810).
  struct Row {
    double major; // in
    double threads_per_inch;
    double drill;
    double percent;
  };
  const auto row = GENERATE(Row{0.0600, 80, 0.0512, 54}, Row{0.0600, 80, 0.0472, 79}, Row{0.0730, 64, 0.0625, 51},
                            Row{0.0730, 64, 0.0610, 59}, Row{0.0730, 64, 0.0595, 66}, Row{0.0730, 64, 0.0590, 69},
                            Row{0.0730, 72, 0.0635, 53}, Row{0.0730, 72, 0.0625, 58}, Row{0.0730, 72, 0.0610, 66},
                            Row{0.0730, 72, 0.0595, 75}, Row{0.0730, 72, 0.0590, 77}, Row{0.0860, 56, 0.0730, 56},
                            Row{0.0860, 56, 0.0709, 65}, Row{0.0860, 56, 0.0700, 69}, Row{0.0860, 56, 0.0689, 74},
                            Row{0.0860, 64, 0.0748, 55}, Row{0.0860, 64, 0.0730, 64}, Row{0.0860, 64, 0.0728, 65},
                            Row{0.0860, 64, 0.0709, 74}, Row{0.0860, 64, 0.0700, 79}, Row{0.0990, 48, 0.0846, 53},
                            Row{0.0990, 48, 0.0827, 60}, Row{0.0990, 48, 0.0820, 63}, Row{0.0990, 48, 0.0810, 66},
                            Row{0.0990, 48, 0.0785, 76}, Row{0.0990, 48, 0.0781, 77}, Row{0.0990, 56, 0.0866, 53},
                            Row{0.0990, 56, 0.0860, 56}, Row{0.0990, 56, 0.0846, 62}, Row{0.0990, 56, 0.0827, 70},
                            Row{0.0990, 56, 0.0820, 73}, Row{0.0990, 56, 0.0807, 79}, Row{0.1120, 36, 0.0890, 64},
                            Row{0.1120, 36, 0.0860, 72}, Row{0.1120, 40, 0.0945, 54}, Row{0.1120, 40, 0.0935, 57},
                            Row{0.1120, 40, 0.0925, 60}, Row{0.1120, 40, 0.0905, 66});
  INFO(row.major << " in, " << row.threads_per_inch << " to the inch, drill " << row.drill);
  const Thread thread = unified(inches(row.major), row.threads_per_inch);
  CHECK_THAT(100 * share_of_thread(thread, inches(row.drill)), WithinAbs(row.percent, 1.0));
}

TEST_CASE("the two counts of a thread, and the way back") {
  // Source: geometry and printed charts: the ratio of three quarters to five eighths of the triangle is 6/5; 1/4-20
  // with no7 is 75 % and M3 with 2.5 mm is 77 % on printed charts (read on several tap drill pages).
  const Thread quarter = unified(inches(1, 4), 20);
  CHECK_THAT(100 * share_of_thread(quarter, inches(0.2010)), WithinAbs(75, 0.5));
  const Thread m3{mm(3), mm(0.5)};
  CHECK_THAT(100 * share_of_thread(m3, mm(2.5)), WithinAbs(77, 0.5));
  CHECK_THAT(share_of_basic_profile(m3, mm(2.5)) / share_of_thread(m3, mm(2.5)), WithinAbs(1.2, 1e-12));
  CHECK_THAT(share_of_basic_profile(m3, basic_minor_diameter(m3)), WithinAbs(1, 1e-12));
  // By ruler and compass: an equilateral triangle of side P is P sin 60 high.
  CHECK_THAT(in_mm(sharp_height(m3)), WithinAbs(0.5 * std::sin(std::acos(-1.0) / 3), 1e-12));
  for (const double share : {0.0, 0.5, 0.65, 0.75, 1.0})
    CHECK_THAT(share_of_thread(m3, tap_hole(m3, share)), WithinAbs(share, 1e-12));
}

TEST_CASE("a blind thread of so many full turns has the tap's ground turns below them") {
  // Source: geometry; the chamfer of a plug tap is 3 to 5 threads long (Machinery's Handbook, 26th ed., as quoted).
  CHECK_THAT(in_mm(blind_hole_depth({mm(4.5), mm(0.5), 5})), WithinAbs(7, 1e-12));
  CHECK_THAT(in_mm(blind_hole_depth({mm(4.5), mm(0.5), 0})), WithinAbs(4.5, 1e-12));
}

TEST_CASE("threads and holes that are none are refused") {
  // Source: the ranges that the header states; outside them the figure is no thread or hole.
  CHECK_THROWS_AS(sharp_height({mm(0), mm(0.5)}), std::domain_error);
  CHECK_THROWS_AS(pitch_diameter({mm(3), mm(0)}), std::domain_error);
  CHECK_THROWS_AS(basic_minor_diameter({mm(3), mm(1.5)}), std::domain_error);
  CHECK_THROWS_AS(tap_hole({mm(3), mm(0.5)}, 1.01), std::domain_error);
  CHECK_THROWS_AS(tap_hole({mm(3), mm(0.5)}, std::nan("")), std::domain_error);
  CHECK_THROWS_AS(share_of_thread({mm(3), mm(0.5)}, mm(0)), std::domain_error);
  CHECK_THROWS_AS(blind_hole_depth({mm(-1), mm(0.5), 5}), std::domain_error);
  CHECK_THROWS_AS(blind_hole_depth({mm(1), mm(0.5), -1}), std::domain_error);
}

TEST_CASE("height and theoretical diameter of countersunk heads agree") {
  // Source: ISO 7047 as a seller of screws restates it (name withheld): height k, theoretical diameter of the head, 90
  // deg. Printed to 0.05 mm and 0.1 mm; the two agree exactly.
  struct Row {
    double screw;
    double height;
    double head;
  };
  const auto row =
      GENERATE(Row{1.6, 1, 3.6}, Row{2, 1.2, 4.4}, Row{2.5, 1.5, 5.5}, Row{3, 1.65, 6.3}, Row{3.5, 2.35, 8.2},
               Row{4, 2.7, 9.4}, Row{5, 2.7, 10.4}, Row{6, 3.3, 12.6}, Row{8, 4.65, 17.3}, Row{10, 5, 20});
  INFO("M" << row.screw);
  CHECK_THAT(in_mm(sharp_head({mm(row.screw), mm(row.height), degrees(90)})), WithinAbs(row.head, 1e-9));
  CHECK_THAT(in_mm(countersink_depth({mm(row.head), mm(row.screw), degrees(90)})), WithinAbs(row.height, 1e-9));
}

TEST_CASE("a countersink by another way round: the cone's radius grows by tan of half its angle") {
  // Second way: the width of the cone at the face, put together step by step down to the hole.
  const auto cone = GENERATE(60.0, 82.0, 90.0, 100.0, 120.0);
  const Length depth = countersink_depth({mm(6.3), mm(3.4), degrees(cone)});
  const double slope = std::tan(cone / 2 * std::acos(-1.0) / 180);
  CHECK_THAT(3.4 + 2 * in_mm(depth) * slope, WithinAbs(6.3, 1e-9));
}

TEST_CASE("countersinks that are none are refused") {
  // Source: the ranges that the header states; outside them the figure is no countersink.
  CHECK_THROWS_AS(countersink_depth({mm(3), mm(3), degrees(90)}), std::domain_error);
  CHECK_THROWS_AS(countersink_depth({mm(6), mm(0), degrees(90)}), std::domain_error);
  CHECK_THROWS_AS(countersink_depth({mm(6), mm(3), degrees(180)}), std::domain_error);
  CHECK_THROWS_AS(countersink_depth({mm(6), mm(3), degrees(0)}), std::domain_error);
  CHECK_THROWS_AS(sharp_head({mm(0), mm(1), degrees(90)}), std::domain_error);
  CHECK_THROWS_AS(sharp_head({mm(3), mm(-1), degrees(90)}), std::domain_error);
}
