// A slot to fit a part: the latch plate and the escutcheon planned end to end, and each number of the plan held against
// the single ask it comes from, against the standard's limits typed a second time, or against geometry.

#include "folder.hpp"
#include "json_of.hpp"
#include "slot_plan.hpp"

#include <cmath>

using namespace quillside;
using test::answer_of;
using test::error_of;
using test::has_caution;
using test::in_mm_words;
using test::Json;
using test::steps_with;
using test::value;
using test::WithinAbs;
using test::WithinRel;

namespace {

constexpr double inch = 25.4; // mm, exact by definition

const std::string latch = "slot C752 --part 0.118 --part-width 0.630 --thick 3/16 --machine bench";
const std::string escutcheon = "slot 303 --part 3.18mm --part-width 12mm --thick 2mm --fit slide --machine bench";

Json only_step_with(const Json& answer, const std::string& cutter) {
  const auto found = steps_with(answer, cutter);
  REQUIRE(found.size() == 1);
  return found.front();
}

std::vector<double> places_of(const Json& step) {
  std::vector<double> places;
  for (const auto& place : step.at("positions")) places.push_back(place["value"].get<double>());
  return places;
}

bool step_says(const Json& answer, const std::string& words) {
  for (const auto& step : answer["set"]["steps"])
    if (step["do"].get<std::string>().find(words) != std::string::npos) return true;
  return false;
}

/// What one tool is run at is what it is run at alone.
void runs_as_alone(const Json& step, const Json& alone) {
  for (const auto* name : {"spindle_speed", "feed_rate"}) {
    INFO(name);
    CHECK(step.at(name)["value"] == alone["set"].at(name)["value"]);
  }
}

} // namespace

TEST_CASE("the latch plate: width, offset and travel") {
  // Source: ISO 286-2, H7/h6 up to 3 mm (H7 0 to +10 um, h6 0 to -6 um, as restated in tables/fits.toml's sources): 0
  // to 16 um of clearance, so a part of 0.118 in (2.9972 mm) wants a slot 0.008 mm over it. The offset is half of slot
  // less cutter; 7/64 in is the largest in steps of 1/64 in that leaves 0.1 mm a side (common practice, no source).
  // Exact.
  const Json answer = answer_of(latch);
  CHECK(answer["verdict"] == "go");
  const double part = 0.118 * inch;
  const Json& width = answer["set"]["slot_width"];
  CHECK_THAT(width["low"].get<double>(), WithinAbs(part, 1e-9));
  CHECK_THAT(width["value"].get<double>(), WithinAbs(part + 0.008, 1e-9));
  CHECK_THAT(width["high"].get<double>(), WithinAbs(part + 0.016, 1e-9));
  CHECK(answer["inputs"]["condition"]["value"] == "annealed"); // what the drill's speed was taken for
  const double offset = (part + 0.008 - inch * 7 / 64) / 2;
  CHECK_THAT(value(answer["set"], "side_offset"), WithinAbs(offset, 1e-9));
  CHECK_THAT(value(answer["set"], "wall_to_wall"), WithinAbs(2 * offset, 1e-9));
  CHECK(answer["inputs"]["fit"]["value"] == "push");
  CHECK(answer["inputs"]["fit"]["given"] == false);
  CHECK_THAT(answer["inputs"]["cutter_size"]["value"].get<double>(), WithinAbs(inch * 7 / 64, 1e-9));
}

TEST_CASE("a part of 0.162 in with a 1/8 in cutter at no clearance goes 0.0185 in each side") {
  // Source: common practice, no source: (part - cutter)/2.
  const Json answer = answer_of("slot C752 --part 0.162 --cutter-size 1/8 --clearance 0");
  CHECK_THAT(value(answer["set"], "side_offset"), WithinAbs(0.0185 * inch, 1e-9));
  CHECK_THAT(value(answer["set"], "wall_to_wall"), WithinAbs(0.037 * inch, 1e-9));
}

