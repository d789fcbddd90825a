#include "point_next.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <stdexcept>

#include <quillside/model/flat_facet.hpp>
#include <quillside/model/lip.hpp>
#include <quillside/quantity/angle.hpp>

#include "bench_doubt.hpp"
#include "evidence.hpp"

namespace quillside {

namespace {

struct Candidate {
  std::string_view item;
  std::string_view flag; // without its dashes
  std::string_view how;
};
constexpr std::array<Candidate, 22> candidates{{
    {"included_angle", "angle", "a protractor or gauge laid along the lips"},
    {"included_angle", "half-angles", "each lip against the body of the drill"},
    {"included_angle", "lip-depth", "along the axis, outer corner to inner end of the lip"},
    {"half_angle_difference", "half-angles", "each lip against the body of the drill"},
    {"lip_height_difference", "lip-height", "turn the drill half round in a V-block, against a stop"},
    {"lip_height_difference", "lip-lengths", "outer corner to inner end of each lip"},
    {"lip_relief", "relief", "the flank against a plane square to the axis, at the outer corner"},
    {"lip_relief", "drop",
     "dial on the flank near the margin; with --turn, the drill turned 5 deg in its cutting direction"},
    {"lip_relief", "chisel", "end on, between the chisel edge and a lip"},
    {"heel_clear_angle", "relief", "the flank against a plane square to the axis, at the outer corner"},
    {"heel_clear_angle", "drop",
     "dial on the flank near the margin; with --turn, the drill turned 5 deg in its cutting direction"},
    {"heel_clear_angle", "chisel", "end on, between the chisel edge and a lip"},
    {"lip_relief", "angle", "a protractor or gauge laid along the lips"},
    {"heel_clear_angle", "angle", "a protractor or gauge laid along the lips"},
    {"heel_clear_angle", "web", "ball ends in the flutes, at the point"},
    {"oversize", "half-angles", "each lip against the body of the drill"},
    {"oversize", "trial-hole", "pins that go and do not go, in a hole drilled anew with the work clamped"},
    {"chisel_edge_angle", "chisel", "end on, between the chisel edge and a lip"},
    {"web", "web", "ball ends in the flutes, at the point"},
    {"land_wear", "land-wear", "the bright land behind the lip, at the outer corner"},
    {"margin_wear", "margin-wear", "the worn or rounded length of margin behind the corner"},
    {"lip_bow", "light-gap", "the gap in the middle of the lip"},
}};

/// What the point as it is known would show.
struct Estimate {
  Length diameter;
  Length web;
  Angle included;
  Angle chisel;
  Angle relief;
  Length height;

