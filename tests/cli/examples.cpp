// The examples run, and say what they are there to show.

#include "json_of.hpp"

using namespace quillside;
using test::Json;

TEST_CASE("the asks of the latch plate are all answered") {
  const auto ran = test::run_words({"batch", std::string(QUILLSIDE_SOURCE_DIR) + "/examples/latch-plate.txt"});
  INFO(ran.out << ran.err);
  CHECK(ran.exit == 0);
  CHECK(ran.err.empty());
  std::vector<std::string> asks;
  std::size_t from = 0;
  for (std::size_t to = ran.out.find('\n'); to != std::string::npos; from = to + 1, to = ran.out.find('\n', from))
    asks.push_back(Json::parse(ran.out.substr(from, to - from))["ask"]);
  CHECK(asks == std::vector<std::string>{"slot", "drill", "mill", "burr", "size", "fit"});
}

TEST_CASE("a machine and a speed of one's own go over the built-in ones") {
  const std::string table = " --tables " + std::string(QUILLSIDE_SOURCE_DIR) + "/examples/shop.toml";
  const Json answer = test::answer_of("drill no30 303 --machine loft" + table);
  // 70 ft/min at 0.1285 in: 12 x 70 / (pi x 0.1285) = 2080.8 rev/min; the loft's steps give 1400.
  CHECK_THAT(answer["found"]["wanted_spindle_speed"]["value"].get<double>(), test::WithinAbs(2080.8, 0.1));
  CHECK(answer["set"]["spindle_speed"]["value"] == 1400);
  CHECK(answer["set"]["step"] == "3");
  for (const auto& source : answer["sources"]) CHECK(source["id"] != "mh-drilling-stainless");
}

TEST_CASE("the four drill points are judged as the solids they were computed from deserve") {
  // Solids, mm and deg: named above each line of the example. Read here as it prints them.
  const auto ran = test::run_words({"batch", std::string(QUILLSIDE_SOURCE_DIR) + "/examples/drill-points.txt"});
  INFO(ran.out << ran.err);
  CHECK(ran.exit == 0);
  std::vector<Json> points;
  std::size_t from = 0;
  for (std::size_t to = ran.out.find('\n'); to != std::string::npos; from = to + 1, to = ran.out.find('\n', from))
    points.push_back(Json::parse(ran.out.substr(from, to - from)));
  REQUIRE(points.size() == 4);
  CHECK(points[0]["verdict"] == "keep");
  CHECK(points[1]["verdict"] == "regrind");
  CHECK(points[1]["reason"].get<std::string>().find("lip A stands higher") != std::string::npos);
  CHECK_THAT(points[1]["found"]["lip_height_difference"]["value"].get<double>(), test::WithinAbs(0.30, 0.02));
  CHECK(points[2]["verdict"] == "regrind");
  CHECK_THAT(points[2]["found"]["included_angle"]["value"].get<double>(), test::WithinAbs(128, 0.5));
  CHECK(points[3]["verdict"] == "regrind");
  CHECK(points[3]["found"]["grind_off"]["low"].get<double>() >= 0.3);
}
