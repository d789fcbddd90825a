// Cards: every ask has one; nothing on it runs over the edge or over another text; it says what the record says.

#include <quillside/page/card.hpp>
#include <quillside/page/draw.hpp>

#include "../page_boxes.hpp"
#include "document_of.hpp"
#include "tools.hpp"

using namespace quillside;
using test::document_of;
using test::Json;

namespace {

/// Without blanks: where lines end is the page's own affair, and a word may be broken at its hyphen.
std::string without_blanks(const std::string& text) {
  std::string rest;
  for (const char c : text)
    if (c != ' ' && c != '\n') rest += c;
  return rest;
}

std::string all_text(const page::Canvas& canvas) {
  std::string all;
  for (const auto& text : canvas.texts()) all += without_blanks(text.text);
  return all;
}

/// Every word of the text, one behind the other.
bool says(const std::string& all, const std::string& text) {
  std::size_t at = 0;
  for (std::size_t from = 0; from < text.size();) {
    const std::size_t to = std::min(text.find_first_of(" \n", from), text.size());
    at = all.find(text.substr(from, to - from), at);
    if (at == std::string::npos) return false;
    at += to - from;
    from = to + 1;
  }
  return true;
}

} // namespace

TEST_CASE("every ask has a card, on every paper and in both units, with its texts inside and apart") {
  const auto& line = GENERATE(from_range(test::every_ask()));
  const auto paper = GENERATE(as<std::string>{}, "a4", "letter", "tabloid");
  const auto units = GENERATE(as<std::string>{}, "inch", "metric");
  if (paper == "tabloid" && units == "metric") return;
  INFO(line << " on " << paper << " in " << units);
  const auto card = page::draw(document_of(line, {"card", paper, units}));
  test::hold_boxes(card, page::least_letters);
  CHECK(in_mm(card.sheet().width) == in_mm(find_paper(paper).half.width));
}

TEST_CASE("a card says every line of its answer: nothing is left out") {
  const auto& line = GENERATE(from_range(test::every_ask()));
  INFO(line);
  const auto document = document_of(line);
  const std::string all = all_text(page::draw(document));
  for (const auto& one : document.text) {
    INFO(one.text);
    if (one.cells.empty()) CHECK(says(all, one.text));
    // A cell may be broken into lines that stand beside those of another: its first word is there.
    for (const auto& cell : one.cells) CHECK(says(all, cell.substr(0, cell.find_first_of(" -"))));
  }
}

TEST_CASE("the number to dial in is the largest on the card, and is the record's") {
  const auto document = document_of("drill no30 303 --machine pillar");
  const auto card = page::draw(document);
  const auto largest = std::max_element(card.texts().begin(), card.texts().end(),
                                        [](const auto& a, const auto& b) { return a.height < b.height; });
  const Measure* speed = find_measure(document.answer.settings, "spindle_speed");
  REQUIRE(speed != nullptr);
  CHECK(std::stod(largest->text) == speed->value);
  CHECK(largest->height > mm(12));
  CHECK(says(all_text(card), "step 4"));
}

TEST_CASE("a refused answer says DO NOT, white in a black box, and why") {
  const auto card = page::draw(document_of("drill 1/8 416@60HRC"));
  const auto largest = std::max_element(card.texts().begin(), card.texts().end(),
                                        [](const auto& a, const auto& b) { return a.height < b.height; });
  CHECK(largest->text == "DO NOT");
  CHECK(says(all_text(card), "harder than any row"));
  const test::Folder folder;
  const test::Pixels png(folder.write("a.png", card.picture(page::PictureKind::png, {"", ""})));
  const double dots = 300 / 25.4;
  // Beside the words the box is black.
  CHECK(png.dark(static_cast<int>((in_mm(largest->ink.left) - 2) * dots),
                 static_cast<int>(in_mm(largest->ink.top + 0.5 * largest->ink.height) * dots)) == 1);
}