TEST_CASE("the latch plate: the row of holes is drilled as `drill` says, and stands as geometry wants it") {
  const Json answer = answer_of(latch);
  const Json holes = only_step_with(answer, "9/64 drill");
  const Json alone = answer_of("drill 9/64 C752 --thick 3/16 --leave 0.050 --machine bench");
  runs_as_alone(holes, alone);
  CHECK(holes["side"] == "back");
  CHECK(holes["depth"]["value"] == alone["set"]["depth_stop"]["value"]);
  CHECK(answer["set"]["depth_stop"]["value"] == alone["set"]["depth_stop"]["value"]);
  // Source: 0.050 to 0.060 in is left at the front (common practice, no source): 3/16 - 0.050.
  CHECK_THAT(value(answer["set"], "depth_stop"), WithinAbs(0.1375 * inch, 1e-9));
  // The pocket reaches the slot's corners: each corner lies inside the half circle at the pocket's end, held by the
  // distance itself, and the slot's end 0.010 in short of the pocket's at least (the margin of tables/limits.toml).
  const auto places = places_of(holes);
  REQUIRE(places.size() == 4);
  const double drill = inch * 9 / 64;
  const double corner_x = answer["set"]["slot_length"]["high"].get<double>() / 2;
  const double corner_y = answer["set"]["slot_width"]["high"].get<double>() / 2;
  CHECK(std::hypot(corner_x - places.back(), corner_y) < drill / 2);
  CHECK(corner_x + 0.010 * inch <= places.back() + drill / 2);
  // Evenly spread about the middle, and nearer than 1.05 diameters at no place (common practice, no source).
  for (std::size_t i = 1; i < places.size(); ++i) {
    CHECK(places[i] - places[i - 1] >= 1.05 * drill - 1e-9);
    CHECK_THAT(places[i] - places[i - 1], WithinAbs(places[1] - places[0], 1e-9));
  }
  CHECK_THAT(places.front() + places.back(), WithinAbs(0, 1e-9));
}

TEST_CASE("the latch plate: pocket, first cut and walls are milled as `mill` says") {
  const Json answer = answer_of(latch);
  const Json floor = only_step_with(answer, "9/64 end mill");
  const Json pocket_alone = answer_of("mill 9/64 C752 --machine bench");
  runs_as_alone(floor, pocket_alone);
  CHECK_THAT(value(floor, "depth"), WithinAbs(0.1375 * inch, 1e-9));

  const auto slot_steps = steps_with(answer, "7/64 end mill");
  REQUIRE(slot_steps.size() == 3); // first cut, last pass, spring pass
  const Json cut_alone = answer_of("mill 7/64 C752 --machine bench");
  runs_as_alone(slot_steps[0], cut_alone);
  // Past the floor of the pocket by 0.010 in (common practice, no source).
  CHECK_THAT(value(slot_steps[0], "depth"), WithinAbs(0.060 * inch, 1e-9));

  const std::string width = in_mm_words(value(slot_steps[1], "width_of_cut"));
  const std::string depth = in_mm_words(value(slot_steps[1], "depth_of_cut"));
  const Json wall_alone = answer_of("mill 7/64 C752 --machine bench --width " + width + " --depth " + depth);
  runs_as_alone(slot_steps[1], wall_alone);
  CHECK(slot_steps[1]["wall_left"]["value"] == wall_alone["found"]["wall_error"]["value"]);
  runs_as_alone(slot_steps[2], wall_alone);

  // No pass is deeper than the single ask allows, and one pass fewer would be.
  const auto deepest = [&](const Json& step, const Json& alone) {
    const double most = value(alone["set"], "depth_of_cut");
    const auto passes = step["passes"].get<int>();
    CHECK_THAT(value(step, "depth_of_cut") * passes, WithinAbs(value(step, "depth"), 1e-9));
    CHECK(value(step, "depth_of_cut") <= most + 1e-9);
    CHECK((passes == 1 || value(step, "depth") / (passes - 1) > most));
  };
  deepest(floor, pocket_alone);
  deepest(slot_steps[0], cut_alone);
  deepest(slot_steps[1], answer_of("mill 7/64 C752 --machine bench --width " + width));
  CHECK_THAT(value(answer["found"], "passes"), WithinAbs(slot_steps[0]["passes"].get<double>(), 1e-12));
}

