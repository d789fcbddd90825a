// The card of a drill's point: as read against as wanted. Its angles are measured as they are drawn and by the ink of
// poppler and librsvg, its figures are the record's, and what nobody read is said.

#include <cmath>

#include <quillside/page/card.hpp>
#include <quillside/page/draw.hpp>

#include "../page_boxes.hpp"
#include "document_of.hpp"
#include "ink.hpp"
#include "words_on.hpp"

using namespace quillside;
using page::LineDrawn;
using test::degree;
using test::document_of;
using test::Folder;
using test::Json;
using test::lettered;
using test::Pixels;
using test::says;
using test::tenth;
using test::value;
using test::WithinAbs;

namespace {

constexpr double heavy = 0.55;  // as read
constexpr double dashed = 0.35; // as wanted
constexpr int dpi = 600;
constexpr double dots = dpi / 25.4;

const std::string nothing = "point 1/4 303";
const std::string halves = "point 1/4 303 --half-angles 58,61";
const std::string heights = "point 1/2 1018 --lip-height 0.006in";
const std::string flat = "point 12.7mm 1018 --way two-facet --web 1.8mm --lip-depth 3.66mm --relief 12";
const std::string good =
    "point 1/4 1018 --way cone --half-angles 59.0,59.0 --lip-height 0.0002in --relief 16 --chisel 130 --web 0.044in";
const std::string high_lip =
    "point 12.7mm 1018 --way four-facet --web 1.80mm --half-angles 59.0,59.0 --lip-lengths 6.52mm,7.10mm";

const std::vector<std::string>& every_point() {
  static const std::vector<std::string> all{
      nothing,
      halves,
      heights,
      flat,
      good,
      high_lip,
      "point no30 303 --gauge-angle 118 --light none,corner",
      "point 4.8mm C260 --way two-facet --web 0.95mm --relief 22 --lip-depth 1.00mm",
      "point 3/16 1018 --way two-facet --angle 118 --relief 26 --land-wear 0.35mm --margin-wear 0.4mm",
      "point 1/4 1018 --way cone --half-angles 58.9,59.1 --lip-height 0.0005in --web 0.044in --chisel 128 --drop "
      "0.005in "
      "--turn 10",
      "point 1in 1018 --half-angles 31,29",
      "point 0.5mm 303 --angle 135",
      "point 1/2 1018 --angle 140 --web 0.09in --trial-hole 0.506in --split --thinned"};
  return all;
}

/// Every line of one pen in the order it is drawn, without the sample of the key, which is level and 9 mm long.
std::vector<LineDrawn> lines_of(const page::Canvas& card, double pen) {
  auto all = test::lines_of_pen(card, 0, pen);
  std::erase_if(all, [](const auto& line) {
    const double length = test::length_in_mm(line);
    return line.from.down == line.to.down && (std::abs(length - 9) < 1e-6 || length > 100);
  });
  return all;
}

/// Lip from its outer corner inward: its half angle.
double half_of(const LineDrawn& lip) {
  return std::atan2(std::abs(in_mm(lip.to.right - lip.from.right)), in_mm(lip.from.down - lip.to.down)) / degree;
}
/// Under a level line that runs from the corner to the left.
double relief_of(const LineDrawn& flank) { return std::abs(180 - std::abs(test::direction_drawn(flank))); }

} // namespace

TEST_CASE("cards of points: texts inside and apart on every paper and in both units, and no line over the edge") {
  const auto& line = GENERATE(from_range(every_point()));
  const auto paper = GENERATE(as<std::string>{}, "a4", "letter", "tabloid");
  const auto units = GENERATE(as<std::string>{}, "inch", "metric");
  INFO(line << " on " << paper << " in " << units);
  const auto card = page::draw(document_of(line, {"card", paper, units}));
  test::hold_boxes(card, page::least_letters);
  CHECK(test::lines_over_edge(card) == 0);
}

