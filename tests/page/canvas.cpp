// The canvas: what it draws is where it says, in every kind of picture; and the boxes that pages are held by.

#include <cstring>

#include <quillside/page/canvas.hpp>
#include <quillside/words/fault.hpp>

#include "../page_boxes.hpp"
#include "tools.hpp"

using namespace quillside;
using page::Canvas;
using page::PictureKind;
using test::Folder;
using test::Pixels;
using test::WithinAbs;

namespace {

const Sheet small_sheet{mm(60), mm(40)};

/// The box that holds every dark dot, in mm.
page::Box ink_of(const Pixels& pixels, double dots_per_mm) {
  int left = pixels.width();
  int right = -1;
  int top = pixels.height();
  int bottom = -1;
  for (int y = 0; y < pixels.height(); ++y)
    for (int x = 0; x < pixels.width(); ++x)
      if (pixels.dark(x, y) > 0.5) {
        left = std::min(left, x);
        right = std::max(right, x);
        top = std::min(top, y);
        bottom = std::max(bottom, y);
      }
  REQUIRE(right >= 0);
  return {mm(left / dots_per_mm), mm(top / dots_per_mm), mm((right + 1 - left) / dots_per_mm),
          mm((bottom + 1 - top) / dots_per_mm)};
}

void check_near(const page::Box& found, const page::Box& expected, double tolerance_mm) {
  CHECK_THAT(in_mm(found.left), WithinAbs(in_mm(expected.left), tolerance_mm));
  CHECK_THAT(in_mm(found.top), WithinAbs(in_mm(expected.top), tolerance_mm));
  CHECK_THAT(in_mm(found.width), WithinAbs(in_mm(expected.width), 2 * tolerance_mm));
  CHECK_THAT(in_mm(found.height), WithinAbs(in_mm(expected.height), 2 * tolerance_mm));
}

} // namespace

TEST_CASE("letters: the box that is kept is the ink, and a capital is as high as was asked, in PDF, SVG and PNG") {
  const auto turned = GENERATE(0.0, 90.0, 30.0);
  Canvas canvas(small_sheet);
  // H has a flat top and foot: its ink is a capital's height.
  const page::Box box = canvas.letters({mm(30), mm(20)}, turned == 0 ? "HEH" : "Hgj,", {mm(6), page::Weight::bold},
                                       {page::Across::centre, page::Along::middle, degrees(turned)});
  if (turned == 0) {
    CHECK_THAT(in_mm(box.height), WithinAbs(6, 0.05));
    CHECK_THAT(in_mm(box.top), WithinAbs(17, 0.05));
    CHECK_THAT(in_mm(box.left + 0.5 * box.width), WithinAbs(30, 0.3)); // bearings differ by a little
  }
  const Folder folder;
  // 300 dots an inch: half a dot is 0.042 mm, and an edge of grey is judged at the half. A turned box is upright round
  // the turned box of the ink, whose corners are empty: it is larger, never smaller.
  const auto pdf = ink_of(
      pdf_pixels(folder, folder.write("a.pdf", canvas.picture(PictureKind::pdf, {"t", ""})), 1, 300), 300 / 25.4);
  const auto svg =
      ink_of(svg_pixels(folder, folder.write("a.svg", canvas.picture(PictureKind::svg, {"t", ""})), 300), 300 / 25.4);
  const auto png = ink_of(Pixels(folder.write("a.png", canvas.picture(PictureKind::png, {"t", ""}))), 300 / 25.4);
  for (const auto& found : {pdf, svg, png}) {
    check_near(found, png, 0.09);
    if (turned != 30.0) {
      check_near(found, box, 0.09);
    } else {
      CHECK(found.left > box.left - mm(0.09));
      CHECK(found.right() < box.right() + mm(0.09));
      CHECK(found.top > box.top - mm(0.09));
      CHECK(found.bottom() < box.bottom() + mm(0.09));
    }
  }
}

TEST_CASE("figures are set one by one: the font has none of them nearer to another than alone") {
  // Between two H a text is set whole, with what the font takes from the gap of each pair.
  const Canvas canvas(small_sheet);
  const std::string apart = "0123456789./-*!dpimn ";
  for (const auto face : {page::Face::even, page::Face::columns})
    for (const auto weight : {page::Weight::plain, page::Weight::bold})
      for (const char first : apart)
        for (const char second : apart) {
          const page::Lettering lettering{mm(20), weight, face};
          const auto wide = [&](const std::string& text) { return in_mm(canvas.width_of(text, lettering)); };
          const std::string pair{first, second};
          INFO('"' << pair << '"');
          CHECK_THAT(wide("H" + pair + "H"),
                     WithinAbs(wide("H" + pair.substr(0, 1)) + wide(pair.substr(1) + "H"), 1e-9));
        }
}

