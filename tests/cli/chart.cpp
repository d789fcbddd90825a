// The wall chart. Its figures are those of the single asks, cell by cell; its sheets are counted without a font.

#include "folder.hpp"
#include "json_of.hpp"
#include "lines_of.hpp"
#include "wrong_words.hpp"

#include <algorithm>
#include <set>
#include <sstream>

#include <quillside/data/tables.hpp>

using namespace quillside;
using test::answer_of;
using test::error_of;
using test::Json;
using test::lines_of;
using test::speed_source;
using test::WithinAbs;
using test::Wrong;

namespace {

Json member(const Json& object, const char* name) { return object.contains(name) ? object[name] : Json(nullptr); }

/// What is different between a cell and the ask it stands for; empty where nothing is.
std::string difference(const Json& cell, const Json& single) {
  std::ostringstream out;
  const auto differ = [&](const char* name, const Json& in_chart, const Json& alone) {
    if (in_chart != alone) out << name << ": " << in_chart.dump() << " and alone " << alone.dump() << "; ";
  };
  differ("spindle_speed", member(cell, "spindle_speed"), member(single["set"], "spindle_speed"));
  differ("step", cell["step"], member(single["set"], "step"));
  differ("wanted", member(cell, "wanted_spindle_speed"), member(single["found"], "wanted_spindle_speed"));
  differ("limited_by", member(cell, "limited_by"), member(single["found"], "limited_by"));
  differ("verdict", cell["verdict"], single["verdict"]);
  differ("reason", member(cell, "reason"), single["reason"]);
  differ("source", member(cell, "source"), speed_source(single));
  return out.str();
}

const Json& cell_at(const Json& chart, const std::string& size, const std::string& material) {
  const auto& found = chart["found"];
  for (std::size_t i = 0; i < found["rows"].size(); ++i)
    for (std::size_t k = 0; k < found["columns"].size(); ++k)
      if (found["rows"][i]["name"] == size && found["columns"][k]["material"] == material) return found["cells"][i][k];
  FAIL("no such cell");
  return chart;
}

bool has_mark(const Json& cell, const std::string& mark) {
  return std::find(cell["marks"].begin(), cell["marks"].end(), mark) != cell["marks"].end();
}

std::vector<std::string> materials_of(const Json& chart) {
  std::vector<std::string> names;
  for (const auto& column : chart["found"]["columns"]) names.push_back(column["material"]);
  return names;
}

} // namespace

TEST_CASE("each cell is what the ask of its own says: speed, step, wanted, limit, verdict, reason, source") {
  struct Chart {
    std::string ask, machine, sizes, materials;
  };
  const auto chart = GENERATE(
      Chart{"drill", "pillar", "1/16,no30,9/64,1/4,3/8,12mm", "303,304,416@annealed,416@300HB,C360,C752,1084,D2"},
      Chart{"drill", "pillar12", "no60,1/8,F", "brass,C752,Ti-CP"}, Chart{"drill", "", "no60,1/8,F", "303,6061"},
      Chart{"drill", "bench", "1/16,1/2", "303,C360"}, Chart{"mill", "bench", "1/32,1/8,1/4", "303,416,C752,O1"},
      Chart{"mill", "pillar", "1/8", "303,C752"}, Chart{"mill", "", "0.8mm,3mm", "304,C360"},
      Chart{"burr", "shaft", "1.6mm,3mm,6mm", "416,C752,C360"}, Chart{"burr", "", "0.8mm,3mm,10mm", "303,1084"},
      Chart{"burr", "cordless", "3mm", "416@300HB,O1"});
  const std::string machine = chart.machine.empty() ? "" : " --machine " + chart.machine;
  const Json answer =
      answer_of("chart --asks " + chart.ask + machine + " --sizes " + chart.sizes + " --materials " + chart.materials);
  const auto& found = answer["found"];
  std::stringstream sizes(chart.sizes);
  std::size_t cells = 0;
  std::string size;
  for (std::size_t i = 0; std::getline(sizes, size, ','); ++i) {
    std::stringstream materials(chart.materials);
    std::string material;
    for (std::size_t k = 0; std::getline(materials, material, ','); ++k) {
      // A family is all of its grades; their column is asked for by its own name.
      const std::string name = material == "brass" ? found["columns"][k]["material"].get<std::string>() : material;
      const Json single = answer_of(chart.ask + " " + size + " " + name + machine);
      INFO(chart.ask << " " << size << " " << name << machine);
      const std::size_t column = chart.materials.starts_with("brass") && k > 0 ? k + 3 : k;
      CHECK(difference(found["cells"][i][column], single) == "");
      ++cells;
    }
  }
  CHECK(cells > 0);
}

