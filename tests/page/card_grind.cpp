// Sheets for the grinder's rest: their lines are measured as they are drawn, and by the ink that poppler and librsvg
// make of them; their figures are the record's; the print proves itself by its ruler.

#include <array>
#include <cmath>

#include <quillside/page/card.hpp>
#include <quillside/page/draw.hpp>

#include "../page_boxes.hpp"
#include "document_of.hpp"
#include "ink.hpp"
#include "words_on.hpp"

using namespace quillside;
using page::LineDrawn;
using test::by_poppler;
using test::degree;
using test::document_of;
using test::Folder;
using test::Json;
using test::lettered;
using test::Pixels;
using test::tenth;
using test::value;
using test::WithinAbs;

namespace {

constexpr double heavy = 0.55;  // what is set by
constexpr double outline = 0.2; // the drill
constexpr double lip_pen = 0.9; // the lip that is ground
constexpr double wedge_pen = 0.35;

constexpr int dpi = 400;
constexpr double dots = dpi / 25.4;

const std::vector<std::string>& every_hold() {
  static const std::vector<std::string> all{"grind 1/4 1018",
                                            "grind 1/8 1018 --web 0.026in",
                                            "grind 1/4 303 --way four-facet",
                                            "grind 1in 1018 --way four-facet",
                                            "grind 1/8 1018 --way four-facet --angle 60",
                                            "grind 12.7mm 1018 --way four-facet --angle 150",
                                            "grind 1/4 1018 --fence 59 --table-tilt 17",
                                            "grind 1/2 1018 --swing 58 --tilt 15 --roll 14",
                                            "grind 1/4 1018 --swing 55 --roll 31",
                                            "grind 1/4 1018 --swing 61 --tilt 20",
                                            "grind 1/4 1018 --way cone",
                                            "grind 1/2 1018 --way cone --cone-half-angle 40",
                                            "grind 1in 1018 --way cone",
                                            "grind no60 303 --way cone",
                                            "grind no60 303 --way cone --cone-half-angle 67",
                                            "grind 10mm C360 --way cone --angle 90 --relief 12 --chisel 135"};
  return all;
}

/// What each sheet is called: its largest letters.
std::vector<std::string> names_of_sheets(const page::Canvas& card) {
  std::vector<std::string> names(static_cast<std::size_t>(card.sheets()));
  std::vector<Length> heights(names.size());
  for (const auto& text : card.texts()) {
    const auto sheet = static_cast<std::size_t>(text.sheet);
    if (text.height <= heights[sheet]) continue;
    heights[sheet] = text.height;
    names[sheet] = text.text;
  }
  return names;
}

int sheet_named(const page::Canvas& card, const std::string& name, int which = 0) {
  const auto names = names_of_sheets(card);
  for (std::size_t i = 0; i < names.size(); ++i)
    if (names[i] == name && which-- == 0) return static_cast<int>(i);
  FAIL("no sheet " << name);
  return 0;
}

struct Picture {
  page::Canvas card;
  Json record;
};
Picture picture_of(const std::string& line, const test::Wanted& wanted = {}) {
  return {page::draw(document_of(line, wanted)), test::answer_of(line)};
}

/// The disk's face, drawn from left to right, and the line that the drill is laid by, from the disk on.
struct Set {
  LineDrawn face;
  LineDrawn by;
};
Set set_on(const page::Canvas& card, int sheet) {
  const auto lines = test::lines_of_pen(card, sheet, heavy);
  REQUIRE(lines.size() == 2);
  CHECK(lines[0].from.down == lines[0].to.down);
  return {lines[0], lines[1]};
}
/// Swing of a line that runs from the disk down to the left.
double swing_drawn(const Set& set) { return 180 - test::angle_drawn(set.face, set.by); }

} // namespace

TEST_CASE("rest sheets: texts inside and apart on every paper and in both units, and no line over the edge") {
  const auto& line = GENERATE(from_range(every_hold()));
  const auto paper = GENERATE(as<std::string>{}, "a4", "letter", "tabloid");
  const auto units = GENERATE(as<std::string>{}, "inch", "metric");
  INFO(line << " on " << paper << " in " << units);
  const auto card = page::draw(document_of(line, {"card", paper, units}));
  REQUIRE(card.sheets() > 1);
  test::hold_boxes(card, page::least_letters);
  CHECK(test::lines_over_edge(card) == 0);
}

