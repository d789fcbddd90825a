#pragma once
// What the rows of a Tables point into, when they came from disk.

#include <deque>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include <quillside/data/tables.hpp>

namespace quillside {

struct Storage {
  std::deque<std::string> texts;
  std::deque<std::vector<std::string_view>> words;
  std::deque<std::vector<ChipPoint>> points;
  std::deque<std::vector<Step>> steps;
  std::vector<TableText> files;

  std::vector<Source> sources;
  std::vector<Material> materials;
  std::vector<Cutter> cutters;
  std::vector<SpeedRow> drilling_speeds, milling_speeds, reaming_speeds, burr_speeds;
  std::vector<SpeedRatio> speed_ratios;
  std::vector<DrillingFeed> drilling_feeds;
  std::vector<ChipLoad> chip_loads;
  std::vector<DeepHole> deep_holes;
  std::vector<PeckRow> pecks;
  std::vector<DrillPointRow> drill_points;
  std::vector<DrillWebRow> drill_webs;
  std::vector<LipReliefRow> lip_reliefs;
  std::vector<Fluid> fluids;
  std::vector<Machine> machines;
  std::vector<SizeRow> sizes;
  std::vector<HardnessRow> hardness;
  std::vector<Limit> limits;
  std::vector<CuttingForceRow> cutting_forces;
  std::vector<UnitPowerRow> unit_powers;
  std::vector<FeedFactorRow> feed_factors;
  std::vector<DrillForceRow> drill_forces;
  std::vector<BurrSizeRow> burr_sizes;
  std::vector<CutterStrengthRow> cutter_strengths;
  std::vector<EndMillStock> end_mill_stock;
  std::vector<PointLimit> point_limits;
  std::vector<UsualOversize> usual_oversizes;
  std::vector<ToleranceClass> tolerance_classes;
  std::vector<FitClass> fit_classes;
  std::vector<FitRow> fits;
  std::vector<ExpansionRow> expansions;
  std::vector<OxideColour> oxide_colours;
  std::vector<HeatCeiling> heat_ceilings;
  std::vector<Instrument> readings;
  std::vector<Sign> signs;
  std::vector<ScrewThread> screw_threads;
  std::vector<ClearanceHole> clearance_holes;
  std::vector<ScrewHead> screw_heads;
  std::vector<ThreadEngagement> thread_engagements;
  std::vector<ReamAllowance> ream_allowances;
  std::vector<ChartList> chart_lists;
  std::vector<Caution> cautions;

  std::shared_ptr<const void> below; // what the rows taken over from the tables below point into

  std::string_view keep(std::string text) { return texts.emplace_back(std::move(text)); }
  Words keep(std::vector<std::string_view> list) { return words.emplace_back(std::move(list)); }
};

} // namespace quillside
