// Setting up a regrind. What the settings grind is worked out here a second time: the drill is turned in front of an
// upright plane by plain rotation matrices (Eigen), and the angles are read off the plane as it then lies in the drill.
// The worked set-ups are derived, to six digits, each by two methods; no page with worked numbers could be read.

#include "json_of.hpp"

#include <cmath>
#include <iomanip>
#include <numbers>
#include <random>
#include <sstream>

#include <Eigen/Geometry>

#include <quillside/words/print.hpp>

using namespace quillside;
using test::answer_of;
using test::error_of;
using test::found;
using test::has_caution;
using test::Json;
using test::value;
using test::why_of;
using test::WithinAbs;
using test::WithinRel;

namespace {

constexpr double deg = std::numbers::pi / 180;

const Json& facet(const Json& answer, std::size_t number) { return answer["set"]["facets"].at(number - 1); }
bool says(const Json& text, const std::string& words) {
  return text.is_string() && text.get<std::string>().find(words) != std::string::npos;
}

/// A drill's flank as a plane: of what point, how steep behind the lip, what relief, what chisel edge, where the heel
/// is as high again as the lip.
struct Read {
  double included, slope, relief, chisel, heel;
};

/// \param normal of the plane in the drill's own frame, out of the metal
Read read_off(const Eigen::Vector3d& normal, double diameter, double web) {
  Read read{};
  const double fall = -normal.x() / normal.z(); // dz/dx
  read.slope = -normal.y() / normal.z();
  read.included = 2 * std::atan(-1 / fall) / deg;
  // The corner and its cutting direction, then how the plane falls behind it.
  const double w = web / 2;
  const double radius = diameter / 2;
  const double offset = std::asin(w / radius);
  const Eigen::Vector3d behind(std::sin(offset), -std::cos(offset), 0);
  const double drop = -(fall * behind.x() + read.slope * behind.y());
  read.relief = std::atan(drop) / deg;
  // The chisel edge: where this plane and the same one half a turn on are as high.
  read.chisel = 180 - std::atan2(-fall, read.slope) / deg;
  // The heel, by bisection on the height round the margin.
  const auto height = [&](double turn) {
    const double at = offset - turn;
    return fall * radius * (std::cos(at) - std::cos(offset)) + read.slope * radius * (std::sin(at) - std::sin(offset));
  };
  double low = 1e-4;
  double high = std::numbers::pi - 1e-9;
  for (double turn = low; turn < std::numbers::pi; turn += 0.01)
    if (height(turn) > 0) {
      high = turn;
      break;
    }
  for (int i = 0; i < 100; ++i) {
    const double middle = (low + high) / 2;
    (height(middle) > 0 ? high : low) = middle;
  }
  read.heel = low / deg;
  return read;
}

/// The plane of a disk in the frame of a drill that is held before it: shop axes are X to the right along the disk, Y
/// into it, Z up.
Eigen::Vector3d disk_in_drill(double swing, double tilt, double roll) {
  // The drill's axis toward its point; its lip (x) outward and to the left, with the flute up.
  const Eigen::Vector3d axis(std::cos(swing * deg) * std::cos(tilt * deg), std::sin(swing * deg) * std::cos(tilt * deg),
                             std::sin(tilt * deg));
  // Level in the end view, square to the axis, toward the disk side that the lip's outer end is on.
  const Eigen::Vector3d level = Eigen::Vector3d::UnitZ().cross(axis).normalized();
  const Eigen::AngleAxisd turned(roll * deg, axis);
  const Eigen::Vector3d x = turned * level;
  const Eigen::Vector3d y = axis.cross(x);
  const Eigen::Vector3d into(0, 1, 0); // out of the drill's metal, into the disk
  return {into.dot(x), into.dot(y), into.dot(axis)};
}

/// The same for a fence across a table that slopes up toward the disk by turning about its edge along X.
Eigen::Vector3d disk_over_table(double fence, double tilt) {
  const Eigen::AngleAxisd table(tilt * deg, Eigen::Vector3d::UnitX());
  const Eigen::Vector3d axis = table * Eigen::Vector3d(std::cos(fence * deg), std::sin(fence * deg), 0);
  const Eigen::Vector3d up = table * Eigen::Vector3d::UnitZ();
  const Eigen::Vector3d x = up.cross(axis); // the lip lies level with the table
  const Eigen::Vector3d y = axis.cross(x);
  const Eigen::Vector3d into(0, 1, 0);
  return {into.dot(x), into.dot(y), into.dot(axis)};
}

} // namespace

