// The record, held to its promise for every metal with every cutter in every ask that turns a tool.

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <numbers>
#include <set>
#include <string>
#include <vector>

#include "json_of.hpp"

using namespace quillside;
using test::Json;
using test::value;

namespace {

using Names = std::set<std::string>;

const Names fixed_units{"mm", "deg", "m/min", "rev/min", "mm/min", "mm/rev", "mm/tooth",
                        "N",  "N.m", "W",     "s",       "degC",   "MPa",    "1"};
const Names units_of_why{"J", "Hz", "HB", "1/degC", "mm/N", "mm4"};

struct Promised {
  Names set;
  Names found;
  Names limits; // what `limited_by` may say
};

Promised promised(const std::string& ask) {
  if (ask == "drill")
    return {{"spindle_speed", "step", "feed_per_rev", "feed_rate", "fluid", "depth_stop", "stop_shim", "pecks"},
            {"wanted_spindle_speed", "cutting_speed", "torque", "thrust", "power", "lever_force", "grab_torque",
             "buckling_load", "stall_torque", "limited_by", "cut_time", "point_allowance", "left_under_tip",
             "left_under_corner", "spot_diameter", "wanted_point", "wanted_relief"},
            {"table", "depth", "buckling", "stall", "machine"}};
  if (ask == "mill")
    return {
        {"spindle_speed", "step", "feed_per_tooth", "feed_rate", "turn_time", "depth_of_cut", "width_of_cut", "fluid"},
        {"wanted_spindle_speed", "cutting_speed", "chip_thickness", "tangential_force", "bending_force", "torque",
         "power", "deflection", "walls", "wall_error", "root_stress", "limited_by"},
        {"wall", "stress", "power", "chip", "flute", "given"}};
  if (ask == "burr")
    return {{"spindle_speed"},
            {"wanted_spindle_speed", "cutting_speed", "whirl_speed", "limit_speed", "limited_by"},
            {"mark", "tool", "whirl", "metal"}};
  return {{}, {"size", "same", "below", "above"}, {}};
}

Names names_of(const Json& object) {
  Names names;
  for (const auto& [name, value] : object.items()) names.insert(name);
  return names;
}

bool holds_all(const Names& all, const Names& some) {
  return std::includes(all.begin(), all.end(), some.begin(), some.end());
}

bool is_near(double a, double b) { return std::abs(a - b) <= 1e-9 * std::max(std::abs(a), std::abs(b)); }

/// What is wrong with a record, in words; empty when it keeps its promise.
class Judge {
public:
  std::vector<std::string> judge(const Json& record, int exit) {
    check(names_of(record) == Names{"schema", "ask", "line", "inputs", "set", "found", "verdict", "reason", "instead",
                                    "why", "cautions", "sources"},
          "its members");
    if (!faults_.empty()) return faults_;
    check(record["schema"] == 1, "schema");
    check(record["line"].is_null(), "line");
    inputs(record["inputs"]);
    quantities(record["set"], "set", false);
    quantities(record["found"], "found", false);
    quantities(record["why"], "why", true);
    verdict(record, exit);
    members(record);
    sources(record);
    cautions(record["cautions"]);
    return faults_;
  }

private:
  void check(bool holds, const std::string& what) {
    if (!holds) faults_.push_back(what);
  }

  void inputs(const Json& all) {
    check(all.is_object(), "inputs");
    for (const auto& [name, input] : all.items()) {
      check(name.find('-') == std::string::npos, "a dash in input " + name);
      if (names_of(input) != Names{"value", "unit", "text", "given"}) {
        check(false, "members of input " + name);
        continue;
      }
      const Json& held = input["value"];
      check(held.is_number() || held.is_string() || held.is_array() || held == true, "value of input " + name);
      if (held.is_number()) check(std::isfinite(held.get<double>()), "input " + name + " is not finite");
      check(input["unit"].is_null() || (held.is_number() && fixed_units.contains(input["unit"])), "unit of " + name);
      check(input["given"].is_boolean(), "given of " + name);
      check(input["text"].is_string() ? input["given"] == true : input["text"].is_null() && input["given"] == false,
            "text and given of " + name);
    }
  }

  // A quantity has a unit; wherever it stands it is held to the same.
  void quantities(const Json& node, const std::string& where, bool in_why) {
    if (node.is_object() && node.contains("unit")) {
      quantity(node, where, in_why);
      return;
    }
    check(!node.is_number() || std::isfinite(node.get<double>()), where + " is not finite");
    if (node.is_object())
      for (const auto& [name, inside] : node.items()) quantities(inside, where + "." + name, in_why);
    if (node.is_array())
      for (const auto& inside : node) quantities(inside, where + "[]", in_why);
  }

