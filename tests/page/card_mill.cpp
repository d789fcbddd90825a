// The curve on the card of an end mill: its points are single asks, its limits stand where those asks reach them.

#include <quillside/page/card.hpp>
#include <quillside/page/draw.hpp>
#include <quillside/words/print.hpp>

#include <algorithm>
#include <cmath>

#include "../page_boxes.hpp"
#include "drawn_document.hpp"
#include "words_on.hpp"

using namespace quillside;
using test::answer_of;
using test::document_text;
using test::drawn_document;
using test::in_mm_words;
using test::Json;
using test::value;
using test::why_value;
using test::WithinAbs;
using test::WithinRel;

namespace {

const std::vector<std::string>& passes() {
  static const std::vector<std::string> all{"mill 1/8 416 --machine bench",
                                            "mill 1/8 416 --machine bench --depth 0.050",
                                            "mill 1/8 416 --machine bench --depth 0.010",
                                            "mill 1/8 C360 --machine bench --width 0.02 --overhang 1.5in",
                                            "mill 6mm C360 --width 1mm --flutes 3",
                                            "mill 1/2 C360 --machine bench",
                                            "mill 1/2 C360 --machine bench --width 1mm --wall-allow 5thou",
                                            "mill 1/4 C360 --cutter carbide --width 0.02",
                                            "mill 0.5mm C360 --machine bench",
                                            "mill 1/32 304 --cutter carbide",
                                            "mill 1in 1018 --flutes 4 --machine bench"};
  return all;
}

double high_of(const Json& of, const char* name) { return of.at(name).value("high", value(of, name)); }

/// The picture read back: what a place on the sheet stands for, by the figures on its axes.
class Picture {
public:
  explicit Picture(const std::string& ask) : document_(drawn_document(ask)), canvas_(page::draw(document_)) {
    for (const auto& text : canvas_.texts()) {
      if (text.text == "deep, in") deep_ = text;
      if (text.text == "off, in") off_ = text;
    }
    REQUIRE_FALSE(deep_.text.empty());
    // Every figure of an axis but 0 has a thin line through the picture.
    for (const auto& line : lines(0.15)) {
      const bool upright = line.from.right == line.to.right;
      const double place = in_mm(upright ? line.from.right : line.from.down);
      for (const auto& text : canvas_.texts()) {
        if (text.sheet != deep_.sheet || text.text.find_first_not_of("0123456789.") != std::string::npos) continue;
        const double across = in_mm(text.ink.left + 0.5 * text.ink.width);
        const double down = in_mm(text.ink.top + 0.5 * text.ink.height);
        if (upright && std::abs(across - place) < 1 && std::abs(down - in_mm(deep_.ink.top)) < 3)
          deeps_.emplace_back(std::stod(text.text) * 25.4, place);
        if (!upright && std::abs(down - place) < 1 && text.ink.right() < line.from.right)
          offs_.emplace_back(std::stod(text.text) * 25.4, place);
      }
    }
    std::sort(deeps_.begin(), deeps_.end());
    std::sort(offs_.begin(), offs_.end());
    REQUIRE(deeps_.size() > 1);
    REQUIRE(offs_.size() > 1);
  }

  /// Depth and offset at a place, from the first and the last figure of each axis [mm].
  [[nodiscard]] double depth_at(Length right) const { return along(deeps_, in_mm(right)); }
  [[nodiscard]] double off_at(Length down) const { return along(offs_, in_mm(down)); }
  /// What 0.1 mm of the paper is on each axis.
  [[nodiscard]] double depth_tolerance() const { return std::abs(depth_at(mm(0.1)) - depth_at(mm(0))); }
  [[nodiscard]] double off_tolerance() const { return std::abs(off_at(mm(0.1)) - off_at(mm(0))); }