TEST_CASE("each of the four holds, turned before the disk by matrices, grinds the point that was asked for") {
  // Tolerance: what 64-bit arithmetic leaves of a degree.
  constexpr double within = 1e-6;
  const auto [size, web, angle, relief] = GENERATE(table<std::string, double, double, double>(
      {{"12.7mm", 1.8, 118, 26}, {"6.35mm", 1.1, 118, 28}, {"6.35mm", 1.1, 135, 22}, {"3.175mm", 0.65, 118, 30}}));
  const double diameter = std::stod(size);
  const Json answer = answer_of("grind " + size + " --way two-facet --web " + std::to_string(web) + "mm --angle " +
                                std::to_string(angle) + " --relief " + std::to_string(relief));
  REQUIRE(answer["verdict"] == "go");
  const Json& set = facet(answer, 1);
  const std::vector<Eigen::Vector3d> planes{
      disk_over_table(value(set["fence"], "fence_angle"), value(set["fence"], "table_tilt")),
      disk_in_drill(value(set["wedge"], "swing"), value(set["wedge"], "tilt"), value(set["wedge"], "roll")),
      disk_in_drill(value(set["flat"], "swing"), 0, value(set["flat"], "roll")),
      disk_in_drill(value(set["level"], "swing"), value(set["level"], "tilt"), 0)};
  for (const auto& plane : planes) {
    const Read read = read_off(plane, diameter, web);
    CHECK_THAT(read.included, WithinAbs(angle, within));
    CHECK_THAT(read.relief, WithinAbs(relief, within));
    CHECK_THAT(found(answer, "chisel_edge_angle"), WithinAbs(read.chisel, within));
    CHECK_THAT(found(answer, "heel_clear_angle"), WithinAbs(read.heel, within));
  }
  CHECK_THAT(value(set["fence"], "mitre_scale"), WithinAbs(90 - angle / 2, within));
  CHECK_THAT(value(set["fence"], "tilt_rise"),
             WithinRel(100 * std::tan(value(set["fence"], "table_tilt") * deg), 1e-12));
}

TEST_CASE("a set-up read forward gives what the matrices read off the plane") {
  const auto [flags, plane] =
      GENERATE(table<std::string, Eigen::Vector3d>({{"--fence 59 --table-tilt 17", disk_over_table(59, 17)},
                                                    {"--fence 67.5 --table-tilt 14", disk_over_table(67.5, 14)},
                                                    {"--swing 56 --tilt 0 --roll 32", disk_in_drill(56, 0, 32)},
                                                    {"--swing 58 --tilt 15 --roll 9", disk_in_drill(58, 15, 9)}}));
  const Json answer = answer_of("grind 6.35mm --web 1.1mm " + flags);
  const Read read = read_off(plane, 6.35, 1.1);
  CHECK_THAT(found(answer, "included_angle"), WithinAbs(read.included, 1e-6));
  CHECK_THAT(found(answer, "lip_relief"), WithinAbs(read.relief, 1e-6));
  CHECK_THAT(found(answer, "chisel_edge_angle"), WithinAbs(read.chisel, 1e-6));
  CHECK_THAT(found(answer, "heel_clear_angle"), WithinAbs(read.heel, 1e-6));
  CHECK(answer["verdict"] == (read.heel >= 80 ? "go" : "do not"));
}

TEST_CASE("what is set for a point, typed in again, gives that point: drills at random") {
  std::mt19937 random(118);
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  const auto digits = [](double value) {
    std::ostringstream out;
    out << std::fixed << std::setprecision(12) << value;
    return out.str();
  };
  int held = 0;
  for (int i = 0; i < 300; ++i) {
    const double diameter = between(0.5, 25);
    const double web = between(0.12, 0.25) * diameter;
    const double angle = between(80, 150);
    const double relief = between(12, 35);
    const std::string drill = "grind " + digits(diameter) + "mm --web " + digits(web) + "mm";
    const std::string wanted = drill + " --way two-facet --angle " + digits(angle) + " --relief " + digits(relief);
    INFO(wanted);
    const Json answer = answer_of(wanted);
    if (answer["verdict"] != "go") continue;
    ++held;
    const Json& set = facet(answer, 1);
    const auto of = [&](const char* hold, const char* name) { return digits(value(set[hold], name)); };
    for (const std::string& hold :
         {" --fence " + of("fence", "fence_angle") + " --table-tilt " + of("fence", "table_tilt"),
          " --swing " + of("wedge", "swing") + " --tilt " + of("wedge", "tilt") + " --roll " + of("wedge", "roll"),
          " --swing " + of("flat", "swing") + " --roll " + of("flat", "roll"),
          " --swing " + of("level", "swing") + " --tilt " + of("level", "tilt")}) {
      // A table that needs more than 50 deg, or a roll of more than 60, is no hold that is read.
      const auto ran = test::quillside(drill + hold + " --format json");
      const Json given = Json::parse(ran.out);
      if (given.contains("error")) {
        CHECK(says(given["error"]["message"], "that is answered here"));
        continue;
      }
      CHECK_THAT(found(given, "included_angle"), WithinAbs(angle, 1e-6));
      CHECK_THAT(found(given, "lip_relief"), WithinAbs(relief, 1e-6));
      CHECK_THAT(found(given, "chisel_edge_angle"), WithinAbs(found(answer, "chisel_edge_angle"), 1e-6));
    }
  }
  CHECK(held > 100); // so that a loop of refusals is no success
}