TEST_CASE("rest sheets: one a hold, each lettered with what it is; a refusal has none") {
  const auto names = [](const std::string& line) {
    auto all = names_of_sheets(page::draw(document_of(line)));
    while (!all.empty() && all.front() != "FENCE" && all.front() != "AS ASKED" && all.front() != "FIXTURE")
      all.erase(all.begin());
    return all;
  };
  CHECK(names("grind 1/4 1018") == std::vector<std::string>{"FENCE", "WEDGE", "FLAT"});
  CHECK(names("grind 1/4 303 --way four-facet") == std::vector<std::string>{"FENCE", "WEDGE", "WEDGE", "FLAT", "FLAT"});
  CHECK(names("grind 1/4 1018 --fence 59 --table-tilt 17") == std::vector<std::string>{"FENCE", "WEDGE", "FLAT"});
  CHECK(names("grind 1/2 1018 --swing 58 --tilt 15 --roll 14") ==
        std::vector<std::string>{"AS ASKED", "FENCE", "WEDGE", "FLAT"});
  CHECK(names("grind 1/4 1018 --way cone") == std::vector<std::string>{"FIXTURE"});

  const std::string refused = "grind 1/4 1018 --fence 59 --table-tilt 6";
  REQUIRE(test::answer_of(refused)["verdict"] == "do not");
  CHECK(names(refused).empty());
}

TEST_CASE("the text of a card with sheets behind it is as large as one card bears") {
  const auto card = page::draw(document_of("grind 1/4 1018", {"card", "tabloid", "inch"}));
  CHECK(names_of_sheets(card)[1] == "FENCE"); // all of the text stands on the first
  Length largest{};
  for (const auto& text : card.texts())
    if (text.sheet == 0) largest = std::max(largest, text.height);
  CHECK(largest > mm(5.5)); // 4.6 mm at a scale of 1
}

TEST_CASE("a hold's line stands at the record's angle to the disk: as drawn, and by the ink of poppler and librsvg") {
  const auto& line = GENERATE(as<std::string>{}, "grind 1/4 1018", "grind 1/4 303 --way four-facet",
                              "grind 1/8 1018 --way four-facet --angle 60");
  INFO(line);
  const auto [card, record] = picture_of(line);
  const Folder folder;
  const auto facets = record["set"]["facets"];
  struct Hold {
    const char* sheet;
    const char* member;
    const char* angle;
  };
  for (const auto& hold :
       {Hold{"FENCE", "fence", "fence_angle"}, {"WEDGE", "wedge", "swing"}, {"FLAT", "flat", "swing"}})
    for (std::size_t i = 0; i < facets.size(); ++i) {
      if (std::string(hold.sheet) == "FENCE" && i > 0) continue;
      const int sheet = sheet_named(card, hold.sheet, static_cast<int>(i));
      const double expected = value(facets[i][hold.member][hold.angle]);
      INFO(hold.sheet << " of facet " << i + 1);
      const Set set = set_on(card, sheet);
      CHECK_THAT(swing_drawn(set), WithinAbs(expected, 1e-6));
      // A line of 70 mm or more: 0.05 deg is 0.06 mm at its end, one dot.
      CHECK_THAT(180 - angle_of_ink(by_poppler(folder, card, sheet, dpi), dots, set.face, set.by),
                 WithinAbs(expected, 0.05));
      CHECK(lettered(card, sheet, tenth(expected)));
      if (facets.size() > 1 && std::string(hold.sheet) != "FENCE")
        CHECK(lettered(card, sheet, i == 0 ? "FIRST FACET" : "SECOND FACET"));
    }
  const int fence = sheet_named(card, "FENCE");
  CHECK(lettered(card, fence, "fence " + tenth(value(facets[0]["fence"]["fence_angle"]))));
  CHECK(lettered(card, fence, "mitre scale " + tenth(value(facets[0]["fence"]["mitre_scale"]))));
  if (facets.size() > 1) return;
  // All sheets below one another.
  const Pixels svg = svg_pixels(folder, folder.write("a.svg", card.picture(page::PictureKind::svg, {"", ""})), dpi);
  Set set = set_on(card, fence);
  for (auto* one : {&set.face, &set.by})
    for (auto* end : {&one->from, &one->to}) end->down = end->down + static_cast<double>(fence) * card.sheet().height;
  CHECK_THAT(180 - angle_of_ink(svg, dots, set.face, set.by),
             WithinAbs(value(facets[0]["fence"]["fence_angle"]), 0.05));
}

