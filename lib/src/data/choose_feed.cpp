#include <quillside/data/choose.hpp>

#include <algorithm>

#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>

#include "for_metal.hpp"
#include "most_specific.hpp"

namespace quillside {

namespace {

Range<FeedPerRev> feed_of(const DrillingFeed& row, Length diameter) {
  constexpr auto one_turn = Quantity<detail::turn>::from_value(1);
  if (row.feed.given()) return row.feed.range;
  return {row.share.range.low * diameter / one_turn, row.share.range.high * diameter / one_turn};
}

struct Load {
  Range<FeedPerTooth> range;
  FeedPerTooth first;
  bool scaled = false;
  bool holds = false; // the row prints this size, or sizes on both sides of it
};

FeedPerTooth between(FeedPerTooth from, FeedPerTooth to, double share) { return from + share * (to - from); }

constexpr auto one_tooth = Quantity<detail::tooth>::from_value(1);

Load load_of(const ChipLoad& row, Length diameter) {
  if (row.share.given()) {
    const auto share = [&](double part) { return part * diameter / one_tooth; };
    const double first = row.first.given() ? row.first.range.low : row.share.range.low;
    const bool holds = row.diameter.range.low <= diameter && diameter <= row.diameter.range.high;
    return {{share(row.share.range.low), share(row.share.range.high)}, share(first), false, holds};
  }
  const auto& points = row.points;
  if (diameter < points.front().diameter) {
    const double share = diameter / points.front().diameter;
    const Range<FeedPerTooth> range{share * points.front().load.low, share * points.front().load.high};
    return {range, range.low, true, false};
  }
  // Beyond the largest printed cutter the load stays: a bigger tool does not mind a small chip.
  if (diameter >= points.back().diameter)
    return {points.back().load, points.back().load.low, false, diameter == points.back().diameter};
  const auto above =
      std::find_if(points.begin(), points.end(), [&](const ChipPoint& point) { return point.diameter > diameter; });
  const auto& from = *(above - 1);
  const double share = (diameter - from.diameter) / (above->diameter - from.diameter);
  const Range<FeedPerTooth> range{between(from.load.low, above->load.low, share),
                                  between(from.load.high, above->load.high, share)};
  return {range, range.low, false, true};
}

template <class Row> std::vector<const Row*> all_but(const std::vector<const Row*>& rows, const Row* one) {
  std::vector<const Row*> rest;
  std::copy_if(rows.begin(), rows.end(), std::back_inserter(rest), [&](const Row* row) { return row != one; });
  return rest;
}

/// A load scaled below its table is held against the shares of the diameter that are printed for the smallest cutters.
void hold_against_share(const Tables& tables, const Work& work, Length diameter, ChipChoice& choice) {
  const auto shares = most_specific<ChipLoad>(tables, tables.chip_loads, work, [&](const ChipLoad& row) {
    return row.share.given() && load_of(row, diameter).holds;
  });
  if (shares.empty()) return;
  choice.held_against = shares.front();
  const auto bounds = load_of(*shares.front(), diameter).range;
  choice.band.first = std::clamp(choice.band.first, bounds.low, bounds.high);
  choice.band.low = std::min(choice.band.first, bounds.low);
  choice.band.high = std::max(choice.band.first, bounds.high);
}

} // namespace

FeedChoice choose_drilling_feed(const Tables& tables, const Work& work, std::string_view cutter, Length diameter) {
  const auto rows = most_specific<DrillingFeed>(tables, tables.drilling_feeds, work, [&](const DrillingFeed& row) {
    return (row.cutter.empty() || row.cutter == cutter) && row.diameter.range.low <= diameter &&
           diameter < row.diameter.range.high;
  });
  if (rows.empty())
    throw contradiction(print_length(diameter, UnitSystem::inch),
                        "no table has a drilling feed for a drill of " +
                            print_length_with_unit(diameter, UnitSystem::inch));
  FeedChoice choice;
  choice.row = *std::min_element(rows.begin(), rows.end(), [&](const auto* a, const auto* b) {
    const auto one = feed_of(*a, diameter);
    const auto other = feed_of(*b, diameter);
    return one.low != other.low ? one.low < other.low : one.high < other.high;
  });
  choice.spanning = all_but(rows, choice.row);
  const auto first = feed_of(*choice.row, diameter);
  choice.band = {first.low, first.low, first.high};
  for (const auto* row : choice.spanning) choice.band.high = std::max(choice.band.high, feed_of(*row, diameter).high);
  return choice;
}

ChipChoice choose_chip_load(const Tables& tables, const Work& work, std::string_view cutter, Length diameter,
                            bool full_slot) {
  const auto rows_for = [&](std::string_view name, bool holding) {
    return most_specific<ChipLoad>(tables, tables.chip_loads, work, [&](const ChipLoad& row) {
      return row.cutter == name &&
             (row.points.empty() ? load_of(row, diameter).holds : !holding || load_of(row, diameter).holds);
    });
  };
  const auto rows_of_cutter = [&](std::string_view name) {
    auto rows = rows_for(name, true);
    return rows.empty() ? rows_for(name, false) : rows;
  };
  ChipChoice choice;
  auto rows = rows_of_cutter(cutter);
  if (rows.empty()) {
    for (const auto& ratio : tables.speed_ratios) {
      if (ratio.ask != "mill" || ratio.cutter != cutter) continue;
      rows = rows_of_cutter(ratio.of);
      choice.other_cutter = true;
    }
  }
  if (rows.empty())
    throw contradiction(std::string(cutter), "no table has a chip load for " + std::string(cutter) + " in " +
                                                 std::string(work.material->key));
  choice.row = *std::min_element(rows.begin(), rows.end(), [&](const auto* a, const auto* b) {
    return load_of(*a, diameter).first < load_of(*b, diameter).first;
  });
  choice.spanning = all_but(rows, choice.row);
  const Load load = load_of(*choice.row, diameter);
  choice.band = {load.range.low, load.first, load.range.high};
  for (const auto* row : choice.spanning)
    choice.band.high = std::max(choice.band.high, load_of(*row, diameter).range.high);
  if (full_slot && choice.row->slot.given()) {
    choice.slot_reduced = true;
    const double factor = choice.row->slot.range.low;
    choice.band.low = factor * choice.band.low;
    choice.band.first = factor * choice.band.first;
    choice.band.high =
        std::max(choice.band.first, choice.spanning.empty() ? factor * choice.band.high : choice.band.high);
  }
  choice.scaled = load.scaled;
  if (choice.scaled) hold_against_share(tables, work, diameter, choice);
  return choice;
}

const DeepHole* choose_deep_hole(const Tables& tables, double depth_over_diameter) {
  const DeepHole* deepest = nullptr;
  for (const auto& row : tables.deep_holes) {
    const bool reached = row.depth.range.low <= depth_over_diameter;
    if (reached && (deepest == nullptr || row.depth.range.low > deepest->depth.range.low)) deepest = &row;
  }
  return deepest;
}

const PeckRow* choose_peck(const Tables& tables, const Work& work, Length diameter) {
  const auto best = [&](bool small) {
    return best_for_metal<PeckRow>(tables.pecks, work.material->metal, [&](const PeckRow& row) {
      return row.below.given() == small && (!small || diameter < row.below.range.low);
    });
  };
  const PeckRow* for_small = best(true);
  return for_small != nullptr ? for_small : best(false);
}

const DrillPointRow& choose_drill_point(const Tables& tables, const Work& work) {
  const auto rows =
      most_specific<DrillPointRow>(tables, tables.drill_points, work, [](const DrillPointRow&) { return true; });
  return rows.empty() ? choose_drill_point(tables) : *rows.front();
}

const DrillPointRow& choose_drill_point(const Tables& tables) {
  for (const auto& row : tables.drill_points)
    if (row.material.empty()) return row;
  Fault fault;
  fault.kind = FaultKind::data;
  fault.message = "no table has a drill_point that holds for any material";
  throw fault;
}

std::optional<WebChoice> choose_drill_web(const Tables& tables, Length diameter) {
  const auto& rows = tables.drill_webs;
  if (rows.empty()) return std::nullopt;
  const auto size = [](const DrillWebRow& row) { return row.diameter.range.low; };
  const auto web = [](const DrillWebRow& row) { return row.web.range.low; };
  const auto above =
      std::find_if(rows.begin(), rows.end(), [&](const DrillWebRow& row) { return size(row) > diameter; });
  if (above == rows.begin()) return WebChoice{(diameter / size(*above)) * web(*above), &*above};
  const DrillWebRow& below = *(above - 1);
  if (above == rows.end()) return WebChoice{(diameter / size(below)) * web(below), &below};
  const double share = (diameter - size(below)) / (size(*above) - size(below));
  return WebChoice{web(below) + share * (web(*above) - web(below)), &below};
}

const LipReliefRow* choose_lip_relief(const Tables& tables, std::string_view metal, Length diameter) {
  return best_for_metal<LipReliefRow>(tables.lip_reliefs, metal, [&](const LipReliefRow& row) {
    return row.diameter.range.low <= diameter && diameter < row.diameter.range.high;
  });
}

const Fluid* choose_fluid(const Tables& tables, std::string_view ask, const Work& work) {
  return best_for_metal<Fluid>(tables.fluids, work.material->metal,
                               [&](const Fluid& row) { return row.ask == ask || row.ask == "any"; });
}

} // namespace quillside
