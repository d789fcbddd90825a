// Judging a point. The points are solids whose every angle is given; what a bench would read of them is worked out here
// from plain trigonometry, not by the library (derived; no page with worked numbers could be read).

#include "folder.hpp"
#include "json_of.hpp"

#include <cmath>
#include <iomanip>
#include <map>
#include <numbers>
#include <sstream>

using namespace quillside;
using test::answer_of;
using test::error_of;
using test::found;
using test::Json;
using test::WithinAbs;

namespace {

constexpr double deg = std::numbers::pi / 180;

/// A point of two flats, in mm and deg.
struct Flats {
  double diameter, web, included, relief;

  [[nodiscard]] double offset() const { return std::asin(web / diameter); }
  [[nodiscard]] double cot() const { return 1 / std::tan(included / 2 * deg); }
  [[nodiscard]] double slope() const {
    return (std::tan(relief * deg) - std::sin(offset()) * cot()) / std::cos(offset());
  }
  [[nodiscard]] double chisel() const { return 90 + std::atan(slope() / cot()) / deg; }
  [[nodiscard]] double reach() const {
    return diameter / 2 * std::cos(offset()) - web / 2 * std::tan((chisel() - 90) * deg);
  }
  [[nodiscard]] double depth() const { return reach() * cot(); }
  [[nodiscard]] double lip() const { return reach() / std::sin(included / 2 * deg); }
  [[nodiscard]] double heel() const { return 2 * (offset() / deg + chisel() - 90); }
  [[nodiscard]] double drop(double turn) const {
    const double radius = diameter / 2;
    const double back = offset() - turn * deg;
    return radius * (cot() * (std::cos(back) - std::cos(offset())) + slope() * (std::sin(offset()) - std::sin(back)));
  }
};

std::string number(double value) {
  std::ostringstream out;
  out << std::fixed << std::setprecision(4) << value;
  return out.str();
}
std::string length(double value, double error) { return number(value) + "mm+-" + number(error) + "mm"; }
std::string angle(double value, double error) { return number(value) + "+-" + number(error); }

/// Every reading of such a point, each with a careful hand's error.
std::map<std::string, std::string> readings_of(const Flats& point) {
  const double half = point.included / 2;
  const double gap = point.lip() * std::sin((60 - half) * deg);
  std::map<std::string, std::string> all{
      {"angle", "--angle " + angle(point.included, 0.5)},
      {"half-angles", "--half-angles " + angle(half, 0.5) + "," + angle(half, 0.5)},
      {"lip-depth", "--lip-depth " + length(point.depth(), 0.02)},
      {"point-length", "--point-length " + length(point.depth(), 0.02)},
      {"lip-lengths", "--lip-lengths " + length(point.lip(), 0.02) + "," + length(point.lip(), 0.02)},
      {"lip-height", "--lip-height " + length(0, 0.01)},
      {"web", "--web " + length(point.web, 0.02)},
      {"chisel", "--chisel " + angle(point.chisel(), 0.5)},
      {"chisel-length", "--chisel-length " + length(point.web / std::sin((180 - point.chisel()) * deg), 0.02)},
      {"relief", "--relief " + angle(point.relief, 0.5)},
      {"drop", "--drop " + length(point.drop(5), 0.005) + " --turn " + angle(5, 0.2)},
      {"chips", "--chips two --feed 0.1mm"}};
  if (gap > 0)
    all["light"] = "--gauge-angle " + angle(120, 0.2) + " --light corner,corner --light-gap " + length(gap, 0.02) +
                   "," + length(gap, 0.02);
  return all;
}

void holds_truth(const Json& answer, const char* name, double truth) {
  if (!answer["found"].contains(name)) return;
  const Json& found = answer["found"][name];
  INFO(name << " " << found.dump() << ", in truth " << truth);
  CHECK(found["low"].get<double>() <= truth + 1e-3);
  CHECK(found["high"].get<double>() >= truth - 1e-3);
}

const Json* check_of(const Json& answer, const std::string& item) {
  for (const auto& check : answer["found"]["checks"])
    if (check["item"] == item) return &check;
  return nullptr;
}

std::string ask(const Flats& point, const std::string& flags) {
  return "point " + number(point.diameter) + "mm 1018 --way two-facet " + flags;
}

/// A file with one limit of the shop's own.
std::string own_limit(const test::Folder& folder, const char* key, const char* value) {
  return folder.write("own.toml", "[source.own]\nauthor = \"me\"\ntitle = \"mine\"\nstanding = \"own bench\"\n"
                                  "[[limit]]\nkey = \"" +
                                      std::string(key) + "\"\nvalue = \"" + value +
                                      "\"\nwhat = \"mine\"\nsource = \"own\"\n");
}

} // namespace