TEST_CASE("a hold that was asked about is drawn as it was typed") {
  const auto card = page::draw(document_of("grind 1/2 1018 --swing 58 --tilt 15 --roll 14"));
  const int sheet = sheet_named(card, "AS ASKED");
  const Set set = set_on(card, sheet);
  CHECK_THAT(swing_drawn(set), WithinAbs(58, 1e-6));
  const auto wedge = test::lines_of_pen(card, sheet, wedge_pen);
  REQUIRE(wedge.size() == 3);
  CHECK_THAT(180 - test::angle_drawn(wedge[2], wedge[0]), WithinAbs(15, 1e-6));
  CHECK(lettered(card, sheet, "swing 58"));
  CHECK(lettered(card, sheet, "wedge 15"));
  CHECK(lettered(card, sheet, "roll 14"));
  // On a level rest there is none to saw.
  const auto level = page::draw(document_of("grind 1/4 1018 --swing 55 --roll 31"));
  CHECK(test::lines_of_pen(level, sheet_named(level, "AS ASKED"), wedge_pen).empty());
}

TEST_CASE("wedges to saw have the record's tilt and rise: as drawn, and by ink") {
  const auto& line = GENERATE(as<std::string>{}, "grind 1/4 1018", "grind 1/4 303 --way four-facet",
                              "grind 12.7mm 1018 --way four-facet --angle 150");
  INFO(line);
  const auto [card, record] = picture_of(line);
  const Folder folder;
  const auto facets = record["set"]["facets"];
  const auto check = [&](int sheet, std::size_t first, double tilt, std::optional<double> rise_over_100) {
    const auto lines = test::lines_of_pen(card, sheet, wedge_pen);
    REQUIRE(lines.size() >= 3 * (first + 1));
    const LineDrawn& base = lines[3 * first];
    const LineDrawn& rise = lines[3 * first + 1];
    const LineDrawn& slope = lines[3 * first + 2];
    CHECK_THAT(180 - test::angle_drawn(slope, base), WithinAbs(tilt, 1e-6));
    const double rises = test::length_in_mm(rise) / test::length_in_mm(base) * 100;
    CHECK_THAT(rises, WithinAbs(100 * std::tan(tilt * degree), 1e-6));
    if (rise_over_100) CHECK_THAT(rises, WithinAbs(*rise_over_100, 1e-6));
    std::string over = std::to_string(std::round(rises * 100) / 100);
    over.resize(over.find('.') + 3);
    CHECK(lettered(card, sheet, "rise " + over + " mm over 100 mm"));
    const Pixels pixels = by_poppler(folder, card, sheet, dpi);
    CHECK_THAT(180 - angle_of_ink(pixels, dots, slope, base), WithinAbs(tilt, 0.05));
    // The base by the ink of what stands at its ends: the thin end is where slope and base cross.
    const test::InkLine down = ink_of(pixels, dots, base);
    const test::InkLine up = ink_of(pixels, dots, slope);
    const test::InkLine thick = ink_of(pixels, dots, rise);
    const double thin_end = up.right + (up.down - down.down) / std::tan((up.direction + 180) * degree);
    CHECK_THAT(thick.right - thin_end, WithinAbs(test::length_in_mm(base), 0.1));
  };
  for (std::size_t i = 0; i < facets.size(); ++i) {
    const Json fence = facets[i]["fence"];
    check(sheet_named(card, "FENCE"), i, value(fence["table_tilt"]), value(fence["tilt_rise"]));
    check(sheet_named(card, "WEDGE", static_cast<int>(i)), 0, value(facets[i]["wedge"]["tilt"]), std::nullopt);
  }
  CHECK(test::lines_of_pen(card, sheet_named(card, "FLAT"), wedge_pen).empty());
}