TEST_CASE("worked set-ups read forward, heel and all") {
  // 12.7 mm, web 1.8 (derived): swing, tilt, roll -> point, relief, chisel edge. Printed to six figures.
  const auto [flags, point, relief, chisel] =
      GENERATE(table<std::string, double, double, double>({{"--swing 59 --roll 12", 119.112, 11.6931, 102},
                                                           {"--swing 59 --tilt 7", 117.621, 11.7141, 101.465},
                                                           {"--swing 58 --tilt 3 --roll 8", 117.038, 12.6459, 102.788},
                                                           {"--swing 67.5 --roll 15", 136.387, 9.24837, 105}}));
  const Json answer = answer_of("grind 12.7mm --web 1.8mm " + flags);
  CHECK_THAT(found(answer, "included_angle"), WithinAbs(point, 6e-4));
  CHECK_THAT(found(answer, "lip_relief"), WithinAbs(relief, 6e-5));
  CHECK_THAT(found(answer, "chisel_edge_angle"), WithinAbs(chisel, 6e-4));
  CHECK(answer["verdict"] == "do not"); // with so little relief one flat rubs at its heel
  CHECK(answer["set"].empty());
}

TEST_CASE("one flat: the relief is the least that clears the heel, and says so") {
  // 1/4 in, web 0.044, 118, land 80: m = cot 59 tan(40 - asin(0.176)), tan a = m cos o + cot 59 sin o (derived): 24.0
  const Json answer = answer_of("grind 1/4 --web 0.044");
  const double offset = std::asin(0.044 / 0.25);
  const double cot = 1 / std::tan(59 * deg);
  const double slope = cot * std::tan(40 * deg - offset);
  const double relief = std::atan(slope * std::cos(offset) + cot * std::sin(offset)) / deg;
  CHECK_THAT(found(answer, "lip_relief"), WithinAbs(relief, 1e-9));
  CHECK_THAT(relief, WithinAbs(24, 0.05));
  CHECK_THAT(found(answer, "heel_clear_angle"), WithinAbs(80, 1e-9));
  CHECK(answer["verdict"] == "go");
  CHECK(answer["set"]["way"] == "two-facet");
  CHECK(has_caution(answer, "grind-least-relief"));
  CHECK(has_caution(answer, "grind-way-taken"));
  CHECK(answer["inputs"]["relief"]["given"] == false);

  SECTION("a degree of land more asks for more relief") {
    CHECK(found(answer_of("grind 1/4 --web 0.044 --land 81"), "lip_relief") > relief);
  }
  SECTION("stainless wants 135") {
    CHECK_THAT(found(answer_of("grind 1/4 303"), "included_angle"), WithinAbs(135, 1e-9));
  }
}

TEST_CASE("the published flat-ground drill comes out inside its published range") {
  // Technical requirements for drills of 2.0 to 2.95 mm ground flat: relief 28 to 30, chisel edge 45 to 60 acute, web
  // 0.2 of the diameter. The worked acute edges are derived: 55.05, 53.59, 52.17; heels 93, 96, 99 to the whole degree.
  const auto [relief, acute, heel] =
      GENERATE(table<int, double, double>({{28, 55.05, 93}, {29, 53.59, 96}, {30, 52.17, 99}}));
  const Json answer =
      answer_of("grind 2.5mm --web 0.5mm --angle 118 --way two-facet --relief " + std::to_string(relief));
  CHECK(answer["verdict"] == "go");
  CHECK_THAT(180 - found(answer, "chisel_edge_angle"), WithinAbs(acute, 6e-3));
  CHECK_THAT(found(answer, "heel_clear_angle"), WithinAbs(heel, 0.6));
}

TEST_CASE("a relief that will not clear its heel on one flat is refused, with what would do") {
  const Json answer = answer_of("grind 5/32 416 --way two-facet --relief 14");
  CHECK(answer["verdict"] == "do not");
  CHECK(answer["set"].empty());
  CHECK(says(answer["reason"], "heel stands above the lip"));
  CHECK(says(answer["instead"], "--relief"));
  CHECK(says(answer["instead"], "--way four-facet"));
  CHECK(found(answer, "heel_clear_angle") < 80);

  // What it names does do.
  const std::string instead = answer["instead"].get<std::string>();
  const std::string relief = instead.substr(instead.find("--relief"), std::string("--relief 16.9").size());
  CHECK(answer_of("grind 5/32 416 --way two-facet " + relief)["verdict"] == "go");
  CHECK(answer_of("grind 5/32 416 --way four-facet --relief 14")["verdict"] == "go");
}

TEST_CASE("a hold that rubs is refused, and still told what it would grind") {
  // Heel from about 47 deg (derived).
  const Json answer = answer_of("grind 1/4 416 --fence 59 --table-tilt 7");
  CHECK(answer["verdict"] == "do not");
  CHECK_THAT(found(answer, "heel_clear_angle"), WithinAbs(47, 0.5));
  CHECK_THAT(found(answer, "included_angle"), WithinAbs(118, 1e-6));
  CHECK(has_caution(answer, "grind-other-point")); // 416 wants 135
  const std::string instead = answer["instead"].get<std::string>();
  const std::string tilt = instead.substr(0, instead.find(" with"));
  CHECK(answer_of("grind 1/4 416 --fence 59 " + tilt)["verdict"] == "go");
}