  /// The pieces of the lines drawn with this pen in the picture's sheet, under its title.
  [[nodiscard]] std::vector<page::LineDrawn> lines(double pen) const {
    std::vector<page::LineDrawn> all;
    for (const auto& line : canvas_.lines())
      if (line.sheet == deep_.sheet && std::abs(in_mm(line.width) - pen) < 1e-9 &&
          line.from.down > off_.ink.top - mm(30) && line.to.down < deep_.ink.bottom())
        all.push_back(line);
    return all;
  }
  [[nodiscard]] std::vector<page::LineDrawn> upright(double pen) const {
    auto all = lines(pen);
    std::erase_if(all, [](const auto& line) { return line.from.right != line.to.right; });
    return all;
  }
  /// Depth of the upright line under this name.
  [[nodiscard]] double depth_of(const std::string& name) const {
    for (const auto& text : canvas_.texts()) {
      if (!text.text.starts_with(name)) continue;
      for (const double pen : {0.6, 0.3, 0.25})
        for (const auto& line : upright(pen))
          if (std::abs(in_mm(text.ink.left - line.from.right) - 1) < 0.7 && line.from.down < text.ink.bottom())
            return depth_at(line.from.right);
    }
    FAIL("no line under '" << name << "'");
    return 0;
  }
  [[nodiscard]] bool says(const std::string& words) const { return test::says(canvas_, words); }
  [[nodiscard]] const page::Canvas& canvas() const { return canvas_; }

private:
  using Ticks = std::vector<std::pair<double, double>>; // what is lettered, where it stands
  static double along(const Ticks& ticks, double at) {
    const auto& [first, here] = ticks.front();
    const auto& [last, there] = ticks.back();
    return first + (last - first) * (at - here) / (there - here);
  }

  page::Document document_;
  page::Canvas canvas_;
  page::TextDrawn deep_;
  page::TextDrawn off_;
  Ticks deeps_;
  Ticks offs_;
};

} // namespace

TEST_CASE("depths of a pass: each is what the ask says with that depth") {
  const auto& line = GENERATE(from_range(passes()));
  INFO(line);
  const Json document = Json::parse(document_text(line));
  REQUIRE(document["more"].size() > 20);
  std::string without = line;
  if (const auto at = without.find(" --depth"); at != std::string::npos) without.erase(at);
  double last = 0;
  for (const auto& point : document["more"]) {
    const double depth = value(point["inputs"], "depth");
    CHECK(depth > last);
    last = depth;
    const Json alone = answer_of(without + " --depth " + in_mm_words(depth));
    CHECK(point["found"] == alone["found"]);
    CHECK(point["set"] == alone["set"]);
    CHECK(point["verdict"] == alone["verdict"]);
  }
  // No further than the flutes, and past the deepest pass that can be right, or to them.
  const double flutes = value(document["answer"]["inputs"], "flute_length");
  CHECK(last <= flutes * (1 + 1e-12));
  const double likely = high_of(answer_of(without)["set"], "depth_of_cut");
  CHECK((last > likely || last > flutes * (1 - 1e-9)));
}

TEST_CASE("depths of a pass: the deepest that keeps its limits is among them, and those where a limit is reached") {
  // Second way: the deepest pass comes from the model's own solving, the points at which stress and power reach their
  // limits from asking at one depth after another. Where stress or power binds the two are one, to a thousandth of the
  // reach.
  const auto& [line, finding, step] = GENERATE(table<std::string, std::string, std::string>(
      {{"mill 1/8 416 --machine bench", "root_stress", "stress to stay under"},
       {"mill 1/2 C360 --machine bench", "power", "power of the machine"}}));
  const Json document = Json::parse(document_text(line));
  const double deepest = value(document["answer"]["set"], "depth_of_cut");
  const double limit = why_value(document["answer"], step);
  REQUIRE(limit > 0);
  bool there = false;
  double first = 0;
  for (const auto& point : document["more"]) {
    const double depth = value(point["inputs"], "depth");
    there = there || depth == deepest;
    if (first == 0 && high_of(point["found"], finding.c_str()) >= limit) first = depth;
  }
  CHECK(there);
  const double reach = value(document["more"].back()["inputs"], "depth");
  CHECK_THAT(first, WithinAbs(deepest, 0.001 * deepest + 0.001 * reach));
}

