// How wide a text is taken to be. Against the font itself: tests/unit/page_chart.cpp, where there is one.

#include "catch.hpp"

#include <quillside/words/text_width.hpp>

using namespace quillside;

TEST_CASE("a text is as wide as its letters, in proportion to their height") {
  CHECK(text_width("", mm(10)) == mm(0));
  CHECK(text_width("1720", mm(10)) > text_width("172", mm(10)));
  CHECK(in_mm(text_width("1720", mm(20))) == 2 * in_mm(text_width("1720", mm(10))));
  // Every digit is as wide as every other, so that columns of numbers stand straight.
  for (const char* digit : {"0", "1", "2", "3", "4", "5", "6", "7", "8", "9"})
    CHECK(text_width(digit, mm(10)) == text_width("0", mm(10)));
  CHECK(text_width("W", mm(10)) > text_width("i", mm(10)));
  // A letter beyond ASCII counts once, whatever number of bytes it has.
  CHECK(text_width("\u00b1", mm(10)) == text_width("@", mm(10)));
}

TEST_CASE("lines are broken at blanks, none wider than asked, and give the words back in order") {
  const std::string text = "Eye protection; no gloves, sleeves or hair near the spindle; key out of the chuck";
  for (const double width : {30.0, 45.0, 90.0, 1000.0}) {
    const auto lines = broken_to(text, {mm(width), mm(2)});
    std::string joined;
    for (const auto& line : lines) {
      INFO(width << ": " << line);
      CHECK(text_width(line, mm(2)) <= mm(width));
      joined += (joined.empty() ? "" : " ") + line;
    }
    CHECK(joined == text);
  }
  CHECK(broken_to(text, {mm(1000), mm(2)}).size() == 1);
  CHECK(broken_to("one unbreakableword two", {mm(5), mm(2)}) ==
        std::vector<std::string>{"one", "unbreakableword", "two"});
  CHECK(broken_to("", {mm(5), mm(2)}).empty());
}