TEST_CASE("two facets a lip: worked set-ups") {
  // Derived by two methods, six figures: D, W, point, first and second relief -> tilts, swings, rolls on a level table,
  // chisel edge corner to corner, what is left clear, heel.
  struct Worked {
    const char* ask;
    double tilt1, tilt2, swing1, roll1, swing2, roll2, chisel, left, heel;
  };
  const auto worked = GENERATE(Worked{"grind 12.7mm --web 1.8mm --angle 118 --relief 10 --second-relief 25", 4.51363,
                                      21.7868, 58.7055, 8.71404, 52.7442, 37.8138, 114.923, 0.268066, 86.0665},
                               Worked{"grind 6.35mm --web 1.1mm --angle 118 --relief 12 --second-relief 30", 5.393,
                                      26.3302, 58.5805, 10.3868, 50.196, 43.8569, 119.773, 0.197413, 100.418},
                               Worked{"grind 6.35mm --web 1.1mm --angle 135 --relief 12 --second-relief 25", 7.52418,
                                      23.307, 66.3374, 19.0419, 58.0477, 48.3858, 126.333, 0.150894, 110.456},
                               Worked{"grind 3.175mm --web 0.65mm --angle 118 --relief 12 --second-relief 28", 4.48376,
                                      24.5018, 58.7094, 8.65702, 51.2586, 41.506, 117.411, 0.111594, 98.1104});
  const Json answer = answer_of(worked.ask);
  INFO(worked.ask);
  REQUIRE(answer["verdict"] == "go");
  CHECK(answer["set"]["way"] == "four-facet");
  REQUIRE(answer["set"]["facets"].size() == 2);
  const Json& first = facet(answer, 1);
  const Json& second = facet(answer, 2);
  constexpr double six = 6e-6; // relative: the last printed digit
  CHECK_THAT(value(first["fence"], "table_tilt"), WithinRel(worked.tilt1, six));
  CHECK_THAT(value(second["fence"], "table_tilt"), WithinRel(worked.tilt2, six));
  CHECK_THAT(value(first["flat"], "swing"), WithinRel(worked.swing1, six));
  CHECK_THAT(value(first["flat"], "roll"), WithinRel(worked.roll1, six));
  CHECK_THAT(value(second["flat"], "swing"), WithinRel(worked.swing2, six));
  CHECK_THAT(value(second["flat"], "roll"), WithinRel(worked.roll2, six));
  CHECK_THAT(found(answer, "chisel_edge_angle"), WithinRel(worked.chisel, six));
  CHECK_THAT(value(second, "clearance_left"), WithinRel(worked.left, six));
  CHECK_THAT(found(answer, "heel_clear_angle"), WithinRel(worked.heel, six));
  CHECK(found(answer, "chisel_flat") == 0);
  CHECK(first["infeed"].is_null());
  CHECK(first["clearance_left"].is_null());
  CHECK(answer["set"]["cone"].is_null());
  CHECK(value(second["fence"], "fence_angle") == value(first["fence"], "fence_angle"));
}

TEST_CASE("the second facet is fed from its first touch at the heel, not by what it leaves clear") {
  // 12.7 mm, web 1.8, 118, 10 and 25 deg, land 75: 1.739 mm against 0.268 left (derived, four figures)
  const Json answer = answer_of("grind 12.7mm --web 1.8mm --angle 118 --relief 10 --second-relief 25 --land 75");
  CHECK_THAT(value(facet(answer, 2), "infeed"), WithinAbs(1.739, 6e-4));
  CHECK_THAT(value(facet(answer, 2), "clearance_left"), WithinAbs(0.268, 6e-4));
}

TEST_CASE("two facets that do not clear the heel, and the second relief that does") {
  const Json answer = answer_of("grind 12.7mm --web 1.8mm --angle 90 --relief 12 --second-relief 25");
  CHECK(answer["verdict"] == "do not");
  REQUIRE(says(answer["instead"], "--second-relief "));
  CHECK(answer_of("grind 12.7mm --web 1.8mm --angle 90 --relief 12 " +
                  answer["instead"].get<std::string>())["verdict"] == "go");
  // Nobody named one: it is raised as far as it takes, and said.
  const Json taken = answer_of("grind 12.7mm --web 1.8mm --angle 90 --relief 12 --way four-facet");
  CHECK(taken["verdict"] == "go");
  CHECK(has_caution(taken, "grind-second-raised"));
  CHECK_THAT(found(taken, "heel_clear_angle"), WithinAbs(80, 1e-6));
}