TEST_CASE("each danger stands in a heavy frame of its own, each step has a box to tick") {
  const auto document = document_of("drill no30 303 --machine pillar");
  const auto card = page::draw(document);
  const auto heavy =
      std::count_if(card.lines().begin(), card.lines().end(), [](const auto& line) { return line.width > mm(0.7); });
  const auto dangers = std::count_if(document.text.begin(), document.text.end(),
                                     [](const auto& line) { return line.part == Part::danger; });
  REQUIRE(dangers == 2);
  CHECK(heavy == 4 * dangers);

  const auto grinding = document_of("grind 1/4 --web 0.044");
  const auto steps = std::count_if(grinding.text.begin(), grinding.text.end(),
                                   [](const auto& line) { return line.part == Part::step; });
  REQUIRE(steps == 4);
  const auto sheet = page::draw(grinding);
  // A square, its four lines one after another.
  int squares = 0;
  for (std::size_t i = 0; i + 3 < sheet.lines().size(); ++i) {
    const auto& a = sheet.lines()[i];
    const auto& b = sheet.lines()[i + 1];
    const Length across = a.to.right - a.from.right;
    const Length down = b.to.down - b.from.down;
    if (across > mm(2) && across < mm(9) && down > mm(0) && (across - down) < mm(1e-6) && (down - across) < mm(1e-6))
      ++squares;
  }
  CHECK(squares == steps);
}

TEST_CASE("a text that is too long for one card goes on to the next, which says so") {
  auto document = document_of("grind 1/4 1018 --way cone");
  for (int i = 0; i < 60; ++i)
    document.text.push_back({Part::note, "a long remark on how the drill is held " + std::to_string(i), {}, ""});
  document.text.push_back({Part::danger, std::string(6000, 'x'), {}, ""});
  document.page.asked = "quillside " + std::string(4000, 'y') + " " + std::string(400, 'z');
  const auto card = page::draw(document);
  CHECK(card.sheets() > 2);
  test::hold_boxes(card, page::least_letters);
  CHECK(says(all_text(card), "card 2 of " + std::to_string(card.sheets())));
}

TEST_CASE("a card as PDF, SVG and PNG: each opens, and each shows the same") {
  auto document = document_of("drill 9/64 C752 --thick 3/16 --leave 0.040 --machine pillar");
  const test::Folder folder;
  const auto card = page::draw(document);
  const test::Pixels pdf =
      pdf_pixels(folder, folder.write("a.pdf", card.picture(page::PictureKind::pdf, {"", ""})), 1, 100);
  const test::Pixels svg =
      svg_pixels(folder, folder.write("a.svg", card.picture(page::PictureKind::svg, {"", ""})), 100);
  test::run_shell("cat '" + folder.write("a.png", card.picture(page::PictureKind::png, {"", ""})) + "' >/dev/null");
  const test::Pixels png(folder.file("a.png"));
  REQUIRE(pdf.width() == svg.width());
  REQUIRE(pdf.height() == svg.height());
  REQUIRE(card.sheets() == 1);
  // Of squares of 8 dots (2 mm) each is as dark in one as in the other: the two draw letters by ways of their own, so
  // by less than a fifth of black. A letter of the smallest more or less would be a quarter.
  double most = 0;
  for (int y = 0; y + 8 <= pdf.height(); y += 8)
    for (int x = 0; x + 8 <= pdf.width(); x += 8) {
      double apart = 0;
      double other = 0;
      for (int dy = 0; dy < 8; ++dy)
        for (int dx = 0; dx < 8; ++dx) {
          apart += (pdf.dark(x + dx, y + dy) - svg.dark(x + dx, y + dy)) / 64;
          other += (pdf.dark(x + dx, y + dy) - png.dark_at(3.0 * (x + dx + 0.5), 3.0 * (y + dy + 0.5))) / 64;
        }
      most = std::max({most, std::abs(apart), std::abs(other)});
    }
  CHECK(most < 0.2);
}