TEST_CASE("a point that is kept: everything is drawn as read, between the ends of what is kept") {
  const auto record = test::answer_of(good);
  REQUIRE(record["verdict"] == "keep");
  const auto card = page::draw(document_of(good));
  const auto read = lines_of(card, heavy);
  REQUIRE(read.size() == 6); // two lips and the chisel edge end on, two lips from the side, a flank
  CHECK_THAT(test::angle_drawn(read[0], read[2]), WithinAbs(value(record["found"]["chisel_edge_angle"]), 1e-6));
  CHECK_THAT(half_of(read[3]) + half_of(read[4]), WithinAbs(value(record["found"]["included_angle"]), 1e-6));
  CHECK_THAT(relief_of(read[5]), WithinAbs(value(record["found"]["lip_relief"]), 1e-6));
  // Nothing is set for it: the ends of what is kept stand dashed on either side.
  CHECK(record["set"].empty());
  const auto wanted = lines_of(card, dashed);
  REQUIRE(wanted.size() == 2 + 4 + 2);
  const auto ends = [&](const char* item) {
    for (const auto& check : record["found"]["checks"])
      if (check["item"] == item) return std::pair{value(check["want_low"]), value(check["want_high"])};
    FAIL(item);
    return std::pair{0.0, 0.0};
  };
  CHECK_THAT(half_of(wanted[2]), WithinAbs(ends("included_angle").first / 2, 1e-6));
  CHECK_THAT(half_of(wanted[5]), WithinAbs(ends("included_angle").second / 2, 1e-6));
  CHECK_THAT(relief_of(wanted[6]), WithinAbs(ends("lip_relief").first, 1e-6));
  CHECK_THAT(relief_of(wanted[7]), WithinAbs(ends("lip_relief").second, 1e-6));
  CHECK_THAT(test::angle_drawn(read[0], wanted[0]), WithinAbs(ends("chisel_edge_angle").first, 1e-6));
  CHECK(
      lettered(card, "relief 16, want " + tenth(ends("lip_relief").first) + " to " + tenth(ends("lip_relief").second)));
  CHECK_FALSE(says(card, "not read,"));
}

TEST_CASE("half angles that differ: each lip at its own, what is wanted dashed; by ink too") {
  const auto record = test::answer_of(halves);
  REQUIRE(record["verdict"] == "regrind");
  const auto card = page::draw(document_of(halves));
  const auto read = lines_of(card, heavy);
  REQUIRE(read.size() == 2);
  CHECK_THAT(half_of(read[0]), WithinAbs(58, 1e-6)); // lip A
  CHECK_THAT(half_of(read[1]), WithinAbs(61, 1e-6));
  CHECK(read[0].from.right > read[1].from.right); // A on the right
  const auto wanted = lines_of(card, dashed);
  REQUIRE(wanted.size() == 4); // chisel edge, two lips, flank
  for (const std::size_t lip : {1U, 2U})
    CHECK_THAT(half_of(wanted[lip]), WithinAbs(value(record["set"]["included_angle"]) / 2, 1e-6));
  CHECK_THAT(relief_of(wanted[3]), WithinAbs(value(record["set"]["lip_relief"]), 1e-6));
  for (const auto& text :
       {"58", "61", "119", "point 119, want 135", "half angles A 58, B 61", "chisel edge not read, want 130",
        "relief not read, want 14", "lip heights not read", "web not read, drawn as 0.0440"})
    CHECK(lettered(card, text));

  const Folder folder;
  const Pixels pdf = test::by_poppler(folder, card, 0, dpi);
  const Pixels svg = svg_pixels(folder, folder.write("a.svg", card.picture(page::PictureKind::svg, {"", ""})), dpi);
  REQUIRE(card.sheets() == 1);
  for (const auto* pixels : {&pdf, &svg}) {
    // Each runs from its outer corner inward: between them is what the two half angles leave of half a turn and more.
    CHECK_THAT(angle_of_ink(*pixels, dots, read[0], read[1]), WithinAbs(119, 0.05));
    CHECK_THAT(90 - std::abs(ink_of(*pixels, dots, read[1]).direction), WithinAbs(61, 0.05));
  }
}

