// Sheets of gauges, measured on the pixels that other programs make of them: poppler of the PDF, librsvg of the SVG,
// and our own PNG. What is drawn says where to look; what is measured is the ink.

#include <quillside/page/draw.hpp>
#include <quillside/page/gauge.hpp>
#include <quillside/quantity/angle.hpp>

#include "../page_boxes.hpp"
#include "document_of.hpp"
#include "ink.hpp"

using namespace quillside;
using page::LineDrawn;
using page::Spot;
using test::Folder;
using test::length_in_mm;
using test::Pixels;
using test::WithinAbs;

namespace {

constexpr int dpi = 300;
constexpr double dots = dpi / 25.4; // to the millimetre

struct Point {
  double x;
  double y;
};

/// The middle of the ink on a line square to this one, so far along it [mm]; the line is looked for within 0.35 mm
/// on either side.
Point ink_across(const Pixels& pixels, const LineDrawn& line, double along) {
  const double whole = length_in_mm(line);
  const double ux = in_mm(line.to.right - line.from.right) / whole;
  const double uy = in_mm(line.to.down - line.from.down) / whole;
  const Point at{in_mm(line.from.right) + ux * along, in_mm(line.from.down) + uy * along};
  double sum = 0;
  double moment = 0;
  for (double off = -0.35; off <= 0.35; off += 0.01) {
    const double dark = pixels.dark_at((at.x - uy * off) * dots, (at.y + ux * off) * dots);
    sum += dark;
    moment += dark * off;
  }
  REQUIRE(sum > 1);
  return {at.x - uy * moment / sum, at.y + ux * moment / sum};
}

/// Direction of the ink along a line [deg, against the clock], by least squares square to it. Looked at in the middle
/// between whole millimetres, where no mark of a scale begins, and well off the ends that it shares with others.
double direction_of_ink(const Pixels& pixels, const LineDrawn& line) {
  std::vector<Point> points;
  for (double along = 3.5; along < length_in_mm(line) - 3; along += 1)
    for (const double more : {-0.1, 0.0, 0.1}) points.push_back(ink_across(pixels, line, along + more));
  Point mean{0, 0};
  for (const auto& point : points) {
    mean.x += point.x / static_cast<double>(points.size());
    mean.y += point.y / static_cast<double>(points.size());
  }
  double xx = 0;
  double xy = 0;
  double yy = 0;
  for (const auto& point : points) {
    xx += (point.x - mean.x) * (point.x - mean.x);
    xy += (point.x - mean.x) * (point.y - mean.y);
    yy += (point.y - mean.y) * (point.y - mean.y);
  }
  return in_degrees(radians(0.5 * std::atan2(-2 * xy, xx - yy)));
}

/// Angle between two lines of ink, 0 to 90 deg.
double angle_between(const Pixels& pixels, const LineDrawn& a, const LineDrawn& b) {
  const double apart = std::fmod(std::abs(direction_of_ink(pixels, a) - direction_of_ink(pixels, b)), 180);
  return std::min(apart, 180 - apart);
}

/// The corners of the drawing that are cut out: outlines, each as its lines one after another.
std::vector<LineDrawn> lines_of_length(const page::Canvas& canvas, int sheet, double length) {
  std::vector<LineDrawn> all;
  for (const auto& line : canvas.lines())
    if (line.sheet == sheet && std::abs(length_in_mm(line) - length) < 1e-6 && line.width > mm(0.15))
      all.push_back(line);
  return all;
}

struct Drawn {
  page::Canvas canvas;
  std::vector<Pixels> pictures; // of the first sheet
};

Drawn drawn(const Folder& folder, const std::string& line, const test::Wanted& wanted) {
  page::Canvas canvas = page::draw(test::document_of(line, wanted));
  std::vector<Pixels> pictures;
  pictures.push_back(test::by_poppler(folder, canvas, 0, dpi));
  pictures.push_back(svg_pixels(folder, folder.write("a.svg", canvas.picture(page::PictureKind::svg, {"", ""})), dpi));
  pictures.emplace_back(folder.write("a.png", canvas.picture(page::PictureKind::png, {"", ""})));
  return {std::move(canvas), std::move(pictures)};
}

} // namespace