TEST_CASE(
    "depths of a pass: where a limit is reached but another binds, it is reached there and no thousandth sooner") {
  const auto& [line, finding, step] = GENERATE(table<std::string, std::string, std::string>(
      {{"mill 3/8 C360 --machine bench --overhang 1.5in", "root_stress", "stress to stay under"},
       {"mill 3/8 C360 --machine bench --overhang 1.5in", "power", "power of the machine"},
       {"mill 3/8 1018 --machine bench", "power", "power of the machine"}}));
  INFO(line << " " << finding);
  const Json document = Json::parse(document_text(line));
  const double limit = why_value(document["answer"], step);
  REQUIRE(limit > 0);
  double first = 0;
  for (const auto& point : document["more"])
    if (first == 0 && high_of(point["found"], finding.c_str()) >= limit) first = value(point["inputs"], "depth");
  REQUIRE(first > 1.01 * value(document["answer"]["set"], "depth_of_cut"));
  const double sooner = first - 0.001 * value(document["more"].back()["inputs"], "depth");
  const Json alone = answer_of(line + " --depth " + in_mm_words(sooner));
  CHECK(high_of(alone["found"], finding.c_str()) < limit);
}

TEST_CASE("depths of a pass: none where the answer is do not, or where no page tells of the force") {
  CHECK(Json::parse(document_text("mill 1/8 416 --machine bench --depth 0.2", {}, 1))["more"].empty());
  CHECK(Json::parse(document_text("mill 1/8 416 --machine pillar", {}, 1))["more"].empty());
  // An ask that draws nothing is not asked again and again: what is printed is one answer.
  CHECK(test::quillside("mill 1/8 416 --machine bench").out ==
        test::quillside("mill 1/8 416 --machine bench --card - --as text").out);
}

TEST_CASE("card of mill: texts inside and apart, on every paper and in both units") {
  const auto& line = GENERATE(from_range(passes()));
  const auto paper = GENERATE(as<std::string>{}, "a4", "letter");
  const auto units = GENERATE(as<std::string>{}, "inch", "metric");
  INFO(line << " on " << paper << " in " << units);
  test::hold_boxes(page::draw(drawn_document(line, {"card", paper, units})), page::least_letters);
}

TEST_CASE("card of mill: the curve goes through each answer, read off the picture's own axes") {
  // Tolerance: 0.1 mm of the paper.
  const auto line = GENERATE(as<std::string>{}, "mill 1/8 416 --machine bench",
                             "mill 1/8 C360 --machine bench --width 0.02 --overhang 1.5in");
  INFO(line);
  const Picture picture(line);
  const Json document = Json::parse(document_text(line));
  auto curve = picture.lines(0.6);
  std::erase_if(curve, [](const auto& piece) { return piece.from.right == piece.to.right; });
  REQUIRE(curve.size() == document["more"].size());
  for (std::size_t i = 0; i < curve.size(); ++i) {
    const Json& point = document["more"][i];
    CHECK_THAT(picture.depth_at(curve[i].to.right),
               WithinAbs(value(point["inputs"], "depth"), picture.depth_tolerance()));
    CHECK_THAT(picture.off_at(curve[i].to.down),
               WithinAbs(value(point["found"], "wall_error"), picture.off_tolerance()));
  }
}

