#pragma once
// When a row goes over another: the same five words, or the same key.

#include <algorithm>
#include <string>
#include <string_view>

#include <quillside/data/tables.hpp>

namespace quillside {

inline bool same_band(const PrintedHardness& a, const PrintedHardness& b) {
  if (!a.given() || !b.given()) return a.given() == b.given();
  return a.band.scale == b.band.scale && a.band.low == b.band.low && a.band.high == b.band.high;
}
inline bool same_range(const Printed<Length>& a, const Printed<Length>& b) {
  if (!a.given() || !b.given()) return a.given() == b.given();
  return a.range.low == b.range.low && a.range.high == b.range.high;
}

// Which row below a row replaces: the same five words, or the same key.
inline bool replaces(const SpeedRow& a, const SpeedRow& b) {
  return a.material == b.material && a.condition == b.condition && same_band(a.hardness, b.hardness) &&
         a.cutter == b.cutter && same_range(a.diameter, b.diameter) && a.hand == b.hand;
}
inline bool replaces(const SpeedRatio& a, const SpeedRatio& b) { return a.ask == b.ask && a.cutter == b.cutter; }
inline bool replaces(const DrillingFeed& a, const DrillingFeed& b) {
  return a.material == b.material && a.cutter == b.cutter && same_range(a.diameter, b.diameter);
}
inline bool replaces(const ChipLoad& a, const ChipLoad& b) { return a.material == b.material && a.cutter == b.cutter; }
inline bool replaces(const DeepHole& a, const DeepHole& b) { return a.depth.range.low == b.depth.range.low; }
inline bool replaces(const PeckRow& a, const PeckRow& b) {
  return std::equal(a.metal.begin(), a.metal.end(), b.metal.begin(), b.metal.end()) && same_range(a.below, b.below);
}
inline bool replaces(const DrillPointRow& a, const DrillPointRow& b) { return a.material == b.material; }
inline bool replaces(const DrillWebRow& a, const DrillWebRow& b) { return same_range(a.diameter, b.diameter); }
inline bool replaces(const LipReliefRow& a, const LipReliefRow& b) {
  return std::equal(a.metal.begin(), a.metal.end(), b.metal.begin(), b.metal.end()) &&
         same_range(a.diameter, b.diameter);
}
inline bool replaces(const Fluid& a, const Fluid& b) {
  return a.ask == b.ask && std::equal(a.metal.begin(), a.metal.end(), b.metal.begin(), b.metal.end());
}
inline bool replaces(const SizeRow& a, const SizeRow& b) { return a.name == b.name; }
inline bool replaces(const HardnessRow& a, const HardnessRow& b) { return a.hb == b.hb; }
inline bool replaces(const CuttingForceRow& a, const CuttingForceRow& b) {
  return a.material == b.material && same_band(a.hardness, b.hardness);
}
inline bool replaces(const UnitPowerRow& a, const UnitPowerRow& b) {
  return a.material == b.material && same_band(a.hardness, b.hardness);
}
inline bool replaces(const FeedFactorRow& a, const FeedFactorRow& b) { return a.feed.range.low == b.feed.range.low; }
inline bool replaces(const DrillForceRow& a, const DrillForceRow& b) {
  return a.material == b.material && same_band(a.hardness, b.hardness) && a.model == b.model;
}
inline bool replaces(const BurrSizeRow& a, const BurrSizeRow& b) { return same_range(a.diameter, b.diameter); }
inline bool replaces(const CutterStrengthRow& a, const CutterStrengthRow& b) { return a.cutter == b.cutter; }
inline bool replaces(const EndMillStock& a, const EndMillStock& b) { return a.key == b.key; }
inline bool replaces(const PointLimit& a, const PointLimit& b) {
  return a.item == b.item && a.way == b.way && same_range(a.diameter, b.diameter);
}
inline bool replaces(const UsualOversize& a, const UsualOversize& b) { return same_range(a.diameter, b.diameter); }
inline bool replaces(const ToleranceClass& a, const ToleranceClass& b) {
  return a.name == b.name && same_range(a.size, b.size);
}
inline bool replaces(const FitClass& a, const FitClass& b) { return a.name == b.name && same_range(a.size, b.size); }
inline bool same_heat(const Printed<Temperature>& a, const Printed<Temperature>& b) {
  return a.range.low == b.range.low && a.range.high == b.range.high;
}
inline bool replaces(const ExpansionRow& a, const ExpansionRow& b) {
  return a.material == b.material && same_heat(a.over, b.over);
}
inline bool replaces(const OxideColour& a, const OxideColour& b) {
  return std::equal(a.metal.begin(), a.metal.end(), b.metal.begin(), b.metal.end()) && a.colour == b.colour;
}
inline bool replaces(const HeatCeiling& a, const HeatCeiling& b) {
  return a.material == b.material && a.condition == b.condition && a.until_tempered == b.until_tempered;
}
inline bool replaces(const ClearanceHole& a, const ClearanceHole& b) { return a.screw == b.screw; }
inline bool replaces(const ScrewHead& a, const ScrewHead& b) { return a.screw == b.screw && a.shape == b.shape; }
inline bool replaces(const ThreadEngagement& a, const ThreadEngagement& b) {
  return std::equal(a.metal.begin(), a.metal.end(), b.metal.begin(), b.metal.end());
}
inline bool replaces(const ReamAllowance& a, const ReamAllowance& b) { return same_range(a.diameter, b.diameter); }
template <class Row> bool replaces(const Row& a, const Row& b) { return a.key == b.key; }

} // namespace quillside