  void quantity(const Json& measure, const std::string& where, bool in_why) {
    const bool ends = measure.contains("low") || measure.contains("high");
    check(names_of(measure) == (ends ? Names{"value", "unit", "low", "high"} : Names{"value", "unit"}),
          "members of " + where);
    if (!measure["value"].is_number()) {
      check(false, where + " is no number");
      return;
    }
    check(std::isfinite(value(measure)), where + " is not finite");
    const std::string unit = measure["unit"];
    check(fixed_units.contains(unit) || (in_why && units_of_why.contains(unit)), "unit of " + where + ": " + unit);
    if (measure.contains("low") && measure.contains("high"))
      check(measure["low"].get<double>() <= value(measure) && value(measure) <= measure["high"].get<double>(),
            where + " lies outside its ends");
  }

  void verdict(const Json& record, int exit) {
    const Json& verdict = record["verdict"];
    const bool turns = record["ask"] == "drill" || record["ask"] == "mill" || record["ask"] == "burr";
    check(turns ? verdict == "go" || verdict == "back off" || verdict == "do not" : verdict.is_null(), "verdict");
    check(exit == (verdict == "do not" ? 1 : 0), "exit");
    check((verdict == "do not") == (turns && record["set"] == Json::object()), "set is {} on do not, and only then");
    if (verdict == "do not" || verdict == "back off")
      check(record["reason"].is_string() && !record["reason"].get<std::string>().empty(), "reason");
    else
      check(record["reason"].is_null(), "a reason without need");
    check(record["instead"].is_null() || record["instead"].is_string(), "instead");
  }

  void members(const Json& record) {
    const Promised names = promised(record["ask"]);
    check(holds_all(names.set, names_of(record["set"])), "a name in set: " + record["set"].dump());
    check(holds_all(names.found, names_of(record["found"])), "a name in found: " + record["found"].dump());
    if (const auto by = record["found"].find("limited_by"); by != record["found"].end())
      check(names.limits.contains(*by), "limited_by");
    for (const auto* null_free : {"wanted_spindle_speed", "cutting_speed"})
      if (record["found"].contains(null_free)) check(record["found"][null_free].is_object(), null_free);
    if (!record["set"].empty() && !names.limits.empty()) {
      check(record["set"].contains("spindle_speed"), "no spindle speed");
      check(record["found"].contains("wanted_spindle_speed"), "no wanted spindle speed");
    }
  }

  void sources(const Json& record) {
    Names known;
    for (const auto& source : record["sources"]) {
      check(names_of(source) == Names{"id", "cite", "standing", "page"}, "members of a source");
      check(known.insert(source["id"]).second, "a source twice: " + source["id"].dump());
      check(!source["cite"].get<std::string>().empty(), "a source without a citation");
      check(Names{"published", "reprint", "maker's sheet", "derived", "common practice", "from memory", "own bench",
                  "demo"}
                .contains(source["standing"]),
            "a standing: " + source["standing"].dump());
      check(source["page"].is_null() || source["page"].is_string(), "a page");
    }
    Names used;
    for (const auto& why : record["why"]) {
      check(names_of(why) == Names{"step", "formula", "value", "source"}, "members of why");
      check(known.contains(why["source"]), "why names a source that is not listed: " + why["source"].dump());
      used.insert(why["source"]);
    }
    check(used == known, "a source that nothing in why names");
  }

  void cautions(const Json& all) {
    Names seen;
    for (const auto& caution : all) {
      check(names_of(caution) == Names{"id", "severity", "text"}, "members of a caution");
      check(Names{"danger", "warn", "note"}.contains(caution["severity"]), "a severity");
      check(seen.insert(caution["id"]).second, "a caution twice");
      const std::string text = caution["text"];
      check(!text.empty() && text.find_first_of("{}") == std::string::npos, "text of a caution: " + text);
    }
  }