TEST_CASE("the worked point: lip depth tells 118.0, the length over the tip without the web would tell 120.07") {
  // 12.7 mm, web 1.8, relief 12, two flats, lip depth 3.6611 mm (derived). Its heel rubs: back at the lip after 40.47.
  const Json answer = answer_of("point 12.7mm --way two-facet --web 1.8mm --relief 12 --lip-depth 3.6611mm");
  CHECK_THAT(found(answer, "included_angle"), WithinAbs(118.0, 0.01));
  CHECK_THAT(found(answer, "chisel_edge_angle"), WithinAbs(102.089, 0.01));
  CHECK_THAT(found(answer, "chisel_edge_angle_acute"), WithinAbs(180 - 102.089, 0.01));
  REQUIRE(check_of(answer, "heel_clear_angle") != nullptr);
  CHECK_THAT((*check_of(answer, "heel_clear_angle"))["value"]["value"].get<double>(), WithinAbs(40.4745, 0.01));
  CHECK(answer["verdict"] == "regrind");
}

TEST_CASE("each reading alone holds the truth, and none of them alone is enough to keep a point") {
  const auto point = GENERATE(Flats{12.7, 1.8, 118, 26}, Flats{6.35, 1.1, 118, 27}, Flats{3.175, 0.65, 117, 28},
                              Flats{4.8, 0.95, 128, 22});
  for (const auto& [name, flags] : readings_of(point)) {
    INFO(point.diameter << " mm, " << flags);
    const Json answer = answer_of(ask(point, flags));
    CHECK(answer["verdict"] != "keep");
    holds_truth(answer, "included_angle", point.included);
    holds_truth(answer, "lip_relief", point.relief);
    holds_truth(answer, "web", point.web);
    holds_truth(answer, "chisel_edge_angle", point.chisel());
    holds_truth(answer, "lip_height_difference", 0);
    if (answer["verdict"] == "measure again") CHECK(answer["instead"].is_string());
  }
}

TEST_CASE("any two readings of one point agree, hold the truth, and never keep a bad one") {
  const auto point = GENERATE(Flats{12.7, 1.8, 118, 26}, Flats{6.35, 1.1, 118, 27}, Flats{4.8, 0.95, 128, 22},
                              Flats{12.7, 1.8, 118, 12});
  const bool good = std::abs(point.included - 118) < 2 && point.heel() > 80;
  const auto readings = readings_of(point);
  for (const auto& [one, flags] : readings)
    for (const auto& [other, more] : readings) {
      if (one >= other) continue;
      INFO(point.diameter << " mm, " << point.included << " deg: " << flags << " " << more);
      const Json answer = answer_of(ask(point, flags + " " + more));
      holds_truth(answer, "included_angle", point.included);
      holds_truth(answer, "lip_relief", point.relief);
      holds_truth(answer, "web", point.web);
      if (good) CHECK(answer["verdict"] == "measure again");
      if (!good) CHECK(answer["verdict"] != "keep");
    }
}

TEST_CASE("angle, lips and relief with heel: a good point is kept, for the way it was ground") {
  const Flats good{6.35, 1.1, 118, 27};
  CHECK(answer_of(ask(good, "--angle 118+-0.5 --lip-height 0.01mm+-0.01mm --relief 27+-0.5 --web 1.1mm"))["verdict"] ==
        "keep");
  // Relief 16 suits a cone of that size, and rubs on one flat; of a point nobody says how it was ground, only that
  // decides which holds for both.
  const std::string readings = "--angle 118+-0.5 --lip-height 0.01mm+-0.01mm --relief 16+-0.5 --web 1.1mm";
  CHECK(answer_of("point 6.35mm 1018 --way cone " + readings)["verdict"] == "keep");
  CHECK(answer_of("point 6.35mm 1018 --way two-facet " + readings)["verdict"] == "regrind");
  const Json unknown = answer_of("point 6.35mm 1018 " + readings);
  CHECK(unknown["verdict"] == "measure again");
  CHECK(unknown["instead"].get<std::string>().find("--way") == 0);
}

