#pragma once
// What a row must be as a whole, beyond what each of its fields is: empty when it is right, else what is wrong.

#include <algorithm>
#include <array>
#include <string>
#include <string_view>

#include <quillside/data/tables.hpp>

namespace quillside {

template <class Row> std::string wrong_as_a_whole(const Row&, std::string_view) { return {}; }

inline std::string wrong_as_a_whole(const SpeedRow& row, std::string_view kind) {
  if (row.speed.given() == row.spindle_speed.given())
    return "a speed row gives 'speed', or (a burr_speed) 'spindle_speed'; one of them";
  if (kind != "burr_speed" && (row.spindle_speed.given() || row.diameter.given() || row.hand))
    return "'spindle_speed', 'diameter' and 'hand' belong to burr_speed";
  if (row.speed.given() ? !(row.speed.range.low > ft_per_min(0)) : !(row.spindle_speed.range.low > rev_per_min(0)))
    return "a speed is above 0";
  return {};
}

inline std::string wrong_as_a_whole(const SpeedRatio& row, std::string_view) {
  return row.ratio.range.low > 0 ? "" : "a ratio of speeds is above 0";
}

inline std::string wrong_as_a_whole(const DrillingFeed& row, std::string_view) {
  if (row.feed.given() == row.share.given()) return "a drilling_feed gives 'feed' or 'share'; one of them";
  const bool above_zero = row.feed.given() ? row.feed.range.low > mm_per_rev(0) : row.share.range.low > 0;
  return above_zero ? "" : "a feed is above 0";
}

inline std::string wrong_as_a_whole(const ChipLoad& row, std::string_view) {
  if (row.points.empty() == !row.share.given())
    return "a chip_load gives 'diameters' with 'loads', or 'share' with 'diameter'; one of them";
  if (row.share.given() && !row.diameter.given()) return "a share of the diameter needs the 'diameter' it holds for";
  if (row.share.given() && !(row.share.range.low > 0)) return "a chip load is above 0";
  if (row.first.given() && (row.first.range.low < row.share.range.low || row.first.range.low > row.share.range.high))
    return "'first' lies inside 'share'";
  if (row.slot.given() && !(row.slot.range.low > 0 && row.slot.range.low <= 1))
    return "'slot' is above 0 and at most 1";
  for (const auto& point : row.points)
    if (!(point.diameter > mm(0)) || !(point.load.low > mm_per_tooth(0))) return "a diameter and its load are above 0";
  return {};
}

inline std::string wrong_as_a_whole(const DeepHole& row, std::string_view) {
  return row.speed_cut.range.high < 1 && row.feed_cut.range.high < 1 ? "" : "a cut in speed or feed is less than 100 %";
}

inline std::string wrong_as_a_whole(const PeckRow& row, std::string_view) {
  const bool bites = row.first.range.low >= 0.1 && row.next.range.low >= 0.1 && row.deep_next.range.low >= 0.1;
  return bites ? "" : "a peck is at least 0.1 diameters";
}

inline std::string wrong_as_a_whole(const DrillPointRow& row, std::string_view) {
  return row.point.range.low >= degrees(30) && row.point.range.high <= degrees(175)
             ? ""
             : "a drill's point is 30 to 175 deg";
}

inline std::string wrong_as_a_whole(const Machine& row, std::string_view) {
  if (!(row.range.low > rev_per_min(0))) return "a spindle speed is above 0";
  if (row.top_speed.given() && row.top_speed.range.low < row.range.low)
    return "'top_speed' is below the slowest speed: nothing is left to run at";
  return row.dial.given() && !(row.dial.range.low > mm(0)) ? "'dial' is above 0" : "";
}

inline std::string wrong_as_a_whole(const SizeRow& row, std::string_view) {
  return row.length() > mm(0) ? "" : "a size is above 0";
}

inline std::string wrong_as_a_whole(const Material& row, std::string_view) {
  return row.key.find('@') != std::string_view::npos ? "a material's key has no '@': that parts it from its condition"
                                                     : "";
}

/// Every limit the jobs ask for, and what its value may be.
inline std::string wrong_as_a_whole(const Limit& row, std::string_view) {
  struct Known {
    std::string_view key;
    bool length;
    double least;
    double most;
  };
  constexpr std::array<Known, 8> known{{{"band_below", false, 0.01, 1},
                                        {"band_above", false, 1, 10},
                                        {"through_overrun", true, 0, 0},
                                        {"dry_speed", false, 0.01, 1},
                                        {"shim_over", false, 0, 1},
                                        {"deepest_hole", false, 1, 1000},
                                        {"thinning_most", false, 1, 100},
                                        {"handwheel_fastest", false, 0, 60}}};
  if (row.key == "hand_tool_top")
    return row.ratio >= 1000 ? "" : "'hand_tool_top' is a number of rev/min, 1000 or more";
  const auto found = std::find_if(known.begin(), known.end(), [&](const Known& one) { return one.key == row.key; });
  if (found == known.end()) return "'" + std::string(row.key) + "' is no limit";
  if (found->length) return row.length > mm(0) ? "" : "'" + std::string(row.key) + "' is a length above 0";
  const bool fits = row.length == mm(0) && row.ratio >= found->least && row.ratio <= found->most;
  return fits ? "" : "'" + std::string(row.key) + "' is a pure number within its bounds";
}

} // namespace quillside
