// The drawing on the card of a slot: measured from its own lines, and its figures held against the record.

#include <quillside/page/card.hpp>
#include <quillside/page/draw.hpp>
#include <quillside/words/print.hpp>

#include <algorithm>
#include <cmath>
#include <regex>
#include <set>

#include "../page_boxes.hpp"
#include "../slot_plan.hpp"
#include "drawn_document.hpp"
#include "tools.hpp"
#include "words_on.hpp"

using namespace quillside;
using test::drawn_document;
using test::Json;
using test::steps_with;
using test::value;
using test::WithinAbs;

namespace {

const std::string latch = "slot C752 --part 0.118in --part-width 0.630in --thick 3/16 --machine bench";

/// Plans of every kind: with pocket and without, missing measures, cut already, wide, long, fitting as it is.
const std::vector<std::string>& plans() {
  static const std::vector<std::string> all{
      latch,
      "slot 303 --part 3.18mm --part-width 12mm --thick 2mm --fit slide --machine bench",
      "slot C752 --part 0.118in",
      "slot C752 --part 0.118in --thick 3/16",
      "slot C752 --part 0.118in --part-width 0.630in",
      latch + " --cut-width 0.1120in",
      latch + " --cut-width 0.1182in",
      "slot C752 --part 0.118in --thick 3/16 --cut-width 0.1120in",
      latch + " --ends clear --pocket-width 0.26in",
      latch + " --pocket-width 1/2",
      "slot C360 --part 3mm --length 160mm --thick 6mm",
      "slot C360 --part 10mm --length 60mm --thick 12mm --pocket-width 16mm",
      "slot C360 --part 1.5mm --length 6mm --thick 1.5mm",
      "slot C360 --part 12mm --length 90mm --thick 10mm"};
  return all;
}

/// The sheet that the drawing stands on: the last one.
struct Drawing {
  page::Canvas canvas;
  Json record;
  int number;

  explicit Drawing(const std::string& line, const test::Wanted& wanted = {})
      : canvas(page::draw(drawn_document(line, wanted))),
        record(Json::parse(test::document_text(line, wanted))["answer"]), number(canvas.sheets() - 1) {}

  [[nodiscard]] std::vector<page::TextDrawn> texts() const {
    std::vector<page::TextDrawn> on;
    for (const auto& text : canvas.texts())
      if (text.sheet == number) on.push_back(text);
    return on;
  }
  /// All its words, each text behind the other.
  [[nodiscard]] std::string all() const { return test::words_on(canvas, number); }
  [[nodiscard]] bool says(const std::string& words) const { return all().find(words) != std::string::npos; }
  [[nodiscard]] page::TextDrawn text(const std::string& words) const {
    for (const auto& one : texts())
      if (one.text.find(words) != std::string::npos) return one;
    FAIL("no text '" << words << "'");
    return {};
  }
  /// Paper over work, as lettered behind a word: "section 5:1".
  [[nodiscard]] double scale(const std::string& word) const {
    std::smatch found;
    const std::string words = all();
    INFO(words);
    REQUIRE(std::regex_search(words, found, std::regex(word + " ([0-9]+):([0-9]+)")));
    return std::stod(found[1]) / std::stod(found[2]);
  }
  /// Lines of this pen between two heights of the sheet.
  [[nodiscard]] std::vector<page::LineDrawn> lines(double pen, Length from, Length to) const {
    std::vector<page::LineDrawn> on;
    for (const auto& line : canvas.lines())
      if (line.sheet == number && std::abs(in_mm(line.width) - pen) < 1e-9 &&
          std::min(line.from.down, line.to.down) >= from && std::max(line.from.down, line.to.down) <= to)
        on.push_back(line);
    return on;
  }
};

struct Reach {
  double left = 1e9;
  double right = -1e9;
  double top = 1e9;
  double bottom = -1e9;
  [[nodiscard]] double across() const { return right - left; }
  [[nodiscard]] double down() const { return bottom - top; }
};
Reach reach(const std::vector<page::LineDrawn>& lines) {
  Reach all;
  for (const auto& line : lines)
    for (const auto& spot : {line.from, line.to}) {
      all.left = std::min(all.left, in_mm(spot.right));
      all.right = std::max(all.right, in_mm(spot.right));
      all.top = std::min(all.top, in_mm(spot.down));
      all.bottom = std::max(all.bottom, in_mm(spot.down));
    }
  return all;
}

/// The first with that cutter.
Json step_with(const Json& record, const std::string& cutter) {
  const auto steps = steps_with(record, cutter);
  if (steps.empty()) FAIL("no step with a " << cutter);
  return steps.front();
}

/// Middles of the crosses between two heights: lines 3.2 mm long, level.
std::vector<double> crosses(const Drawing& sheet, Length from, Length to) {
  std::vector<double> middles;
  for (const auto& line : sheet.lines(0.18, from, to))
    if (line.from.down == line.to.down && std::abs(in_mm(line.to.right - line.from.right) - 3.2) < 1e-6)
      middles.push_back(in_mm(line.from.right + line.to.right) / 2);
  std::sort(middles.begin(), middles.end());
  return middles;
}

/// Lines of an outline: not those of the plate's edges, which run from side to side.
std::vector<page::LineDrawn> inner(std::vector<page::LineDrawn> lines) {
  const double whole = reach(lines).across();
  std::erase_if(lines, [&](const page::LineDrawn& line) {
    return std::abs(in_mm(line.to.right - line.from.right)) > whole - 1e-6;
  });
  return lines;
}

/// Every number that a record carries, in words.
void numbers_of(const Json& json, UnitSystem units, std::set<std::string>& all) {
  if (json.is_object() && json.contains("unit") && json["unit"] == "mm" && json["value"].is_number()) {
    for (const auto* name : {"value", "low", "high"})
      if (json.contains(name)) {
        const std::string text = print_length(mm(json[name].get<double>()), units);
        all.insert(text.substr(0, text.find(' ')));
      }
    return;
  }
  if (json.is_structured())
    for (const auto& one : json) numbers_of(one, units, all);
}

} // namespace

