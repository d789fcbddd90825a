// The depth stop, worked by hand for a 9/64 drill in a plate 3/16 thick.

#include "json_of.hpp"

using namespace quillside;
using test::answer_of;
using test::Json;
using test::WithinAbs;

namespace {

constexpr double inch = 25.4;
/// Lengths are sums and differences of a few inch figures: rounding only.
constexpr double rounding = 1e-9;

double set(const Json& answer, const char* name) { return answer["set"][name]["value"].get<double>(); }
double found(const Json& answer, const char* name) { return answer["found"][name]["value"].get<double>(); }

} // namespace

TEST_CASE("metal left under the tip: the tip stops so much above the back, and a shank of that size is the shim") {
  const Json answer = answer_of("drill 9/64 C752 --thick 3/16 --leave 0.040");
  CHECK_THAT(set(answer, "depth_stop"), WithinAbs((0.1875 - 0.040) * inch, rounding));
  CHECK_THAT(found(answer, "left_under_tip"), WithinAbs(0.040 * inch, rounding));
  // 118 deg: the cone is (9/128) / tan 59 = 0.04225 in long, so full width ends 0.04225 higher than the tip.
  CHECK_THAT(found(answer, "point_allowance"), WithinAbs(0.0422480 * inch, 1e-6));
  CHECK_THAT(found(answer, "left_under_corner"), WithinAbs((0.040 + 0.0422480) * inch, 1e-6));
  CHECK(answer["set"]["stop_shim"]["name"] == "no60");
  CHECK(answer["set"]["pecks"] == Json::array());
}

TEST_CASE("metal left under the corner: the tip goes one cone deeper") {
  const Json answer = answer_of("drill 9/64 C752 --thick 3/16 --leave 0.060 --leave-at corner");
  CHECK_THAT(set(answer, "depth_stop"), WithinAbs((0.1875 - 0.060 + 0.0422480) * inch, 1e-6));
  CHECK_THAT(found(answer, "left_under_corner"), WithinAbs(0.060 * inch, rounding));
}

TEST_CASE("a corner so near the back that the tip comes out: said, and no shim") {
  const Json answer = answer_of("drill 9/64 C752 --thick 3/16 --leave 0.010 --leave-at corner");
  CHECK(test::has_caution(answer, "tip-out"));
  CHECK(answer["set"]["stop_shim"].is_null());
  CHECK_FALSE(answer["found"].contains("left_under_tip"));
}

TEST_CASE("depth to full diameter adds the cone") {
  const Json answer = answer_of("drill 4.8mm 304 --depth 20mm");
  // 135 deg: (4.8/2) / tan 67.5 = 0.99411 mm.
  CHECK_THAT(set(answer, "depth_stop"), WithinAbs(20.99411, 1e-5));
}

TEST_CASE("through: thickness, cone and the overrun of tables/limits.toml") {
  const Json answer = answer_of("drill 1/8 1084 --thick 1/4 --through --machine pillar");
  const double cone = 0.5 * 0.125 * inch / 1.6642795; // tan 59 deg
  CHECK_THAT(set(answer, "depth_stop"), WithinAbs(0.25 * inch + cone + 0.5, 1e-6));
  CHECK(answer["set"]["stop_shim"].is_null());
  CHECK(test::has_caution(answer, "breaks-through"));
}

TEST_CASE("a part thinner than the cone gets a spot, and how wide it is") {
  const Json answer = answer_of("drill 1/4 303 --thick 0.060 --leave 0.040");
  // 135 deg, tip 0.020 deep: 2 x 0.020 x tan 67.5 = 0.096569 in.
  CHECK_THAT(found(answer, "spot_diameter"), WithinAbs(0.0965685 * inch, 1e-5));
  CHECK(test::has_caution(answer, "spot-only"));
}

TEST_CASE("the doubt of the thickness is the doubt of what is left") {
  const Json typed = answer_of("drill 9/64 C752 --thick 0.1875+-0.002 --leave 0.040");
  const Json& left = typed["found"]["left_under_tip"];
  CHECK_THAT(left["low"].get<double>(), WithinAbs(0.038 * inch, rounding));
  CHECK_THAT(left["high"].get<double>(), WithinAbs(0.042 * inch, rounding));
  // Nothing typed: the larger of half the last digit (0.00005 in) and what a caliper is usually off (0.02 mm).
  const Json usual = answer_of("drill 9/64 C752 --thick 0.1875 --leave 0.040");
  CHECK_THAT(usual["found"]["left_under_tip"]["high"].get<double>(), WithinAbs(0.040 * inch + 0.02, rounding));
  // Half the last digit of 0.2 is 0.05 in: larger than any caliper's error.
  const Json coarse = answer_of("drill 9/64 C752 --thick 0.2 --leave 0.040");
  CHECK_THAT(coarse["found"]["left_under_tip"]["high"].get<double>(), WithinAbs(0.090 * inch, rounding));
}

TEST_CASE("deep holes come down in speed and feed as the rows say") {
  // A cutting-tool maker's drilling guide (name withheld): 3 diameters 10 and 10 %, 4 20 and 10 %, 5 30 and 20 %, 6 35
  // to 40 and 20 %.
  struct Row {
    const char* depth;
    double speed;
    double feed;
  };
  const auto row = GENERATE(Row{"7mm", 1, 1}, Row{"8.9mm", 0.9, 0.9}, Row{"12mm", 0.8, 0.9}, Row{"15mm", 0.7, 0.8},
                            Row{"18mm", 0.6, 0.8});
  const Json deep = answer_of(std::string("drill 3mm 1018 --depth ") + row.depth);
  const Json plain = answer_of("drill 3mm 1018");
  INFO(row.depth);
  CHECK_THAT(set(deep, "spindle_speed") / set(plain, "spindle_speed"), WithinAbs(row.speed, 1e-9));
  CHECK_THAT(set(deep, "feed_per_rev") / set(plain, "feed_per_rev"), WithinAbs(row.feed, 1e-9));
  CHECK(deep["found"]["limited_by"] == (row.speed < 1 ? "depth" : "table"));
  CHECK(deep["found"]["wanted_spindle_speed"] == plain["found"]["wanted_spindle_speed"]);
}

TEST_CASE("pecks end at the depth, and none is deeper than the schedule") {
  const Json answer = answer_of("drill 1/8 304 --depth 1in");
  const Json& pecks = answer["set"]["pecks"];
  REQUIRE(pecks.size() > 3);
  double before = 0;
  for (const auto& peck : pecks) {
    const double to = peck["to_depth"]["value"].get<double>();
    CHECK(to > before);
    // Stainless: the first bite 1.5 diameters, then half a diameter (common practice, no source).
    CHECK(to - before <= (before == 0 ? 1.5 : 0.55) * 0.125 * inch + rounding);
    before = to;
  }
  CHECK_THAT(before, WithinAbs(set(answer, "depth_stop"), rounding));
}

TEST_CASE("cutting time is the tip's travel over the feed rate") {
  const Json answer = answer_of("drill 9/64 C752 --thick 3/16 --leave 0.040 --machine pillar");
  // 0.1475 in at 0.002 in a turn and 1100 rev/min: 0.06705 min.
  CHECK_THAT(found(answer, "cut_time"), WithinAbs(0.1475 / (0.002 * 1100) * 60, 1e-9));
}