TEST_CASE("the ink of a number is where its box says, level and turned") {
  const auto turned = GENERATE(0.0, 90.0);
  Canvas canvas(small_sheet);
  const page::Box box =
      canvas.letters({mm(20), mm(35)}, "1.07mm", {mm(4)}, {page::Across::left, page::Along::foot, degrees(turned)});
  const Folder folder;
  const Pixels png(folder.write("n.png", canvas.picture(PictureKind::png, {"n", ""})));
  const page::Box ink = ink_of(png, 300 / 25.4);
  check_near(ink, box, 0.1); // a dot is 0.085 mm
}

TEST_CASE("strokes of one pen and letters of one font go together, and nothing of them is lost or moved") {
  Canvas canvas(small_sheet);
  canvas.line({mm(5), mm(5)}, {mm(15), mm(5)}, {mm(1)});
  canvas.outline({{mm(20), mm(5)}, {mm(30), mm(5)}, {mm(30), mm(15)}, {mm(20), mm(15)}}, {mm(1)});
  canvas.letters({mm(5), mm(20)}, "H", {mm(5)});
  canvas.line({mm(5), mm(25)}, {mm(15), mm(25)}, {mm(1)});
  canvas.line({mm(40), mm(25)}, {mm(50), mm(25)}, {mm(2)});
  canvas.fill({{mm(40), mm(5)}, {mm(50), mm(5)}, {mm(50), mm(15)}}, 0);
  const Folder folder;
  const Pixels png(folder.write("s.png", canvas.picture(PictureKind::png, {"s", ""})));
  const auto dark = [&](double right, double down) { return png.dark_at(right * 300 / 25.4, down * 300 / 25.4) > 0.5; };
  CHECK((dark(10, 5) && !dark(17, 5))); // a line, and none to the outline
  CHECK((dark(25, 5) && dark(30, 10) && dark(25, 15) && dark(20, 10) && !dark(25, 10))); // closed, and empty inside
  CHECK((dark(10, 25) && !dark(10, 25.8) && dark(45, 25.8) && !dark(27, 25)));           // two pens
  CHECK((dark(48, 8) && !dark(42, 13)));
}

TEST_CASE("lines and arcs lie where they are drawn") {
  Canvas canvas(small_sheet);
  canvas.frame({mm(10), mm(8), mm(40), mm(20)}, {mm(0.5)});
  CHECK(canvas.lines().size() == 4);
  const Folder folder;
  const auto found = ink_of(
      pdf_pixels(folder, folder.write("a.pdf", canvas.picture(PictureKind::pdf, {"t", ""})), 1, 300), 300 / 25.4);
  check_near(found, {mm(9.75), mm(7.75), mm(40.5), mm(20.5)}, 0.06);

  // An eighth of a circle from 0 to 45 deg against the clock: right of the centre, and above it.
  Canvas bent(small_sheet);
  bent.arc({mm(20), mm(30)}, mm(20), degrees(0), degrees(45), {mm(0.2)});
  const auto arc = ink_of(Pixels(folder.write("b.png", bent.picture(PictureKind::png, {"t", ""}))), 300 / 25.4);
  check_near(arc, {mm(20 + 14.142 - 0.07), mm(30 - 14.142 - 0.07), mm(20.1 - 14.142 + 0.07), mm(14.142 + 0.07)}, 0.1);
  CHECK_THAT(in_mm(bent.lines().front().from.right), WithinAbs(40, 1e-9));
  CHECK_THAT(in_mm(bent.lines().back().to.down), WithinAbs(30 - 14.142136, 1e-5));
}

TEST_CASE("a text is broken at blanks to a width, and inside a word only where the word alone is too long") {
  const Canvas canvas(small_sheet);
  const page::Lettering letters{mm(2)};
  const auto lines = canvas.broken("clamp the work or hold it in a vise on a stop", letters, mm(30));
  REQUIRE(lines.size() > 1);
  std::string joined;
  for (const auto& line : lines) {
    CHECK(canvas.width_of(line, letters) <= mm(30));
    joined += (joined.empty() ? "" : " ") + line;
  }
  CHECK(joined == "clamp the work or hold it in a vise on a stop");
  const auto word = canvas.broken(std::string(80, 'w'), letters, mm(30));
  CHECK(word.size() > 1);
  CHECK(canvas.broken("", letters, mm(30)) == std::vector<std::string>{""});
}

TEST_CASE("letters beyond ASCII are letters, a control character is a blank") {
  Canvas canvas(small_sheet);
  const page::Lettering letters{mm(3)};
  CHECK(canvas.width_of("Müße ½ °", letters) > canvas.width_of("M", letters));
  CHECK_THAT(in_mm(canvas.width_of("a\tb", letters)), WithinAbs(in_mm(canvas.width_of("a b", letters)), 1e-6));
  (void)canvas.letters({mm(5), mm(10)}, "Müße ½ °", letters);
  const Folder folder;
  const auto file = folder.write("a.pdf", canvas.picture(PictureKind::pdf, {"t", ""}));
  test::run_shell("pdftotext -enc UTF-8 '" + file + "' '" + folder.file("a.txt") + "'");
  CHECK(folder.read("a.txt").find("Müße ½ °") != std::string::npos);
}