TEST_CASE("no more holes than stand clear of one another, and no fewer") {
  // Source: 1.05 to 1.1 diameters from hole to hole (common practice, no source). Counted anew from the run of the row.
  const std::string part_width = GENERATE("0.45", "0.55", "0.630", "0.80", "1.1");
  const Json answer = answer_of("slot C752 --part 0.118 --thick 3/16 --part-width " + part_width);
  const auto places = places_of(only_step_with(answer, "9/64 drill"));
  const double run = places.back() - places.front();
  const auto most = static_cast<std::size_t>(run / (1.05 * inch * 9 / 64) + 1e-9) + 1;
  INFO(part_width);
  CHECK(places.size() == most);
}

TEST_CASE("a pocket wider than its tool reaches the corners too, and no further than it must") {
  // Second way: the end of the pocket is two quarter circles of the tool, one each side; the shortest pocket that holds
  // the slot's corner is searched for by halving, and 0.010 in put on at either end. Tolerance: the search's last step.
  const double width = GENERATE(0.230, 0.240, 0.350);
  const Json answer =
      answer_of("slot C752 --part 0.118 --part-width 0.630 --thick 3/16 --pocket-width " + std::to_string(width));
  const auto& steps = answer["set"]["steps"];
  double tool = 0;
  Json floor;
  for (const auto& step : steps)
    if (step["do"].get<std::string>().find("floor of the pocket") != std::string::npos && step.contains("passes"))
      floor = step;
  tool = width * inch - 2 * value(floor, "offset");
  const double flat = value(floor, "offset");
  const double corner_x = answer["set"]["slot_length"]["high"].get<double>() / 2;
  const double corner_y = answer["set"]["slot_width"]["high"].get<double>() / 2;
  const auto holds_corner = [&](double half) {
    const double centre_x = half - tool / 2;
    if (corner_x > half) return false;
    if (corner_y <= flat || corner_x <= centre_x) return true;
    return std::hypot(corner_x - centre_x, corner_y - flat) <= tool / 2;
  };
  double low = 0;
  double high = 100;
  for (int i = 0; i < 60; ++i) (holds_corner((low + high) / 2) ? high : low) = (low + high) / 2;
  INFO(width << " in, tool " << tool << " mm");
  CHECK_THAT(places_of(floor).back() + tool / 2, WithinAbs(high + 0.254, 1e-6));
}

TEST_CASE("the edges are broken as `burr` says") {
  const Json answer = answer_of(latch);
  const Json edges = only_step_with(answer, "1/8 burr");
  CHECK(edges["spindle_speed"]["value"] == answer_of("burr 1/8 C752")["set"]["spindle_speed"]["value"]);
}

TEST_CASE("the last pass ends where the slot ends, the first one short of it by what the last one takes") {
  // Source: geometry: the cutter's middle stands half a cutter short of the end.
  const Json answer = answer_of(latch);
  const auto steps = steps_with(answer, "7/64 end mill");
  REQUIRE(steps.size() == 3);
  const double end = value(answer["set"], "slot_length") / 2 - inch * 7 / 64 / 2;
  CHECK_THAT(places_of(steps[1]).back(), WithinAbs(end, 1e-9));
  CHECK_THAT(places_of(steps[1]).front(), WithinAbs(-end, 1e-9));
  CHECK_THAT(places_of(steps[0]).back(), WithinAbs(end - 0.1, 1e-9));
  // Slot length by the same fit at 16 mm: H7 0 to +18, h6 0 to -11 um (ISO 286-2, 10 to 18 mm; from memory), its
  // middle.
  CHECK_THAT(value(answer["set"], "slot_length"), WithinAbs(0.630 * inch + 0.0145, 1e-9));
}

