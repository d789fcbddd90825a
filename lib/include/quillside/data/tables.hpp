#pragma once
// All tables of one answer, as one value. The built-in ones are compiled in and cost nothing to hold; rows from disk go
// over them by data/load.

#include <memory>

#include <quillside/data/caution.hpp>
#include <quillside/data/chart_list.hpp>
#include <quillside/data/convert_hardness.hpp>
#include <quillside/data/cutter.hpp>
#include <quillside/data/end_mill_stock.hpp>
#include <quillside/data/feed_row.hpp>
#include <quillside/data/fit_row.hpp>
#include <quillside/data/fluid.hpp>
#include <quillside/data/force_row.hpp>
#include <quillside/data/heat_row.hpp>
#include <quillside/data/hole_row.hpp>
#include <quillside/data/limit.hpp>
#include <quillside/data/machine.hpp>
#include <quillside/data/material.hpp>
#include <quillside/data/point_limit.hpp>
#include <quillside/data/reading_row.hpp>
#include <quillside/data/sign.hpp>
#include <quillside/data/size_ladder.hpp>
#include <quillside/data/source.hpp>
#include <quillside/data/speed_row.hpp>
#include <quillside/data/thread_row.hpp>

namespace quillside {

/// A table file as text. The built-in ones are named `built-in:NAME.toml`.
struct TableText {
  std::string_view name;
  std::string_view text;
};

struct Tables {
  std::span<const Source> sources;
  std::span<const Material> materials;
  std::span<const Cutter> cutters;
  std::span<const SpeedRow> drilling_speeds;
  std::span<const SpeedRow> milling_speeds;
  std::span<const SpeedRow> reaming_speeds;
  std::span<const SpeedRow> burr_speeds;
  std::span<const SpeedRatio> speed_ratios;
  std::span<const DrillingFeed> drilling_feeds;
  std::span<const ChipLoad> chip_loads;
  std::span<const DeepHole> deep_holes;
  std::span<const PeckRow> pecks;
  std::span<const DrillPointRow> drill_points;
  std::span<const DrillWebRow> drill_webs; // in order of size
  std::span<const LipReliefRow> lip_reliefs;
  std::span<const Fluid> fluids;
  std::span<const Machine> machines;
  std::span<const SizeRow> sizes; // in order of size
  std::span<const HardnessRow> hardness;
  std::span<const Limit> limits;
  std::span<const CuttingForceRow> cutting_forces;
  std::span<const UnitPowerRow> unit_powers;
  std::span<const FeedFactorRow> feed_factors; // in order of feed
  std::span<const DrillForceRow> drill_forces;
  std::span<const BurrSizeRow> burr_sizes;
  std::span<const CutterStrengthRow> cutter_strengths;
  std::span<const EndMillStock> end_mill_stock;
  std::span<const PointLimit> point_limits;
  std::span<const UsualOversize> usual_oversizes;
  std::span<const ToleranceClass> tolerance_classes;
  std::span<const FitClass> fit_classes;
  std::span<const FitRow> fits;
  std::span<const ExpansionRow> expansions;
  std::span<const OxideColour> oxide_colours;
  std::span<const HeatCeiling> heat_ceilings;
  std::span<const Instrument> readings;
  std::span<const Sign> signs;
  std::span<const ScrewThread> screw_threads;
  std::span<const ClearanceHole> clearance_holes;
  std::span<const ScrewHead> screw_heads;
  std::span<const ThreadEngagement> thread_engagements;
  std::span<const ReamAllowance> ream_allowances;
  std::span<const ChartList> chart_lists;
  std::span<const Caution> cautions;

  std::span<const TableText> texts;  // the files the rows came from, as they were read
  std::shared_ptr<const void> owner; // keeps alive what the spans point into, where it is not compiled in
};

/// The tables this library was built with.
Tables builtin_tables();

/// The source of that id; every row's source is known once its table has loaded.
const Source& source_of(const Tables& tables, std::string_view id);
/// "Author, Title, edition, year": the fields that were seen.
std::string cite(const Source& source);

/// The machine of that name; a Fault that lists them when there is none.
const Machine& find_machine(const Tables& tables, std::string_view name);
/// The cutter of that name among those that come for \p tool; a Fault that lists them otherwise.
const Cutter& find_cutter(const Tables& tables, std::string_view name, std::string_view tool);
/// The cutter that is taken for \p tool when none is named.
const Cutter& usual_cutter(const Tables& tables, std::string_view tool);

} // namespace quillside
