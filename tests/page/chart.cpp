// The wall chart as it is drawn: in its boxes, with the record's numbers, in letters as large as --read-from asks.

#include <algorithm>
#include <map>
#include <set>

#include <quillside/job/chart_sheet.hpp>
#include <quillside/page/chart.hpp>
#include <quillside/page/draw.hpp>
#include <quillside/words/print.hpp>
#include <quillside/words/text_width.hpp>

#include "../page_boxes.hpp"
#include "document_of.hpp"
#include "tools.hpp"
#include "words_on.hpp"

using namespace quillside;
using page::Canvas;
using page::TextDrawn;
using test::answer_of;
using test::document_of;
using test::Folder;
using test::Json;
using test::WithinAbs;
using test::words_on;

namespace {

Canvas drawn(const std::string& line, const std::string& units = "inch") {
  return page::draw(document_of(line, {"chart", "a4", units}));
}

const std::vector<std::string>& charts() {
  static const std::vector<std::string> all{
      "chart",
      "chart --machine pillar --materials 416,304,C360,C752,1084",
      "chart --machine pillar --materials 416,304,C360,C752,1084 --paper letter",
      "chart --machine pillar12 --materials brass,416@300HB,303@cold-drawn --sizes 1mm,2.5mm,no30,F,20mm",
      "chart --asks drill,mill,burr --machine bench --materials stainless --paper a3",
      "chart --asks burr --machine shaft --read-from 3m --paper tabloid",
      "chart --asks mill --machine pillar --materials 303 --sizes 1/8",
      "chart --materials 17-4PH,Ti-6Al-4V,layered-steel,aluminium --sizes 0.1mm,1in --read-from 1m",
      "chart --materials stainless,carbon-steel,tool-steel,copper-alloy --read-from 0.45m --machine pillar",
      "chart --materials 304 --sizes 3/8 --machine pillar --read-from 4m"};
  return all;
}

bool is_long(const page::LineDrawn& line) {
  const Length across = line.to.right - line.from.right;
  const Length down = line.to.down - line.from.down;
  return std::max({across, down, mm(0) - across, mm(0) - down}) > mm(25);
}

/// How far a line of the table runs through the ink of a text.
bool crosses(const page::LineDrawn& line, const TextDrawn& text) {
  const page::Box across{std::min(line.from.right, line.to.right), std::min(line.from.down, line.to.down),
                         std::max(line.from.right, line.to.right) - std::min(line.from.right, line.to.right),
                         std::max(line.from.down, line.to.down) - std::min(line.from.down, line.to.down)};
  const page::Box& ink = text.ink;
  const Length close = 0.5 * line.width;
  return across.left < ink.right() && across.right() > ink.left && across.top - close < ink.bottom() &&
         across.bottom() + close > ink.top;
}

std::vector<std::string> crossed_in(const Canvas& canvas) {
  std::vector<std::string> crossed;
  for (const auto& one : canvas.lines())
    for (const auto& text : canvas.texts())
      if (one.sheet == text.sheet && is_long(one) && crosses(one, text)) crossed.push_back(test::shown(text));
  return crossed;
}

Length middle_of(const page::Box& box) { return box.top + 0.5 * box.height; }

bool is_sign(const std::string& text) {
  const auto all = {ChartSign::highest, ChartSign::lowest, ChartSign::too_fast, ChartSign::cross, ChartSign::dash};
  return std::any_of(all.begin(), all.end(), [&](ChartSign sign) { return text == sign_letter(sign); });
}

} // namespace

TEST_CASE("chart: no text over the edge, over another or through a line of the table; none under the small print") {
  const auto& line = GENERATE(from_range(charts()));
  const auto units = GENERATE(as<std::string>{}, "inch", "metric");
  INFO(line << " in " << units);
  const Canvas canvas = drawn(line, units);
  test::hold_boxes(canvas, small_print);
  CHECK(crossed_in(canvas) == std::vector<std::string>{});
  CHECK(canvas.sheets() == answer_of(line + " --units " + units)["found"]["pages"]["value"].get<int>());
}

