#pragma once
// The rows that tell of a drill's point where nobody did.

#include <string>

#include <quillside/data/choose.hpp>

namespace quillside {

struct Ground {
  const DrillPointRow* point;
  const LipReliefRow* relief; // null where no row reaches
  WebChoice web;
  Angle land;
};

/// \p work may be null. Throws a Fault of the kind `data` when no table has a web.
Ground ground_of(const Tables& tables, Length diameter, const Work* work);

/// A row as `why` has it: the sizes and metals it is for, and what it says.
std::string relief_row_words(const LipReliefRow& row);

/// A limit that is a number of degrees.
Angle degrees_of(const Tables& tables, std::string_view key);

} // namespace quillside