TEST_CASE("a chisel edge can tell the way: relief 16 with 130 deg cannot be one flat") {
  // One flat of 6.35 mm, web 1.1, 118, relief 16 has a chisel edge of 106.6 deg; the edge read leaves the others, and
  // with a cone or a second facet the heel clears.
  const Json answer = answer_of("point 6.35mm 1018 --angle 118+-0.5 --lip-height 0.01mm+-0.01mm --relief 16+-0.5 "
                                "--web 1.1mm --chisel 130+-0.5");
  CHECK(answer["verdict"] == "keep");
}

TEST_CASE("where a spread covers two verdicts the answer is to measure again, and names what settles it") {
  const Json answer =
      answer_of("point 1/2 1018 --way cone --angle 120.5+-1 --lip-height 0.01mm --relief 12 --web 1.8mm");
  CHECK(answer["verdict"] == "measure again");
  CHECK((*check_of(answer, "included_angle"))["verdict"] == "measure again");
  const std::string instead = answer["instead"];
  CHECK(instead.find("--") == 0);
  CHECK(instead.find("included angle") != std::string::npos);
  // 120.5 against a limit of 120: a protractor good to 0.5 deg would still touch it; one with a vernier does not.
  CHECK(instead.find("vernier") != std::string::npos);
  // Something worse decides alone.
  CHECK(answer_of("point 1/2 1018 --way cone --angle 120.5+-1 --land-wear 0.6mm")["verdict"] == "regrind");
}

TEST_CASE("unequal lips: which one, how much, and what it does to the hole") {
  // 12.7 mm, 118: lips 6.16 and 6.74 mm long; the shorter one stands higher by 0.58 cos 59 = 0.2987 mm. Free point:
  // 2 x offset = 0.58 sin 59 = 0.4972 mm over size (derived).
  const Json answer =
      answer_of("point 12.7mm 1018 --way four-facet --web 1.80mm --half-angles 59+-0,59+-0 --lip-lengths "
                "6.16mm+-0.01mm,6.74mm+-0.01mm");
  CHECK_THAT(found(answer, "lip_height_difference"), WithinAbs(0.58 * std::cos(59 * deg), 1e-6));
  CHECK_THAT(found(answer, "oversize"), WithinAbs(0.58 * std::sin(59 * deg), 1e-6));
  CHECK(answer["found"]["oversize"]["low"] == 0);
  // Half angles nobody read may differ by what is kept, 2 deg: then lips of one length are not of one height. By hand,
  // 60 and 58 deg, 6.40 mm: offset -6.4 sin 1 cos 59 = -0.057527, height 1.202219 x offset + 0.047519 x 3.175 = 0.0817.
  const Json unread = answer_of("point 12.7mm 1018 --way four-facet --web 1.80mm --angle 118+-0 --lip-lengths "
                                "6.40mm+-0mm,6.40mm+-0mm");
  CHECK_THAT(found(unread, "lip_height_difference"), WithinAbs(0, 1e-9));
  CHECK_THAT(unread["found"]["lip_height_difference"]["high"].get<double>(), WithinAbs(0.0817, 0.0001));
  CHECK((*check_of(answer, "lip_height_difference"))["lip"] == "A");
  CHECK(answer["reason"].get<std::string>().find("lip A stands higher") != std::string::npos);
  CHECK(answer["verdict"] == "regrind");
  // Half angles 58 and 60 with heights equal at half the radius: 0.250991 mm (derived, six digits).
  const Json halves = answer_of("point 12.7mm --half-angles 58+-0,60+-0 --lip-height 0mm+-0mm");
  CHECK_THAT(found(halves, "oversize"), WithinAbs(0.250991, 5e-7));
  CHECK((*check_of(halves, "half_angle_difference"))["lip"] == "B");
}

