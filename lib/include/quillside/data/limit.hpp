#pragma once
// The limits that decide verdicts: one number each, with its standing, so that a shop can set its own.

#include <quillside/data/row.hpp>

namespace quillside {

struct Limit {
  std::string_view key;
  std::string_view value; // as typed
  double ratio = 0;       // where it is a pure number
  Length length{};        // where it is a length
  std::string_view what;
  std::string_view source;
  RowPlace place;
};

/// The limit of that key; a Fault of the kind `data` when no table has it.
const Limit& limit(std::span<const Limit> limits, std::string_view key);

} // namespace quillside