TEST_CASE("the ruler of each sheet is true to 0.1 mm, and the length down its edge: 100 mm and 4 in, by ink") {
  const auto paper = GENERATE(as<std::string>{}, "a4", "letter");
  const auto& line = GENERATE(as<std::string>{}, "grind 1/4 1018", "grind 1/4 1018 --way cone");
  INFO(line << " on " << paper);
  const auto card = page::draw(document_of(line, {"card", paper, "inch"}));
  const Folder folder;
  for (int sheet = 1; sheet < card.sheets(); ++sheet) {
    const std::string name = names_of_sheets(card)[static_cast<std::size_t>(sheet)];
    if (name != "FENCE" && name != "FLAT" && name != "FIXTURE") continue;
    const auto marks = [&](double high) {
      std::vector<LineDrawn> all;
      for (const auto& one : test::lines_of_pen(card, sheet, 0.12))
        if (one.from.right == one.to.right && std::abs(test::length_in_mm(one) - high) < 1e-6 &&
            one.from.down > card.sheet().height - mm(40))
          all.push_back(one);
      return all;
    };
    const auto tens = marks(4.5);
    const auto whole_inches = marks(5);
    REQUIRE(tens.size() >= 11);
    REQUIRE(whole_inches.size() >= 5);
    const Pixels pixels = by_poppler(folder, card, sheet, dpi);
    const auto at = [&](const LineDrawn& mark) { return ink_of(pixels, dots, mark).right; };
    CHECK_THAT(at(tens[10]) - at(tens[0]), WithinAbs(100, 0.1));
    CHECK_THAT(at(whole_inches[4]) - at(whole_inches[0]), WithinAbs(101.6, 0.1));
    // And down the right edge, between two short marks.
    std::vector<LineDrawn> ends;
    for (const auto& one : test::lines_of_pen(card, sheet, 0.12))
      if (one.from.down == one.to.down && std::abs(test::length_in_mm(one) - 3) < 1e-6 &&
          one.to.right > card.sheet().width - mm(9))
        ends.push_back(one);
    REQUIRE(ends.size() == 2);
    CHECK_THAT(ink_of(pixels, dots, ends[1]).down - ink_of(pixels, dots, ends[0]).down, WithinAbs(100, 0.1));
  }
}

TEST_CASE("the drill is laid true to size, along the line, its lip on the disk") {
  struct Case {
    const char* line;
    double diameter;
  };
  const auto one = GENERATE(Case{"grind 1/4 1018", 6.35}, Case{"grind 12.7mm 1018 --way four-facet", 12.7});
  INFO(one.line);
  const auto card = page::draw(document_of(one.line));
  const Folder folder;
  for (const char* name : {"FENCE", "WEDGE", "FLAT"}) {
    const int sheet = sheet_named(card, name);
    const Set set = set_on(card, sheet);
    std::vector<LineDrawn> sides;
    for (const auto& line : test::lines_of_pen(card, sheet, outline))
      if (test::length_in_mm(line) > 2 * one.diameter && test::angle_drawn(line, set.by) < 1e-6) sides.push_back(line);
    REQUIRE(sides.size() == 2);
    CHECK_THAT(apart_of_ink(by_poppler(folder, card, sheet, dpi), dots, sides[0], sides[1]),
               WithinAbs(one.diameter, 0.1));
    // The lip lies on the line of the face, from the touch to the left; the operator's side of it is the drill's.
    const auto lips = test::lines_of_pen(card, sheet, lip_pen);
    REQUIRE(lips.size() == 2); // the other is of the end view
    const LineDrawn& lip = lips[0];
    CHECK(lip.from.down == set.face.from.down);
    CHECK_THAT(in_mm(lip.to.down - set.face.from.down), WithinAbs(0, 1e-9));
    CHECK_THAT(in_mm(lip.from.right - lip.to.right),
               WithinAbs(0.5 * one.diameter / std::sin(swing_drawn(set) * degree), 1e-6));
  }
}