TEST_CASE("time in the cut is what the steps come to") {
  // Second way: every step's own run, passes and feed added up; each wall once, drilled holes at the single ask's time.
  const std::string more = GENERATE("", " --pocket-width 0.1500");
  const Json answer = answer_of(latch + more);
  const Json drill_alone = answer_of("drill 9/64 C752 --thick 3/16 --leave 0.050 --machine bench");
  double seconds = 4 * value(drill_alone["found"], "cut_time");
  for (const auto& step : answer["set"]["steps"]) {
    if (!step.contains("passes")) continue;
    const auto places = places_of(step);
    const double walls = value(step, "offset") > 0 ? 2 : 1;
    seconds += walls * step["passes"].get<int>() * (places.back() - places.front()) / value(step, "feed_rate") * 60;
  }
  CHECK_THAT(value(answer["found"], "time"), WithinRel(seconds, 1e-9));
}

TEST_CASE("the first cut as measured sets the offsets anew") {
  // Source: offset = (W - W measured)/2, so that run-out and bend of the first cut drop out. Exact.
  const double part = 0.118 * inch;
  const double measured = GENERATE(0.1095, 0.1105, 0.1120, 0.1150);
  const Json answer = answer_of(latch + " --cut-width " + std::to_string(measured));
  INFO(measured);
  CHECK_THAT(value(answer["set"], "side_offset"), WithinAbs((part + 0.008 - measured * inch) / 2, 1e-6));
  // Only what is left is planned: no drill, no pocket, no first cut, nothing to measure.
  CHECK(steps_with(answer, "9/64 drill").empty());
  CHECK(steps_with(answer, "9/64 end mill").empty());
  CHECK_FALSE(step_says(answer, "first cut"));
  CHECK_FALSE(step_says(answer, "--cut-width"));
  CHECK(steps_with(answer, "7/64 end mill").size() == 2);
  // What the cutter cuts is what it cuts at the ends too.
  const auto steps = steps_with(answer, "7/64 end mill");
  CHECK_THAT(places_of(steps[0]).back(), WithinAbs((value(answer["set"], "slot_length") - measured * inch) / 2, 1e-6));
  CHECK_THAT(value(answer["found"], "corner_left"), WithinAbs((std::sqrt(2.0) - 1) / 2 * measured * inch, 1e-6));
}

TEST_CASE("a first cut that is in the fit already is left alone, one beyond it is the end of the plate") {
  const Json in_it = answer_of(latch + " --cut-width 0.1182");
  CHECK(has_caution(in_it, "slot-fits-now"));
  CHECK(value(in_it["set"], "side_offset") == 0);
  CHECK(steps_with(in_it, "7/64 end mill").empty());
  const Json beyond = answer_of(latch + " --cut-width 0.1195");
  CHECK(beyond["verdict"] == "do not");
  CHECK(beyond["set"].empty());
  CHECK(beyond["reason"].get<std::string>().find("too wide already") != std::string::npos);
  // 0.007 mm short of the fit and less than a setting of the dial (0.0005 in) a side: no cut is set that cannot be.
  const Json little = answer_of("slot 303 --part 0.118 --part-width 0.630 --thick 3/16 --cut-width 2.990mm");
  CHECK_FALSE(has_caution(little, "slot-fits-now"));
  CHECK(little["verdict"] == "back off");
  CHECK_THAT(value(little["set"], "side_offset"), WithinAbs((0.118 * inch + 0.008 - 2.990) / 2, 1e-9));
  CHECK(steps_with(little, "7/64 end mill").empty());
  // Not moved, it is as wide as it was read: a caliper's 0.02 mm (common practice, no source).
  CHECK_THAT(value(in_it["found"], "width_doubt"), WithinAbs(0.02, 1e-9));
}