TEST_CASE("chart: at every distance, where the columns just go on the sheet as well") {
  const std::string what = GENERATE(as<std::string>{}, "--machine pillar", "", "--asks mill --machine bench");
  for (int tenths = 5; tenths <= 35; ++tenths) {
    const std::string far = std::to_string(tenths / 10) + "." + std::to_string(tenths % 10) + "m";
    INFO(what << " from " << far);
    const Canvas canvas = drawn("chart --materials 303,416,1084,C752,C360,O1 " + what + " --read-from " + far);
    CHECK(test::box_faults(canvas, small_print).over_another == std::vector<std::string>{});
    CHECK(crossed_in(canvas) == std::vector<std::string>{});
  }
}

TEST_CASE("chart: numbers to dial in and headings are as high as the distance asks, and none of them is smaller") {
  const auto far = GENERATE(as<std::string>{}, "0.6m", "1m", "2m", "3m");
  INFO(far);
  const double high = 1000 * std::stod(far) / 200;
  const Canvas canvas = drawn("chart --machine pillar --materials 416,304,C752 --read-from " + far);
  std::size_t large = 0;
  const std::set<std::string> named{"416",  "304", "C752", "1/16", "3/32", "no30", "9/64", "3/16", "1/4",
                                    "5/16", "3/8", "1",    "2",    "3",    "4",    "5",    "DRILL"};
  for (const auto& text : canvas.texts()) {
    if (!named.contains(text.text)) continue;
    ++large;
    INFO(test::shown(text));
    CHECK_THAT(in_mm(text.height), WithinAbs(high, 1e-9));
    // The ink itself: figures and capitals are as high as a capital, but for what is round at its ends.
    if (text.text.find('/') == std::string::npos && text.text != "no30")
      CHECK_THAT(in_mm(text.ink.height), WithinAbs(high, 0.05 * high));
  }
  CHECK(large > 30);
}

TEST_CASE("chart: every number stands in the row and the column where the record has it") {
  const auto line =
      GENERATE(as<std::string>{}, "chart --machine pillar --materials 416,304,C360,C752,1084",
               "chart --materials 416,304,C360,C752,1084,D2", "chart --asks mill --machine bench --materials 303,O1",
               "chart --asks burr --machine cordless --materials 303,C752 --read-from 1m",
               "chart --machine pillar12 --materials 416,C752,1084 --paper a3");
  INFO(line);
  const Json record = answer_of(line);
  const auto& found = record["found"];
  const double high = found["letter_height"]["value"];
  const Canvas canvas = drawn(line);
  std::map<std::pair<std::string, std::string>, std::string> lead;
  std::set<std::string> materials;
  std::set<std::string> sizes;
  for (const auto& column : found["columns"]) materials.insert(column["material"]);
  for (const auto& row : found["rows"]) sizes.insert(row["name"]);
  for (int sheet = 0; sheet < canvas.sheets(); ++sheet) {
    std::vector<const TextDrawn*> columns;
    std::vector<const TextDrawn*> rows;
    std::vector<const TextDrawn*> rest;
    for (const auto& text : canvas.texts()) {
      if (text.sheet != sheet || std::abs(in_mm(text.height) - high) > 1e-6 || is_sign(text.text)) continue;
      // Row headings stand at the left edge, column headings over the first row.
      if (text.ink.left < mm(10 + 0.6 * high) && sizes.contains(text.text))
        rows.push_back(&text);
      else if (materials.contains(text.text) && (rows.empty()))
        columns.push_back(&text);
      else if (text.ink.top > mm(10 + 1.4 * high))
        rest.push_back(&text);
    }
    if (rows.empty()) continue;
    for (const auto* text : rest) {
      const TextDrawn* column = nullptr;
      for (const auto* heading : columns)
        if (heading->ink.left < text->ink.left + mm(0.3 * high)) column = heading;
      const auto row = std::min_element(rows.begin(), rows.end(), [&](const TextDrawn* a, const TextDrawn* b) {
        const auto apart = [&](const TextDrawn* one) {
          return std::abs(in_mm(middle_of(one->ink) - middle_of(text->ink)));
        };
        return apart(a) < apart(b);
      });
      REQUIRE(column != nullptr);
      INFO(test::shown(*text));
      CHECK(lead.emplace(std::pair{(*row)->text, column->text}, text->text).second);
    }
  }
  for (std::size_t i = 0; i < found["rows"].size(); ++i)
    for (std::size_t k = 0; k < found["columns"].size(); ++k) {
      const Json& cell = found["cells"][i][k];
      const std::string size = found["rows"][i]["name"];
      const std::string material = found["columns"][k]["material"];
      INFO(size << " in " << material << ": " << cell.dump());
      const auto at = lead.find({size, material});
      if (!cell.contains("spindle_speed")) {
        CHECK(at == lead.end());
        continue;
      }
      REQUIRE(at != lead.end());
      if (cell["step"].is_string()) {
        CHECK(at->second == cell["step"].get<std::string>());
      } else {
        // Three figures, or a whole number as it is; a limit rounded down.
        const double speed = cell["spindle_speed"]["value"];
        CHECK_THAT(std::stod(at->second), WithinAbs(speed, std::max(1.0, 0.005 * speed)));
      }
    }
}