TEST_CASE("rows by columns are the cells, in the order they were named") {
  const Json answer = answer_of("chart --asks drill,burr --sizes 6mm,3mm --materials C752,304,416@28HRC");
  const auto& found = answer["found"];
  CHECK(materials_of(answer) == std::vector<std::string>{"C752", "304", "416"});
  CHECK(found["columns"][2]["hardness"] == "28 HRC");
  REQUIRE(found["rows"].size() == 4);
  REQUIRE(found["cells"].size() == 4);
  for (const auto& line : found["cells"]) CHECK(line.size() == 3);
  CHECK(found["rows"][0]["ask"] == "drill");
  CHECK(found["rows"][0]["name"] == "6mm");
  CHECK_THAT(found["rows"][1]["size"]["value"].get<double>(), WithinAbs(3, 1e-12));
  CHECK(found["rows"][3]["ask"] == "burr");
  CHECK(found["rows"][3]["cutter"] == "solid carbide");
  CHECK(answer["verdict"].is_null());
  CHECK(answer["set"].empty());
}

TEST_CASE("nothing named: the lists of the tables, drills, a4, two metres") {
  const Json answer = answer_of("chart");
  const Tables tables = builtin_tables();
  CHECK(answer["found"]["rows"].size() == chart_list(tables.chart_lists, "drill-sizes").size());
  CHECK(answer["found"]["columns"].size() == chart_list(tables.chart_lists, "materials").size());
  CHECK(answer["inputs"]["asks"]["value"] == Json::array({"drill"}));
  CHECK(answer["inputs"]["paper"]["value"] == "a4");
  CHECK(answer["inputs"]["paper"]["given"] == false);
  CHECK_THAT(answer["inputs"]["read_from"]["value"].get<double>(), WithinAbs(2000, 1e-9));
  CHECK(answer["inputs"]["tables"]["value"] == Json::array({"built-in"}));
  CHECK(answer_of("chart --asks drill,mill,burr")["found"]["rows"].size() ==
        chart_list(tables.chart_lists, "drill-sizes").size() + chart_list(tables.chart_lists, "mill-sizes").size() +
            chart_list(tables.chart_lists, "burr-sizes").size());
}

TEST_CASE("a family is all of its grades, and those of the families under it") {
  CHECK(materials_of(answer_of("chart --materials brass")) == std::vector<std::string>{"C260", "C353", "C360", "C385"});
  const auto stainless = materials_of(answer_of("chart --materials stainless"));
  for (const char* grade : {"303", "304", "316", "416", "17-4PH"})
    CHECK(std::find(stainless.begin(), stainless.end(), grade) != stainless.end());
  for (const char* other : {"stainless", "austenitic-stainless", "1084", "C752"})
    CHECK(std::find(stainless.begin(), stainless.end(), other) == stainless.end());
  // A grade that a family has already brought comes once.
  CHECK(materials_of(answer_of("chart --materials brass,C360,C752")).size() == 5);
}