TEST_CASE("chips from one flute ask half the feed at least, from both less") {
  // f/2 = 0.05 mm at 0.1 mm a turn (derived; half a turn of each lip in the other's track).
  const Json one = answer_of("point 12.7mm --chips one --feed 0.1mm");
  CHECK_THAT(one["found"]["lip_height_difference"]["low"].get<double>(), WithinAbs(0.05, 1e-12));
  CHECK((*check_of(one, "lip_height_difference"))["verdict"] != "keep");
  const Json two = answer_of("point 12.7mm --chips two --feed 0.1mm");
  CHECK_THAT(two["found"]["lip_height_difference"]["high"].get<double>(), WithinAbs(0.05, 1e-12));
  CHECK(two["found"]["lip_height_difference"]["low"] == 0);
  CHECK(error_of("point 12.7mm --chips one --feed 0.1mm --lip-height 0.01mm+-0.01mm", 2)["kind"] == "conflict");
  // Without a feed, what the tables give a drill of that size.
  CHECK(answer_of("point 12.7mm --chips one")["verdict"] == "measure again");
}

TEST_CASE("a trial hole gives a floor, names no lip, and never lets a point be kept") {
  const Json little = answer_of("point 1/4 1018 --trial-hole 0.253");
  CHECK(little["found"]["lip_height_difference"]["low"] == 0);
  CHECK(check_of(little, "lip_height_difference") == nullptr); // a floor of nothing says nothing
  CHECK(little["verdict"] == "measure again");
  // 0.030 in over: less 0.005 in usual (AND10387) leaves 0.025 / tan 69.5 at the least, 0.0093 in: beyond any limit.
  const Json much = answer_of("point 1/4 1018 --trial-hole 0.280");
  CHECK(much["verdict"] == "regrind");
  CHECK((*check_of(much, "lip_height_difference"))["lip"] == "both");
  // Run-out of the spindle is taken off too.
  const Json running = answer_of("point 1/4 1018 --trial-hole 0.280 --machine pillar");
  CHECK(running["found"]["lip_height_difference"]["low"].get<double>() <=
        much["found"]["lip_height_difference"]["low"].get<double>());
}

TEST_CASE("a hole that equal lips do not explain keeps no point") {
  // 0.55 mm over: AND10387 allows 0.005 in, lips within 0.01 mm and half angles within 2 deg at most 0.13 mm more.
  const Json answer =
      answer_of("point 6.35mm --way cone --angle 118 --lip-height 0.01mm --relief 16 --trial-hole 6.90mm");
  CHECK(answer["verdict"] == "measure again");
  CHECK(answer["reason"].get<std::string>().find("bent drill") != std::string::npos);
}

TEST_CASE("light at the corner of one lip and under the tip at the other is a difference of the lips") {
  const std::string readings = "point 6.35mm --way cone --angle 118 --lip-height 0.01mm --relief 16 --web 1.1mm ";
  CHECK(answer_of(readings)["verdict"] == "keep");
  CHECK(answer_of(readings + "--gauge-angle 118 --light corner,tip")["verdict"] == "measure again");
  CHECK(error_of("point 6.35mm --gauge-angle 118+-0.5 --light corner,tip --half-angles 61+-0.5,57+-0.5", 2)["kind"] ==
        "conflict");
}

TEST_CASE("a length that no such drill shows asks for its unit") {
  for (const char* words : {"--lip-depth 1.7", "--drop 0.5 --turn 5", "--trial-hole 200mm", "--lip-lengths 1,5"}) {
    INFO(words);
    const Json error = error_of(std::string("point 6.35mm ") + words, 2);
    CHECK(error["message"].get<std::string>().find("unit") != std::string::npos);
  }
}

TEST_CASE("wear: what to grind off, from the bare land to a good clean-up") {
  // Land 0.3, relief 12, helix 30: 0.0727 mm (derived) at the least, 0.2 clean-up on it, 0.3 at the most.
  const Json answer = answer_of("point 12.7mm --way cone --relief 12+-0 --land-wear 0.3mm+-0mm");
  CHECK_THAT(found(answer, "grind_off"), WithinAbs(0.272687, 1e-6));
  CHECK(answer["found"]["grind_off"]["low"].get<double>() < 0.0727);
  CHECK(answer["found"]["grind_off"]["high"].get<double>() > 0.3727);
  // The worn margin governs when it is longer.
  CHECK_THAT(
      found(answer_of("point 12.7mm --way cone --relief 12 --land-wear 0.3mm --margin-wear 0.5mm+-0mm"), "grind_off"),
      WithinAbs(0.7, 1e-6));
}