  std::vector<std::string> faults_;
};

std::string listed(const std::vector<std::string>& faults) {
  std::string all;
  for (const auto& fault : faults) all += fault + "\n";
  return all;
}

/// The speeds and feeds of one record, held against the formulas of the trade.
std::string out_of_step(const Json& record) {
  const Json& set = record["set"];
  if (set.empty()) return {};
  const double n = value(set["spindle_speed"]);
  const double diameter = value(record["inputs"]["size"]);
  if (!is_near(value(record["found"]["cutting_speed"]), std::numbers::pi * diameter * n / 1000)) return "v = pi D n";
  if (record["ask"] == "drill" && !is_near(value(set["feed_rate"]), value(set["feed_per_rev"]) * n))
    return "feed rate = feed per turn x n";
  if (record["ask"] == "mill" &&
      !is_near(value(set["feed_rate"]), value(set["feed_per_tooth"]) * value(record["inputs"]["flutes"]) * n))
    return "feed rate = feed per tooth x flutes x n";
  return {};
}

std::vector<std::string> keys_of(const std::string& kind) {
  std::vector<std::string> keys;
  const Json list = test::answer_of("tables list");
  for (const auto& row : list["found"][kind]) keys.push_back(row["key"]);
  return keys;
}

/// Every metal with every cutter in every ask, with and without the flags that add members.
std::vector<std::string> all_asks() {
  const std::vector<std::string> drilled{"drill 1/8in",
                                         "drill no30",
                                         "drill 0.4mm",
                                         "drill 12mm",
                                         "drill 3mm --machine pillar --thick 6mm --leave 1mm",
                                         "drill 1/8in --machine pillar12 --thick 1in --through --dry",
                                         "drill 5mm --machine bench --depth 20mm --point 118",
                                         "drill 6mm --thick 3mm --leave 2.9mm --leave-at corner"};
  const std::vector<std::string> milled{"mill 1/8in",
                                        "mill 6mm --flutes 4 --width 1mm",
                                        "mill 0.5mm --width 0.01mm",
                                        "mill 3mm --machine bench",
                                        "mill 3mm --machine bench --dial 2mm --flutes 1",
                                        "mill 3mm --machine pillar",
                                        "mill 20mm --machine cordless"};
  const std::vector<std::string> burrs{"burr 3mm", "burr 1/4in --marked 25000", "burr 6mm --machine shaft",
                                       "burr 1mm --machine air --marked 9000", "burr 12mm --machine cordless"};
  std::vector<std::string> lines;
  for (const auto& metal : keys_of("material")) {
    for (const auto& cutter : keys_of("cutter")) {
      for (const auto* asks : {&drilled, &milled, &burrs})
        for (const auto& ask : *asks) {
          const auto blank = ask.find(' ', ask.find(' ') + 1);
          const std::string tool = ask.substr(0, blank);
          const std::string flags = blank == std::string::npos ? "" : ask.substr(blank);
          lines.push_back(tool + " '" + metal + "' --cutter " + cutter + flags);
        }
    }
  }
  return lines;
}

/// For an error: the members of its record, and nothing but wrong words or none of the rows.
std::string wrong_error(const Json& record, int exit) {
  if (names_of(record) != Names{"schema", "ask", "line", "error"}) return "members of the record";
  const Json& error = record["error"];
  if (names_of(error) != Names{"kind", "exit", "word", "message", "allowed", "try", "place"}) return "members of error";
  if (error["exit"] != exit || exit != 2) return "exit";
  if (error["kind"] != "word" && error["kind"] != "conflict") return "kind";
  if (error["message"].get<std::string>().empty() || !error["allowed"].is_array()) return "message or allowed";
  if (!error["try"].is_null() && !error["try"].is_string()) return "try";
  return error["place"].is_null() ? "" : "place";
}

Json without_units(Json record) {
  record["inputs"].erase("units");
  return record;
}

} // namespace

TEST_CASE("every metal with every cutter, drilled, milled and burred: each record keeps the contract") {
  int answers = 0;
  int refused = 0;
  int errors = 0;
  for (const auto& line : all_asks()) {
    const auto ran = test::quillside(line + " --format json");
    const Json record = Json::parse(ran.out);
    INFO(line << "\n" << ran.out);
    if (record.contains("error")) {
      ++errors;
      if (const std::string wrong = wrong_error(record, ran.exit); !wrong.empty()) FAIL_CHECK(wrong);
      continue;
    }
    ++answers;
    if (record["verdict"] == "do not") ++refused;
    const auto faults = Judge().judge(record, ran.exit);
    if (!faults.empty()) FAIL_CHECK(listed(faults));
    if (faults.empty())
      if (const std::string wrong = out_of_step(record); !wrong.empty()) FAIL_CHECK(wrong);
  }
  // So that an empty loop is no success: each metal answers in every ask for some cutter.
  const int metals = static_cast<int>(keys_of("material").size());
  CHECK(metals >= 40);
  CHECK(answers > 20 * metals);
  CHECK(refused > metals);
  CHECK(errors < answers);
}

