#pragma once
// What the chip, the hole, the worn tool tell: a sign, its likely cause, what to set.

#include <array>
#include <string>
#include <vector>

#include <quillside/data/row.hpp>

namespace quillside {

inline constexpr std::array<std::string_view, 4> sign_tools{"drill", "mill", "burr", "wheel"};

struct Sign {
  std::string_view key;
  std::string_view sign; // what is seen, heard or felt
  Words words;           // what else people call it
  std::string_view tool; // one of `sign_tools`
  std::string_view cause;
  std::string_view set;
  std::string_view source;
  RowPlace place;
};

/// The rows that hold every word, whole or as a beginning (`corner` finds corners), best first: those whose sign itself
/// holds more of them. A word that names a tool keeps only its rows. No words at all: every row.
std::vector<const Sign*> find_signs(std::span<const Sign> signs, const std::vector<std::string>& words);

} // namespace quillside
