#pragma once
// Limits of size: tolerance classes, whole fits, and the names the trade gives to some of them.

#include <quillside/data/row.hpp>

namespace quillside {

/// Two limits off a basic size, as printed: signed, low end first.
struct PrintedLimits {
  std::string_view text;
  Range<Length> range;

  [[nodiscard]] bool given() const { return !text.empty(); }
};

/// A tolerance class of ISO 286: a hole's begins with a capital, a shaft's with a small letter.
struct ToleranceClass {
  std::string_view name;
  Printed<Length> size; // over the low end, up to and with the high end
  PrintedLimits limits;
  std::string_view source;
  RowPlace place;

  [[nodiscard]] bool of_a_hole() const { return !name.empty() && name.front() >= 'A' && name.front() <= 'Z'; }
};

/// A fit whose table gives both limits at once.
struct FitClass {
  std::string_view name;
  Printed<Length> size; // over the low end, up to and with the high end
  PrintedLimits hole;
  PrintedLimits shaft;
  std::string_view source;
  RowPlace place;
};

/// A fit by the name the trade calls it: a class, or an interference where no class says it.
struct FitRow {
  std::string_view key;
  std::string_view name;
  std::string_view fit_class;   // HOLE/SHAFT, or the name of a FitClass; empty when `interference` is given
  Printed<Length> interference; // how much tighter than the part the hole is left
  std::string_view source;
  RowPlace place;
};

} // namespace quillside