TEST_CASE("a cone: worked fixtures") {
  // Derived by three methods, six figures: half angle -> axis angle, skew, clock, apex to foot, apex offset.
  struct Worked {
    const char* ask;
    double axis, skew, clock, distance, apex;
  };
  const auto worked =
      GENERATE(Worked{"grind 12.7mm --web 1.8mm --angle 118 --relief 12 --chisel 130 --cone-half-angle 45", 14.8408,
                      1.75667, 17.62, 9.98616, 2.96954},
               Worked{"grind 12.7mm --web 1.8mm --angle 135 --relief 10 --chisel 125 --cone-half-angle 40", 27.9368,
                      1.9514, 8.61031, 14.6764, 7.09049},
               Worked{"grind 3.175mm --web 0.65mm --angle 118 --relief 16 --chisel 50 --cone-half-angle 35", 24.6918,
                      0.654743, 11.2379, 3.89621, 1.72398});
  const Json answer = answer_of(worked.ask);
  INFO(worked.ask);
  REQUIRE(answer["verdict"] == "go");
  CHECK(answer["set"]["way"] == "cone");
  CHECK(answer["set"]["facets"].empty());
  const Json& cone = answer["set"]["cone"];
  constexpr double six = 6e-6;
  CHECK_THAT(value(cone, "cone_axis_angle"), WithinRel(worked.axis, six));
  CHECK_THAT(value(cone, "cone_skew"), WithinRel(worked.skew, six));
  CHECK_THAT(value(cone, "lip_clock"), WithinRel(worked.clock, six));
  CHECK_THAT(value(cone, "axis_distance"), WithinRel(worked.distance, six));
  CHECK_THAT(value(cone, "apex_offset"), WithinRel(worked.apex, six));
  // Where the wheel never reaches the other lip there is no limit to tell.
  if (cone.contains("swing_limit")) CHECK(value(cone, "swing_needed") < value(cone, "swing_limit"));
}

TEST_CASE("a cone's overhang and swing, as worked out for one") {
  // 12.7 mm, web 1.8, 118, 12, 130: half angle 45 has the tip 7.615 past the foot, half angle 30 5.609; at half angle
  // 30 and a land of 85 the swing needed is 86 and the limit 99 (derived, to the whole degree).
  const std::string drill = "grind 12.7mm --web 1.8mm --angle 118 --relief 12 --chisel 130 --cone-half-angle ";
  CHECK_THAT(value(answer_of(drill + "45")["set"]["cone"], "point_overhang"), WithinAbs(7.615, 6e-4));
  const Json narrow = answer_of(drill + "30 --land 85");
  CHECK_THAT(value(narrow["set"]["cone"], "point_overhang"), WithinAbs(5.609, 6e-4));
  CHECK_THAT(value(narrow["set"]["cone"], "swing_needed"), WithinAbs(86, 0.6));
  CHECK_THAT(value(narrow["set"]["cone"], "swing_limit"), WithinAbs(99, 0.6));
}

TEST_CASE("every drill gets a cone that swings free and clears its heel, from defaults alone") {
  int cones = 0;
  for (const char* size : {"0.5mm", "1mm", "1/16", "2.5mm", "1/8", "5/32", "1/4", "8mm", "1/2", "3/4", "1in"})
    for (const char* metal : {"303", "1018", "C360"}) {
      INFO(size << " " << metal);
      const Json answer = answer_of(std::string("grind ") + size + " " + metal + " --way cone");
      REQUIRE(answer["verdict"] == "go");
      ++cones;
      const Json& cone = answer["set"]["cone"];
      if (cone.contains("swing_limit")) CHECK(value(cone, "swing_needed") < value(cone, "swing_limit"));
      if (answer["found"].contains("heel_clear_angle")) CHECK(found(answer, "heel_clear_angle") >= 80);
      CHECK(found(answer, "chisel_edge_angle") >= 130 - 1e-6);
    }
  CHECK(cones == 33);
}

TEST_CASE("a cone that is taken stands as fixtures do, its foot in front of the wheel, on thin drills as on thick") {
  // The half angles of the suggested cones run from 25 to 50 (judgement, no source); 20 is taken as the least.
  for (const char* size : {"0.5mm", "no60", "1mm", "1/16", "3/32", "1/8", "3/16", "1/4", "3/8", "1/2"})
    for (const char* material : {"303", "C360", "1084", "C752", "D2"}) {
      const Json answer = answer_of(std::string("grind ") + size + " " + material + " --way cone");
      INFO(size << " " << material);
      REQUIRE(answer["verdict"] == "go");
      const Json& cone = answer["set"]["cone"];
      CHECK(value(cone, "cone_half_angle") >= 20);
      CHECK(value(cone, "cone_half_angle") <= 50);
      CHECK(value(cone, "axis_distance") > 0);
      CHECK_FALSE(test::has_caution(answer, "grind-foot-in-wheel"));
    }
  // Nearly as wide as the point, the cone of a thick web has its foot behind the face.
  const Json wide = answer_of("grind no60 303 --way cone --cone-half-angle 67");
  CHECK(value(wide["set"]["cone"], "axis_distance") < 0);
  CHECK(test::has_caution(wide, "grind-foot-in-wheel"));
}

TEST_CASE("a cone whose swing would reach the other lip is refused, with a half angle that would do") {
  // The swings of the model are held against a wheel turned in steps in tests/published/cone_flank.cpp.
  const std::string drill = "grind 12.7mm --web 1.8mm --angle 90 --relief 12 --chisel 120 --land 80";
  const Json answer = answer_of(drill + " --cone-half-angle 18");
  CHECK(answer["verdict"] == "do not");
  CHECK(answer["set"].empty());
  CHECK(says(answer["reason"], "cuts the other lip"));
  REQUIRE(says(answer["instead"], "--cone-half-angle"));
  const Json instead = answer_of(drill + " " + answer["instead"].get<std::string>());
  CHECK(instead["verdict"] == "go");
  const Json& cone = instead["set"]["cone"];
  if (cone.contains("swing_limit")) CHECK(value(cone, "swing_needed") + 3 < value(cone, "swing_limit"));
}