TEST_CASE("a photograph from the side: half angles, lips and heights with the doubt of the marks") {
  // 12.7 mm at 20 pixels a mm, half angles 58 and 60, drawn point down: corners at +-6.2859 mm, inner ends 0.755 mm off
  // the axis, lips meeting the outer corners at one height (derived).
  const double scale = 20;
  const auto x = [&](double mm) { return number(500 + scale * mm); };
  const auto y = [&](double mm) { return number(700 + scale * mm); };
  const double in = 6.2859 - 0.755;
  const std::string marks = x(-6.2859) + "," + y(0) + " " + x(-0.755) + "," + y(in / std::tan(58 * deg)) + " " +
                            x(0.755) + "," + y(in / std::tan(60 * deg)) + " " + x(6.2859) + "," + y(0) + " " +
                            x(-6.35) + "," + y(-12) + " " + x(6.35) + "," + y(-12);
  const auto run = [&](const std::string& more) {
    return test::answer_of_words({"point", "12.7mm", "--side-marks", marks + more});
  };
  const Json answer = run("");
  CHECK_THAT(answer["found"]["half_angles"][0]["value"].get<double>(), WithinAbs(58, 0.01));
  CHECK_THAT(answer["found"]["half_angles"][1]["value"].get<double>(), WithinAbs(60, 0.01));
  CHECK_THAT(found(answer, "included_angle"), WithinAbs(118, 0.02));
  CHECK(test::has_caution(answer, "photo-tilt"));
  // Ten times the marks' error is ten times the doubt, to first order.
  const Json blurred = run(" +-0.1");
  const auto width = [](const Json& one) {
    return one["found"]["included_angle"]["high"].get<double>() - one["found"]["included_angle"]["low"].get<double>();
  };
  CHECK_THAT(width(answer) / width(blurred), WithinAbs(10, 0.1));
}

TEST_CASE("a photograph end on: web, chisel edge, and its length") {
  // 12.7 mm at 20 pixels a mm, web 1.8, chisel edge 130: inner ends at x = 0.9 cot 50 = 0.75519, 1.8 apart (derived).
  const auto mark = [](double x, double y) { return number(400 + 20 * x) + "," + number(300 - 20 * y); };
  const std::string marks =
      mark(6.2859, 0.9) + " " + mark(0.75519, 0.9) + " " + mark(-0.75519, -0.9) + " " + mark(-6.2859, -0.9);
  const Json answer = test::answer_of_words({"point", "12.7mm", "--end-marks", marks});
  CHECK_THAT(found(answer, "web"), WithinAbs(1.8, 0.001));
  CHECK_THAT(found(answer, "chisel_edge_angle"), WithinAbs(130, 0.02));
  CHECK_THAT(found(answer, "chisel_length"), WithinAbs(2.34973, 0.001));
}

TEST_CASE("brass and nickel silver want dubbed lips, however true the point; steel does not") {
  for (const char* metal : {"C360", "C260", "C752"}) {
    INFO(metal);
    CHECK(test::has_caution(answer_of(std::string("point 1/4 ") + metal + " --angle 118"), "dub-the-lips"));
  }
  CHECK_FALSE(test::has_caution(answer_of("point 1/4 1018 --angle 118"), "dub-the-lips"));
}

TEST_CASE("split and thinned points are judged where it holds, and the rest is said to be not judged") {
  for (const char* flag : {"--split", "--thinned"}) {
    INFO(flag);
    const Json answer =
        answer_of(std::string("point 12.7mm --way cone ") + flag + " --chisel 110 --relief 25 --lip-depth 3.6mm");
    CHECK((*check_of(answer, "chisel_edge_angle"))["verdict"] == "not judged");
    CHECK((*check_of(answer, "included_angle"))["verdict"] == "not judged");
    CHECK((*check_of(answer, "lip_relief"))["verdict"] != "not judged");
  }
}

TEST_CASE("a hollow lip shows light in its middle, and both its ends touch the gauge") {
  const Json answer = answer_of("point 12.7mm --gauge-angle 118+-0.2 --light middle,none --light-gap 0.15mm,0mm");
  CHECK((*check_of(answer, "lip_bow"))["verdict"] == "regrind");
  CHECK_THAT(found(answer, "included_angle"), WithinAbs(118, 1e-9));
}

