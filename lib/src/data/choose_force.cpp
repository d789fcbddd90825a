#include <quillside/data/choose_force.hpp>

#include <algorithm>

#include "most_specific.hpp"

namespace quillside {

namespace {

/// Brinell numbers, where the scale of a hardness can be compared.
std::optional<double> brinell_of(const Tables& tables, const Work& work, Hardness hardness) {
  if (hardness.scale == HardnessScale::brinell) return hardness.number;
  if (!may_convert_hardness(work.material->metal)) return std::nullopt;
  return to_brinell(tables.hardness, hardness);
}

std::optional<double> wanted_brinell(const Tables& tables, const ForceQuestion& question) {
  if (question.work.hardness) return brinell_of(tables, question.work, *question.work.hardness);
  if (!question.assumed) return std::nullopt;
  return brinell_of(tables, question.work,
                    {(question.assumed->low + question.assumed->high) / 2, question.assumed->scale});
}

/// How far the band lies from a hardness: 0 where it holds; a softer band counts ten times as far, so that between two
/// the harder one answers, and past the last the hardest.
double away(const Tables& tables, const Work& work, const PrintedHardness& printed, double wanted) {
  constexpr double softer = 10;
  constexpr double no_band = 1e6;
  if (!printed.given()) return no_band;
  const auto low = brinell_of(tables, work, {printed.band.low, printed.band.scale});
  const auto high = brinell_of(tables, work, {printed.band.high, printed.band.scale});
  if (!low || !high) return 2 * no_band;
  if (wanted < *low) return *low - wanted;
  return wanted > *high ? softer * (wanted - *high) : 0;
}

template <class Row>
const Row* of_hardness(const Tables& tables, const ForceQuestion& question, const std::vector<const Row*>& rows) {
  if (rows.empty()) return nullptr;
  const auto wanted = wanted_brinell(tables, question);
  const auto rank = [&](const Row* row) {
    if (wanted) return away(tables, question.work, row->hardness, *wanted);
    return row->hardness.given() ? row->hardness.band.low : -1.0;
  };
  return *std::min_element(rows.begin(), rows.end(), [&](const Row* a, const Row* b) { return rank(a) < rank(b); });
}

template <class Row, class Fits>
const Row* choose(const Tables& tables, std::span<const Row> rows, const ForceQuestion& question, Fits fits) {
  return of_hardness(tables, question, most_specific<Row>(tables, rows, question.work, fits));
}

} // namespace

const CuttingForceRow* choose_cutting_force(const Tables& tables, const ForceQuestion& question) {
  return choose(tables, tables.cutting_forces, question, [](const CuttingForceRow&) { return true; });
}

const UnitPowerRow* choose_unit_power(const Tables& tables, const ForceQuestion& question) {
  return choose(tables, tables.unit_powers, question, [](const UnitPowerRow&) { return true; });
}

const DrillForceRow* choose_drill_force(const Tables& tables, const ForceQuestion& question, std::string_view model) {
  return choose(tables, tables.drill_forces, question, [&](const DrillForceRow& row) { return row.model == model; });
}

const BurrSizeRow* choose_burr_size(const Tables& tables, Length diameter) {
  const auto distance = [&](const BurrSizeRow& row) {
    return std::max({mm(0), row.diameter.range.low - diameter, diameter - row.diameter.range.high});
  };
  const BurrSizeRow* nearest = nullptr;
  for (const auto& row : tables.burr_sizes)
    if (nearest == nullptr || distance(row) <= distance(*nearest)) nearest = &row;
  return nearest;
}

const CutterStrengthRow* choose_cutter_strength(const Tables& tables, std::string_view cutter) {
  const auto found = std::find_if(tables.cutter_strengths.begin(), tables.cutter_strengths.end(),
                                  [&](const CutterStrengthRow& row) { return row.cutter == cutter; });
  return found == tables.cutter_strengths.end() ? nullptr : &*found;
}

} // namespace quillside
