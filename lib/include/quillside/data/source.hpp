#pragma once
// Where a number was published, and how far that is to be trusted.

#include <array>

#include <quillside/data/row.hpp>

namespace quillside {

struct Source {
  std::string_view key;
  std::string_view author;
  std::string_view title;
  std::string_view edition;
  std::string_view year;
  std::string_view page;
  std::string_view standing;
  std::string_view note;
  RowPlace place;
};

/// The standings a source may have, the best first.
inline constexpr std::array<std::string_view, 8> standings{"published",       "reprint", "maker's sheet", "own bench",
                                                           "common practice", "derived", "from memory",   "demo"};

} // namespace quillside