TEST_CASE("a flat point as its solid is: chisel edge, web and lips end on, a heel that rubs") {
  // 12.7 mm, web 1.8, 118, relief 12, one flat: chisel edge 102.089 and 1.84082 long, heel clear to 40.4745:
  // reference cases P01 and D01, independent computations. The lip depth is read as 3.66 for 3.66112.
  const auto record = test::answer_of(flat);
  REQUIRE(record["verdict"] == "regrind");
  const auto card = page::draw(document_of(flat, {"card", "a4", "metric"}));
  const auto read = lines_of(card, heavy);
  REQUIRE(read.size() == 6);
  CHECK_THAT(test::angle_drawn(read[0], read[2]), WithinAbs(102.089, 0.05));
  // How large, out of the web: the two lips lie it apart.
  const double scale = in_mm(read[1].from.down - read[0].from.down) / 1.8;
  CHECK_THAT(scale, WithinAbs(std::round(scale * 4) / 4, 1e-6));
  CHECK(says(card, "End and side drawn " + std::to_string(scale).substr(0, 3)));
  CHECK_THAT(test::length_in_mm(read[2]) / scale, WithinAbs(1.84082, 0.002));
  CHECK_THAT(in_mm(read[0].to.right - read[1].to.right) / scale, WithinAbs(2 * std::sqrt(6.35 * 6.35 - 0.81), 1e-6));
  CHECK_THAT(in_mm(read[3].from.right - read[4].from.right) / scale, WithinAbs(12.7, 1e-6));

  // The black arc: from where the heel clears to the end of the land, seen from the axis.
  const auto rubs = test::lines_of_pen(card, 0, 1.2);
  REQUIRE_FALSE(rubs.empty());
  const double right = in_mm(read[0].to.right) - scale * std::sqrt(6.35 * 6.35 - 0.81);
  const double down = in_mm(read[0].to.down) + scale * 0.9;
  const auto behind = [&](const page::Spot& spot) {
    const double corner = std::asin(0.9 / 6.35) / degree;
    return corner - std::atan2(down - in_mm(spot.down), in_mm(spot.right) - right) / degree;
  };
  CHECK_THAT(behind(rubs.back().to), WithinAbs(40.4745, 0.1));
  CHECK_THAT(behind(rubs.front().from), WithinAbs(80, 1e-6));
  CHECK(lettered(card, "the black arc behind lip A rubs"));
  CHECK(lettered(card, "heel clear to 40.5 of 80"));
  CHECK(lettered(card, "web 1.800 mm"));
}

TEST_CASE("lips of two heights: drawn so many times larger, and that is said; the higher one is the record's") {
  const auto drawn = [](const page::Canvas& card) {
    // Outer corners, on the sides of the drill: lip A starts on the right.
    std::vector<LineDrawn> sides;
    for (const auto& line : test::lines_of_pen(card, 0, 0.12))
      if (line.from.right == line.to.right && test::length_in_mm(line) > 12) sides.push_back(line);
    REQUIRE(sides.size() >= 2);
    return in_mm(sides[1].from.down - sides[0].from.down); // B lower than A
  };
  const auto higher = test::answer_of(high_lip);
  REQUIRE(higher["verdict"] == "regrind");
  const auto card = page::draw(document_of(high_lip, {"card", "a4", "metric"}));
  const double difference = value(higher["found"]["lip_height_difference"]);
  std::string times;
  for (const auto& text : card.texts())
    if (text.text.starts_with("drawn ")) times = text.text.substr(6);
  REQUIRE_FALSE(times.empty());
  CHECK_THAT(drawn(card), WithinAbs(std::stod(times) * difference, 1e-6));
  CHECK(drawn(card) > 2); // can be seen
  CHECK(higher["found"]["checks"].dump().find("\"lip\":\"A\"") != std::string::npos);
  CHECK(says(card, "lip A higher by " + std::to_string(std::round(difference * 1000) / 1000).substr(0, 5) + " mm"));

  const auto one = page::draw(document_of(heights));
  CHECK(says(one, "higher by 0.0060"));
  CHECK_THAT(drawn(one), WithinAbs(25 * 0.006 * 25.4, 1e-6));
  CHECK(says(one, "drawn 25 times its size"));
}

TEST_CASE("of a point nobody measured only what is wanted is drawn, and every reading is missed") {
  const auto record = test::answer_of(nothing);
  REQUIRE(record["verdict"] == "measure again");
  const auto card = page::draw(document_of(nothing));
  CHECK(lines_of(card, heavy).empty());
  const auto wanted = lines_of(card, dashed);
  REQUIRE(wanted.size() == 4);
  CHECK_THAT(half_of(wanted[1]), WithinAbs(67.5, 1e-6));
  for (const auto& text : {"point not read, want 135", "half angles not read", "lip heights not read",
                           "chisel edge not read, want 130", "relief not read, want 14", "heel not known"})
    CHECK(lettered(card, text));
}

TEST_CASE("the figures on a card are those of the record of the same ask") {
  const auto& line = GENERATE(from_range(every_point()));
  INFO(line);
  const auto record = test::answer_of(line);
  const auto card = page::draw(document_of(line));
  const Json& found = record["found"];
  const Json& set = record["set"];
  const auto told = [&](const char* what, const char* member) {
    std::string text = std::string(what) + (found.contains(member) ? " " + tenth(value(found[member])) : " not read");
    if (set.contains(member)) text += ", want " + tenth(value(set[member]));
    INFO(text);
    CHECK(says(card, text));
  };
  told("point", "included_angle");
  told("relief", "lip_relief");
  told("chisel edge", "chisel_edge_angle");
  if (found.contains("half_angles"))
    CHECK(says(card, "half angles A " + tenth(value(found["half_angles"][0])) + ", B " +
                         tenth(value(found["half_angles"][1]))));
}