TEST_CASE("marks: memory, the ends of the machine, faster than wanted, no step slow enough") {
  // The pillar drill of the demo runs 620 to 3100 in five steps; bands are 0.7 to 1.1 of one figure.
  const Json answer = answer_of("chart --machine pillar --sizes 1/16,9/64,1/4,3/8 --materials 304,416,C752");
  const auto standing = [&](const Json& cell) {
    for (const auto& source : answer["sources"])
      if (source["id"] == cell["source"]) return source["standing"].get<std::string>();
    return std::string("no source");
  };
  for (const auto& line : answer["found"]["cells"])
    for (const auto& cell : line) {
      INFO(cell.dump());
      CHECK(has_mark(cell, "memory") == (standing(cell) == "from memory"));
      const bool set = cell.contains("spindle_speed");
      const double speed = set ? cell["spindle_speed"]["value"].get<double>() : 0;
      CHECK(has_mark(cell, "highest") == (set && speed == 3100));
      CHECK(has_mark(cell, "lowest") == (set && speed == 620));
      CHECK(has_mark(cell, "back off") == (set && speed > cell["wanted_spindle_speed"]["value"].get<double>()));
      CHECK(has_mark(cell, "no step") == (!set && 620 > cell["wanted_spindle_speed"]["high"].get<double>()));
    }
  CHECK(has_mark(cell_at(answer, "1/16", "416"), "highest"));
  CHECK(cell_at(answer, "9/64", "416")["marks"].empty());
  CHECK(has_mark(cell_at(answer, "1/4", "304"), "lowest"));
  CHECK(has_mark(cell_at(answer, "3/8", "304"), "no step"));
  CHECK(has_mark(cell_at(answer, "3/8", "C752"), "back off"));
  CHECK(has_mark(cell_at(answer, "3/8", "C752"), "memory"));
}

TEST_CASE("a cell that no table knows is empty and says why; when no cell is known the ask is refused") {
  const Json answer = answer_of("chart --asks drill --materials 303 --sizes 1/8");
  CHECK(answer["found"]["cells"][0][0].contains("spindle_speed"));
  const std::string rows =
      "[[material]]\nkey = \"Z1\"\nname = \"an odd metal\"\nmetal = \"titanium\"\nsource = \"demo\"\n";
  const test::Folder folder;
  const std::string file = folder.write("own.toml", rows);
  const Json odd = answer_of("chart --materials 303,Z1 --sizes 1/8 --tables " + file);
  const Json& cell = odd["found"]["cells"][0][1];
  CHECK(has_mark(cell, "none"));
  CHECK_FALSE(cell.contains("spindle_speed"));
  CHECK_FALSE(cell["reason"].get<std::string>().empty());
  CHECK(odd["inputs"]["tables"]["value"] == Json::array({"built-in", file}));
  const Json error = error_of("chart --materials Z1 --sizes 1/8 --tables " + file, 2);
  CHECK(error["kind"] == "conflict");
}

TEST_CASE("nothing to set in any cell: do not, and why") {
  const Json answer = answer_of("chart --asks mill --machine pillar --materials 416,C752 --sizes 1/8");
  CHECK(answer["verdict"] == "do not");
  CHECK(answer["reason"].get<std::string>().find("drill chuck") != std::string::npos);
  CHECK(has_mark(answer["found"]["cells"][0][0], "do not"));
  const auto text = test::quillside("chart --asks mill --machine pillar --materials 416,C752 --sizes 1/8");
  CHECK(text.exit == 1);
  CHECK(text.out.find("drill chuck") != std::string::npos);
}

TEST_CASE("letters are 1/200 of the distance, and larger ones take no fewer sheets") {
  int before = 0;
  for (const char* far : {"1m", "1.5m", "2m", "3m"}) {
    const Json found = answer_of(std::string("chart --machine pillar --read-from ") + far)["found"];
    CHECK_THAT(found["letter_height"]["value"].get<double>(), WithinAbs(std::stod(far) * 1000 / 200, 1e-9));
    CHECK(found["pages"]["value"].get<int>() >= before);
    before = found["pages"]["value"].get<int>();
  }
  CHECK(before > 1);
  const auto pages = [](const std::string& rest) {
    return answer_of("chart " + rest)["found"]["pages"]["value"].get<int>();
  };
  CHECK(pages("--paper a3 --machine pillar") <= pages("--paper a4 --machine pillar"));
  CHECK(pages("--materials stainless") > pages("--materials 303"));
}

