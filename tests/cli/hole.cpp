// Holes for pins, reamers, taps and screws, as the program tells them.

#include "json_of.hpp"

using namespace quillside;
using test::answer_of;
using test::error_of;
using test::has_caution;
using test::Json;
using test::value;
using test::why_of;
using test::why_value;
using test::WithinAbs;

TEST_CASE("a tapped hole: the chart's drill, its share of a thread in both counts") {
  const Json m3 = answer_of("hole tap M3 C360");
  CHECK(m3["verdict"] == "go");
  CHECK(m3["set"]["drill"]["name"] == "2.5mm");
  // (3 - 2.5)/(1.29904 x 0.5) = 0.7698; the basic profile is 5/6 of that depth: 0.9238.
  CHECK_THAT(value(m3["found"]["engagement"]), WithinAbs(0.76980, 0.00001));
  CHECK_THAT(why_value(m3, "share of the basic profile"), WithinAbs(0.92376, 0.00001));
  // A drill of 2.5 mm cuts up to 0.004 in (0.1016 mm) over its size (AND10387): (3 - 2.6016)/0.64952 = 0.6134.
  CHECK_THAT(m3["found"]["engagement"]["low"].get<double>(), WithinAbs(0.6134, 0.0001));
  CHECK(m3["inputs"]["thread"]["value"] == "M3x0.5");
  CHECK(m3["inputs"]["thread"]["given"] == false);
  CHECK_THAT(value(m3["inputs"]["engagement"]), WithinAbs(0.75, 1e-12));
  CHECK(m3["set"]["depth"].is_null());
  CHECK(m3["set"]["reamer"].is_null());
  CHECK(has_caution(m3, "tap-by-hand"));
  CHECK_FALSE(has_caution(m3, "tap-held"));
  CHECK(answer_of("hole tap 1/4-20 1018")["set"]["drill"]["name"] == "no7");
}

TEST_CASE("the metal decides how much thread; the flag goes before it") {
  const Json held = answer_of("hole tap M3 303");
  CHECK(held["set"]["drill"]["name"] == "2.6mm"); // 65 % wants 2.578
  CHECK(has_caution(held, "tap-held"));
  CHECK_THAT(value(held["inputs"]["engagement"]), WithinAbs(0.65, 1e-12));
  const Json asked = answer_of("hole tap M3 303 --engagement 77%");
  CHECK(asked["set"]["drill"]["name"] == "2.5mm");
  CHECK(asked["inputs"]["engagement"]["given"] == true);
  CHECK(why_of(asked, "percentage of thread") == nullptr);
}

TEST_CASE("too much thread backs off, more than the profile has is refused, too little strips") {
  // 81 % of 1/4-20 wants 0.1974; no9 (0.1960) leaves 83.1 %, just within the basic minor diameter of 0.1959.
  const Json much = answer_of("hole tap 1/4-20 303 --engagement 81");
  CHECK(much["set"]["drill"]["name"] == "no9");
  CHECK(much["verdict"] == "back off");
  CHECK(much["instead"].get<std::string>().find("no4") != std::string::npos);
  const Json beyond = answer_of("hole tap M3 C360 --engagement 90");
  CHECK(beyond["verdict"] == "do not");
  CHECK(beyond["set"].empty());
  CHECK(beyond["reason"].get<std::string>().find("minor diameter") != std::string::npos);
  CHECK(answer_of("hole tap M3 C360 --engagement 30")["verdict"] == "back off");
}

TEST_CASE("speed, feed and depth are those of the single ask for that drill") {
  struct Pair {
    const char* hole;
    const char* drill;
  };
  const auto pair = GENERATE(
      Pair{"hole tap M3 C360 --thick 5mm --machine pillar", "drill 2.5mm C360 --thick 5mm --through --machine pillar"},
      Pair{"hole clear no6 C260 --thick 1/8", "drill no18 C260 --thick 1/8 --through"},
      Pair{"hole pin 1/8 303 --machine pillar", "drill no32 303 --machine pillar"},
      Pair{"hole countersink M3 C752 --thick 3mm --machine bench",
           "drill 3.4mm C752 --thick 3mm --through --machine bench"},
      Pair{"hole ream 3mm 1095@cold-drawn --thick 20mm", "drill 2.8mm 1095@cold-drawn --thick 20mm --through"});
  INFO(pair.hole);
  const Json hole = answer_of(pair.hole);
  const Json drill = answer_of(pair.drill);
  CHECK(hole["set"]["spindle_speed"] == drill["set"]["spindle_speed"]);
  CHECK(hole["set"]["feed_per_rev"] == drill["set"]["feed_per_rev"]);
  CHECK(hole["found"]["wanted_spindle_speed"] == drill["found"]["wanted_spindle_speed"]);
  CHECK(hole["found"]["cutting_speed"] == drill["found"]["cutting_speed"]);
  if (drill["set"].contains("depth_stop"))
    CHECK_THAT(value(hole["set"]["depth"]), WithinAbs(value(drill["set"]["depth_stop"]), 1e-9));
  for (const auto& caution : drill["cautions"]) CHECK(has_caution(hole, caution["id"].get<std::string>()));
}

