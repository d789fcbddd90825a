#pragma once
// The fields of every kind of row, once: the loader reads by them, the table compiler writes by them, `tables new`
// explains by them.
//
//   fields/ground.hpp   source, material, cutter, hardness, limit
//   fields/speed.hpp    drilling_speed, milling_speed, reaming_speed, burr_speed, speed_ratio,
//                       drilling_feed, chip_load, fluid
//   fields/drill.hpp    deep_hole, peck, drill_point, drill_web, lip_relief, point_limit, usual_oversize
//   fields/force.hpp    cutting_force, unit_power, feed_factor, drill_force, burr_size, cutter_strength
//   fields/hole.hpp     screw_thread, clearance_hole, screw_head, thread_engagement, ream_allowance
//   fields/fit.hpp      tolerance_class, fit_class, fit, expansion, oxide_colour, heat_ceiling
//   fields/shop.hpp     machine, size, end_mill_stock, reading
//   fields/told.hpp     sign, caution, chart_list
//
// A visitor gets, in the order of the struct, the field and the member.
//
//   visit(field, member)          one value
//   visit.each(field, member)     one word or a list of words; a list stands for one row each
//   visit.points(row)  visit.gears(row)  visit.amount(row)    the three that are made of several keys

#include <array>
#include <string_view>
#include <tuple>
#include <utility>

#include <quillside/data/tables.hpp>

#include "fields/drill.hpp"
#include "fields/fit.hpp"
#include "fields/force.hpp"
#include "fields/ground.hpp"
#include "fields/hole.hpp"
#include "fields/shop.hpp"
#include "fields/speed.hpp"
#include "fields/told.hpp"

namespace quillside {

/// The names of the kinds of row in a table file, in the order of members_of.
inline constexpr auto kind_names = std::to_array<std::string_view>({"source",
                                                                    "material",
                                                                    "cutter",
                                                                    "drilling_speed",
                                                                    "milling_speed",
                                                                    "reaming_speed",
                                                                    "burr_speed",
                                                                    "speed_ratio",
                                                                    "drilling_feed",
                                                                    "chip_load",
                                                                    "deep_hole",
                                                                    "peck",
                                                                    "drill_point",
                                                                    "drill_web",
                                                                    "lip_relief",
                                                                    "fluid",
                                                                    "machine",
                                                                    "size",
                                                                    "hardness",
                                                                    "limit",
                                                                    "cutting_force",
                                                                    "unit_power",
                                                                    "feed_factor",
                                                                    "drill_force",
                                                                    "burr_size",
                                                                    "cutter_strength",
                                                                    "end_mill_stock",
                                                                    "point_limit",
                                                                    "usual_oversize",
                                                                    "tolerance_class",
                                                                    "fit_class",
                                                                    "fit",
                                                                    "expansion",
                                                                    "oxide_colour",
                                                                    "heat_ceiling",
                                                                    "reading",
                                                                    "sign",
                                                                    "screw_thread",
                                                                    "clearance_hole",
                                                                    "screw_head",
                                                                    "thread_engagement",
                                                                    "ream_allowance",
                                                                    "chart_list",
                                                                    "caution"});

/// The rows of each kind: of a Tables, or of any struct with the same members.
template <class T> auto members_of(T& tables) {
  return std::tie(tables.sources, tables.materials, tables.cutters, tables.drilling_speeds, tables.milling_speeds,
                  tables.reaming_speeds, tables.burr_speeds, tables.speed_ratios, tables.drilling_feeds,
                  tables.chip_loads, tables.deep_holes, tables.pecks, tables.drill_points, tables.drill_webs,
                  tables.lip_reliefs, tables.fluids, tables.machines, tables.sizes, tables.hardness, tables.limits,
                  tables.cutting_forces, tables.unit_powers, tables.feed_factors, tables.drill_forces,
                  tables.burr_sizes, tables.cutter_strengths, tables.end_mill_stock, tables.point_limits,
                  tables.usual_oversizes, tables.tolerance_classes, tables.fit_classes, tables.fits, tables.expansions,
                  tables.oxide_colours, tables.heat_ceilings, tables.readings, tables.signs, tables.screw_threads,
                  tables.clearance_holes, tables.screw_heads, tables.thread_engagements, tables.ream_allowances,
                  tables.chart_lists, tables.cautions);
}

/// visit(name, rows) for every kind.
template <class T, class V> void kinds(T& tables, V&& visit) {
  auto members = members_of(tables);
  [&]<std::size_t... i>(std::index_sequence<i...>) { (visit(kind_names[i], std::get<i>(members)), ...); }
  (std::make_index_sequence<kind_names.size()>{});
}

/// visit(name, rows of one, rows of the other) for every kind.
template <class A, class B, class V> void kinds_of_both(A& one, B& other, V&& visit) {
  auto ones = members_of(one);
  auto others = members_of(other);
  [&]<std::size_t... i>(std::index_sequence<i...>) {
    (visit(kind_names[i], std::get<i>(ones), std::get<i>(others)), ...);
  }
  (std::make_index_sequence<kind_names.size()>{});
}

} // namespace quillside