TEST_CASE("every danger and care of a cell's ask is on the chart, as it stands or without its figure") {
  const Json chart =
      answer_of("chart --asks drill,mill,burr --machine bench --materials 303,C752,Ti-CP,C510 --sizes 1/32,1/8,1/4");
  std::set<std::string> on_chart;
  for (const auto& caution : chart["cautions"]) on_chart.insert(caution["id"]);
  const Tables tables = builtin_tables();
  std::size_t checked = 0;
  for (const char* ask : {"drill", "mill", "burr"})
    for (const char* size : {"1/32", "1/8", "1/4"})
      for (const char* material : {"303", "C752", "Ti-CP", "C510"}) {
        const auto ran =
            test::quillside(std::string(ask) + " " + size + " " + material + " --machine bench --format json");
        const Json single = Json::parse(ran.out);
        if (single.contains("error")) continue;
        for (const auto& caution : single["cautions"]) {
          if (caution["severity"] == "note") continue;
          const std::string id = caution["id"];
          const bool stands = on_chart.contains(id);
          // A row for charts, tagged with the key of the one that names a figure.
          const bool stood_for = std::any_of(tables.cautions.begin(), tables.cautions.end(), [&](const Caution& row) {
            return on_chart.contains(std::string(row.key)) &&
                   std::find(row.when.begin(), row.when.end(), "flag:cell-" + id) != row.when.end();
          });
          INFO(ask << " " << size << " " << material << ": " << id);
          CHECK(stands != stood_for);
          ++checked;
        }
      }
  CHECK(checked > 50);
}

TEST_CASE("every caution that names a figure has a row for charts") {
  const Tables tables = builtin_tables();
  for (const auto& row : tables.cautions) {
    if (row.severity == "note" || row.text.find('{') == std::string_view::npos) continue;
    const bool of_a_tool = std::any_of(row.when.begin(), row.when.end(), [](std::string_view tag) {
      return tag.starts_with("ask:") &&
             (tag.find("drill") != std::string_view::npos || tag.find("mill") != std::string_view::npos ||
              tag.find("burr") != std::string_view::npos);
    });
    if (!of_a_tool) continue;
    INFO(row.key);
    const bool stood_for = std::any_of(tables.cautions.begin(), tables.cautions.end(), [&](const Caution& other) {
      return std::find(other.when.begin(), other.when.end(), "flag:cell-" + std::string(row.key)) != other.when.end();
    });
    CHECK(stood_for);
  }
}

TEST_CASE("a caution that holds for some of the metals names them") {
  const Json chart = answer_of("chart --materials 303,C752,C360");
  for (const auto& caution : chart["cautions"]) {
    const std::string text = caution["text"];
    if (caution["id"] == "grabs") CHECK(text.starts_with("C752, C360: "));
    if (caution["id"] == "hardens") CHECK(text.starts_with("303: "));
    if (caution["id"] == "clamp") CHECK(text.starts_with("Clamp"));
  }
  CHECK(test::has_caution(chart, "grabs"));
  CHECK(test::has_caution(chart, "hardens"));
}

TEST_CASE("text: a table no wider than 80 letters, in blocks where there are more columns, its marks explained") {
  const auto ran = test::quillside("chart --machine pillar --materials stainless,brass --sizes 1/16,3/8");
  CHECK(ran.exit == 0);
  const auto lines = lines_of(ran.out);
  std::size_t blocks = 0;
  for (const auto& line : lines) {
    if (line.starts_with("1/16")) ++blocks;
    if (line.starts_with("1/16") || line.starts_with("3/8") ||
        (line.starts_with("       ") && !line.starts_with("        "))) {
      INFO(line);
      CHECK(line.size() <= 80);
    }
  }
  CHECK(blocks > 1);
  for (const char* mark : {"\n*  the figure is from memory", "\n^  the highest", "\nx  DO NOT"})
    CHECK(ran.out.find(mark) != std::string::npos);
  CHECK(ran.out.find("step 1 is 620") != std::string::npos);
  // Nothing is explained that does not stand there.
  const auto plain = test::quillside("chart --materials 303 --sizes 1/8");
  CHECK(plain.out.find("DO NOT") == std::string::npos);
  CHECK(plain.out.find("no machine named") != std::string::npos);
  // What is set is what is wanted, and stands there once.
  const auto rows = lines_of(plain.out);
  const auto row = std::find_if(rows.begin(), rows.end(), [](const auto& one) { return one.starts_with("1/8"); });
  REQUIRE(row != rows.end());
  CHECK(row->find('(') == std::string::npos);
}