TEST_CASE("a cut narrower than its cutter is a wrong reading") {
  const Json error = error_of(latch + " --cut-width 0.100", 2);
  CHECK(error["kind"] == "conflict");
  CHECK(error["word"] == "--cut-width");
}

TEST_CASE("a caliper cannot decide a fit of a hundredth of a millimetre, and the answer says what can") {
  const Json answer = answer_of(latch);
  CHECK(has_caution(answer, "slot-cannot-decide"));
  CHECK(answer["instead"].get<std::string>().find("micrometer") != std::string::npos);
  CHECK(answer["instead"].get<std::string>().find("part itself") != std::string::npos);
  // Half of the fit's width is 0.008 mm; the caliper alone is 0.02 mm off (common practice, no source).
  const Json& sits = answer["found"]["interference"];
  CHECK(sits["high"].get<double>() - sits["low"].get<double>() > 0.04);
  // A finer instrument than the one that was used is named; where the part is read finer than that, none is.
  const Json fine = answer_of("slot C752 --part 2.997mm+-0.001mm --machine bench");
  CHECK(has_caution(fine, "slot-cannot-decide"));
  CHECK(fine["instead"].get<std::string>().find("micrometer") == std::string::npos);
  // With a tenth of a millimetre to spare it can.
  const Json loose = answer_of("slot C752 --part 0.118 --clearance 0.1mm --thick 3/16 --machine bench");
  CHECK_FALSE(has_caution(loose, "slot-cannot-decide"));
  CHECK(loose["instead"].is_null());
}

TEST_CASE("doubt of the slot and of the part, added up in squares") {
  // Second way: the root of the sum of squares of each part, by hand. Part +-0.005 mm; first cut +-0.010 mm as read;
  // two settings of +-0.0127 mm (tables/limits.toml); the walls' rest is under 0.1 um and left out. Tolerance: that
  // rest.
  const Json answer = answer_of("slot C752 --part 3mm+-0.005mm --part-width 16mm --thick 4.76mm --clearance 0.05mm "
                                "--machine bench --cut-width 2.6mm+-0.010mm");
  const double slot = std::sqrt(0.010 * 0.010 + 2 * 0.0127 * 0.0127);
  CHECK_THAT(value(answer["found"], "width_doubt"), WithinAbs(slot, 5e-4));
  const Json& sits = answer["found"]["interference"];
  CHECK_THAT(sits["value"].get<double>(), WithinAbs(-0.05, 5e-4));
  CHECK_THAT(sits["high"].get<double>() - sits["value"].get<double>(), WithinAbs(std::hypot(slot, 0.005), 5e-4));
}

TEST_CASE("an allowance is told from nothing as long as the doubt is less than it") {
  // Second way: the root of the squares by hand: 0.005 (part), 0.010 (cut), twice 0.0127 mm (settings): 0.0211 mm.
  const std::string plan = "slot C752 --part 3mm+-0.005mm --cut-width 2.6mm+-0.010mm --clearance ";
  CHECK(has_caution(answer_of(plan + "0.0205mm"), "slot-cannot-decide"));
  CHECK_FALSE(has_caution(answer_of(plan + "0.0220mm"), "slot-cannot-decide"));
}

TEST_CASE("a first cut is no truer than the machine it is made on") {
  // Second way: the root of the squares of the machine's run-out, 0.1 mm, and two settings of 0.0127 mm.
  test::Folder folder;
  const std::string file = folder.write("own.toml", R"([source.mine]
author = "me"
title = "my mill"
standing = "own bench"
[[machine]]
key = "worn"
name = "worn mill"
kind = "mill"
range = "100 to 5000 rev/min"
holder = "collet"
runout = "0.1 mm"
source = "mine"
)");
  const Json answer = answer_of("slot C752 --part 3.5mm --clearance 0 --machine worn --tables " + file);
  CHECK_THAT(value(answer["found"], "width_doubt"), WithinAbs(std::sqrt(0.01 + 2 * 0.0127 * 0.0127), 1e-6));
}

