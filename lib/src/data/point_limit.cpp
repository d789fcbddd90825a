#include <quillside/data/point_limit.hpp>

#include <algorithm>

namespace quillside {

const PointLimit* choose_point_limit(std::span<const PointLimit> limits, std::string_view item, std::string_view way,
                                     Length diameter) {
  const PointLimit* best = nullptr;
  int best_rank = -1;
  for (const auto& row : limits) {
    const bool fits =
        !row.diameter.given() || (row.diameter.range.low <= diameter && diameter < row.diameter.range.high);
    if (row.item != item || !fits || (!row.way.empty() && row.way != way)) continue;
    const int rank = (row.way.empty() ? 0 : 2) + (row.diameter.given() ? 1 : 0);
    if (rank > best_rank) {
      best = &row;
      best_rank = rank;
    }
  }
  return best;
}

const UsualOversize* choose_usual_oversize(std::span<const UsualOversize> rows, Length diameter) {
  const auto away = [&](const UsualOversize& row) {
    return std::max({mm(0), row.diameter.range.low - diameter, diameter - row.diameter.range.high});
  };
  // The high end belongs to the next row: of two rows that touch the drill's size, the later one.
  const UsualOversize* nearest = nullptr;
  for (const auto& row : rows)
    if (nearest == nullptr || away(row) <= away(*nearest)) nearest = &row;
  return nearest;
}

} // namespace quillside
