#pragma once
// The instruments of the bench: how far each is usually off, and how much trouble it is.

#include <quillside/data/row.hpp>

namespace quillside {

struct Instrument {
  std::string_view key;
  std::string_view name;
  std::string_view error; // usual half-width, nine times in ten, as typed: a length or an angle
  Words reads;
  int trouble = 1; // 1 easy to 5
  std::string_view source;
  RowPlace place;
};

} // namespace quillside