TEST_CASE("a slot's drawing: texts inside the sheet and apart, on every paper and in both units") {
  const auto& line = GENERATE(from_range(plans()));
  const auto paper = GENERATE(as<std::string>{}, "a4", "letter");
  const auto units = GENERATE(as<std::string>{}, "inch", "metric");
  INFO(line << " on " << paper << " in " << units);
  const auto card = page::draw(drawn_document(line, {"card", paper, units}));
  test::hold_boxes(card, page::least_letters);
  // Nothing of the drawing runs over the foot of its sheet or off its sides.
  std::vector<page::LineDrawn> drawn;
  for (const auto& one : card.lines())
    if (one.sheet == card.sheets() - 1) drawn.push_back(one);
  const Reach all = reach(drawn);
  CHECK(all.left >= 5);
  CHECK(all.right <= in_mm(card.sheet().width) - 5);
  CHECK(all.bottom <= in_mm(card.sheet().height) - 12.4);
}

TEST_CASE("a slot's drawing: the row of holes and the pocket stand to scale, centre by centre") {
  // Tolerance: 0.1 mm on the paper, what a good rule shows.
  const auto paper = GENERATE(as<std::string>{}, "a4", "letter");
  const Drawing sheet(latch, {"card", paper, "inch"});
  const double scale = sheet.scale("Views");
  const Length back = sheet.text("BACK UP").ink.top;
  const Length under = sheet.text("drill at").ink.top;
  const Json drill = step_with(sheet.record, "9/64 drill");
  const auto middles = crosses(sheet, back, under);
  REQUIRE(middles.size() == drill["positions"].size());
  for (std::size_t i = 0; i < middles.size(); ++i) {
    const double wanted =
        scale * (drill["positions"][i]["value"].get<double>() - drill["positions"][0]["value"].get<double>());
    CHECK_THAT(middles[i] - middles[0], WithinAbs(wanted, 0.1));
  }
  // The pocket is a drill longer than the row, and as wide as it was asked about.
  const double bit = value(sheet.record["inputs"], "pocket_width");
  const Reach pocket = reach(inner(sheet.lines(0.5, back, under)));
  CHECK_THAT(pocket.across(), WithinAbs(middles.back() - middles.front() + scale * bit, 0.1));
  CHECK_THAT(pocket.down(), WithinAbs(scale * bit, 0.1));
  // The holes touch its sides.
  const auto holes = sheet.lines(0.25, back, under);
  const double centre = (pocket.top + pocket.bottom) / 2;
  double widest = 0;
  for (const auto& line : holes)
    if (std::abs(in_mm(line.from.right) - middles.front()) < scale * bit * 0.51)
      if (const double off = std::abs(in_mm(line.from.down) - centre); off < pocket.down())
        widest = std::max(widest, off);
  CHECK_THAT(widest, WithinAbs(scale * bit / 2, 0.1));
}