TEST_CASE("readings that contradict each other name both, and by how much") {
  struct Row {
    const char* words;
    const char* one;
    const char* other;
  };
  const auto row = GENERATE(
      Row{"--angle 118 --half-angles 64,64", "--angle", "--half-angles"},
      Row{"--web 1.8mm --chisel-length 1.2mm+-0.1mm", "--chisel-length", "--web"},
      Row{"--way cone --web 1.8mm --angle 118 --relief 25 --chisel 105", "--relief", "--chisel"},
      Row{"--way two-facet --web 1.8mm --angle 118 --relief 12 --chisel 125", "--relief", "--chisel"},
      Row{"--lip-lengths 6.16mm,6.74mm --half-angles 45,45 --web 1.8mm --chisel 130", "--half-angles", "--lip-lengths"},
      Row{"--lip-depth 8mm --lip-lengths 7mm,7mm", "--lip-depth", "--lip-lengths"},
      Row{"--lip-height 0.5mm+-0.01mm --web 1.8mm --chisel 130 --lip-lengths 6.4mm+-0.01mm,6.4mm+-0.01mm",
          "--lip-height", "--lip-lengths"});
  INFO(row.words);
  const Json error = error_of(std::string("point 12.7mm ") + row.words, 2);
  CHECK(error["kind"] == "conflict");
  const std::string message = error["message"];
  CHECK(message.find(row.one) != std::string::npos);
  CHECK(message.find(row.other) != std::string::npos);
}

TEST_CASE("what is no reading of a point is refused with its word") {
  const auto words = GENERATE(
      "--drop 0.1mm", "--turn 5", "--light tip,corner", "--gauge-angle 120", "--light-gap 0.1mm,0.1mm",
      "--gauge-angle 0 --light none,none", "--gauge-angle 180 --light none,none", "--web 12.7mm", "--web 20mm",
      "--web 0mm", "--chisel 90", "--chisel 0", "--chisel 180", "--angle 0", "--angle 180", "--turn 0 --drop 1mm",
      "--side-marks 1,2,3,4,5,6", "--end-marks 1,2,3,4", "--half-angles 59", "--half-angles 59,59,59", "--light tip",
      "--light up,down --gauge-angle 120", "--chips three", "--way conical", "--feed 0.1mm", "--lip-depth 0mm",
      "--trial-hole 10mm", "--lip-lengths 5mm,5mm --web 1.8mm", "--relief 80", "--angle 118,5");
  INFO(words);
  const Json error = error_of(std::string("point 12.7mm ") + words, 2);
  CHECK_FALSE(error["message"].get<std::string>().empty());
  CHECK_FALSE(error["word"].get<std::string>().empty());
}

TEST_CASE("marks on one point, and exchanged ones, are refused with the reason") {
  const auto marks =
      GENERATE("0,0 0,0 10,10 20,0 0,-30 20,-30", "0,0 9,6 11,6 20,0 0,0 20,-30", "0,0 9,-6 11,-6 20,0 0,-30 20,-30");
  INFO(marks);
  const auto ran = test::run_words({"point", "12.7mm", "--format", "json", "--side-marks", marks});
  CHECK(ran.exit == 2);
  CHECK(Json::parse(ran.out)["error"]["kind"] == "word");
}

TEST_CASE("not kept: what to grind for, by material, size and way") {
  // Stainless wants 135 (common practice); one flat of 1/4 at 118 wants about 24 (derived: least that clears 80 deg).
  const Json stainless = answer_of("point 1/4 303 --half-angles 58,61");
  CHECK(stainless["verdict"] == "regrind");
  CHECK(stainless["set"]["included_angle"]["value"] == 135);
  const Json flat = answer_of("point 1/4 1018 --way two-facet --angle 110");
  CHECK_THAT(flat["set"]["lip_relief"]["value"].get<double>(), WithinAbs(24, 1));
  const Json cone = answer_of("point 1/4 1018 --way cone --angle 110");
  CHECK(cone["set"]["lip_relief"]["value"] == 16);
  CHECK(cone["set"]["chisel_edge_angle"]["value"] == 130);
}

TEST_CASE("every step is told, with its formula and its source") {
  const Json answer = answer_of("point 12.7mm --way two-facet --web 1.8mm --relief 12 --lip-depth 3.6611mm");
  bool depth = false;
  for (const auto& why : answer["why"]) {
    CHECK_FALSE(why["formula"].get<std::string>().empty());
    depth = depth || why["source"] == "flat-lip-depth";
  }
  CHECK(depth);
  const std::string text = test::run_words({"point", "1/2", "--angle", "118", "--why"}).out;
  CHECK(text.find("limit of included angle") != std::string::npos);
}

