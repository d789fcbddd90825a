#include <quillside/data/typed_row.hpp>

#include <algorithm>
#include <tuple>
#include <utility>

#include "toml.hpp"

namespace quillside {

namespace {

/// The table that begins at this place, anywhere below \p node.
const toml::table* table_at(const toml::node& node, RowPlace place) {
  if (const auto* table = node.as_table()) {
    const At at = place_of(node);
    if (at.line == place.line && at.column == place.column) return table;
    for (const auto& [key, value] : *table)
      if (const auto* found = table_at(value, place)) return found;
  } else if (const auto* array = node.as_array()) {
    for (const auto& value : *array)
      if (const auto* found = table_at(value, place)) return found;
  }
  return nullptr;
}

decltype(TypedField::value) value_of(const toml::node& node) {
  if (const auto truth = node.value_exact<bool>()) return *truth;
  if (node.is_number()) return *node.value<double>();
  if (const auto* array = node.as_array()) {
    std::vector<std::string> texts;
    for (const auto& entry : *array) texts.push_back(entry.value_or(std::string{}));
    return texts;
  }
  return node.value_or(std::string{});
}

} // namespace

std::vector<TypedField> row_as_typed(const TableText& text, RowPlace place) {
  const toml::table root = toml::parse(text.text, text.name);
  const toml::table* row = nullptr;
  // The file itself begins where its first row may: only what lies in it counts.
  for (const auto& [key, value] : root)
    if (row == nullptr) row = table_at(value, place);
  if (row == nullptr) return {};
  std::vector<std::pair<At, TypedField>> placed;
  for (const auto& [key, value] : *row) placed.push_back({place_of(value), {std::string(key.str()), value_of(value)}});
  std::stable_sort(placed.begin(), placed.end(), [](const auto& a, const auto& b) {
    return std::tie(a.first.line, a.first.column) < std::tie(b.first.line, b.first.column);
  });
  std::vector<TypedField> typed;
  for (auto& [at, field] : placed) typed.push_back(std::move(field));
  return typed;
}

} // namespace quillside