TEST_CASE("rough and last passes share the way to the wall") {
  // Source: 0.05 to 0.1 mm is left for the last pass (from memory); up to twice that is one pass.
  const auto offsets = [](const std::string& line) {
    std::vector<double> all;
    for (const auto& step : steps_with(answer_of(line), "2.5mm end mill"))
      if (value(step, "offset") > 0) all.push_back(value(step, "offset"));
    all.pop_back(); // the spring pass is the last one again
    return all;
  };
  const std::string plan = "slot C752 --cutter-size 2.5mm --clearance 0 --part ";
  CHECK(offsets(plan + "2.9mm").size() == 1);
  const auto two = offsets(plan + "3.0mm");
  REQUIRE(two.size() == 2);
  CHECK_THAT(two[0], WithinAbs(0.15, 1e-9));
  CHECK_THAT(two[1], WithinAbs(0.25, 1e-9));
  const auto more = offsets(plan + "6mm"); // 1.65 mm in steps of half a cutter at the most, then 0.1
  REQUIRE(more.size() == 3);
  CHECK_THAT(more[0], WithinAbs(0.825, 1e-9));
  CHECK_THAT(more[1], WithinAbs(1.65, 1e-9));
  CHECK_THAT(more[2], WithinAbs(1.75, 1e-9));
}

TEST_CASE("a cutter of the slot's own size cuts it in one, end to end") {
  const Json answer = answer_of("slot C752 --cutter-size 3mm --part 3mm --clearance 0 --length 16mm --thick 2mm");
  const auto steps = steps_with(answer, "3mm end mill");
  REQUIRE(steps.size() == 1);
  CHECK_THAT(places_of(steps[0]).back(), WithinAbs(6.5, 1e-9));
}

TEST_CASE("the gravest caution of any tool comes first") {
  const Json answer = answer_of(latch);
  const auto rank = [](const Json& caution) {
    return caution["severity"] == "danger" ? 0 : caution["severity"] == "warn" ? 1 : 2;
  };
  int last = 0;
  for (const auto& caution : answer["cautions"]) {
    INFO(caution["id"]);
    CHECK(rank(caution) >= last);
    last = rank(caution);
  }
}

TEST_CASE("drill shanks that go in and that do not") {
  const Json answer = answer_of(latch);
  for (const auto& step : answer["set"]["steps"]) {
    if (!step.contains("goes")) continue;
    const double goes = value(step["goes"], "size");
    const double stays = value(step["stays_out"], "size");
    CHECK(goes <= answer["set"]["slot_width"]["low"].get<double>());
    CHECK(stays >= answer["set"]["slot_width"]["high"].get<double>());
    // Nothing of the ladder lies between the gauge and the width it is for.
    const Json below = answer_of("size " + in_mm_words(answer["set"]["slot_width"]["low"].get<double>()));
    CHECK_THAT(value(below["found"]["below"][0], "length"), WithinAbs(goes, 1e-9));
    return;
  }
  FAIL_CHECK("no step tries shanks");
}

TEST_CASE("the escutcheon: through from the front, rough and last passes") {
  // Source: ISO 286-2, H7/g6 over 3 to 6 mm: 4 to 24 um of clearance (H7 0 to +12, g6 -4 to -12 um): its middle 14 um.
  const Json answer = answer_of(escutcheon);
  CHECK(answer["verdict"] == "go");
  CHECK_THAT(value(answer["set"], "slot_width"), WithinAbs(3.18 + 0.014, 1e-9));
  CHECK_FALSE(answer["set"].contains("depth_stop")); // 0.73 mm of a pocket is not worth opening
  const auto steps = steps_with(answer, "2.5mm end mill");
  REQUIRE(steps.size() == 4);
  CHECK_THAT(value(steps[0], "depth"), WithinAbs(2 + 0.254, 1e-9));
  const double offset = (3.194 - 2.5) / 2;
  CHECK_THAT(value(steps[1], "offset"), WithinAbs(offset - 0.1, 1e-9));
  CHECK_THAT(value(steps[2], "offset"), WithinAbs(offset, 1e-9));
  CHECK_THAT(value(steps[2], "width_of_cut"), WithinAbs(0.1, 1e-9));
  const Json rough = answer_of("mill 2.5mm 303 --machine bench --width " + in_mm_words(offset - 0.1));
  runs_as_alone(steps[1], rough);
}