TEST_CASE("chart: the small print of a cell is what was wanted, and it says memory where a figure rests on it") {
  const Json record = answer_of("chart --machine pillar --materials C752 --sizes 9/64,3/8");
  const Canvas canvas = drawn("chart --machine pillar --materials C752 --sizes 9/64,3/8");
  const std::string all = words_on(canvas, 0);
  for (const auto& row : record["found"]["cells"]) {
    const double wanted = row[0]["wanted_spindle_speed"]["value"];
    CHECK(all.find("wants " + print_spindle_speed(rev_per_min(wanted)) + " ") != std::string::npos);
  }
  const auto words = [&](const std::string& word) {
    return std::count_if(canvas.texts().begin(), canvas.texts().end(),
                         [&](const TextDrawn& text) { return text.text == word; });
  };
  CHECK(words("memory") == 2);
  CHECK(words("1100") == 1);
  CHECK(words("620") == 1);
}

TEST_CASE(
    "chart: the foot has the day, the page, the tables, the sources with their standing, the cautions, the signs") {
  const auto line = GENERATE(as<std::string>{}, "chart --machine pillar --materials 416,304,C360,C752,1084",
                             "chart --asks drill,mill,burr --machine pillar");
  INFO(line);
  const auto document = document_of(line, {"chart", "a4", "inch"});
  const Canvas canvas = page::draw(document);
  std::string all;
  for (int sheet = 0; sheet < canvas.sheets(); ++sheet) {
    const std::string text = words_on(canvas, sheet);
    CHECK(text.find("page " + std::to_string(sheet + 1) + " of " + std::to_string(canvas.sheets())) !=
          std::string::npos);
    CHECK(text.find("2026-11-30") != std::string::npos);
    // A sheet hangs alone: each that has cells has every danger.
    for (const auto& caution : document.answer.cautions) {
      if (caution.severity != "danger" || text.find("Cautions and sources") != std::string::npos) continue;
      INFO(caution.text << "\n" << text);
      CHECK(text.find(caution.text) != std::string::npos);
    }
    all += text;
  }
  for (const auto& caution : document.answer.cautions) CHECK(all.find(caution.text) != std::string::npos);
  for (const auto& source : document.answer.sources) {
    if (source.id == "letter-height") continue;
    INFO(source.cite);
    CHECK(all.find(source.cite) != std::string::npos);
    CHECK(all.find("(" + source.standing + ")") != std::string::npos);
  }
  CHECK(all.find("Tables: built-in") != std::string::npos);
  CHECK(all.find("DO NOT: ") != std::string::npos);
}