TEST_CASE("a cone that ends before the heel, or whose heel stands up, is refused with one that would do") {
  const auto [line, reason] = GENERATE(table<std::string, std::string>(
      {{"grind 12.7mm --web 1.8mm --angle 90 --relief 12 --chisel 120 --cone-half-angle 10", "ends before the heel"},
       {"grind 12.7mm --web 1.8mm --angle 118 --relief 8 --chisel 120 --land 110 --cone-half-angle 58",
        "heel stands above the lip"}}));
  const Json answer = answer_of(line);
  CHECK(answer["verdict"] == "do not");
  CHECK(says(answer["reason"], reason));
  REQUIRE(says(answer["instead"], "--cone-half-angle"));
  const std::string without = line.substr(0, line.find(" --cone-half-angle"));
  CHECK(answer_of(without + " " + answer["instead"].get<std::string>())["verdict"] == "go");
}

TEST_CASE("what each degree does is what the same hold grinds a degree on") {
  const Json base = answer_of("grind 6.35mm --web 1.1mm --fence 59 --table-tilt 17");
  const auto step = [&](const char* name) {
    const Json* why = why_of(base, name);
    INFO(name);
    REQUIRE(why != nullptr);
    return (*why)["value"]["value"].get<double>();
  };
  const Json fence = answer_of("grind 6.35mm --web 1.1mm --fence 60 --table-tilt 17");
  const Json tilt = answer_of("grind 6.35mm --web 1.1mm --fence 59 --table-tilt 18");
  CHECK_THAT(step("1 deg more fence: included angle"),
             WithinAbs(found(fence, "included_angle") - found(base, "included_angle"), 1e-9));
  CHECK_THAT(step("1 deg more fence: lip relief"),
             WithinAbs(found(fence, "lip_relief") - found(base, "lip_relief"), 1e-9));
  CHECK_THAT(step("1 deg more table tilt: lip relief"),
             WithinAbs(found(tilt, "lip_relief") - found(base, "lip_relief"), 1e-9));
  // The settings of a fence do not mix: tilt leaves the point alone.
  CHECK(why_of(base, "1 deg more table tilt: included angle") == nullptr);
  const std::string text = test::quillside("grind 6.35mm --web 1.1mm --fence 59 --table-tilt 17").out;
  CHECK(text.find("1 deg more fence: included angle +2") != std::string::npos);
}

TEST_CASE("what each step on a swing fixture does") {
  // Fixture of 12.7 mm, web 1.8, 118, 12, 130, half angle 45, helix 30 (derived, one method, per 0.1 mm or 1 deg):
  // skew +0.1 mm: relief 0.58, chisel edge 1.99; the order is relief, chisel edge, point in the worked table.
  const Json answer = answer_of("grind 12.7mm --web 1.8mm --angle 118 --relief 12 --chisel 130 --cone-half-angle 45");
  const auto step = [&](const std::string& name) {
    const Json* why = why_of(answer, name);
    INFO(name);
    REQUIRE(why != nullptr);
    return (*why)["value"]["value"].get<double>();
  };
  const std::string skew = "0.100 mm (0.0039 in) more skew: ";
  CHECK_THAT(step(skew + "lip relief"), WithinAbs(0.584542, 2e-5));
  CHECK_THAT(step(skew + "chisel edge"), WithinAbs(1.98767, 2e-4));
  CHECK_THAT(step(skew + "included angle"), WithinAbs(-0.0266123, 2e-5));
}

TEST_CASE("a second lip indexed a degree wrong") {
  // 12.7 mm, relief 12, helix 30: 0.027 mm a degree; 6.35 mm, relief 14: 0.016 (derived, two figures)
  const Json half_inch = answer_of("grind 12.7mm --web 1.8mm --angle 118 --relief 12 --way four-facet");
  CHECK_THAT(found(half_inch, "height_error_per_degree"), WithinAbs(0.027, 6e-4));
  const Json quarter = answer_of("grind 6.35mm --web 1.1mm --angle 118 --relief 14 --way four-facet");
  CHECK_THAT(found(quarter, "height_error_per_degree"), WithinAbs(0.016, 6e-4));
}

TEST_CASE("flutes made for another point: bow, clocking, and what a protractor finds") {
  // 12.7 mm, web 1.8, 135 cone of half angle 40, relief 10, chisel edge 125, on flutes of 118, helix 30 (derived):
  // turned 6.11 against the cutting direction the corner lies where a straight lip's would; relief 10.00, point 135.12,
  // chisel edge 125.46 are left, and the bow.
  const Json answer = answer_of("grind 12.7mm --web 1.8mm --angle 135 --relief 10 --chisel 125 --way cone "
                                "--cone-half-angle 40 --flute-angle 118");
  CHECK_THAT(found(answer, "included_angle"), WithinAbs(135.12, 6e-3));
  CHECK_THAT(found(answer, "lip_relief"), WithinAbs(10, 6e-3));
  CHECK_THAT(found(answer, "chisel_edge_angle"), WithinAbs(125.46, 6e-3));
  REQUIRE(has_caution(answer, "grind-other-flutes"));
  for (const auto& caution : answer["cautions"])
    if (caution["id"] == "grind-other-flutes") {
      CHECK(says(caution["text"], "6.1 deg against its cutting direction"));
      CHECK(says(caution["text"], "hollow by"));
    }
  CHECK_FALSE(has_caution(answer_of("grind 1/2 --way cone --flute-angle 118"), "grind-other-flutes"));
}