TEST_CASE("a slot's drawing: the slot stands to scale from the front, and the cutter's ends in it") {
  const Drawing sheet(latch);
  const double scale = sheet.scale("Views");
  const Length front = sheet.text("FRONT UP").ink.top;
  const Length below = sheet.text("Across the slot").ink.top;
  const Reach slot = reach(inner(sheet.lines(0.5, front, below)));
  CHECK_THAT(slot.across(), WithinAbs(scale * value(sheet.record["set"], "slot_length"), 0.1));
  CHECK_THAT(slot.down(), WithinAbs(scale * value(sheet.record["set"], "slot_width"), 0.1));
  const auto middles = crosses(sheet, front, below);
  REQUIRE(middles.size() == 2);
  // Source: geometry: a cutter's middle stands half a cutter short of the end it cuts.
  const double cutter = value(sheet.record["inputs"], "cutter_size");
  CHECK_THAT(middles[0] - slot.left, WithinAbs(scale * cutter / 2, 0.1));
  CHECK_THAT(slot.right - middles[1], WithinAbs(scale * cutter / 2, 0.1));
}

TEST_CASE("a slot's drawing: both faces have the jaw over them, and the ends change places") {
  const Drawing sheet(latch);
  std::vector<page::TextDrawn> jaws;
  std::vector<page::TextDrawn> ends;
  for (const auto& text : sheet.texts()) {
    if (text.text == "fixed jaw") jaws.push_back(text);
    if (text.text == "A" || text.text == "B") ends.push_back(text);
  }
  REQUIRE(jaws.size() == 2);
  REQUIRE(ends.size() == 4);
  CHECK(sheet.text("BACK UP").ink.top < jaws[0].ink.top);
  CHECK(jaws[0].ink.top < ends[0].ink.top);
  CHECK(jaws[1].ink.top < ends[2].ink.top);
  const auto left_of = [](const page::TextDrawn& a, const page::TextDrawn& b) {
    return a.ink.left < b.ink.left ? a.text : b.text;
  };
  CHECK(left_of(ends[0], ends[1]) == "A");
  CHECK(left_of(ends[2], ends[3]) == "B");
  CHECK(sheet.says("X mirrors"));
  // What is not turned has no ends to tell apart.
  const Drawing through("slot 303 --part 3.18mm --part-width 12mm --thick 2mm --fit slide");
  CHECK_FALSE(through.says("Turn the plate"));
  CHECK_FALSE(through.says("BACK UP"));
  for (const auto& text : through.texts()) CHECK(text.text != "A");
}