TEST_CASE("chart: the letters are no wider than the sheets were counted with, and not much narrower") {
  const auto& line = GENERATE(from_range(charts()));
  const Canvas canvas = drawn(line);
  for (const auto& text : canvas.texts()) {
    const Length plain = canvas.width_of(text.text, {text.height});
    const Length heavy = canvas.width_of(text.text, {text.height, page::Weight::bold});
    const Length taken = text_width(text.text, text.height);
    if (is_sign(text.text)) {
      INFO(test::shown(text));
      CHECK(heavy <= sign_width * text.height);
      continue;
    }
    INFO(test::shown(text) << " plain " << in_mm(plain) << " bold " << in_mm(heavy) << " taken " << in_mm(taken));
    CHECK(plain <= taken);
    CHECK(plain >= 0.9 * taken);
    // Numbers and steps are what is drawn in bold inside a cell; lines of dangers are broken to a width in bold.
    const bool number = text.text.find_first_not_of("0123456789-") == std::string::npos;
    if (number || text.text.starts_with("DANGER")) CHECK(heavy <= bold * taken);
  }
}

TEST_CASE("chart: signs differ in shape: a triangle on its foot or its tip, empty or full, and two strokes crossed") {
  const Canvas canvas = drawn("chart --machine pillar --materials 304,416,C752 --sizes 1/16,3/8");
  const double high = 10; // of the numbers, read from 2 m
  const Folder folder;
  const auto pixels =
      test::pdf_pixels(folder, folder.write("a.pdf", canvas.picture(page::PictureKind::pdf, {"t", ""})), 1, 200);
  const double dots = 200 / 25.4;
  std::map<std::string, std::size_t> seen;
  for (const auto& text : canvas.texts()) {
    if (!is_sign(text.text) || in_mm(text.height) < 5) continue;
    INFO(test::shown(text));
    ++seen[text.text];
    // Beside a number six tenths as high, and as high where it stands alone.
    CHECK_THAT(in_mm(text.height), WithinAbs(text.text == "\u2716" ? high : 0.6 * high, 1e-9));
    const page::Box& ink = text.ink;
    const auto dark_at = [&](double across, double down) {
      return pixels.dark_at((in_mm(ink.left) + across * in_mm(ink.width)) * dots,
                            (in_mm(ink.top) + down * in_mm(ink.height)) * dots) > 0.5;
    };
    const bool middle = dark_at(0.5, 0.5);
    const bool upper_left = dark_at(0.15, 0.2);
    const bool foot = dark_at(0.5, 0.96);
    if (text.text == "\u25b3") CHECK((!middle && !upper_left && foot)); // its side begins lower
    if (text.text == "\u25bd") CHECK((!middle && !dark_at(0.15, 0.8) && dark_at(0.5, 0.04)));
    if (text.text == "\u25bc") CHECK((middle && !dark_at(0.15, 0.8) && dark_at(0.5, 0.04)));
    if (text.text == "\u2716") CHECK((middle && upper_left && !foot && !dark_at(0.5, 0.04)));
  }
  // 1/16 in three metals at the highest step, 3/8 in 416 at the lowest; C752 there is faster than wanted, 304 has none.
  CHECK(seen == std::map<std::string, std::size_t>{{"\u25b3", 3}, {"\u25bd", 1}, {"\u25bc", 1}, {"\u2716", 1}});
}

TEST_CASE("chart: where it saves a sheet, the small print of a cell is the speed wanted and letters for the rest") {
  const std::string line = "chart --machine pillar --materials 416,304,C360,C752,1084";
  const Json record = answer_of(line);
  const ChartSheet sheet = chart_sheet(document_of(line, {"chart", "a4", "inch"}).answer);
  REQUIRE(sheet.brief);
  const Canvas canvas = drawn(line);
  std::multiset<std::string> small;
  for (const auto& text : canvas.texts()) small.insert(text.text);
  std::map<std::string, std::size_t> wanted;
  for (const auto& row : record["found"]["cells"])
    for (const auto& cell : row) {
      const double speed = cell["wanted_spindle_speed"]["value"];
      const auto& marks = cell["marks"];
      const bool memory = std::find(marks.begin(), marks.end(), "memory") != marks.end();
      ++wanted[print_spindle_speed(rev_per_min(speed)) + (memory ? "*" : "")];
    }
  for (const auto& [text, times] : wanted) {
    INFO(text);
    CHECK(small.count(text) == times);
  }
  for (int number = 0; number < sheet.table_sheets; ++number) {
    const std::string all = words_on(canvas, number);
    CHECK(all.find("step 1 is 620, 2 1100, 3 1720, 4 2340, 5 3100 rev/min") != std::string::npos);
    CHECK(all.find("* the figure is from memory") != std::string::npos);
    CHECK(all.find("wants ") == std::string::npos);
  }
}