TEST_CASE("the judge of records finds what is planted") {
  const Json sound = test::answer_of("drill 1/8in 303 --machine pillar");
  REQUIRE(Judge().judge(sound, 0).empty());
  CHECK(out_of_step(sound).empty());
  const std::vector<Json> patches{
      R"([{"op": "remove", "path": "/instead"}])"_json,
      R"([{"op": "add", "path": "/colour", "value": null}])"_json,
      R"([{"op": "replace", "path": "/set/feed_rate/unit", "value": "in/min"}])"_json,
      R"([{"op": "replace", "path": "/set/spindle_speed/low", "value": 1e6}])"_json,
      R"([{"op": "remove", "path": "/set/spindle_speed/high"}])"_json,
      R"([{"op": "add", "path": "/set/torque", "value": {"value": 1, "unit": "N.m"}}])"_json,
      R"([{"op": "replace", "path": "/found/limited_by", "value": "mood"}])"_json,
      R"([{"op": "replace", "path": "/set", "value": {}}])"_json,
      R"([{"op": "replace", "path": "/verdict", "value": "do not"}])"_json,
      R"([{"op": "replace", "path": "/inputs/machine/given", "value": false}])"_json,
      R"([{"op": "replace", "path": "/cautions/0/severity", "value": "fatal"}])"_json,
      R"([{"op": "replace", "path": "/cautions/0/text", "value": "so {much}"}])"_json,
      R"([{"op": "replace", "path": "/why/0/source", "value": "nowhere"}])"_json,
      R"([{"op": "replace", "path": "/sources/0/standing", "value": "gospel"}])"_json};
  for (const auto& patch : patches) {
    INFO(patch.dump());
    CHECK_FALSE(Judge().judge(sound.patch(patch), 0).empty());
  }
  CHECK_FALSE(Judge().judge(sound, 1).empty());
  CHECK_FALSE(
      out_of_step(sound.patch(R"([{"op": "replace", "path": "/set/feed_rate/value", "value": 1}])"_json)).empty());
}

TEST_CASE("every metal answers when it is named alone, in every ask") {
  for (const auto& metal : keys_of("material")) {
    for (const auto* ask : {"drill 1/8in '", "mill 1/8in '", "burr 1/8in '"}) {
      const auto ran = test::quillside(ask + metal + "' --format json");
      INFO(ask << metal << "\n" << ran.out);
      CHECK(ran.exit == 0);
      CHECK(Json::parse(ran.out)["verdict"] == "go");
    }
  }
}

TEST_CASE("what is set lies within what the machine gives") {
  // The spans of the demo machines, from tables/machines.toml; the twelve-step one from its pulleys:
  // 1725 x 1.75/4.25 x 1.6/4.4 to 1725 x 3.4/2.6 x 3.45/2.55 rev/min.
  struct Span {
    std::string ask;
    std::string machine;
    double slowest;
    double fastest;
  };
  const std::vector<Span> spans{
      {"drill 3mm", "pillar", 620, 3100},
      {"drill 3mm", "pillar12", 1725 * 1.75 / 4.25 * 1.6 / 4.4, 1725 * 3.4 / 2.6 * 3.45 / 2.55},
      {"drill 3mm", "bench", 100, 2500},
      {"mill 3mm", "bench", 100, 2500},
      {"burr 3mm", "shaft", 500, 18000},
      {"burr 3mm", "cordless", 5000, 30000},
      {"burr 3mm", "air", 8000, 25000}};
  int checked = 0;
  for (const auto& metal : keys_of("material")) {
    for (const auto& span : spans) {
      const Json record = test::answer_of(span.ask + " '" + metal + "' --machine " + span.machine);
      INFO(span.ask << " " << metal << " " << span.machine << "\n" << record.dump());
      if (record["set"].empty()) continue;
      ++checked;
      const Json& speed = record["set"]["spindle_speed"];
      CHECK(value(speed) >= span.slowest * (1 - 1e-12));
      CHECK(value(speed) <= span.fastest * (1 + 1e-12));
      CHECK(speed["low"].get<double>() >= span.slowest * (1 - 1e-12));
      CHECK(speed["high"].get<double>() <= span.fastest * (1 + 1e-12));
      if (record["verdict"] == "go")
        CHECK(value(speed) <= value(record["found"]["wanted_spindle_speed"]) * (1 + 1e-12));
      if (record["verdict"] == "back off")
        CHECK(value(speed) <= record["found"]["wanted_spindle_speed"]["high"].get<double>());
    }
  }
  CHECK(checked > 100);
}