  explicit Estimate(const PointReadings& readings, const JudgedPoint& way)
      : diameter(readings.diameter), web(way.solved.web.spread.value), included(way.solved.included.spread.value),
        chisel(way.solved.chisel.spread.value), relief(way.targets.relief), height(mm(0)) {
    // What nobody read is taken for good: the relief a little over the least, where that is the target.
    constexpr Angle inside = degrees(2);
    if (way.solved.way == GrindingWay::two_facet) relief = relief + inside;
    if (way.solved.relief && !way.solved.relief_is_most) relief = way.solved.relief->spread.value;
    if (way.solved.height && !way.solved.height_is_floor) height = way.solved.height->spread.value;
    if (!way.solved.included_read) included = way.targets.included;
    relief = std::max(relief, degrees(1));
  }
  [[nodiscard]] PointShape shape() const { return {diameter, web, included}; }
};

/// With the reading of that flag made up; nothing where one as good stands there already.
std::optional<PointReadings> with_reading(PointReadings readings, const Estimate& point, std::string_view flag,
                                          Length length_error, Angle angle_error) {
  const auto finer = [](const auto& old, const auto& made) {
    return !old || made.high - made.low < (old->high - old->low) * 0.99;
  };
  const auto put = [&](auto& into, const auto& made) {
    if (!finer(into, made)) return false;
    into = made;
    return true;
  };
  const auto put_pair = [&](auto& into, const auto& made) {
    if (into && !finer(std::optional((*into)[0]), made[0])) return false;
    into = made;
    return true;
  };
  const Angle half = point.included / 2.0;
  bool done = false;
  const bool by_inner_end = flag == "lip-depth" || flag == "lip-lengths" || flag == "chisel";
  if (by_inner_end && (readings.thinned || readings.split)) return std::nullopt;
  if (flag == "angle") done = put(readings.angle, give_or_take(point.included, angle_error));
  if (flag == "half-angles")
    done = put_pair(readings.half_angles,
                    Pair<Spread<Angle>>{give_or_take(half, angle_error), give_or_take(half, angle_error)});
  if (flag == "lip-depth")
    done = put(readings.lip_depth, give_or_take(lip_depth(point.shape(), point.chisel), length_error));
  if (flag == "lip-height") {
    const auto made = give_or_take(point.height, length_error);
    done = put(readings.lip_height, Spread<Length>{std::max(mm(0), made.low), made.value, made.high});
  }
  if (flag == "lip-lengths") {
    const Length length = lip_length(point.shape(), point.chisel);
    const Length off = point.height / cosine(half) / 2.0;
    done = put_pair(readings.lip_lengths, Pair<Spread<Length>>{give_or_take(length - off, length_error),
                                                               give_or_take(length + off, length_error)});
  }
  if (flag == "relief") done = put(readings.relief, give_or_take(point.relief, angle_error));
  if (flag == "chisel") done = put(readings.chisel, give_or_take(std::min(point.chisel, degrees(85)), angle_error));
  if (flag == "drop") {
    const Angle turn = degrees(5);
    const double slope = flank_slope(point.shape(), point.relief);
    if (!(slope > 0)) return std::nullopt;
    const auto made = give_or_take(flat_drop({point.shape(), slope}, turn), length_error);
    done = put(readings.drop, Spread<Length>{std::max(mm(0), made.low), made.value, made.high});
    readings.turn = give_or_take(turn, degrees(0.5));
  }
  if (flag == "trial-hole" && readings.trial_hole)
    done = put(readings.trial_hole, give_or_take(readings.trial_hole->value, length_error));
  if (flag == "web") done = put(readings.web, give_or_take(point.web, length_error));
  const auto shrink = [&](auto& read) {
    if (!read) return false;
    const auto made = give_or_take(read->value, length_error);
    return put(read, Spread<Length>{std::max(mm(0), made.low), made.value, made.high});
  };
  if (flag == "land-wear") done = shrink(readings.land_wear);
  if (flag == "margin-wear") done = shrink(readings.margin_wear);
  if (flag == "light-gap" && readings.light && readings.light->gap) {
    auto& gap = *readings.light->gap;
    const auto finer_gap = [&](Spread<Length>& one) {
      if (!(2.0 * length_error < (one.high - one.low) * 0.99)) return false;
      one = {std::max(mm(0), one.value - length_error), one.value, one.value + length_error};
      return true;
    };
    const bool a = finer_gap(gap[0]);
    const bool b = finer_gap(gap[1]);
    done = a || b;
  } else if (flag == "light-gap" && readings.light) {
    // Both ends of a hollow lip touch: its hollow is taken for one that is well seen.
    const auto gap_of = [&](LightAt at) {
      constexpr Length small = mm(0.055);
      const Length value = at == LightAt::none ? mm(0) : small;
      return Spread<Length>{std::max(mm(0), value - length_error), value, value + length_error};
    };
    readings.light->gap = {gap_of(readings.light->at[0]), gap_of(readings.light->at[1])};
    done = true;
  }
  return done ? std::optional(readings) : std::nullopt;
}

bool knows(const JudgedPoint& way, std::string_view item) {
  if (item == "included_angle") return way.knows_included();
  if (item == "lip_height_difference") return way.knows_lips();
  if (item == "lip_relief" || item == "heel_clear_angle") return way.knows_relief();
  return true;
}

bool settles(const std::vector<JudgedPoint>& ways, std::string_view item) {
  if (ways.empty()) return false;
  const auto checks = checks_of_all(ways);
  const auto settled = [&](std::string_view name) {
    const auto found =
        std::find_if(checks.begin(), checks.end(), [&](const PointCheck& check) { return check.item == name; });
    return found == checks.end() || !found->range || found->range->settled();
  };
  const bool with_heel = item == "lip_relief" || item == "heel_clear_angle";
  return settled(item) && (!with_heel || (settled("lip_relief") && settled("heel_clear_angle"))) &&
         std::all_of(ways.begin(), ways.end(), [&](const JudgedPoint& way) { return knows(way, item); });
}

/// How wide the doubt of an item is; a figure nobody knows is as wide as can be.
double doubt_left(const std::vector<JudgedPoint>& ways, std::string_view item) {
  const auto checks = checks_of_all(ways);
  const auto found =
      std::find_if(checks.begin(), checks.end(), [&](const PointCheck& check) { return check.item == item; });
  if (found == checks.end() || !found->value || !found->value->low) return std::numeric_limits<double>::max();
  return *found->value->high - *found->value->low;
}

template <class Quantity> std::string said(const Error<Quantity>& error) {
  return std::string(error.instrument->name) + ", good to " + std::string(error.instrument->error);
}

} // namespace

std::optional<std::string_view> unsettled_item(const std::vector<JudgedPoint>& ways,
                                               const std::vector<PointCheck>& checks) {
  for (const auto& check : checks)
    if (check.range && !check.range->settled()) return check.item;
  for (const std::string_view item : {"included_angle", "lip_height_difference", "lip_relief"})
    if (!std::all_of(ways.begin(), ways.end(), [&](const JudgedPoint& way) { return knows(way, item); })) return item;
  return std::nullopt;
}

NextReading next_reading(const Tables& tables, const PointReadings& readings, const std::vector<JudgedPoint>& ways,
                         std::string_view item, bool way_unknown, const Rejudge& rejudge) {
  NextReading best{item, "", "", 0, true};
  NextReading first_step{item, "", "", 0, false};
  double narrowest = 0.9 * doubt_left(ways, item); // less than a tenth narrower is no step
  if (way_unknown && ways.size() > 1 &&
      std::all_of(ways.begin(), ways.end(), [&](const JudgedPoint& way) { return settles({way}, item); }))
    return {item, "--way", "", 0, true};
  const Estimate point(readings, ways.front());
  const auto consider = [&](std::string_view flag, const std::string& instrument, int trouble, Length length_error,
                            Angle angle_error) {
    if (!best.flag.empty() && trouble >= best.trouble) return;
    try {
      // A reading that would just reach a limit settles nothing.
      constexpr double margin = 1.05;
      const auto with = with_reading(readings, point, flag, margin * length_error, margin * angle_error);
      if (!with) return;
      const auto judged = rejudge(*with);
      if (settles(judged, item)) best = {item, "--" + std::string(flag), instrument, trouble, true};
      const double left = doubt_left(judged, item);
      if (left < narrowest) {
        narrowest = left;
        first_step = {item, "--" + std::string(flag), instrument, trouble, false};
      }
    } catch (const std::domain_error&) {
      return; // the estimate is no point that such a reading can be made of
    } catch (const Fault&) {
      return;
    }
  };
  for (const auto& candidate : candidates) {
    if (candidate.item != item) continue;
    for (const auto& error : length_instruments(tables, candidate.flag))
      consider(candidate.flag, said(error), error.instrument->trouble, error.half_width, turns(0));
    for (const auto& error : angle_instruments(tables, candidate.flag))
      consider(candidate.flag, said(error), error.instrument->trouble, mm(0), error.half_width);
  }
  return best.flag.empty() ? first_step : best;
}

std::string_view how_to_read(std::string_view flag) {
  const auto found = std::find_if(candidates.begin(), candidates.end(),
                                  [&](const Candidate& one) { return flag.substr(2) == one.flag; });
  return found == candidates.end() ? std::string_view{} : found->how;
}

} // namespace quillside