TEST_CASE("a screw goes through: the normal hole, the others and a counterbore under why") {
  const Json m3 = answer_of("hole clear M3 C752");
  CHECK(m3["set"]["drill"]["name"] == "3.4mm");
  CHECK_THAT(value(m3["found"]["clearance"]), WithinAbs(0.4, 1e-9));
  CHECK_THAT(why_value(m3, "close hole"), WithinAbs(3.2, 1e-9));
  CHECK_THAT(why_value(m3, "loose hole"), WithinAbs(3.6, 1e-9));
  CHECK_THAT(why_value(m3, "counterbore for a cap head"), WithinAbs(6, 1e-9));
  CHECK(has_caution(m3, "clear-counterbore"));
  const Json odd = answer_of("hole clear 3/16 303");
  CHECK(odd["set"]["drill"]["name"] == "7/32");
  CHECK(has_caution(odd, "clear-next-larger"));
}

TEST_CASE("a countersink: down from the face by the head's sharp edge, slower than the drill") {
  const Json m3 = answer_of("hole countersink M3 C752");
  // (6.3 - 3.4)/2 at 90 deg.
  CHECK_THAT(value(m3["found"]["countersink_depth"]), WithinAbs(1.45, 1e-9));
  CHECK_THAT(value(m3["inputs"]["head"]), WithinAbs(6.3, 1e-9));
  CHECK(has_caution(m3, "countersink-grabs"));
  // A drill of 6.3 mm runs at v/(pi 6.3); the countersink at a quarter of that.
  const double wide = value(answer_of("drill 6.3mm C752")["set"]["spindle_speed"]);
  CHECK_THAT(why_value(m3, "countersink, spindle speed"), WithinAbs(wide / 4, 1e-6));
  // 82 deg: (0.26 - 0.1695)/2/tan 41 = 0.05205 in.
  const Json no6 = answer_of("hole countersink no6 C260 --head 0.26in");
  CHECK_THAT(value(no6["found"]["countersink_depth"]) / 25.4, WithinAbs(0.05205, 0.00001));
  CHECK_THAT(value(no6["inputs"]["cone"]), WithinAbs(82, 1e-9));
  CHECK(has_caution(no6, "countersink-head"));
  CHECK(answer_of("hole countersink M3 C752 --thick 1.4mm")["verdict"] == "do not");
  CHECK(answer_of("hole countersink M3 C752 --thick 2mm")["verdict"] == "back off");
  CHECK(answer_of("hole countersink M3 C752 --thick 3mm")["verdict"] == "go");
}

TEST_CASE("a pin: a reamer under it, a drill under the reamer") {
  const Json pin = answer_of("hole pin 1/8 303");
  // 1/8 in is of the range over 3 mm to 6: H7/p6 is tight by 0 to 20 um, H7 is 12 um wide. A reamer 0.0005 in under it
  // leaves 12.7 um, 0.7 where it cuts 12 over.
  CHECK(pin["set"]["reamer"]["name"] == "0.1245in");
  CHECK_THAT(value(pin["set"]["reamer"]["size"]), WithinAbs(3.1623, 1e-6));
  CHECK_THAT(value(pin["found"]["interference"]), WithinAbs(0.0127, 1e-6));
  CHECK_THAT(pin["found"]["interference"]["low"].get<double>(), WithinAbs(0.0007, 1e-6));
  CHECK(pin["set"]["drill"]["name"] == "no32");
  CHECK_FALSE(has_caution(pin, "pin-may-slip"));
  CHECK(has_caution(pin, "ream-forward"));
  // 55 ft/min for reaming annealed 303, at 0.1245 in: 55 x 12/(pi 0.1245) = 1687.4.
  CHECK_THAT(value(pin["set"]["reamer"]["spindle_speed"]), WithinAbs(1687.4, 0.1));
  // Twice the 0.001 in a turn of a drill of that size.
  CHECK_THAT(value(pin["set"]["reamer"]["feed_per_rev"]), WithinAbs(0.0508, 1e-9));
  // Up to 3 mm H7/p6 goes down to a clearance: the pin may slip.
  const Json small = answer_of("hole pin 3mm 303");
  CHECK(small["set"]["reamer"]["name"] == "2.99mm");
  CHECK(small["found"]["interference"]["low"].get<double>() < 0);
  CHECK(has_caution(small, "pin-may-slip"));
}

