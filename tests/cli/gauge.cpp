// The ask `gauge`: what it finds, and the words it refuses. What it draws is measured in tests/page.

#include "json_of.hpp"

using namespace quillside;
using test::answer_of;
using test::error_of;
using test::Json;
using test::WithinAbs;

TEST_CASE("the angles asked for, a ruler, and no file where nothing is drawn") {
  const Json answer = answer_of("gauge --angles 118,135");
  REQUIRE(answer["found"]["angles"].size() == 2);
  CHECK_THAT(answer["found"]["angles"][0]["value"].get<double>(), WithinAbs(118, 1e-9));
  CHECK(answer["found"]["angles"][0]["unit"] == "deg");
  CHECK(answer["found"]["ruler_length"]["unit"] == "mm");
  CHECK(answer["found"]["ruler_length"]["value"] == 150);
  CHECK(answer["found"]["file"].is_null());
  CHECK(answer["set"] == Json::object());
  CHECK(answer["verdict"].is_null());
  CHECK(answer["inputs"]["paper"]["given"] == false);
  CHECK(answer["inputs"]["angles"]["unit"] == "deg");
  CHECK(test::has_caution(answer, "gauge-scale"));
  CHECK(answer["found"].size() == 3);
  // Half of 118 from the disk; the mitre scale reads its complement.
  const test::Ran text = test::quillside("gauge --angles 118,135");
  CHECK(text.out.find("V 118         half 59       fence 59      mitre scale 31") != std::string::npos);
}

TEST_CASE("without angles: those that the tables want of a drill, the sharpest first") {
  const Json angles = answer_of("gauge")["found"]["angles"];
  REQUIRE(angles.size() == 2); // tables/drilling.toml: 118 for any metal, 135 for stainless and titanium
  CHECK_THAT(angles[0]["value"].get<double>(), WithinAbs(118, 1e-9));
  CHECK_THAT(angles[1]["value"].get<double>(), WithinAbs(135, 1e-9));
}

TEST_CASE("the wedge: the tilt named, or that of grind for a 1/4 drill with one flat a lip") {
  // By hand: 100 tan 12.3 deg = 21.8035 mm.
  const Json named = answer_of("gauge --angles 118 --table-tilt 12.3");
  CHECK(test::quillside("gauge --angles 118 --table-tilt 12.3").out.find("rise 21.804 mm over 100 mm") !=
        std::string::npos);
  CHECK_FALSE(test::has_caution(named, "gauge-tilt-taken"));
  const Json taken = answer_of("gauge --angles 118,135");
  const Json hold = answer_of("grind 1/4 --angle 118");
  CHECK(taken["inputs"]["table_tilt"]["value"] == hold["set"]["facets"][0]["fence"]["table_tilt"]["value"]);
  CHECK(test::has_caution(taken, "gauge-tilt-taken"));
  CHECK(taken["inputs"]["table_tilt"]["given"] == false);
  // No point that grind answers: no wedge, and nothing is said of one.
  const Json sharp = answer_of("gauge --angles 30");
  CHECK_FALSE(sharp["inputs"].contains("table_tilt"));
  CHECK(test::quillside("gauge --angles 30").out.find("wedge") == std::string::npos);
  CHECK_FALSE(test::has_caution(sharp, "gauge-tilt-taken"));
}

TEST_CASE("angles that are no gauge: exit 2, and the angle is named") {
  for (const auto* angle : {"0", "180", "19.9", "170.1", "200"}) {
    INFO(angle);
    const Json error = error_of(std::string("gauge --angles 118,") + angle, 2);
    CHECK(error["word"] == angle);
    CHECK(error["message"].get<std::string>().find("20 to 170") != std::string::npos);
  }
  CHECK(error_of("gauge --angles 118,135,118", 2)["word"] == "118");
  CHECK(error_of("gauge --angles 118,,135", 2)["kind"] == "word");
  CHECK(error_of("gauge --angles flat", 2)["word"] == "flat");
  CHECK(error_of("gauge --angles -5", 2)["kind"] == "word");
  CHECK(error_of("gauge --table-tilt 0", 2)["word"] == "0");
  CHECK(error_of("gauge --table-tilt 46", 2)["word"] == "46");
  CHECK(error_of("gauge 118", 2)["kind"] == "word");
  std::string many = "20";
  for (int i = 1; i <= 48; ++i) many += "," + std::to_string(20 + 3 * i);
  CHECK(error_of("gauge --angles " + many, 2)["word"] == "--angles");
  CHECK(error_of("gauge --paper a5", 2)["word"] == "a5");
  CHECK(error_of("gauge --out gauge.txt", 2)["word"] == "gauge.txt");
  CHECK(error_of("gauge --out -", 2)["word"] == "--out");
  CHECK(error_of("gauge --out a.pdf --card b.pdf", 2)["kind"] == "conflict");
  CHECK(answer_of("gauge --paper a3")["inputs"]["paper"]["given"] == true);
}