TEST_CASE("a slot wider than any end mill has its pocket cut in two passes") {
  // Source: end mills to 20 mm (tables/milling.toml). Held by geometry: the two passes overlap, and their outer sides
  // are those of the pocket, at least 0.010 in clear of the slot.
  const Json answer = answer_of("slot C752 --part 20mm --part-width 40mm --thick 10mm");
  CHECK(answer["verdict"] == "go");
  const auto steps = steps_with(answer, "20mm end mill");
  REQUIRE_FALSE(steps.empty());
  const double offset = value(steps[0], "offset");
  CHECK(offset > 0);
  CHECK(offset <= 10);
  CHECK(2 * offset + 20 >= answer["set"]["slot_width"]["high"].get<double>() + 2 * 0.254 - 1e-9);
}

TEST_CASE("round ends that clear the part want the slot longer by the cutter") {
  const Json filed = answer_of(latch);
  const Json clear = answer_of(latch + " --ends clear");
  CHECK_THAT(value(clear["set"], "slot_length") - value(filed["set"], "slot_length"), WithinAbs(inch * 7 / 64, 1e-9));
  CHECK(value(clear["found"], "corner_left") == 0);
  CHECK_THAT(value(filed["found"], "corner_left"), WithinAbs(0.2071 * inch * 7 / 64, 1e-3));
  CHECK(step_says(filed, "file the corners"));
  CHECK_FALSE(step_says(clear, "file the corners"));
}

TEST_CASE("both walls conventional where there is backlash, either way where the machine's row says there is none") {
  CHECK(has_caution(answer_of(latch), "slot-climb"));
  test::Folder folder;
  const std::string file = folder.write("own.toml", test::stiff_mill);
  const Json answer = answer_of("slot C752 --part 0.118 --part-width 0.630 --machine stiff --tables " + file);
  CHECK_FALSE(has_caution(answer, "slot-climb"));
  CHECK(has_caution(answer, "slot-no-backlash"));
}

TEST_CASE("tight fits: tight at the walls only, and said where they may slip") {
  // Source: ISO 286-2, H7/p6 up to 3 mm: p6 +6 to +12 um, so 4 um loose to 12 um tight: 4 um tight in the middle.
  const Json press = answer_of("slot C752 --part 2.9mm --part-width 16mm --fit press");
  CHECK_THAT(value(press["set"], "slot_width"), WithinAbs(2.9 - 0.004, 1e-9));
  CHECK(has_caution(press, "slot-may-slip"));
  CHECK_FALSE(has_caution(answer_of("slot C752 --part 3.1mm --fit press"), "slot-may-slip"));
  CHECK(value(press["set"], "slot_length") >= 16); // the ends hold nothing
  const Json driven = answer_of("slot C752 --part 0.118 --fit driven");
  CHECK(has_caution(driven, "driven-fit"));
  // Source: 0.002 to 0.005 in tight on a soft plate (common practice, no source).
  CHECK_THAT(value(driven["set"], "slot_width"), WithinAbs((0.118 - 0.0035) * inch, 1e-9));
}

TEST_CASE("what was not said is left out of the plan, and said") {
  const Json bare = answer_of("slot C752 --part 0.118");
  CHECK(has_caution(bare, "slot-no-thick"));
  CHECK(has_caution(bare, "slot-no-length"));
  CHECK_FALSE(bare["set"].contains("slot_length"));
  CHECK_FALSE(bare["set"].contains("depth_stop"));
  CHECK_FALSE(bare["found"].contains("passes"));
  CHECK_FALSE(bare["found"].contains("time"));
  CHECK(bare["set"].contains("side_offset"));
}