TEST_CASE("sheets: a page each in PDF, one below another in SVG and PNG") {
  Canvas canvas(small_sheet);
  (void)canvas.letters({mm(10), mm(10)}, "first", {mm(3)});
  canvas.add_sheet();
  (void)canvas.letters({mm(10), mm(10)}, "second", {mm(3)});
  canvas.turn_to(0);
  (void)canvas.letters({mm(10), mm(20)}, "first again", {mm(3)});
  CHECK_THROWS_AS(canvas.turn_to(2), std::logic_error);
  REQUIRE(canvas.sheets() == 2);
  CHECK(canvas.texts()[1].sheet == 1);
  CHECK(canvas.texts()[2].sheet == 0);
  const Folder folder;
  const auto file = folder.write("a.pdf", canvas.picture(PictureKind::pdf, {"two sheets", "2026-11-30"}));
  test::run_shell("pdftotext '" + file + "' '" + folder.file("a.txt") + "'; pdfinfo '" + file + "' >'" +
                  folder.file("info") + "'");
  const std::string text = folder.read("a.txt");
  CHECK(text.find("first again") < text.find('\f'));
  CHECK(text.find("second") > text.find('\f'));
  CHECK(folder.read("info").find("two sheets") != std::string::npos);
  CHECK(folder.read("info").find("Pages:           2") != std::string::npos);
  CHECK(folder.read("info").find("Nov 30") != std::string::npos);
  const Pixels png(folder.write("a.png", canvas.picture(PictureKind::png, {"", ""})));
  CHECK_THAT(png.height() / 300.0 * 25.4, WithinAbs(80, 0.1));
  CHECK_THAT(png.width() / 300.0 * 25.4, WithinAbs(60, 0.1));
  const Pixels svg = svg_pixels(folder, folder.write("a.svg", canvas.picture(PictureKind::svg, {"", ""})), 300);
  CHECK_THAT(svg.height(), WithinAbs(png.height(), 1));
  CHECK_THAT(svg.mean(), WithinAbs(png.mean(), 0.05 * png.mean()));
}

TEST_CASE("a PNG says that it has 300 dots an inch: 11811 a metre, in a chunk whose check is right") {
  const std::string png = Canvas(small_sheet).picture(PictureKind::png, {"", ""});
  const auto at = png.find("pHYs");
  REQUIRE(at != std::string::npos);
  // 300/0.0254 = 11811.02; 0x2e23 = 11811. The check of pHYs with 11811, 11811, metre is 0x78a53f76: as in the PNG
  // files of other programs at that resolution (from memory), and by zlib's crc32.
  CHECK(png.substr(at + 4, 9) == std::string("\x00\x00\x2e\x23\x00\x00\x2e\x23\x01", 9));
  CHECK(png.substr(at + 13, 4) == std::string("\x78\xa5\x3f\x76", 4));
}

TEST_CASE("the boxes that pages are held by: a text over the edge, one over another, one too small are found") {
  Canvas canvas(small_sheet);
  (void)canvas.letters({mm(20), mm(20)}, "right", {mm(3)});
  CHECK(test::box_faults(canvas, mm(2)).outside.empty());
  CHECK(test::box_faults(canvas, mm(2)).over_another.empty());
  CHECK(test::box_faults(canvas, mm(2)).too_small.empty());
  (void)canvas.letters({mm(50), mm(30)}, "over the edge", {mm(3)});
  CHECK(test::box_faults(canvas, mm(2)).outside.size() == 1);
  (void)canvas.letters({mm(22), mm(21)}, "over it", {mm(3)});
  CHECK(test::box_faults(canvas, mm(2)).over_another.size() == 1);
  (void)canvas.letters({mm(20), mm(10)}, "small", {mm(1)});
  CHECK(test::box_faults(canvas, mm(2)).too_small.size() == 1);
  // Two turned alike, 6 mm apart: their upright boxes cross, they do not; one that is turned across both does.
  Canvas turned(small_sheet);
  const page::Hold at_45{page::Across::centre, page::Along::middle, degrees(45)};
  (void)turned.letters({mm(25), mm(20)}, "one long line", {mm(2)}, at_45);
  (void)turned.letters({mm(29.3), mm(24.3)}, "other long line", {mm(2)}, at_45);
  CHECK(test::box_faults(turned, mm(2)).over_another.empty());
  (void)turned.letters({mm(27), mm(22)}, "across both", {mm(2)},
                       {page::Across::centre, page::Along::middle, degrees(-45)});
  CHECK(test::box_faults(turned, mm(2)).over_another.size() == 2);
}