TEST_CASE("which lip lies uppermost and which way it is rolled: by turning the drill in space") {
  // The drill's own axes as a hold lays them: X along the disk to the right, Y into the disk, Z up. Its axis points
  // from the shank in the lower left to the disk; lip A stands out to its side, the flute over it; roll turns it in its
  // cutting direction. The lip must lie in the disk's face, to the left of the tip, its outer end up by the roll as it
  // is seen along the drill: so a sheet draws it.
  const auto [card, record] = picture_of("grind 1/4 1018");
  const Json facet = record["set"]["facets"][0];
  const double half = value(record["found"]["included_angle"]) / 2 * degree;
  struct Hold {
    const char* member;
    const char* sheet;
  };
  for (const auto& hold : {Hold{"wedge", "WEDGE"}, Hold{"flat", "FLAT"}}) {
    INFO(hold.sheet);
    const Json set = facet[hold.member];
    const double swing = value(set["swing"]) * degree;
    const double tilt = set.contains("tilt") ? value(set["tilt"]) * degree : 0;
    const double roll = value(set["roll"]) * degree;
    const std::array<double, 3> axis{std::cos(swing) * std::cos(tilt), std::sin(swing) * std::cos(tilt),
                                     std::sin(tilt)};
    const std::array<double, 3> aside{-std::sin(swing), std::cos(swing), 0};
    // Up from both: the axis times aside.
    const std::array<double, 3> up{axis[1] * aside[2] - axis[2] * aside[1], axis[2] * aside[0] - axis[0] * aside[2],
                                   axis[0] * aside[1] - axis[1] * aside[0]};
    std::array<double, 3> lip{};
    for (std::size_t i = 0; i < 3; ++i)
      lip[i] = std::sin(half) * (std::cos(roll) * aside[i] + std::sin(roll) * up[i]) - std::cos(half) * axis[i];
    CHECK_THAT(lip[1], WithinAbs(0, 1e-9)); // in the face
    CHECK(lip[0] < 0);                      // to the left
    if (std::string(hold.sheet) == "WEDGE")
      CHECK_THAT(lip[2], WithinAbs(0, 1e-9)); // truly level
    else
      CHECK(lip[2] > 0.1); // its outer end up

    // End on, from the disk: left is right. The heavy lip of that view points right and up by the roll.
    const int sheet = sheet_named(card, hold.sheet);
    const auto lips = test::lines_of_pen(card, sheet, lip_pen);
    REQUIRE(lips.size() == 2);
    CHECK_THAT(test::direction_drawn(lips[1]), WithinAbs(value(set["roll"]), 1e-6));
    CHECK(lettered(card, sheet, tenth(value(set["roll"]))));
  }
  // On a level rest the chisel edge that is ground stands upright.
  const int flat = sheet_named(card, "FLAT");
  const auto edges = test::lines_of_pen(card, flat, outline);
  const auto lip = test::lines_of_pen(card, flat, lip_pen)[1];
  const auto upright = std::count_if(edges.begin(), edges.end(), [&](const auto& edge) {
    return edge.from.right == lip.from.right && std::abs(in_mm(edge.from.right - edge.to.right)) < 1e-6;
  });
  CHECK(upright == 1);
}

TEST_CASE("a fixture's lines: wheel, pivot and drill at the record's angles and distances, by ink and as drawn") {
  const auto& line = GENERATE(as<std::string>{}, "grind 1/2 1018 --way cone", "grind 1/4 1018 --way cone",
                              "grind 10mm C360 --way cone --angle 90 --relief 12 --chisel 135",
                              "grind no60 303 --way cone --cone-half-angle 67"); // whose foot lies in the wheel
  INFO(line);
  const auto [card, record] = picture_of(line);
  const Json cone = record["set"]["cone"];
  const int sheet = sheet_named(card, "FIXTURE");
  const auto lines = test::lines_of_pen(card, sheet, heavy);
  REQUIRE(lines.size() > 3);
  const LineDrawn& face = lines[0];
  const LineDrawn& pivot = lines[1];
  const LineDrawn& drill = lines[2];
  const double half = value(cone["cone_half_angle"]);
  const double axis = value(cone["cone_axis_angle"]);
  CHECK_THAT(180 - test::angle_drawn(face, pivot), WithinAbs(half, 1e-6));
  CHECK_THAT(test::angle_drawn(pivot, drill), WithinAbs(axis, 1e-6));
  // From where the pivot meets the face to where the drill crosses it; from there on the drill to its tip.
  CHECK(pivot.from.down == face.from.down);
  const double down = in_mm(drill.from.down - pivot.from.down);
  const double right = in_mm(drill.from.right - pivot.from.right);
  // By the law of sines in the triangle of pierced place, foot and tip.
  const double foot_right = -value(cone["axis_distance"]) * std::cos(half * degree);
  const double foot_down = value(cone["axis_distance"]) * std::sin(half * degree);
  CHECK_THAT(right, WithinAbs(foot_right + value(cone["point_overhang"]) * std::cos((half + axis) * degree), 1e-6));
  CHECK_THAT(down, WithinAbs(foot_down - value(cone["point_overhang"]) * std::sin((half + axis) * degree), 1e-6));
  const Folder folder;
  const Pixels pixels = by_poppler(folder, card, sheet, dpi);
  CHECK_THAT(180 - angle_of_ink(pixels, dots, face, pivot), WithinAbs(half, 0.05));
  CHECK_THAT(angle_of_ink(pixels, dots, pivot, drill), WithinAbs(axis, 0.05));
  // Enlarged at the face: the letters of foot and tip stand within that view, under its title and over its legend.
  const auto begins = [&](const char* words) {
    const auto found = std::find_if(card.texts().begin(), card.texts().end(), [&](const auto& text) {
      return text.sheet == sheet && text.text.starts_with(words);
    });
    REQUIRE(found != card.texts().end());
    return found->ink;
  };
  const page::Box title = begins("At the face");
  const page::Box legend = begins("A  to foot");
  int letters = 0;
  for (const auto& text : card.texts()) {
    if (text.sheet != sheet || (text.text != "A" && text.text != "B")) continue;
    ++letters;
    CHECK(text.ink.left > title.left - mm(1));
    CHECK(text.ink.right() < title.left + mm(46));
    CHECK(text.ink.top > title.bottom());
    CHECK(text.ink.bottom() < legend.top);
  }
  CHECK(letters == 2);
  for (const auto& text :
       {"face to pivot " + tenth(half), "pivot to drill " + tenth(axis),
        "C  lip clock " + tenth(value(cone["lip_clock"])), "swing " + tenth(value(cone["swing_needed"]))})
    CHECK(lettered(card, sheet, text));
  CHECK(lettered(card, sheet, "then back off") == !cone.contains("swing_limit"));
  if (cone.contains("swing_limit")) CHECK(lettered(card, sheet, "STOP before " + tenth(value(cone["swing_limit"]))));
}