TEST_CASE("the V of each angle is true to 0.05 deg on PDF, SVG and PNG, and its set square to half of it") {
  const Folder folder;
  const auto paper = GENERATE(as<std::string>{}, "a4", "letter");
  const std::vector<double> angles{90, 118, 135, 20, 170};
  const auto [canvas, pictures] = drawn(folder, "gauge --angles 90,118,135,20,170", {"gauge", paper, "inch"});
  const auto lips = lines_of_length(canvas, 0, 14);
  REQUIRE(lips.size() == 2 * angles.size());
  for (const auto& picture : pictures)
    for (std::size_t i = 0; i < angles.size(); ++i) {
      INFO(angles[i]);
      // Two lines cross at an angle and at its supplement.
      const double between = angle_between(picture, lips[2 * i], lips[2 * i + 1]);
      CHECK_THAT(between, WithinAbs(std::min(angles[i], 180 - angles[i]), 0.05));
    }
  // The set square: its base is 38 mm, and its long side goes from the base's start to the top.
  const auto bases = lines_of_length(canvas, 0, 38);
  std::vector<std::pair<LineDrawn, LineDrawn>> squares;
  for (std::size_t i = 0; i + 2 < canvas.lines().size(); ++i)
    if (std::abs(length_in_mm(canvas.lines()[i]) - 38) < 1e-6 &&
        canvas.lines()[i].to.down == canvas.lines()[i].from.down && canvas.lines()[i].width > mm(0.15) &&
        canvas.lines()[i + 2].to.right == canvas.lines()[i].from.right)
      squares.emplace_back(canvas.lines()[i], canvas.lines()[i + 2]);
  REQUIRE(squares.size() == angles.size());
  for (const auto& picture : pictures)
    for (std::size_t i = 0; i < angles.size(); ++i)
      CHECK_THAT(angle_between(picture, squares[i].first, squares[i].second), WithinAbs(angles[i] / 2, 0.05));
}

TEST_CASE("the rulers are true to 0.1 mm, across and down: 150 mm, and 6 in, on PDF, SVG and PNG") {
  const Folder folder;
  const auto paper = GENERATE(as<std::string>{}, "a4", "letter", "a3", "tabloid");
  const auto [canvas, pictures] = drawn(folder, "gauge --angles 118 --table-tilt 12", {"gauge", paper, "metric"});
  // The long marks: of 10 mm, 4.5 mm high; of an inch, 5 mm.
  const auto marks = [&](double high, bool across) {
    std::vector<LineDrawn> all;
    for (const auto& line : canvas.lines()) {
      const Length off = across ? line.to.right - line.from.right : line.to.down - line.from.down;
      if (std::abs(length_in_mm(line) - high) < 1e-6 && std::abs(in_mm(off)) < 1e-6 && line.width < mm(0.15))
        all.push_back(line);
    }
    return all;
  };
  for (const bool across : {true, false}) {
    auto tens = marks(4.5, across);
    const auto whole_inches = marks(5, across);
    // The disk of degrees has marks of 4.5 mm too; those that stand or lie straight are at 90, 270 or 0, 180 deg.
    REQUIRE(tens.size() == 16 + 2);
    REQUIRE(whole_inches.size() == 7);
    tens.erase(tens.begin(), tens.begin() + 2);
    for (const auto& picture : pictures) {
      INFO(paper << (across ? " across" : " down"));
      // Near its far end only the long marks are there.
      const auto place = [&](const LineDrawn& mark) {
        const Point ink = ink_across(picture, mark, length_in_mm(mark) - 0.4);
        return across ? ink.x : -ink.y;
      };
      for (std::size_t i = 1; i < tens.size(); ++i)
        CHECK_THAT(place(tens[i]) - place(tens[0]), WithinAbs(10.0 * static_cast<double>(i), 0.1));
      CHECK_THAT(place(whole_inches[6]) - place(whole_inches[0]), WithinAbs(152.4, 0.1));
      CHECK_THAT(place(whole_inches[0]), WithinAbs(place(tens[0]), 0.05));
    }
  }
}

TEST_CASE("the wedge has its tilt and its rise: by ink, and the same as the record says") {
  const Folder folder;
  const auto tilt = GENERATE(7.2, 23.0, 45.0);
  const auto [canvas, pictures] =
      drawn(folder, "gauge --angles 118 --table-tilt " + std::to_string(tilt), {"gauge", "a4", "inch"});
  const auto base = lines_of_length(canvas, 0, 100);
  REQUIRE_FALSE(base.empty());
  const auto slope = lines_of_length(canvas, 0, 100 / std::cos(tilt * 3.14159265358979 / 180));
  const auto rise = lines_of_length(canvas, 0, 100 * std::tan(tilt * 3.14159265358979 / 180));
  REQUIRE(slope.size() == 1);
  REQUIRE_FALSE(rise.empty());
  for (const auto& picture : pictures)
    CHECK_THAT(angle_between(picture, base.front(), slope.front()), WithinAbs(tilt, 0.05));
}