TEST_CASE("card of mill: the depth that is set, the one asked for and the limits stand at their depths, by name") {
  const std::string line = "mill 1/8 416 --machine bench --depth 0.050";
  const Picture picture(line);
  const Json answer = answer_of(line);
  const double tolerance = picture.depth_tolerance();
  CHECK_THAT(picture.depth_of("SET 0.0190"), WithinAbs(value(answer["set"], "depth_of_cut"), tolerance));
  CHECK_THAT(picture.depth_of("asked 0.0500"), WithinAbs(0.050 * 25.4, tolerance));
  CHECK_THAT(picture.depth_of("0.0406 if no harder"), WithinAbs(high_of(answer["set"], "depth_of_cut"), tolerance));
  // Strength binds: its line stands at the depth that is set.
  CHECK_THAT(picture.depth_of("cutter's strength"), WithinAbs(value(answer["set"], "depth_of_cut"), tolerance));
  // The machine's power and the flutes are further than that, and are named.
  CHECK(picture.says("Not reached so deep"));
  CHECK(picture.says("350 W"));
  CHECK(picture.says("flutes, 0.3750"));
  const Picture power("mill 1/2 C360 --machine bench");
  CHECK_THAT(
      power.depth_of("machine's power"),
      WithinAbs(value(answer_of("mill 1/2 C360 --machine bench")["set"], "depth_of_cut"), power.depth_tolerance()));
  const Picture flutes("mill 1/4 C360 --cutter carbide --width 0.02");
  CHECK_THAT(flutes.depth_of("flutes end"), WithinAbs(0.75 * 25.4, flutes.depth_tolerance()));
  CHECK(flutes.says("machine's power is not known"));
}

TEST_CASE("card of mill: what a wall may be off is a level line, and the curve's doubt meets it where walls bind") {
  const std::string line = "mill 1/8 C360 --machine bench --width 0.02 --overhang 1.5in";
  const Picture picture(line);
  const Json answer = answer_of(line);
  REQUIRE(answer["found"]["limited_by"] == "wall");
  double level = -1;
  for (const auto& one : picture.lines(0.3))
    if (one.from.down == one.to.down && in_mm(one.to.right - one.from.right) > 40)
      level = picture.off_at(one.from.down);
  CHECK_THAT(level, WithinAbs(0.001 * 25.4, picture.off_tolerance()));
  CHECK(picture.says("a wall may be off 0.0010"));
  // At the depth that is set the high end of the doubt is what is allowed (the model stops a thousandth short).
  CHECK_THAT(high_of(answer["found"], "wall_error"), WithinRel(0.0254, 0.005));
}

TEST_CASE("card of mill: under the picture each verdict runs as far as the answers say it") {
  const std::string line = "mill 1/8 416 --machine bench";
  const Picture picture(line);
  const Json document = Json::parse(document_text(line));
  // The frames of the strip: upright lines of the plain pen under the axis; their places are where verdicts change.
  std::vector<double> changes;
  std::string verdict;
  double before = 0;
  for (const auto& point : document["more"]) {
    if (!verdict.empty() && point["verdict"] != verdict) changes.push_back(before);
    verdict = point["verdict"];
    before = value(point["inputs"], "depth");
  }
  REQUIRE(changes.size() == 2);
  CHECK_THAT(changes[0], WithinAbs(value(document["answer"]["set"], "depth_of_cut"), 1e-9));
  for (const double change : changes) {
    const auto frames = picture.upright(0.25);
    const bool there = std::any_of(frames.begin(), frames.end(), [&](const auto& frame) {
      return std::abs(picture.depth_at(frame.from.right) - change) < picture.depth_tolerance();
    });
    CHECK(there);
  }
  CHECK(picture.says("back off"));
  CHECK(picture.says("do not"));
}

TEST_CASE("card of mill: no curve for do not, and the card says so") {
  const auto card = page::draw(drawn_document("mill 1/8 416 --machine bench --depth 0.2", {}, 1));
  CHECK(test::says(card, "No curve"));
  CHECK_FALSE(test::says(card, "deep, in"));
  CHECK_FALSE(test::says(card, "SET"));
  test::hold_boxes(card, page::least_letters);
}
