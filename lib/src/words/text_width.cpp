#include <quillside/words/text_width.hpp>

#include <algorithm>
#include <array>

namespace quillside {

namespace {

/// Thousandths of an em of a wide sans-serif (as a font program prints them), from the blank on.
constexpr std::array<int, 95> widths{
    318,  401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337, //  !"#$%&'()*+,-./
    636,  636, 636, 636, 636, 636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 531, // 0..9:;<=>?
    1000, 684, 686, 698, 770, 632, 575, 775, 752, 295, 295, 656, 557, 863, 748, 787, // @A..O
    603,  787, 695, 635, 611, 732, 684, 989, 685, 611, 685, 390, 337, 390, 838, 500, // P..Z[\]^_
    500,  613, 635, 550, 635, 615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612, // `a..o
    635,  635, 411, 521, 392, 634, 592, 818, 592, 592, 525, 636, 337, 636, 838};     // p..z{|}~

constexpr double capital = 0.729; // of an em
constexpr double margin = 1.02;   // rounding of a drawn letter to its grid

int width_of(char c) {
  const auto code = static_cast<unsigned char>(c);
  if (code >= 0x80 && code < 0xc0) return 0; // the rest of a letter that was counted
  return code >= 0x20 && code < 0x7f ? widths[code - 0x20U] : 1000;
}

} // namespace

Length text_width(std::string_view text, Length height) {
  int sum = 0;
  for (const char c : text) sum += width_of(c);
  return margin * (sum / 1000.0 / capital) * height;
}

std::vector<std::string> broken_to(std::string_view text, LineRoom line) {
  std::vector<std::string> lines;
  std::string last;
  Length wide{};
  const Length blank_wide = text_width(" ", line.height);
  while (!text.empty()) {
    const auto blank = std::min(text.find(' '), text.size());
    const std::string_view word = text.substr(0, blank);
    text.remove_prefix(std::min(blank + 1, text.size()));
    const Length word_wide = text_width(word, line.height);
    if (!last.empty() && wide + blank_wide + word_wide > line.width) {
      lines.push_back(std::move(last));
      last.clear();
    }
    wide = last.empty() ? word_wide : wide + blank_wide + word_wide;
    last += last.empty() ? std::string(word) : " " + std::string(word);
  }
  if (!last.empty()) lines.push_back(last);
  return lines;
}

} // namespace quillside
