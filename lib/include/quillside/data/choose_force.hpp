#pragma once
// Which row answers for a force: the most specific material; of its rows with a hardness, the band that holds, between
// two the harder one, past the last the hardest.

#include <quillside/data/work.hpp>

namespace quillside {

/// The hardness to choose by: as named, else the middle of what was assumed; nothing: rows without one go first, then
/// the softest.
struct ForceQuestion {
  const Work& work;
  std::optional<HardnessBand> assumed;
};

/// Null where no row holds.
const CuttingForceRow* choose_cutting_force(const Tables& tables, const ForceQuestion& question);
const UnitPowerRow* choose_unit_power(const Tables& tables, const ForceQuestion& question);
const DrillForceRow* choose_drill_force(const Tables& tables, const ForceQuestion& question, std::string_view model);

/// The row for a head of that size, else the nearest; null when there is none.
const BurrSizeRow* choose_burr_size(const Tables& tables, Length diameter);
const CutterStrengthRow* choose_cutter_strength(const Tables& tables, std::string_view cutter);

} // namespace quillside
