#pragma once
// One field of a row, and those that many kinds of row have.

#include <array>
#include <string>
#include <string_view>

#include <quillside/data/row.hpp>

namespace quillside {

struct Field {
  std::string_view key;
  std::string_view example; // as TOML, for a person who fills it in
  std::string_view about;
  bool required = false;
  Words allowed = {}; // the closed list, where there is one
  bool shown = false; // of several ways to say it, the one that a blank row shows
};

/// The words in one line, for messages.
inline std::string joined(Words words, std::string_view between) {
  std::string all;
  for (const auto word : words) {
    if (!all.empty()) all += between;
    all += word;
  }
  return all;
}

inline constexpr Field source_field{"source", "\"own-bench\"", "id of a [source.ID]: where the numbers come from",
                                    true};
inline constexpr Field key_field{"key", "\"shop\"", "its name, for you to type", true};
inline constexpr std::array<std::string_view, 5> asks_with_speeds{"drill", "mill", "burr", "ream", "any"};

} // namespace quillside
