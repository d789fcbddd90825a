#pragma once
// What to put on the cut.

#include <quillside/data/row.hpp>

namespace quillside {

struct Fluid {
  std::string_view ask;
  Words metal; // empty: any
  std::string_view fluid;
  std::string_view source;
  RowPlace place;
};

} // namespace quillside