TEST_CASE("chart: thirty metals by forty sizes go on one sheet of a3 that is read from 40 cm") {
  std::string sizes;
  for (int i = 0; i < 40; ++i)
    sizes += (i == 0 ? "" : ",") + std::to_string(1 + i / 4) + "." + std::to_string(1 + i % 4 * 2) + "mm";
  const std::string line =
      "chart --machine pillar --paper a3 --read-from 0.4m --materials "
      "303,304,316,410,416,420,440C,17-4PH,C260,C353,C360,C385,C752,C757,C770,C792,1018,12L14,1045,1075,1084,1095,O1,"
      "A2,D2,W1,6061,2024,C110,C510 --sizes " +
      sizes;
  const auto document = document_of(line, {"chart", "a3", "inch"});
  CHECK(chart_sheet(document.answer).table_sheets == 1);
  const Canvas canvas = page::draw(document);
  test::hold_boxes(canvas, small_print);
  CHECK(crossed_in(canvas) == std::vector<std::string>{});
  CHECK(canvas.sheets() == 2); // cautions and sources on the second
}

TEST_CASE("chart as PDF, SVG and PNG: each opens, and each shows the same") {
  const Folder folder;
  const std::string line = "chart --machine pillar --materials 416,C752 --out ";
  for (const char* ending : {"pdf", "svg", "png"}) {
    const auto ran = test::quillside(line + folder.file(std::string("wall.") + ending));
    INFO(ran.err);
    REQUIRE(ran.exit == 0);
    CHECK(ran.out.find("On paper: ") != std::string::npos);
  }
  const int pages = answer_of("chart --machine pillar --materials 416,C752")["found"]["pages"]["value"];
  test::run_shell("pdfinfo '" + folder.file("wall.pdf") + "' >'" + folder.file("info") + "'");
  CHECK(folder.read("info").find("Pages:           " + std::to_string(pages)) != std::string::npos);
  const test::Pixels png(folder.file("wall.png"));
  const auto svg = test::svg_pixels(folder, folder.file("wall.svg"), 300);
  CHECK_THAT(svg.mean(), WithinAbs(png.mean(), 0.05 * png.mean()));
  double pdf = 0;
  for (int sheet = 1; sheet <= pages; ++sheet)
    pdf += test::pdf_pixels(folder, folder.file("wall.pdf"), sheet, 300).mean() / pages;
  CHECK_THAT(pdf, WithinAbs(png.mean(), 0.05 * png.mean()));
}

TEST_CASE("chart: flag --out: wrong endings, a missing folder, - without --as; text is no picture") {
  const Folder folder;
  CHECK(test::error_of("chart --out " + folder.file("wall.doc"), 2)["message"].get<std::string>().find(".pdf") !=
        std::string::npos);
  CHECK(test::error_of("chart --out " + folder.file("none/wall.pdf"), 4)["kind"] == "file");
  CHECK(test::error_of("chart --out -", 2)["word"] == "--out");
  CHECK(test::quillside("chart --out - --as pdf").out.starts_with("%PDF"));
  CHECK(test::quillside("chart --out - --as text").out == test::quillside("chart").out);
  // Refused before anything is written.
  const auto refused = test::quillside("chart --materials brss --out " + folder.file("wall.pdf"));
  CHECK(refused.exit == 2);
  CHECK_FALSE(std::filesystem::exists(folder.file("wall.pdf")));
}