TEST_CASE("book-keeping: what wear costs, and the web after it") {
  // Wear land 0.3 mm, relief 12, helix 30: 0.0727 mm off (derived: 0.2424 of it); clean-up 0.2 on top. Web grows by
  // 0.016 of that.
  const Json answer = answer_of("grind 12.7mm --web 1.8mm --angle 118 --relief 12 --way four-facet --land-wear 0.3mm");
  const double off = 0.3 / (1 / std::tan(12 * deg) - std::tan(30 * deg)) + 0.2;
  CHECK_THAT(found(answer, "grind_off"), WithinRel(off, 1e-9));
  CHECK_THAT(found(answer, "web_after"), WithinRel(1.8 + 0.016 * off, 1e-9));
  CHECK(answer["found"]["grind_off"]["low"].get<double>() < off);
  CHECK_FALSE(has_caution(answer, "grind-thin"));
  // Until 20 % of 12.7 mm: (2.54 - web after) / (0.016 off), whole ones.
  const Json* left = why_of(answer, "regrinds of that length until then");
  REQUIRE(left != nullptr);
  CHECK((*left)["value"]["value"].get<double>() == std::floor((2.54 - 1.8 - 0.016 * off) / (0.016 * off)));
  // A worn margin is ground off whole; a thick web is thinned.
  const Json worn = answer_of("grind 12.7mm --web 2.6mm --way four-facet --land-wear 0.3mm --margin-wear 2mm");
  CHECK_THAT(found(worn, "grind_off"), WithinRel(2.2, 1e-9));
  CHECK(has_caution(worn, "grind-thin"));
  CHECK_FALSE(answer_of("grind 1/2 --way four-facet")["found"].contains("grind_off"));
}

TEST_CASE("the rim of a wheel: hollow, relief gained, and the speed marked on it") {
  const std::string drill = "grind 1/4 --web 0.044 --relief 26 ";
  // 6 in at 3450 rev/min: pi D n = 5419 ft/min = 1651.7 m/min
  const Json answer = answer_of(drill + "--wheel 6in --wheel-speed 3450 --wheel-marked 4140");
  CHECK(answer["verdict"] == "go");
  const Json* rim = why_of(answer, "speed of the rim");
  REQUIRE(rim != nullptr);
  CHECK_THAT((*rim)["value"]["value"].get<double>(), WithinRel(std::numbers::pi * 0.1524 * 3450, 1e-9));
  const Json* hollow = why_of(answer, "hollow on the rim");
  const Json* gain = why_of(answer, "steeper at the lip on the rim, square to it");
  REQUIRE(hollow != nullptr);
  REQUIRE(gain != nullptr);
  // One follows from the other by the chord of a circle: depth = r (1 - cos gain).
  const double turned = (*gain)["value"]["value"].get<double>() * deg;
  CHECK_THAT((*hollow)["value"]["value"].get<double>(), WithinRel(76.2 * (1 - std::cos(turned)), 1e-9));
  CHECK(has_caution(answer, "grind-on-the-rim"));

  const Json over = answer_of(drill + "--wheel 6in --wheel-speed 3450 --wheel-marked 3000");
  CHECK(over["verdict"] == "do not");
  CHECK(over["set"].empty());
  CHECK(says(over["reason"], "3000 marked on it"));
  CHECK(answer_of(drill + "--wheel-speed 3000 --wheel-marked 3000")["verdict"] == "go");
  CHECK(has_caution(answer_of(drill + "--wheel 6in --wheel-speed 3450"), "grind-mark-unread"));
}

TEST_CASE("a web nobody measured leaves its doubt in the relief; a measured one hardly any") {
  const Json taken = answer_of("grind 1/4 --way four-facet");
  const Json read = answer_of("grind 1/4 --way four-facet --web 0.044+-0.0005");
  const auto width = [](const Json& answer) {
    const Json& relief = answer["found"]["lip_relief"];
    return relief["high"].get<double>() - relief["low"].get<double>();
  };
  CHECK(width(taken) > 1);
  CHECK(width(read) < 0.3);
  CHECK(has_caution(taken, "web-taken"));
  CHECK_FALSE(has_caution(read, "web-taken"));
}

TEST_CASE("cautions of grinding stand in every answer, refused or not") {
  for (const char* line : {"grind 1/4", "grind 1/2 304 --way cone", "grind 5/32 416 --way two-facet --relief 14"}) {
    const Json answer = answer_of(line);
    for (const char* id : {"grind-eyes", "grind-sparks", "grind-hands", "grind-heat", "grind-carbide"})
      CHECK(has_caution(answer, id));
  }
  CHECK(has_caution(answer_of("grind 1/4 C360"), "grind-dub"));
}

