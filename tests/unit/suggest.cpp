// What somebody meant to type. The distance is held against a second way to find it, and the suggestion against the
// rule its header states: at most 3 edits, at most a third of the longer word, and always at least 1.

#include "catch.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

#include <quillside/words/suggest.hpp>

using namespace quillside;

namespace {

/// The definition itself, from the back of both words and without a table: slow, and hard to get wrong.
std::size_t by_recursion(std::string_view a, std::string_view b) {
  if (a.empty() || b.empty()) return a.size() + b.size();
  const auto but_last = [](std::string_view word, std::size_t letters) {
    return word.substr(0, word.size() - letters);
  };
  std::size_t least = std::min({by_recursion(but_last(a, 1), b) + 1, by_recursion(a, but_last(b, 1)) + 1,
                                by_recursion(but_last(a, 1), but_last(b, 1)) + (a.back() == b.back() ? 0 : 1)});
  const bool swapped = a.size() > 1 && b.size() > 1 && a.back() == b[b.size() - 2] && a[a.size() - 2] == b.back();
  if (swapped) least = std::min(least, by_recursion(but_last(a, 2), but_last(b, 2)) + 1);
  return least;
}

/// Every word of up to \p longest letters from a small alphabet.
std::vector<std::string> words_up_to(std::size_t longest) {
  std::vector<std::string> words{""};
  for (std::size_t start = 0, length = 0; length < longest; ++length) {
    const std::size_t end = words.size();
    for (; start < end; ++start)
      for (const char letter : {'a', 'b', 'c'}) words.push_back(words[start] + letter);
  }
  return words;
}

} // namespace

TEST_CASE("the distance of two words counts insertions, deletions, exchanges and swaps") {
  struct Row {
    std::string_view a, b;
    std::size_t distance;
  };
  const auto row = GENERATE(Row{"", "", 0}, Row{"brass", "brass", 0}, Row{"", "brass", 5}, Row{"brass", "", 5},
                            Row{"bras", "brass", 1},                          // one left out
                            Row{"brasss", "brass", 1},                        // one too many
                            Row{"braks", "brass", 1},                         // one exchanged
                            Row{"barss", "brass", 1},                         // neighbours swapped
                            Row{"BRASS", "brass", 0}, Row{"C752", "c752", 0}, // case does not count
                            Row{"kitten", "sitting", 3}); // the pair every text on edit distance shows, from memory
  INFO(row.a << " and " << row.b);
  CHECK(edit_distance(row.a, row.b) == row.distance);
}

TEST_CASE("the distance is that of its definition, for all short words") {
  const auto words = words_up_to(4);
  std::size_t wrong = 0;
  for (const auto& a : words)
    for (const auto& b : words)
      if (edit_distance(a, b) != by_recursion(a, b)) ++wrong;
  CHECK(words.size() == 121); // 1 + 3 + 9 + 27 + 81
  CHECK(wrong == 0);
}

TEST_CASE("the distance is the same both ways and never more than the longer word") {
  const auto words = words_up_to(4);
  std::size_t wrong = 0;
  for (const auto& a : words) {
    for (const auto& b : words) {
      const std::size_t distance = edit_distance(a, b);
      const std::size_t longer = std::max(a.size(), b.size());
      const std::size_t shorter = std::min(a.size(), b.size());
      if (distance != edit_distance(b, a) || distance > longer || distance < longer - shorter) ++wrong;
      if ((distance == 0) != (a == b)) ++wrong;
    }
  }
  CHECK(wrong == 0);
}

TEST_CASE("the nearest word is suggested when it is near enough") {
  static constexpr std::array<std::string_view, 7> metals{"brass",    "bronze",        "copper", "304",
                                                          "titanium", "nickel-silver", "C752"};
  struct Row {
    std::string word;
    std::optional<std::string> nearest;
  };
  const auto row =
      GENERATE(Row{"bras", "brass"}, Row{"BRASS", "brass"}, Row{"brnoze", "bronze"}, Row{"coppper", "copper"},
               Row{"305", "304"}, // 1 edit, a third of 3 letters
               Row{"c725", "C752"}, Row{"nikel-sliver", "nickel-silver"}, Row{"titan", std::nullopt}, // 3 of 8
               Row{"tytanyym", std::nullopt},                                                         // 3 of 8
               Row{"nikl-sylver", "nickel-silver"}, // 3 edits, of 13 letters
               Row{"nkl-sylver", std::nullopt},     // 4 edits, of 13 letters
               Row{"wood", std::nullopt}, Row{"", std::nullopt});
  INFO(row.word);
  CHECK(nearest_word(row.word, metals) == row.nearest);
}

TEST_CASE("nothing is suggested from nothing, nor for a word of any length") {
  CHECK(nearest_word("brass", {}) == std::nullopt);
  static constexpr std::array<std::string_view, 1> metals{"brass"};
  CHECK(nearest_word(std::string(100000, 'b'), metals) == std::nullopt);
}