TEST_CASE("no burr is set over its mark, nor any end of its band") {
  for (const auto& metal : keys_of("material")) {
    for (const auto* mark : {"9000", "25000", "100000"}) {
      const Json record = test::answer_of("burr 2mm '" + metal + "' --marked " + mark);
      INFO(record.dump());
      REQUIRE(record["set"].contains("spindle_speed"));
      CHECK(record["set"]["spindle_speed"]["high"].get<double>() <= std::stod(mark));
      CHECK(value(record["set"]["spindle_speed"]) <= std::stod(mark));
    }
  }
}

TEST_CASE("flag --units metric changes the text and none of the numbers of the record") {
  for (const auto* line : {"drill 1/8in 303 --machine pillar --thick 6mm --leave 1mm", "drill no30 C360 --depth 20mm",
                           "mill 3mm 416 --machine bench", "mill 1/8in brass --width 1mm"}) {
    INFO(line);
    const Json inch = test::answer_of(line);
    const Json metric = test::answer_of(line + std::string(" --units metric"));
    CHECK(metric["inputs"]["units"]["value"] == "metric");
    CHECK(without_units(metric) == without_units(inch));
    CHECK(test::quillside(line).out != test::quillside(line + std::string(" --units metric")).out);
    CHECK(test::quillside(line).out == test::quillside(line + std::string(" --units inch")).out);
  }
}

TEST_CASE("the asks that turn no tool keep the contract too") {
  for (const auto* line : {"size no30", "size 3.2mm --over 0.1mm", "size 1in --under 1/2in", "size 55thou"}) {
    const auto ran = test::quillside(std::string(line) + " --format json");
    INFO(line << "\n" << ran.out);
    CHECK(listed(Judge().judge(Json::parse(ran.out), ran.exit)).empty());
  }
  for (const auto* line :
       {"tables list", "tables path", "tables show 416", "tables show pillar", "tables new machine"}) {
    const Json record = test::answer_of(line);
    INFO(line << "\n" << record.dump());
    CHECK(record["verdict"].is_null());
    CHECK(record["set"] == Json::object());
    CHECK(record["found"].is_object());
    CHECK(record["inputs"]["what"]["given"] == true);
  }
}

TEST_CASE("every flag and word that was used is an input, as it was typed") {
  const Json inputs =
      test::answer_of("drill 9/64 C752@annealed --machine pillar --cutter hss --thick 3/16 --leave 0.040 "
                      "--leave-at corner --point 118 --dry --units inch --why --large")["inputs"];
  const std::vector<std::pair<std::string, std::string>> typed{{"size", "9/64"},
                                                               {"material", "C752@annealed"},
                                                               {"condition", "C752@annealed"},
                                                               {"machine", "pillar"},
                                                               {"cutter", "hss"},
                                                               {"thick", "3/16"},
                                                               {"leave", "0.040"},
                                                               {"leave_at", "corner"},
                                                               {"point", "118"},
                                                               {"units", "inch"},
                                                               {"format", "json"}};
  for (const auto& [name, text] : typed) {
    INFO(name);
    REQUIRE(inputs.contains(name));
    CHECK(inputs[name]["text"] == text);
    CHECK(inputs[name]["given"] == true);
  }
  for (const auto* name : {"dry", "why", "large"}) {
    REQUIRE(inputs.contains(name));
    CHECK(inputs[name]["value"] == true);
    CHECK(inputs[name]["given"] == true);
  }
  CHECK(inputs["leave"]["unit"] == "mm");
  CHECK(std::abs(value(inputs["leave"]) - 0.040 * 25.4) < 1e-12);
  CHECK(inputs["point"]["unit"] == "deg");
  CHECK_THAT(value(inputs["point"]), test::WithinRel(118, 1e-12));
  const Json taken = test::answer_of("mill 1/8 416")["inputs"];
  CHECK(taken["flutes"]["value"] == 2);
  CHECK(taken["flutes"]["given"] == false);
  CHECK(taken["flutes"]["text"].is_null());
  CHECK(taken["cutter"]["value"] == "hss");
  CHECK(taken["cutter"]["given"] == false);
}