TEST_CASE("a slot's drawing: thickness, pocket, what is left and the drill's tip stand to scale in the section") {
  const Drawing sheet(latch);
  const double scale = sheet.scale("section");
  const Length from = sheet.text("Across the slot").ink.bottom();
  const Length to = sheet.text("Offset:").ink.top;
  const double half = in_mm(sheet.canvas.sheet().width) / 2;
  // The metal's outline: heavy lines at the left.
  auto metal = sheet.lines(0.5, from, to);
  std::erase_if(metal, [&](const page::LineDrawn& line) { return in_mm(line.from.right) > half; });
  const Reach plate = reach(metal);
  CHECK_THAT(plate.down(), WithinAbs(scale * value(sheet.record["inputs"], "thick"), 0.1));
  // Level lines of the outline: the back, the floor of the pocket, where the metal ends inward.
  double floor = 0;
  double pocket = 1e9;
  double slot = 1e9;
  const double middle = (plate.left + plate.right) / 2;
  for (const auto& line : metal) {
    if (line.from.down == line.to.down && in_mm(line.from.down) > plate.top + 0.01 &&
        in_mm(line.from.down) < plate.bottom - 0.01)
      floor = in_mm(line.from.down);
    if (line.from.right == line.to.right && in_mm(line.from.right) > middle) {
      if (in_mm(std::min(line.from.down, line.to.down)) < plate.top + 0.01)
        pocket = std::min(pocket, in_mm(line.from.right));
      if (in_mm(std::max(line.from.down, line.to.down)) > plate.bottom - 0.01)
        slot = std::min(slot, in_mm(line.from.right));
    }
  }
  CHECK_THAT(plate.bottom - floor, WithinAbs(scale * value(sheet.record["inputs"], "leave"), 0.1));
  CHECK_THAT(floor - plate.top, WithinAbs(scale * value(step_with(sheet.record, "9/64 end mill"), "depth"), 0.1));
  CHECK_THAT(2 * (pocket - middle), WithinAbs(scale * value(sheet.record["inputs"], "pocket_width"), 0.1));
  CHECK_THAT(2 * (slot - middle), WithinAbs(scale * value(sheet.record["set"], "slot_width"), 0.1));
  // The drill: its tip at the stop, its corners a cone higher. Source: a point of 118 deg is (D/2)/tan 59 deg high.
  std::vector<page::LineDrawn> bit;
  for (const auto& line : sheet.lines(0.25, from, to))
    if (in_mm(line.from.right) < half && std::abs(in_mm(line.to.right) - middle) < 0.01 &&
        line.from.down != line.to.down)
      bit.push_back(line);
  REQUIRE_FALSE(bit.empty());
  const double drill = value(sheet.record["inputs"], "pocket_width");
  CHECK_THAT(in_mm(bit.front().to.down) - plate.top, WithinAbs(scale * value(sheet.record["set"], "depth_stop"), 0.1));
  CHECK_THAT(in_mm(bit.front().to.down - bit.front().from.down),
             WithinAbs(scale * drill / 2 / std::tan(59 * 3.14159265358979 / 180), 0.1));
}

TEST_CASE("a slot's drawing: an offset too small to be seen is drawn larger, and says so") {
  const auto& [line, exaggerated] =
      GENERATE(table<std::string, bool>({{latch, true},
                                         {latch + " --cut-width 0.1120in", true},
                                         {"slot C752 --part 0.162 --cutter-size 1/8 --clearance 0 --thick 3/16", true},
                                         {"slot C360 --part 6mm --cutter-size 3mm --length 20mm", false}}));
  INFO(line);
  const Drawing sheet(line);
  CHECK(sheet.says("NOT TO ONE SCALE") == exaggerated);
  const double cutter_scale = sheet.scale(exaggerated ? "cutter" : "Offset and cutter");
  const double offset_scale = exaggerated ? sheet.scale("offset") : cutter_scale;
  CHECK((offset_scale > cutter_scale) == exaggerated);
  const double offset = offset_scale * value(sheet.record["set"], "side_offset");
  CHECK(offset >= 2.4);
  const bool measured = sheet.record["inputs"].contains("cut_width");
  const double cut = cutter_scale * value(sheet.record["inputs"], measured ? "cut_width" : "cutter_size");
  // The walls: heavy level lines at the right.
  const double half = in_mm(sheet.canvas.sheet().width) / 2;
  std::vector<double> walls;
  for (const auto& wall : sheet.lines(0.5, sheet.text("Offset, front up").ink.bottom(), sheet.text("Offset:").ink.top))
    if (in_mm(wall.from.right) > half && wall.from.down == wall.to.down && in_mm(wall.to.right - wall.from.right) > 20)
      walls.push_back(in_mm(wall.from.down));
  std::sort(walls.begin(), walls.end());
  REQUIRE(walls.size() == 2);
  CHECK_THAT(walls[1] - walls[0], WithinAbs(cut + 2 * offset, 0.1));
}