TEST_CASE("a hole reamed to size: what a part of that size has in it") {
  const Json ream = answer_of("hole ream 1/4 C752");
  CHECK(ream["set"]["reamer"]["name"] == "1/4");
  // H7 over 6 to 10 mm is 0 to +15 um.
  CHECK_THAT(ream["found"]["interference"]["low"].get<double>(), WithinAbs(-0.015, 1e-9));
  CHECK_THAT(ream["found"]["interference"]["high"].get<double>(), WithinAbs(0, 1e-9));
  // No row for nickel silver: half of the drilling speed of a 1/4 in drill.
  CHECK(has_caution(ream, "ream-by-rule"));
  const double wide = value(answer_of("drill 1/4 C752")["set"]["spindle_speed"]);
  CHECK_THAT(value(answer_of("hole ream 1/4 C752")["set"]["reamer"]["spindle_speed"]), WithinAbs(wide / 2, 1e-6));
  // What is left lies within the row for 0.171 to 0.281 in, 0.008 to 0.012.
  const double left = (6.35 - value(ream["set"]["drill"]["size"])) / 25.4;
  CHECK(left >= 0.008 - 1e-9);
  CHECK(left <= 0.012 + 1e-9);
  CHECK(answer_of("hole ream 3mm 1095@50HRC")["verdict"] == "do not");
  // The pillar drill's slowest, 620, is over the band of 321 to 504 for the reamer: by hand, then; the drill is set all
  // the same.
  const Json by_hand = answer_of("hole ream 1/4 C752 --machine pillar");
  CHECK(by_hand["verdict"] == "back off");
  CHECK(by_hand["instead"].get<std::string>().find("by hand") != std::string::npos);
  CHECK_FALSE(by_hand["set"]["reamer"].contains("spindle_speed"));
  CHECK(value(by_hand["set"]["spindle_speed"]) == 620);
}

TEST_CASE("without a metal there is the drill, and no speed") {
  const Json bare = answer_of("hole tap M3 --thick 5mm");
  CHECK(bare["set"]["drill"]["name"] == "2.5mm");
  CHECK_FALSE(bare["set"].contains("spindle_speed"));
  // 5 + 1.25/tan 59 + 0.5 of overrun.
  CHECK_THAT(value(bare["set"]["depth"]), WithinAbs(6.2511, 0.0001));
  CHECK(has_caution(bare, "hole-no-material"));
  CHECK(has_caution(bare, "hole-care"));
  CHECK(has_caution(bare, "tap-blind"));
  CHECK(answer_of("hole ream 3mm")["set"]["reamer"].size() == 2);
}

TEST_CASE("the machine's steps are in the answer: the drill's, and what follows it") {
  const Json pin = answer_of("hole pin 1/8 303 --machine pillar");
  CHECK(value(pin["set"]["spindle_speed"]) == 2340);
  CHECK(value(pin["set"]["reamer"]["spindle_speed"]) == 1100);
  CHECK(has_caution(pin, "basis-hole-steps"));
  for (const auto& caution : pin["cautions"])
    if (caution["id"] == "basis-hole-steps") CHECK(caution["text"] == "Drill: step 4; reamer: step 2");
}

TEST_CASE("words and flags that do not go with the hole") {
  struct Case {
    const char* line;
    const char* word;
    const char* kind;
  };
  const auto one = GENERATE(
      Case{"hole bore M3", "bore", "word"}, Case{"hole tap M3x0.6", "M3x0.6", "word"},
      Case{"hole tap no30", "no30", "word"}, Case{"hole tap F", "F", "word"}, Case{"hole tap 0.3", "0.3", "word"},
      Case{"hole tap M3 --engagement 120", "120", "word"}, Case{"hole tap M3 --engagement 0", "0", "word"},
      Case{"hole tap M3 --engagement x", "x", "word"}, Case{"hole tap M3 --thread M4", "--thread", "conflict"},
      Case{"hole tap M3x0.5 --thread M3x0.35", "--thread", "conflict"},
      Case{"hole tap M3 --thread M3x7", "M3x7", "word"}, Case{"hole ream 1/4 --head 3mm", "--head", "conflict"},
      Case{"hole ream 1/4 --cone 82", "--cone", "conflict"},
      Case{"hole clear M3 --engagement 70", "--engagement", "conflict"},
      Case{"hole pin 3mm --thread M3", "--thread", "conflict"}, Case{"hole pin 2in", "2in", "word"},
      Case{"hole countersink M3 --head 3mm", "--head", "conflict"}, Case{"hole countersink M3 --cone 10", "10", "word"},
      Case{"hole countersink M12", "--head", "conflict"}, Case{"hole clear 5/8", "5/8", "word"},
      Case{"hole tap M3 --thick 0", "0", "word"}, Case{"hole tap", "hole", "word"},
      Case{"hole tap M3 unobtanium", "unobtanium", "word"});
  INFO(one.line);
  const Json error = error_of(one.line, 2);
  CHECK(error["word"] == one.word);
  CHECK(error["kind"] == one.kind);
}
