#pragma once
// Rows that hold for a material: its own, else its family's, and so on upward.

#include <algorithm>
#include <optional>
#include <vector>

#include <quillside/data/work.hpp>

namespace quillside {

/// How far up the family a row's material stands: 0 the material itself; no material at all counts as one above the
/// top.
inline std::optional<std::size_t> level_of(const std::vector<const Material*>& chain, std::string_view material) {
  if (material.empty()) return chain.size();
  const auto found =
      std::find_if(chain.begin(), chain.end(), [&](const Material* one) { return one->key == material; });
  if (found == chain.end()) return std::nullopt;
  return static_cast<std::size_t>(found - chain.begin());
}

/// The rows of the most specific material among those that fit.
template <class Row, class Fits>
std::vector<const Row*> most_specific(const Tables& tables, std::span<const Row> rows, const Material& layer,
                                      Fits fits) {
  const auto chain = chain_of(tables, layer);
  std::vector<const Row*> best;
  std::size_t best_level = chain.size() + 1;
  for (const auto& row : rows) {
    const auto level = level_of(chain, row.material);
    if (!level || !fits(row) || *level > best_level) continue;
    if (*level < best_level) best.clear();
    best_level = *level;
    best.push_back(&row);
  }
  return best;
}

template <class Row, class Fits>
std::vector<const Row*> most_specific(const Tables& tables, std::span<const Row> rows, const Work& work, Fits fits) {
  for (const auto* layer : layers_of(tables, *work.material)) {
    auto found = most_specific(tables, rows, *layer, fits);
    if (!found.empty()) return found;
  }
  return {};
}

} // namespace quillside