TEST_CASE("a slot's drawing: the wall lies at the left of the way the cutter goes, where the table has backlash") {
  const auto arrows = [](const Drawing& sheet) {
    std::vector<page::LineDrawn> found;
    for (const auto& line :
         sheet.lines(0.5, sheet.text("Offset, front up").ink.bottom(), sheet.text("Offset:").ink.top))
      if (line.from.down == line.to.down && std::abs(in_mm(line.to.right - line.from.right)) < 8 &&
          in_mm(line.from.right) > in_mm(sheet.canvas.sheet().width) / 2)
        found.push_back(line);
    return found;
  };
  const auto both = arrows(Drawing(latch));
  REQUIRE(both.size() == 2);
  const auto& upper = both[0].from.down < both[1].from.down ? both[0] : both[1];
  const auto& lower = both[0].from.down < both[1].from.down ? both[1] : both[0];
  // Seen from above, going to the right the left hand is toward the top of the sheet.
  CHECK(upper.to.right > upper.from.right);
  CHECK(lower.to.right < lower.from.right);

  const test::Folder folder;
  const std::string file = folder.write("own.toml", test::stiff_mill);
  const Drawing stiff("slot C752 --part 0.118in --part-width 0.630in --thick 3/16 --machine stiff --tables " + file);
  CHECK(arrows(stiff).empty());
  CHECK_FALSE(stiff.says("Arrow"));
}

TEST_CASE("a slot's drawing has the record's figures, and no other") {
  const auto& line = GENERATE(from_range(plans()));
  const auto units = GENERATE(as<std::string>{}, "inch", "metric");
  INFO(line << " in " << units);
  const Drawing sheet(line, {"card", "a4", units});
  const UnitSystem system = units == "inch" ? UnitSystem::inch : UnitSystem::metric;
  std::set<std::string> known;
  numbers_of(sheet.record["inputs"], system, known);
  numbers_of(sheet.record["set"], system, known);
  std::set<std::string> drawn;
  // The foot of the sheet has the ask as typed.
  const Length foot = sheet.canvas.sheet().height - mm(12.5);
  for (const auto& text : sheet.texts()) {
    if (text.ink.top > foot) continue;
    const std::regex decimal("-?[0-9]+\\.[0-9]{3,4}");
    for (std::sregex_iterator at(text.text.begin(), text.text.end(), decimal); at != std::sregex_iterator(); ++at)
      drawn.insert(at->str());
  }
  for (const auto& number : drawn) {
    INFO(number);
    CHECK(known.count(number) == 1);
  }
  const auto has = [&](const Json& of, const char* name) {
    if (!of.contains(name)) return;
    const std::string text = print_length(mm(value(of, name)), system);
    INFO(name << " " << text);
    CHECK(drawn.count(text.substr(0, text.find(' '))) == 1);
  };
  has(sheet.record["set"], "slot_width");
  has(sheet.record["set"], "slot_length");
  has(sheet.record["set"], "depth_stop");
  has(sheet.record["inputs"], "thick");
  if (value(sheet.record["set"], "side_offset") > 0) {
    has(sheet.record["set"], "side_offset");
    has(sheet.record["set"], "wall_to_wall");
  }
}

TEST_CASE("a slot's drawing: each figure stands beside what it measures") {
  const Drawing sheet(latch);
  const auto printed = [](const Json& of, const char* name) {
    return print_length(mm(value(of, name)), UnitSystem::inch);
  };
  /// The text whose ink begins nearest to a place.
  const auto nearest = [&](double left, double middle) {
    std::string found;
    double best = 1e9;
    for (const auto& text : sheet.texts()) {
      const double off = std::hypot(in_mm(text.ink.left) - left, in_mm(text.ink.top + 0.5 * text.ink.height) - middle);
      if (off < best) {
        best = off;
        found = text.text;
      }
    }
    return found;
  };
  const auto above = [&](const char* what) {
    const auto text = sheet.text(what);
    return nearest(in_mm(text.ink.left), in_mm(text.ink.top) - 2.4);
  };
  CHECK(above("STOP, tip") == printed(sheet.record["set"], "depth_stop"));
  CHECK(above("left") == printed(sheet.record["inputs"], "leave"));
  // The offsets: beside the gap between each wall and the first cut.
  const auto middle = sheet.text("middle");
  std::vector<std::string> beside;
  for (const auto& text : sheet.texts())
    if (std::abs(in_mm(text.ink.left - middle.ink.left)) < 0.5 && text.text != "middle" &&
        text.ink.top > sheet.text("Offset, front up").ink.top)
      beside.push_back(text.text);
  CHECK(beside == std::vector<std::string>(2, printed(sheet.record["set"], "side_offset")));
  // Under each hole and each end of the cutter's run, its place in X.
  const auto under = [&](const char* face, const char* row, const Json& step) {
    const auto middles = crosses(sheet, sheet.text(face).ink.top, sheet.text(row).ink.top);
    REQUIRE(middles.size() == step["positions"].size());
    for (std::size_t i = 0; i < middles.size(); ++i) {
      const std::string place = print_length(mm(step["positions"][i]["value"].get<double>()), UnitSystem::inch);
      bool there = false;
      for (const auto& one : sheet.texts())
        there = there || (one.text == place && std::abs(in_mm(one.ink.left + 0.5 * one.ink.width) - middles[i]) < 0.6);
      INFO(place);
      CHECK(there);
    }
  };
  under("BACK UP", "drill at", step_with(sheet.record, "9/64 drill"));
  const auto milled = steps_with(sheet.record, "7/64 end mill");
  REQUIRE_FALSE(milled.empty());
  under("FRONT UP", "cutter at", milled.back());
}

