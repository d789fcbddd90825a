#pragma once
// A row as somebody typed it, for showing.

#include <string>
#include <variant>
#include <vector>

#include <quillside/data/tables.hpp>

namespace quillside {

/// One key of a row with its value as typed: a text (quantities are texts), a list of texts, a number or a truth.
struct TypedField {
  std::string key;
  std::variant<std::string, std::vector<std::string>, double, bool> value;
};

/// The row at this place of a table text, key by key in the order they were typed; empty when no row stands there.
std::vector<TypedField> row_as_typed(const TableText& text, RowPlace place);

} // namespace quillside
