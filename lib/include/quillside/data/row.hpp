#pragma once
// What every row of a table is made of: words, quantities as printed, and the place it stands at.
// Rows are plain values. Their texts belong to the Tables they stand in, which must outlive them.

#include <span>
#include <string_view>

#include <quillside/quantity/units.hpp>
#include <quillside/words/read.hpp>

namespace quillside {

using Words = std::span<const std::string_view>;

/// A quantity as the page prints it, and what it means; an empty text is a quantity that the row does not give.
template <class Quantity> struct Printed {
  std::string_view text;
  Range<Quantity> range;

  [[nodiscard]] bool given() const { return !text.empty(); }
};

/// A hardness band as printed.
struct PrintedHardness {
  std::string_view text;
  HardnessBand band;

  [[nodiscard]] bool given() const { return !text.empty(); }
};

/// Where a row stands; lines and columns count from 1. Rows made by a rule stand where the rule does.
struct RowPlace {
  std::string_view file;
  int line = 0;
  int column = 0;
};

} // namespace quillside