TEST_CASE("what a point is held to be where nobody read it are limits that a shop can set") {
  struct Row {
    const char* key;
    const char* value;
    const char* words;
    const char* finds;
  };
  // A lip depth tells the angle by the chisel edge, a drop the relief by the cone, a relief the edge by the angle.
  const auto row =
      GENERATE(Row{"chisel_two_facet_least", "40", "--way two-facet --lip-depth 3.66mm", "included_angle"},
               Row{"chisel_two_facet_usual", "65", "--way two-facet --lip-depth 3.66mm", "included_angle"},
               Row{"chisel_two_facet_most", "80", "--way two-facet --lip-depth 3.66mm", "included_angle"},
               Row{"chisel_four_facet_least", "40", "--way four-facet --lip-depth 3.66mm", "included_angle"},
               Row{"chisel_four_facet_usual", "65", "--way four-facet --lip-depth 3.66mm", "included_angle"},
               Row{"chisel_four_facet_most", "80", "--way four-facet --lip-depth 3.66mm", "included_angle"},
               Row{"chisel_cone_least", "40", "--way cone --lip-depth 3.66mm", "included_angle"},
               Row{"chisel_cone_usual", "55", "--way cone --lip-depth 3.66mm", "included_angle"},
               Row{"chisel_cone_most", "80", "--way cone --lip-depth 3.66mm", "included_angle"},
               Row{"cone_steep", "0.3", "--way cone --drop 0.2mm --turn 10", "lip_relief"},
               Row{"cone_usual", "0.6", "--way cone --drop 0.2mm --turn 10", "lip_relief"},
               Row{"cone_blunt", "0.95", "--way cone --drop 0.2mm --turn 10", "lip_relief"},
               Row{"unread_angle_least", "100", "--way two-facet --relief 26", "chisel_edge_angle"},
               Row{"unread_angle_most", "125", "--way two-facet --relief 26", "chisel_edge_angle"},
               Row{"unseen_light_most", "5", "--gauge-angle 118 --light corner,tip", "half_angles"});
  INFO(row.key);
  const test::Folder folder;
  const std::string words = std::string("point 12.7mm ") + row.words;
  const Json printed = answer_of(words)["found"][row.finds];
  const Json set = answer_of(words + " --tables " + own_limit(folder, row.key, row.value))["found"][row.finds];
  REQUIRE(printed.is_structured());
  CHECK(set != printed);
}

TEST_CASE("how long a reading of a point may be over its diameter are limits that a shop can set") {
  struct Row {
    const char* key;
    const char* value;
    const char* words; // refused as the tables stand
  };
  const auto row =
      GENERATE(Row{"lip_depth_least", "0.01", "--lip-depth 0.2mm+-0.01mm --way two-facet"},
               Row{"lip_depth_most", "3", "--lip-depth 18mm"}, Row{"lip_depth_most", "3", "--point-length 18mm"},
               Row{"lip_length_least", "0.1", "--thinned --lip-lengths 2.4mm,2.4mm"},
               Row{"lip_length_most", "2", "--thinned --lip-lengths 20mm,20mm"},
               Row{"lip_height_most", "0.5", "--lip-height 4mm"},
               Row{"chisel_length_least", "0.01", "--split --chisel-length 0.2mm"},
               Row{"chisel_length_most", "1", "--split --chisel-length 9mm"},
               Row{"light_gap_most", "0.8", "--gauge-angle 118 --light corner,corner --light-gap 6.4mm,6.4mm"},
               Row{"trial_hole_least", "0.9", "--trial-hole 12.4mm"}, Row{"trial_hole_most", "2", "--trial-hole 20mm"},
               Row{"land_wear_most", "0.8", "--land-wear 8mm"}, Row{"margin_wear_most", "4", "--margin-wear 30mm"});
  INFO(row.key);
  const test::Folder folder;
  const std::string words = std::string("point 12.7mm ") + row.words;
  CHECK(error_of(words, 2)["message"].get<std::string>().find("is its unit right?") != std::string::npos);
  const auto ran = test::quillside(words + " --tables " + own_limit(folder, row.key, row.value) + " --format json");
  INFO(ran.out);
  CHECK(ran.out.find("is its unit right?") == std::string::npos);
  CHECK(ran.out.find("\"ask\"") != std::string::npos);
}
