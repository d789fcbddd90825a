// Marks as typed: a flat list of x,y pairs, parted by commas or blanks, and at its end perhaps how far each is off.

#include <charconv>
#include <vector>

#include <quillside/job/point.hpp>
#include <quillside/words/fault.hpp>

namespace quillside {

namespace {

double number(std::string_view word, const std::string& all, std::string_view example) {
  double value = 0;
  const auto result = std::from_chars(word.data(), word.data() + word.size(), value);
  constexpr double widest = 1e6;
  if (result.ec != std::errc{} || result.ptr != word.data() + word.size() || !(value >= -widest && value <= widest))
    throw wrong_word(all, "has '" + std::string(word) + "' in it, which is no place in pixels; write them as " +
                              std::string(example));
  return value;
}

struct Numbers {
  std::vector<Mark> marks;
  std::optional<double> pixels;
};

Numbers read_marks(std::string_view text, std::size_t wanted, std::string_view example) {
  const std::string all(text);
  Numbers read;
  std::string_view rest = text;
  if (const auto error = rest.find("+-"); error != std::string_view::npos) {
    read.pixels = number(rest.substr(error + 2), all, example);
    if (!(*read.pixels > 0)) throw wrong_word(all, "says that its marks are off by nothing: give more than 0 pixels");
    rest = rest.substr(0, error);
  }
  std::vector<double> numbers;
  while (!rest.empty()) {
    const auto end = std::min(rest.find_first_of(", ;\t"), rest.size());
    if (end > 0) numbers.push_back(number(rest.substr(0, end), all, example));
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  if (numbers.size() != 2 * wanted)
    throw wrong_word(all, "has " + std::to_string(numbers.size()) + " numbers, and " + std::to_string(wanted) +
                              " marks are wanted, an x,y pair each; write them as " + std::string(example));
  for (std::size_t i = 0; i < numbers.size(); i += 2) read.marks.push_back({numbers[i], numbers[i + 1]});
  return read;
}

constexpr std::string_view side_example = "'90,400 140,430 160,431 210,401 88,150 212,150'";
constexpr std::string_view end_example = "'90,210 145,203 155,197 210,190'";

} // namespace

MarkReading<SideMarks> read_side_marks(std::string_view text) {
  const Numbers read = read_marks(text, 6, side_example);
  const auto& m = read.marks;
  return {{m[0], m[1], m[2], m[3], m[4], m[5]}, read.pixels};
}

MarkReading<EndMarks> read_end_marks(std::string_view text) {
  const Numbers read = read_marks(text, 4, end_example);
  const auto& m = read.marks;
  return {{m[0], m[1], m[2], m[3]}, read.pixels};
}

} // namespace quillside