TEST_CASE(
    "a fixture end on: the pivot passes the axis by the skew, clocked from the lip, as an independent cone has it") {
  // Half inch, point 118, relief 12, chisel edge 130, half angle 45, web 1.8 mm: phi 14.8408, S 1.75667, beta 17.62,
  // d_c 9.98616, p 7.615; d 2.96954: reference case C02, an independent computation.
  const auto card =
      page::draw(document_of("grind 12.7mm 1018 --way cone --web 1.8mm --relief 12 --chisel 130 --cone-half-angle 45",
                             {"card", "a4", "metric"}));
  const int sheet = sheet_named(card, "FIXTURE");
  const auto lines = test::lines_of_pen(card, sheet, heavy);
  CHECK_THAT(180 - test::angle_drawn(lines[0], lines[1]), WithinAbs(45, 1e-3));
  CHECK_THAT(test::angle_drawn(lines[1], lines[2]), WithinAbs(14.8408, 1e-3));
  const auto lips = test::lines_of_pen(card, sheet, lip_pen);
  REQUIRE(lips.size() == 1);
  const LineDrawn& lip = lips[0];
  // The view's own scale, out of the lip: sqrt(R^2 - w^2) - w cot(50 deg) on the drill.
  const double scale = test::length_in_mm(lip) / (std::sqrt(6.35 * 6.35 - 0.81) - 0.75519);
  CHECK_THAT(scale, WithinAbs(std::round(scale * 2) / 2, 1e-3));
  // The heavy line that leans by the clock: lip level, so its own direction.
  std::vector<LineDrawn> pivots;
  for (const auto& line : lines)
    if (std::abs(test::direction_drawn(line) - 17.62) < 0.01) pivots.push_back(line);
  REQUIRE(pivots.size() == 1);
  // The axis of the drill lies half a web under the lip, sqrt(R^2 - w^2) left of its corner.
  const double axis_right = in_mm(lip.to.right) - scale * std::sqrt(6.35 * 6.35 - 0.81);
  const double axis_down = in_mm(lip.to.down) + scale * 0.9;
  const double along = 17.62 * degree;
  const double passes = (axis_right - in_mm(pivots[0].from.right)) * std::sin(along) +
                        (axis_down - in_mm(pivots[0].from.down)) * std::cos(along);
  CHECK_THAT(passes / scale, WithinAbs(1.75667, 2e-3));
  CHECK(lettered(card, sheet, "D  skew 1.757 mm"));
  CHECK(lettered(card, sheet, "A  to foot 9.986 mm"));
}