TEST_CASE("words that contradict each other, or that no point is made of") {
  struct Wrong {
    const char* line;
    const char* says;
  };
  const auto wrong =
      GENERATE(Wrong{"grind 1/4 --fence 59", "needs --table-tilt"}, Wrong{"grind 1/4 --table-tilt 7", "needs --fence"},
               Wrong{"grind 1/4 --swing 59", "needs --tilt or --roll"}, Wrong{"grind 1/4 --tilt 7", "need --swing"},
               Wrong{"grind 1/4 --fence 59 --table-tilt 7 --swing 59 --roll 8", "give one of them"},
               Wrong{"grind 1/4 --fence 59 --table-tilt 17 --relief 24", "leave --relief or the hold out"},
               Wrong{"grind 1/4 --fence 59 --table-tilt 17 --way cone", "one flat behind each lip"},
               Wrong{"grind 1/4 --fence 25 --table-tilt 17", "points of 60 to 150 deg are answered"},
               Wrong{"grind 1/4 --fence 59 --table-tilt 45", "the lip is too thin"},
               Wrong{"grind 1/4 --way two-facet --second-relief 25", "belongs to --way four-facet"},
               Wrong{"grind 1/4 --way four-facet --cone-half-angle 30", "belongs to --way cone"},
               Wrong{"grind 1/4 --second-relief 25 --cone-half-angle 30", "leave one out"},
               Wrong{"grind 1/4 --way four-facet --relief 20 --second-relief 10", "steeper than the first"},
               Wrong{"grind 1/4 --way two-facet --relief 24 --chisel 135", "leave one out"},
               Wrong{"grind 1/4 --way cone --relief 12 --chisel 100", "turns its chisel edge further"},
               Wrong{"grind 1/4 --way cone --cone-half-angle 59", "not under half the point angle"},
               Wrong{"grind 1/4 --angle 59", "60 to 150 deg"}, Wrong{"grind 1/4 --angle 151", "60 to 150 deg"},
               Wrong{"grind 1/4 --relief 3.9", "4 to 35 deg"}, Wrong{"grind 1/4 --relief 36", "4 to 35 deg"},
               Wrong{"grind 1/4 --web 0.1", "is its unit right"}, Wrong{"grind 1/4 --web 0.01", "is its unit right"},
               Wrong{"grind 1/4 --land 10", "land angle"}, Wrong{"grind 1/4 --chisel 90", "chisel edge angle"},
               Wrong{"grind 1/4 --wheel 1mm", "bench wheel"}, Wrong{"grind 1/4 --way 2-facet", "two-facet"},
               Wrong{"grind 30mm", "drill"}, Wrong{"grind", "write no30"});
  const Json error = error_of(wrong.line, 2);
  INFO(wrong.line << "\n" << error.dump());
  CHECK(says(error["message"], wrong.says));
}

TEST_CASE("a hold that grinds no falling flank is refused, not computed") {
  for (const char* line : {"grind 1/4 --fence 59 --table-tilt 0", "grind 1/4 --swing 59 --tilt 0 --roll 0"}) {
    const Json answer = answer_of(line);
    CHECK(answer["verdict"] == "do not");
    CHECK(answer["set"].empty());
    CHECK(answer["found"].empty());
    CHECK(says(answer["reason"], "this hold will not do"));
  }
  // Less relief than a straight lip of this web can have.
  const Json flat = answer_of("grind 1/4 --web 0.06 --relief 5");
  CHECK(flat["verdict"] == "do not");
  CHECK(says(flat["reason"], "rises behind a straight lip"));
}

TEST_CASE("the page leads with what to set, then the order of work") {
  const std::string text = test::quillside("grind 1/4 303 --way four-facet").out;
  CHECK(text.starts_with("FIRST   mitre scale 22.5 (the drill 67.5 from the disk), table tilt "));
  for (const char* words : {"\nSECOND  mitre scale 22.5", " over 100 mm, ", " over 4 in", "\n1  ", "\n4  ", "flute up",
                            "half of the disk that runs down", "the same stop", "index the second lip within 1 deg",
                            "1 deg more table tilt of the second facet", "quillside point"})
    CHECK(text.find(words) != std::string::npos);
  CHECK(test::quillside("grind 1/4 303 --large").out.find("#") != std::string::npos);
}

TEST_CASE("freehand is the wedge held by eye: the same swing, the shank lower by the same tilt") {
  const std::string text = test::quillside("grind 1/4 1018").out;
  const Json one = answer_of("grind 1/4 1018")["set"]["facets"][0];
  const std::string swing = print_angle(degrees(one["wedge"]["swing"]["value"].get<double>()));
  const std::string tilt = print_angle(degrees(one["wedge"]["tilt"]["value"].get<double>()));
  CHECK(text.find("freehand: the drill " + swing + " to the wheel") != std::string::npos);
  CHECK(text.find("shank " + tilt + " lower") != std::string::npos);
}