TEST_CASE("a plan that cannot work is refused with the reason") {
  struct Refused {
    const char* flags;
    const char* because;
  };
  const auto refused =
      GENERATE(Refused{"--part 0.118 --cutter-size 1/8", "wider than the slot"},
               Refused{"--part 0.118 --thick 3/16 --leave 3/16", "leaves all of a plate"},
               Refused{"--part 0.118 --thick 3/16 --leave 1/4", "leaves all of a plate"},
               Refused{"--part 0.118 --thick 3/16 --leave 0", "right through"},
               Refused{"--part 0.118 --thick 3/16 --pocket-width 0.100", "corners are not reached"},
               Refused{"--part 0.118 --thick 3/4 --pocket-width 9/64", "beyond the flutes"},
               Refused{"--part 0.118 --thick 1 --leave 1/2", "beyond the flutes"},
               Refused{"--part 0.118 --thick 9", "beyond the flutes"},
               Refused{"--part 0.118 --thick 3/16 --pocket-width 2.5", "more than twice as wide"},
               Refused{"--part 0.118 --part-width 0.630 --length 0.6", "does not take the part's width"},
               Refused{"--part 0.118 --part-width 0.630 --ends clear --length 0.65", "do not clear the part's corners"},
               Refused{"--part 0.118 --length 0.1", "shorter than its cutter"}, Refused{"--part 0.005", "no end mill"},
               Refused{"--part 0.118 --machine pillar", "drill chuck"});
  INFO(refused.flags);
  const Json answer = answer_of(std::string("slot C752 ") + refused.flags);
  CHECK(answer["verdict"] == "do not");
  CHECK(answer["set"].empty());
  INFO(answer["reason"]);
  CHECK(answer["reason"].get<std::string>().find(refused.because) != std::string::npos);
  CHECK(answer["instead"].is_string());
}

TEST_CASE("words of slot that are wrong") {
  struct Wrong {
    const char* line;
    const char* kind;
    const char* word;
  };
  const auto wrong =
      GENERATE(Wrong{"slot C752", "word", "slot"}, Wrong{"slot C752 --part 0", "word", "0"},
               Wrong{"slot C752 --part 0.118+-0.2", "word", "0.118+-0.2"},
               Wrong{"slot C752 --part 0.118 --fit pres", "word", "pres"},
               Wrong{"slot C752 --part 0.118 --fit press --clearance 0.001", "conflict", "--fit"},
               Wrong{"slot C752 --part 0.118 --interference 0.001 --clearance 0.001", "conflict", "--clearance"},
               Wrong{"slot C752 --part 0.118 --interference 0.2", "word", "0.2"},
               Wrong{"slot C752 --part 0.118 --leave 0.05", "conflict", "--leave"},
               Wrong{"slot C752 --part 0.118 --pocket-width 0.2", "conflict", "--pocket-width"},
               Wrong{"slot C752 --part 0.118 --ends round", "word", "round"},
               Wrong{"slot C752 --part 0.118 --length 0", "word", "0"},
               Wrong{"slot C752 --part 0.118 --cutter diamond", "word", "diamond"},
               Wrong{"slot C752 --part 0,118", "word", "0,118"});
  INFO(wrong.line);
  const Json error = error_of(wrong.line, 2);
  CHECK(error["kind"] == wrong.kind);
  CHECK(error["word"] == wrong.word);
}

TEST_CASE("the order of flags is free") {
  const Json one = answer_of(latch);
  const Json other = answer_of("slot --machine bench --thick 3/16 --part-width 0.630 C752 --part 0.118");
  CHECK(one["set"] == other["set"]);
  CHECK(one["found"] == other["found"]);
}