TEST_CASE("the disk of degrees: its marks stand at whole degrees, by ink") {
  const Folder folder;
  const auto [canvas, pictures] = drawn(folder, "gauge --angles 118 --table-tilt 12", {"gauge", "a4", "inch"});
  // Marks of 2, 3.2 and 4.5 mm in a ring: found by their count in the order they are drawn.
  std::vector<LineDrawn> marks;
  for (const auto& line : canvas.lines()) {
    const double length = length_in_mm(line);
    const bool mark = std::abs(length - 2) < 1e-6 || std::abs(length - 3.2) < 1e-6 || std::abs(length - 4.5) < 1e-6;
    if (mark && line.width < mm(0.15) && marks.size() < 360) marks.push_back(line);
  }
  REQUIRE(marks.size() == 360);
  for (const auto& picture : pictures) {
    const Point right = ink_across(picture, marks[0], 1);
    const Point left = ink_across(picture, marks[180], 1);
    const Point middle{(right.x + left.x) / 2, (right.y + left.y) / 2};
    CHECK_THAT(right.x - left.x, WithinAbs(70, 0.1)); // 1 mm inside a radius of 36
    for (const int degree : {30, 59, 90, 135, 200, 271, 330}) {
      const Point mark = ink_across(picture, marks[static_cast<std::size_t>(degree)], 1);
      const double measured = std::atan2(middle.y - mark.y, mark.x - middle.x) * 180 / 3.14159265358979;
      // 0.1 deg is 0.06 mm at that radius, three quarters of a dot.
      CHECK_THAT(std::remainder(measured - degree, 360), WithinAbs(0, 0.1));
    }
  }
}

TEST_CASE("two hexagons leave 120 deg, an octagon and a square 135, by ink") {
  const Folder folder;
  const auto [canvas, pictures] = drawn(folder, "gauge --angles 118 --table-tilt 12", {"gauge", "a4", "inch"});
  const auto flats = lines_of_length(canvas, 0, 9);
  REQUIRE(flats.size() == 6 + 6 + 8 + 4);
  // The first side of each is the flat they share; the second goes on from the corner of the notch.
  for (const auto& picture : pictures) {
    CHECK_THAT(angle_between(picture, flats[1], flats[7]), WithinAbs(60, 0.2));   // supplement of 120
    CHECK_THAT(angle_between(picture, flats[13], flats[21]), WithinAbs(45, 0.2)); // supplement of 135
  }
}

TEST_CASE("sheets of gauges: texts inside and apart, however many angles; each lettered with its own") {
  const auto paper = GENERATE(as<std::string>{}, "a4", "letter", "a3", "tabloid");
  const auto ask = GENERATE(
      as<std::string>{}, "gauge", "gauge --angles 118", "gauge --angles 117.25,118,118.5,20,170 --table-tilt 45",
      "gauge --angles "
      "20,25,30,35,40,45,50,55,60,65,70,75,80,85,90,95,100,105,110,115,118,120,125,130,135,140,150,160,170");
  INFO(ask << " on " << paper);
  const auto document = test::document_of(ask, {"gauge", paper, "inch"});
  const auto canvas = page::draw(document);
  test::hold_boxes(canvas, page::least_gauge_letters);
  const Value* angles = find(document.answer.findings, "angles");
  for (const auto& angle : std::get<std::vector<Value>>(angles->held)) {
    const double value = std::get<Measure>(angle.held).value;
    const auto lettered = std::count_if(canvas.texts().begin(), canvas.texts().end(), [&](const auto& text) {
      return text.height == mm(5) && std::abs(std::stod(text.text) - value) < 0.001;
    });
    CHECK(lettered == 1);
  }
  // Rulers on every sheet.
  const auto proofs = std::count_if(canvas.texts().begin(), canvas.texts().end(),
                                    [](const auto& text) { return text.text.starts_with("Print at 100 %. Cut"); });
  CHECK(proofs == canvas.sheets());
  if (document.answer.inputs.front().text && document.answer.inputs.front().text->size() > 60 && paper == "letter")
    CHECK(canvas.sheets() > 2);
}

TEST_CASE("no line of a sheet of gauges runs over its edge") {
  const auto canvas =
      page::draw(test::document_of("gauge --angles 20,90,118,170 --table-tilt 45", {"gauge", "letter", "inch"}));
  for (const auto& line : canvas.lines())
    for (const auto& end : {line.from, line.to}) {
      CHECK(end.right > mm(5));
      CHECK(end.down > mm(5));
      CHECK(end.right < canvas.sheet().width - mm(5));
      CHECK(end.down < canvas.sheet().height - mm(5));
    }
}
