// Chip thickness at narrow cuts, against a table of arc, largest and mean chip.
// The relations are Martellotti's (An Analysis of the Milling Process, Trans. ASME 63, 1941; from memory), the figures
// were worked out from them apart from this library and rounded; no printed page of the table is known.

#include "catch.hpp"

#include <cmath>

#include <quillside/model/chip.hpp>
#include <quillside/quantity/angle.hpp>

using namespace quillside;
using quillside::test::WithinAbs;

namespace {

struct Row {
  double share;      // radial width of cut over diameter
  double arc;        // deg
  double largest;    // over the feed per tooth
  double mean;       // over the feed per tooth
  double multiplier; // of the feed, that brings the largest chip back to it
  double last_digit; // of the multiplier
};

// Tolerance in every column: the last digit given, since how the table was rounded is not said.
auto rows() {
  return GENERATE(Row{0.02, 16.3, 0.280, 0.1409, 3.57, 0.01}, Row{0.05, 25.8, 0.436, 0.2217, 2.29, 0.01},
                  Row{0.10, 36.9, 0.600, 0.3108, 1.67, 0.01}, Row{0.15, 45.6, 0.714, 0.3772, 1.40, 0.01},
                  Row{0.20, 53.1, 0.800, 0.4314, 1.25, 0.01}, Row{0.25, 60.0, 0.866, 0.4775, 1.155, 0.001},
                  Row{0.30, 66.4, 0.917, 0.5176, 1.09, 0.01}, Row{0.40, 78.5, 0.980, 0.5842, 1.02, 0.01},
                  Row{0.50, 90, 1.000, 0.6366, 1, 0.001}, Row{0.75, 120, 1.000, 0.7162, 1, 0.001},
                  Row{1.00, 180, 1.000, 0.6366, 1, 0.001});
}

constexpr Length diameter = mm(3);
constexpr FeedPerTooth feed = mm_per_tooth(0.02);

Engagement engaged(double share) { return {.width = share * diameter, .diameter = diameter}; }

} // namespace

TEST_CASE("arc, largest chip and mean chip are those of the table") {
  // Source: Martellotti 1941 (from memory), figures worked out from its relations apart from this library.
  const Row row = rows();
  INFO("width of cut " << row.share << " of the diameter");
  CHECK_THAT(in_degrees(arc_of_engagement(engaged(row.share))), WithinAbs(row.arc, 0.1));
  CHECK_THAT(in_mm(largest_chip(feed, engaged(row.share))) / in_mm_per_tooth(feed), WithinAbs(row.largest, 0.001));
  CHECK_THAT(in_mm(mean_chip(feed, engaged(row.share))) / in_mm_per_tooth(feed), WithinAbs(row.mean, 0.0001));
}

TEST_CASE("the feed multiplier of the table brings the largest chip back") {
  // Source: Martellotti 1941 (from memory), figures worked out from its relations apart from this library.
  const Row row = rows();
  INFO("width of cut " << row.share << " of the diameter");
  const FeedPerTooth restored = feed_for_chip(mm(in_mm_per_tooth(feed)), engaged(row.share));
  CHECK_THAT(restored / feed, WithinAbs(row.multiplier, row.last_digit));
}

TEST_CASE("the short cut of milling-cutter catalogues, hm = fz sqrt(ae/D), lies near the mean chip of a narrow cut") {
  // Source: a milling-cutter maker's catalogue, page 87 (name withheld), for cuts under half the diameter. It takes the
  // chord for the arc, so it runs high, the more so the wider the cut: by 1/6 of the share and a little (series of the
  // arc sine).
  const double share = GENERATE(0.02, 0.05, 0.10, 0.15, 0.20, 0.25, 0.30, 0.40);
  const double exact = in_mm(mean_chip(feed, engaged(share))) / in_mm_per_tooth(feed);
  const double excess = std::sqrt(share) / exact - 1;
  CHECK(excess > share / 6);
  CHECK(excess < share / 6 + share * share / 8);
}
