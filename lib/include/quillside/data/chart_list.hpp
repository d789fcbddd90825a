#pragma once
// What a wall chart holds when nobody says: its materials, and the sizes of each tool.

#include <array>

#include <quillside/data/row.hpp>

namespace quillside {

struct ChartList {
  std::string_view key; // one of `chart_lists`
  Words words;          // as they are typed
  std::string_view source;
  RowPlace place;
};

inline constexpr std::array<std::string_view, 4> chart_lists{"materials", "drill-sizes", "mill-sizes", "burr-sizes"};

/// The words of that list; a Fault of the kind `data` when no table has it.
Words chart_list(std::span<const ChartList> lists, std::string_view key);

} // namespace quillside
