#pragma once
// What a tool's edge is made of.

#include <array>

#include <quillside/data/row.hpp>

namespace quillside {

struct Cutter {
  std::string_view key;
  std::string_view name;
  Words tools; // drill, mill, burr: which come in it
  Words usual; // of which tools it is taken when none is named
  std::string_view source;
  RowPlace place;
};

inline constexpr std::array<std::string_view, 3> tools{"drill", "mill", "burr"};

} // namespace quillside