TEST_CASE("a slot's drawing: what the plan lacks is not drawn, and it is said") {
  const Drawing bare("slot C752 --part 0.118in");
  CHECK(bare.says("No section"));
  CHECK(bare.says("was not said"));
  CHECK_FALSE(bare.says("section 1"));
  for (const auto& text : bare.texts()) CHECK(text.text != "X 0");
  const Drawing no_length("slot C752 --part 0.118in --thick 3/16");
  CHECK(no_length.says("BACK UP"));
  CHECK(no_length.says("is not known"));
  CHECK_FALSE(no_length.says("No section"));
  // The first cut measured: the pocket is there already.
  const Drawing again(latch + " --cut-width 0.1120in");
  CHECK_FALSE(again.says("BACK UP"));
  CHECK(again.says("as measured, 0.1120"));
  const Drawing fits(latch + " --cut-width 0.1182in");
  CHECK(fits.says("nothing more to mill"));
  CHECK(fits.says("no wall is cut again"));
}

TEST_CASE("a slot that is not to be cut has no drawing, and its card says so") {
  const auto document = drawn_document("slot C752 --part 0.118in --cutter-size 1/8", {}, 1);
  const auto card = page::draw(document);
  CHECK(card.sheets() == 1);
  const bool said = std::any_of(card.texts().begin(), card.texts().end(),
                                [](const auto& text) { return text.text.starts_with("No drawing"); });
  CHECK(said);
  test::hold_boxes(card, page::least_letters);
}

TEST_CASE("a slot's drawing as poppler draws it: the pocket's walls are where the lines say") {
  // A second way: from the dots of the PDF. Tolerance 0.1 mm; a dot at 300 an inch is 0.085 mm.
  const Drawing sheet(latch);
  const double scale = sheet.scale("Views");
  const test::Folder folder;
  const std::string file = folder.write("a.pdf", sheet.canvas.picture(page::PictureKind::pdf, {"", ""}));
  const test::Pixels dots = test::pdf_pixels(folder, file, sheet.number + 1, 300);
  const double per_mm = 300 / 25.4;
  const Length back = sheet.text("BACK UP").ink.top;
  const Length under = sheet.text("drill at").ink.top;
  const Reach pocket = reach(inner(sheet.lines(0.5, back, under)));
  // Along the height of the pocket between its first two holes, where nothing else crosses.
  const auto middles = crosses(sheet, back, under);
  const double right = (middles[0] + middles[1]) / 2;
  const auto edge = [&](double near_mm) {
    double sum = 0;
    double weight = 0;
    for (double at = near_mm - 0.5; at < near_mm + 0.5; at += 0.01) {
      const double dark = dots.dark_at(right * per_mm, at * per_mm);
      sum += dark * at;
      weight += dark;
    }
    REQUIRE(weight > 0);
    return sum / weight;
  };
  CHECK_THAT(edge(pocket.bottom) - edge(pocket.top),
             WithinAbs(scale * value(sheet.record["inputs"], "pocket_width"), 0.1));
}