TEST_CASE("sizes named twice are kept once and said; one that a tool has not is left out and said") {
  const Json twice = answer_of("chart --sizes 1/8,3mm,0.125in,3mm --materials 303");
  CHECK(twice["found"]["rows"].size() == 2);
  REQUIRE(test::has_caution(twice, "chart-twice"));
  const Json left = answer_of("chart --sizes 0.2mm,3mm --asks drill,mill --materials 303");
  CHECK(left["found"]["rows"].size() == 3);
  REQUIRE(test::has_caution(left, "chart-left-out"));
  for (const auto& caution : left["cautions"])
    if (caution["id"] == "chart-left-out")
      CHECK(caution["text"].get<std::string>().find("0.2mm (end mill)") != std::string::npos);
}

TEST_CASE("five hundred sizes go on to the next sheets") {
  std::string sizes;
  for (int i = 0; i < 500; ++i)
    sizes += (i == 0 ? "" : ",") + std::to_string(1 + i / 50) + "." + std::to_string(100 + i % 50 * 10) + "mm";
  const Json answer = answer_of("chart --materials 303 --machine pillar --sizes " + sizes);
  CHECK(answer["found"]["rows"].size() == 500);
  CHECK(answer["found"]["pages"]["value"].get<int>() > 20);
}

TEST_CASE("words of a chart that are wrong") {
  const auto wrong = GENERATE(
      Wrong{"chart --materials 303,brss", "brss", "is no material", "brass"},
      Wrong{"chart --materials ,", ",", "names no material"},
      Wrong{"chart --materials", "--materials", "needs a value"}, Wrong{"chart --sizes ,", ",", "names no size"},
      Wrong{"chart --sizes 1/8,30", "30", "no30", "no30"}, Wrong{"chart --sizes 2in", "2in", "no size of a drill"},
      Wrong{"chart --sizes 2in,1/8 --asks drill,mill", "2in", "no size of a drill"},
      Wrong{"chart --asks drill,mil", "mil", "no ask of a chart", "mill"},
      Wrong{"chart --asks ,", ",", "no ask of a chart"},
      Wrong{"chart --paper a5", "a5", "allowed: a4, letter, a3, tabloid", "a4"},
      Wrong{"chart --read-from 50m", "50m", "10 m"}, Wrong{"chart --read-from 9m", "9m", "on a4"},
      Wrong{"chart --read-from 2", "2", "too near", "2m"}, Wrong{"chart --read-from 0", "0", "too near"},
      Wrong{"chart 303", "303", "one word too many"},
      Wrong{"chart --machine pilar", "pilar", "is no machine", "pillar"},
      Wrong{"chart --materials C752@28HRC", "28 HRC", "give HB"});
  test::hold_refused(wrong, "word");
}

TEST_CASE("the distance that is suggested fits, and a little more does not") {
  const Json error = error_of("chart --machine pillar --materials 304 --sizes 1/8 --read-from 9m", 2);
  const std::string far = error["try"];
  const Json answer = answer_of("chart --machine pillar --materials 304 --sizes 1/8 --read-from " + far);
  CHECK(answer["found"]["pages"]["value"].get<int>() >= 1);
  const std::string more = std::to_string(std::stod(far) + 0.2) + "m";
  CHECK(error_of("chart --machine pillar --materials 304 --sizes 1/8 --read-from " + more, 2)["kind"] == "word");
}

TEST_CASE("a chart stands in a batch like any ask") {
  const auto ran = test::quillside("batch -", {{"chart --materials 303 --sizes 1/8", "chart --paper a9"}, {}});
  const auto lines = lines_of(ran.out);
  REQUIRE(lines.size() == 2);
  CHECK(Json::parse(lines[0])["found"]["cells"].size() == 1);
  CHECK(Json::parse(lines[1])["error"]["word"] == "a9");
}
