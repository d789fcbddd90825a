// The gauge of two figures. Angles of regular figures; the light of a 1/2 in flat-ground point, web 0.075, relief 12.

#include "json_of.hpp"

using namespace quillside;
using test::answer_of;
using test::error_of;
using test::Json;
using test::WithinAbs;

namespace {

Json light_for(const Json& answer, double point) {
  for (const auto& row : answer["found"]["light_gap"])
    if (std::abs(row["included_angle"]["value"].get<double>() - point) < 1e-9) return row;
  FAIL("no row for that point");
  return {};
}

} // namespace

TEST_CASE("a pair of hexagons makes 120 deg and says that it is no 135 gauge; octagon and square make 135") {
  const Json pair = answer_of("notch hex hex");
  CHECK_THAT(pair["found"]["notch_angle"]["value"].get<double>(), WithinAbs(120, 1e-9));
  CHECK(test::has_caution(pair, "hex-pair"));
  const Json true_gauge = answer_of("notch octagon square");
  CHECK_THAT(true_gauge["found"]["notch_angle"]["value"].get<double>(), WithinAbs(135, 1e-9));
  CHECK_FALSE(test::has_caution(true_gauge, "hex-pair"));
  CHECK_THAT(answer_of("notch 6 flat")["found"]["notch_angle"]["value"].get<double>(), WithinAbs(60, 1e-9));
}

TEST_CASE("where the light shows: at the corners of a sharper point, under the tip of a flatter one") {
  const Json pair = answer_of("notch hex hex");
  CHECK(light_for(pair, 118)["where"] == "corner");
  CHECK(light_for(pair, 120)["where"] == "none");
  CHECK(light_for(pair, 135)["where"] == "tip");
  // By hand for 118: R 6.35, w 0.9525, m = (tan 12 - 0.15 cot 59)/cos(asin 0.15) = 0.123828, x_c = m w tan 59 =
  // 0.196293, L = (sqrt(R^2 - w^2) - x_c)/sin 59 = 7.095301, light L sin 1 deg = 0.123830 mm.
  CHECK_THAT(light_for(pair, 118)["gap"]["value"].get<double>(), WithinAbs(0.123830, 0.000001));
}

TEST_CASE("figures that leave no notch, and words that are no figure") {
  CHECK(error_of("notch square square", 2)["kind"] == "conflict");
  CHECK(error_of("notch triangle square", 2)["kind"] == "conflict");
  CHECK(error_of("notch hexagn hex", 2)["try"] == "hexagon");
  CHECK(error_of("notch 2 hex", 2)["word"] == "2");
  CHECK(error_of("notch 13 hex", 2)["kind"] == "word");
  CHECK(error_of("notch hex", 2)["kind"] == "word");
}
