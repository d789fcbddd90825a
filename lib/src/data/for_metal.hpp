#pragma once
// Rows that name the metals they hold for: one that names fewer is more specific, one that names none holds for any.

#include <algorithm>
#include <optional>

#include <quillside/data/row.hpp>

namespace quillside {

/// How well a row that names those metals answers for \p metal: the higher the better, 0 for one that holds for any;
/// nothing where it does not hold.
inline std::optional<int> fit_for_metal(Words named, std::string_view metal) {
  if (named.empty()) return 0;
  if (std::find(named.begin(), named.end(), metal) == named.end()) return std::nullopt;
  constexpr int more_than_there_are = 1000;
  return more_than_there_are - static_cast<int>(named.size());
}

/// The best of the rows that \p fits lets through; among equals the last, so that a user's stands before a built-in
/// one. Null where none holds.
template <class Row, class Fits>
const Row* best_for_metal(std::span<const Row> rows, std::string_view metal, const Fits& fits) {
  const Row* best = nullptr;
  int best_fit = -1;
  for (const auto& row : rows) {
    if (!fits(row)) continue;
    const auto fit = fit_for_metal(row.metal, metal);
    if (!fit || *fit < best_fit) continue;
    best = &row;
    best_fit = *fit;
  }
  return best;
}

} // namespace quillside
