#pragma once
// What a row must be as a whole, beyond what each of its fields is.

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <utility>

#include <quillside/data/tables.hpp>
#include <quillside/words/fault.hpp>

namespace quillside {

/// What is wrong, and the key whose value is at fault where it is one; all empty when the row is right.
struct WrongRow {
  std::string what;
  std::string_view key;
  std::size_t entry = 0; // of a list

  WrongRow() = default;
  WrongRow(std::string wrong, std::string_view at = {}, std::size_t in_list = 0)
      : what(std::move(wrong)), key(at), entry(in_list) {}
  WrongRow(const char* wrong) : what(wrong) {}
};

template <class Row> WrongRow wrong_as_a_whole(const Row&, std::string_view) { return {}; }

inline WrongRow wrong_as_a_whole(const SpeedRow& row, std::string_view kind) {
  if (row.speed.given() == row.spindle_speed.given())
    return "a speed row gives 'speed', or (a burr_speed) 'spindle_speed'; one of them";
  if (kind != "burr_speed" && (row.spindle_speed.given() || row.diameter.given() || row.hand))
    return "'spindle_speed', 'diameter' and 'hand' belong to burr_speed";
  if (row.speed.given() ? !(row.speed.range.low > ft_per_min(0)) : !(row.spindle_speed.range.low > rev_per_min(0)))
    return "a speed is above 0";
  return {};
}

inline WrongRow wrong_as_a_whole(const SpeedRatio& row, std::string_view) {
  return row.ratio.range.low > 0 ? "" : "a ratio of speeds is above 0";
}

inline WrongRow wrong_as_a_whole(const DrillingFeed& row, std::string_view) {
  if (row.feed.given() == row.share.given()) return "a drilling_feed gives 'feed' or 'share'; one of them";
  const bool above_zero = row.feed.given() ? row.feed.range.low > mm_per_rev(0) : row.share.range.low > 0;
  return above_zero ? "" : "a feed is above 0";
}

inline WrongRow wrong_as_a_whole(const ChipLoad& row, std::string_view) {
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

inline WrongRow wrong_as_a_whole(const DeepHole& row, std::string_view) {
  return row.speed_cut.range.high < 1 && row.feed_cut.range.high < 1 ? "" : "a cut in speed or feed is less than 100 %";
}

inline WrongRow wrong_as_a_whole(const PeckRow& row, std::string_view) {
  const bool bites = row.first.range.low >= 0.1 && row.next.range.low >= 0.1 && row.deep_next.range.low >= 0.1;
  return bites ? "" : "a peck is at least 0.1 diameters";
}

inline WrongRow wrong_as_a_whole(const DrillPointRow& row, std::string_view) {
  return row.point.range.low >= degrees(30) && row.point.range.high <= degrees(175)
             ? ""
             : "a drill's point is 30 to 175 deg";
}

inline WrongRow wrong_as_a_whole(const DrillWebRow& row, std::string_view) {
  const bool fits = row.web.range.low > mm(0) && row.web.range.low < row.diameter.range.low;
  return fits ? WrongRow{} : WrongRow{"a web is above 0 and less than the diameter", "web"};
}

inline WrongRow wrong_as_a_whole(const Machine& row, std::string_view) {
  if (!(row.range.low > rev_per_min(0))) return "a spindle speed is above 0";
  if (row.stiffness.given() && !(row.stiffness.range.low > newtons_per_mm(0)))
    return {"'stiffness' is above 0", "stiffness"};
  if (row.top_speed.given() && row.top_speed.range.low < row.range.low)
    return "'top_speed' is below the slowest speed: nothing is left to run at";
  return row.dial.given() && !(row.dial.range.low > mm(0)) ? "'dial' is above 0" : "";
}

inline WrongRow wrong_as_a_whole(const ChartList& row, std::string_view) {
  return row.words.empty() ? WrongRow{"a chart_list holds at least one word", "words"} : WrongRow{};
}

inline WrongRow wrong_as_a_whole(const HardnessRow& row, std::string_view) {
  return row.hb > 0 ? WrongRow{} : WrongRow{"'hb' is above 0", "hb"};
}

inline WrongRow wrong_as_a_whole(const Instrument& row, std::string_view) {
  for (const auto read : {+[](std::string_view text) { read_length_range(text); },
                          +[](std::string_view text) { read_angle_range(text); }}) {
    try {
      read(row.error);
      return {};
    } catch (const Fault&) {
      continue; // the other kind, perhaps
    }
  }
  return {"'" + std::string(row.error) + "' is no length and no angle", "error"};
}

inline bool lists(Words words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

inline WrongRow wrong_as_a_whole(const Caution& row, std::string_view) {
  for (std::size_t i = 0; i < row.when.size(); ++i) {
    const std::string_view tag = row.when[i];
    const auto colon = tag.find(':');
    const std::string_view about = tag.substr(0, colon);
    if (colon == std::string_view::npos || colon + 1 == tag.size() || !lists(caution_tags, about))
      return {"\'" + std::string(tag) + "' is no tag: ask:, metal:, cutter:, machine: or flag: and a word", "when", i};
    for (std::string_view rest = tag.substr(colon + 1); about == "metal" && !rest.empty();) {
      const auto bar = std::min(rest.find('|'), rest.size());
      if (!lists(metals, rest.substr(0, bar)))
        return {"\'" + std::string(rest.substr(0, bar)) + "\' is no metal", "when", i};
      rest.remove_prefix(std::min(bar + 1, rest.size()));
    }
  }
  return {};
}

inline WrongRow wrong_as_a_whole(const SizeRow& row, std::string_view) {
  return row.length() > mm(0) ? "" : "a size is above 0";
}

inline WrongRow wrong_as_a_whole(const Material& row, std::string_view) {
  return row.key.find('@') != std::string_view::npos ? "a material's key has no '@': that parts it from its condition"
                                                     : "";
}

inline WrongRow wrong_as_a_whole(const CuttingForceRow& row, std::string_view) {
  if (!(row.kc.range.low > megapascals(0))) return {"a specific force is above 0", "kc"};
  if (!(row.mc.range.low >= 0 && row.mc.range.high < 1)) return {"'mc' is 0 to under 1", "mc"};
  return row.doubt.range.high < 1 ? WrongRow{} : WrongRow{"a doubt is less than 100 %", "doubt"};
}

inline WrongRow wrong_as_a_whole(const UnitPowerRow& row, std::string_view) {
  return row.unit_power.range.low > megapascals(0) ? WrongRow{} : WrongRow{"a unit power is above 0", "unit_power"};
}

inline WrongRow wrong_as_a_whole(const FeedFactorRow& row, std::string_view) {
  return row.feed.range.low > mm_per_tooth(0) && row.factor.range.low > 0
             ? WrongRow{}
             : WrongRow{"a feed and its factor are above 0"};
}

inline WrongRow wrong_as_a_whole(const DrillForceRow& row, std::string_view) {
  if (!(row.torque.range.low > 0)) return {"a constant is above 0", "torque"};
  if (row.model == "power-law" && row.thrust.given()) return {"the power law has no thrust", "thrust"};
  return !row.thrust.given() || row.thrust.range.low > 0 ? WrongRow{} : WrongRow{"a constant is above 0", "thrust"};
}

inline WrongRow wrong_as_a_whole(const BurrSizeRow& row, std::string_view) {
  const bool fits = row.diameter.range.low < row.diameter.range.high && row.shank.range.low > mm(0) &&
                    row.head_length.range.low > mm(0);
  return fits ? WrongRow{} : WrongRow{"'diameter' is a range of heads, 'shank' and 'head_length' are above 0"};
}

inline WrongRow wrong_as_a_whole(const CutterStrengthRow& row, std::string_view) {
  const bool fits = row.modulus.range.low > megapascals(0) && row.shear_modulus.range.low > megapascals(0) &&
                    row.edge_radius.range.low > mm(0) && row.working_stress.range.low > megapascals(0);
  return fits ? WrongRow{} : WrongRow{"every figure of a cutter's strength is above 0"};
}

/// A rule for a point's item: its kind of quantity, and a touch-up no narrower than a keep.
inline WrongRow wrong_as_a_whole(const EndMillStock& row, std::string_view) {
  if (!(row.step.range.low > mm(0))) return {"'step' is above 0", "step"};
  const bool sound = row.sizes.range.low > mm(0) && row.sizes.range.low < row.sizes.range.high;
  return sound ? WrongRow{} : WrongRow{"'sizes' is a range above 0, as \"1/32 to 1/4 in\"", "sizes"};
}

template <class Quantity> WrongRow wrong_pair(const PointLimit& row, Range<Quantity> (*read)(std::string_view)) {
  Range<Quantity> keep;
  Range<Quantity> touch_up;
  try {
    keep = read(row.keep);
  } catch (const Fault& fault) {
    return {fault.message, "keep"};
  }
  try {
    touch_up = read(row.touch_up);
  } catch (const Fault& fault) {
    return {fault.message, "touch_up"};
  }
  const bool range = row.item == "chisel_edge_angle";
  const bool wider = touch_up.high >= keep.high && (!range || touch_up.low <= keep.low);
  return wider ? WrongRow{} : WrongRow{"'touch_up' reaches no less far than 'keep'", "touch_up"};
}

inline WrongRow wrong_as_a_whole(const PointLimit& row, std::string_view) {
  if (row.item == "web") return wrong_pair<double>(row, read_percent_range);
  const bool angle = row.item.find("angle") != std::string_view::npos || row.item.starts_with("lip_relief");
  return angle ? wrong_pair<Angle>(row, read_angle_range) : wrong_pair<Length>(row, read_length_range);
}

inline WrongRow wrong_as_a_whole(const UsualOversize& row, std::string_view) {
  return row.diameter.range.low < row.diameter.range.high
             ? WrongRow{}
             : WrongRow{"'diameter' is a range of drills, as \"0.126 to 0.251 in\"", "diameter"};
}

inline WrongRow wrong_as_a_whole(const ToleranceClass& row, std::string_view) {
  return row.size.range.low < row.size.range.high ? WrongRow{}
                                                  : WrongRow{"'size' is a range of sizes, as \"3 to 6 mm\"", "size"};
}

inline WrongRow wrong_as_a_whole(const FitClass& row, std::string_view) {
  return row.size.range.low < row.size.range.high
             ? WrongRow{}
             : WrongRow{"'size' is a range of sizes, as \"0.12 to 0.24 in\"", "size"};
}

inline WrongRow wrong_as_a_whole(const FitRow& row, std::string_view) {
  return row.fit_class.empty() == row.interference.given()
             ? WrongRow{}
             : WrongRow{"a fit gives 'fit_class' or 'interference'; one of them"};
}

inline WrongRow wrong_as_a_whole(const ExpansionRow& row, std::string_view) {
  if (!(row.expansion.range.low > per_kelvin(0))) return {"an expansion is above 0", "expansion"};
  return row.over.range.low < row.over.range.high
             ? WrongRow{}
             : WrongRow{"'over' is a range of temperatures, as \"0 to 100 degC\"", "over"};
}

inline WrongRow wrong_as_a_whole(const ScrewThread& row, std::string_view) {
  if (!(row.major.range.low > mm(0))) return {"a screw's diameter is above 0", "major"};
  return row.pitch.range.low > mm(0) && row.pitch.range.low < row.major.range.low / 2.0
             ? WrongRow{}
             : WrongRow{"a pitch is above 0 and less than half the diameter", "pitch"};
}

inline WrongRow wrong_as_a_whole(const ClearanceHole& row, std::string_view) {
  if (!(row.normal.range.low > mm(0))) return {"a hole is above 0", "normal"};
  if (row.close.given() && !(row.close.range.low > mm(0) && row.close.range.low <= row.normal.range.low))
    return {"'close' is above 0 and no wider than 'normal'", "close"};
  return !row.loose.given() || row.loose.range.low >= row.normal.range.low
             ? WrongRow{}
             : WrongRow{"'loose' is no narrower than 'normal'", "loose"};
}

inline WrongRow wrong_as_a_whole(const ScrewHead& row, std::string_view) {
  if (!(row.height.range.low > mm(0))) return {"'height' is above 0", "height"};
  const bool flat = row.shape == "flat";
  if (flat != row.cone.given() || flat == row.counterbore.given())
    return "a flat head gives its 'cone', a cap head its 'counterbore'";
  if (flat && !(row.cone.range.low >= degrees(30) && row.cone.range.high <= degrees(150)))
    return {"a head's cone is 30 to 150 deg", "cone"};
  return flat || row.counterbore.range.low > mm(0) ? WrongRow{} : WrongRow{"'counterbore' is above 0", "counterbore"};
}

inline WrongRow wrong_as_a_whole(const ThreadEngagement& row, std::string_view) {
  const auto& all = row.engagement.range;
  if (!(all.low > 0 && all.high <= 1)) return {"a percentage of thread is above 0 and at most 100 %", "engagement"};
  return row.first.range.low >= all.low && row.first.range.low <= all.high
             ? WrongRow{}
             : WrongRow{"'first' lies inside 'engagement'", "first"};
}

inline WrongRow wrong_as_a_whole(const ReamAllowance& row, std::string_view) {
  if (!(row.diameter.range.low < row.diameter.range.high))
    return {"'diameter' is a range of reamers, as \"0.171 to 0.281 in\"", "diameter"};
  return row.allowance.range.low > mm(0) && row.allowance.range.high < row.diameter.range.high
             ? WrongRow{}
             : WrongRow{"'allowance' is above 0 and less than the reamer", "allowance"};
}

/// Every limit the jobs ask for, and what its value may be.
inline WrongRow wrong_as_a_whole(const Limit& row, std::string_view) {
  struct Known {
    std::string_view key;
    bool length;
    double least;
    double most;
  };
  constexpr auto known = std::to_array<Known>({{"band_below", false, 0.01, 1},
                                               {"band_above", false, 1, 10},
                                               {"through_overrun", true, 0, 0},
                                               {"dry_speed", false, 0.01, 1},
                                               {"shim_over", false, 0, 1},
                                               {"deepest_hole", false, 1, 1000},
                                               {"thinning_most", false, 1, 100},
                                               {"handwheel_fastest", false, 0, 60},
                                               {"land_angle", false, 30, 120},
                                               {"web_doubt", false, 0, 0.9},
                                               {"mark_error", false, 0, 1000},
                                               {"least_light", true, 0, 0},
                                               {"clean_up", true, 0, 0},
                                               {"clean_up_most", true, 0, 0},
                                               {"helix_least", false, 0, 60},
                                               {"helix_usual", false, 0, 60},
                                               {"helix_most", false, 0, 60},
                                               {"chisel_usual", false, 91, 165},
                                               {"second_relief", false, 5, 60},
                                               {"flutes_usual", false, 0.5, 20},
                                               {"cone_half_least", false, 1, 89},
                                               {"cone_half_most", false, 1, 89},
                                               {"burr_overhang", true, 0, 0},
                                               {"drill_overhang", false, 1, 100},
                                               {"radial_ratio", false, 0, 3},
                                               {"least_chip_share", false, 0, 3},
                                               {"least_chip_share_brass", false, 0, 3},
                                               {"wear_milling", false, 1, 3},
                                               {"flute_end_notch", false, 1, 3},
                                               {"finish_least", true, 0, 0},
                                               {"near_rubbing", false, 1, 10},
                                               {"least_chip_margin", false, 1, 10},
                                               {"feed_least_share", false, 0.01, 1},
                                               {"breaks_at", false, 1, 10},
                                               {"web_taper", false, 0.001, 0.1},
                                               {"web_taper_least", false, 0, 0.1},
                                               {"web_taper_most", false, 0, 0.1},
                                               {"relief_over_least", false, 0.1, 20},
                                               {"slot_leave", true, 0, 0},
                                               {"hole_pitch_least", false, 1, 3},
                                               {"pocket_relief", true, 0, 0},
                                               {"pocket_least", true, 0, 0},
                                               {"finish_left", true, 0, 0},
                                               {"slot_overrun", true, 0, 0},
                                               {"dial_setting", true, 0, 0},
                                               {"first_cut_doubt", true, 0, 0},
                                               {"climb_width_most", false, 0.001, 1},
                                               {"edge_burr", true, 0, 0},
                                               {"spring_passes", false, 0, 9},
                                               {"room_temperature", false, 0, 45},
                                               {"expansion_doubt", false, 0, 0.5},
                                               {"heat_margin", false, 0, 100},
                                               {"hot_clearance", true, 0, 0},
                                               {"heat_little", true, 0, 0},
                                               {"chisel_two_facet_least", false, 33, 89},
                                               {"chisel_two_facet_usual", false, 33, 89},
                                               {"chisel_two_facet_most", false, 33, 89},
                                               {"chisel_four_facet_least", false, 33, 89},
                                               {"chisel_four_facet_usual", false, 33, 89},
                                               {"chisel_four_facet_most", false, 33, 89},
                                               {"chisel_cone_least", false, 33, 89},
                                               {"chisel_cone_usual", false, 33, 89},
                                               {"chisel_cone_most", false, 33, 89},
                                               {"cone_steep", false, 0.1, 0.99},
                                               {"cone_usual", false, 0.1, 0.99},
                                               {"cone_blunt", false, 0.1, 0.99},
                                               {"unread_angle_least", false, 40, 118},
                                               {"unread_angle_most", false, 118, 175},
                                               {"unseen_light_most", false, 1, 45},
                                               {"lip_depth_least", false, 0, 0.2},
                                               {"lip_depth_most", false, 0.5, 10},
                                               {"lip_length_least", false, 0, 0.4},
                                               {"lip_length_most", false, 0.6, 10},
                                               {"lip_height_most", false, 0.01, 1},
                                               {"chisel_length_least", false, 0, 0.1},
                                               {"chisel_length_most", false, 0.2, 2},
                                               {"light_gap_most", false, 0.01, 2},
                                               {"trial_hole_least", false, 0.5, 1},
                                               {"trial_hole_most", false, 1, 3},
                                               {"land_wear_most", false, 0.01, 1},
                                               {"margin_wear_most", false, 0.01, 10},
                                               {"thread_least", false, 0.01, 1},
                                               {"thread_most", false, 0.01, 1},
                                               {"thread_most_stainless", false, 0.01, 1},
                                               {"tap_lead", false, 0, 20},
                                               {"thread_length", false, 0.1, 10},
                                               {"countersink_most", false, 0.1, 1},
                                               {"reaming_speed_share", false, 0.01, 1},
                                               {"reaming_feed_least", false, 0.1, 10},
                                               {"reaming_feed_most", false, 0.1, 10},
                                               {"countersink_speed_least", false, 0.01, 1},
                                               {"countersink_speed_most", false, 0.01, 1},
                                               {"reamer_step_inch", true, 0, 0},
                                               {"reamer_step_metric", true, 0, 0},
                                               {"letter_share", false, 0.001, 0.05},
                                               {"read_from", true, 0, 0}});
  if (row.key == "hand_tool_top")
    return row.ratio >= 1000 ? "" : "'hand_tool_top' is a number of rev/min, 1000 or more";
  const auto found = std::find_if(known.begin(), known.end(), [&](const Known& one) { return one.key == row.key; });
  if (found == known.end()) return "'" + std::string(row.key) + "' is no limit";
  if (found->length) return row.length > mm(0) ? "" : "'" + std::string(row.key) + "' is a length above 0";
  const bool fits = row.length == mm(0) && row.ratio >= found->least && row.ratio <= found->most;
  return fits ? "" : "'" + std::string(row.key) + "' is a pure number within its bounds";
}

} // namespace quillside
