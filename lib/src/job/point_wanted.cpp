#include "point_wanted.hpp"

#include <algorithm>

#include <quillside/data/choose.hpp>
#include <quillside/model/flat_facet.hpp>
#include <quillside/model/four_facet.hpp>

namespace quillside {

namespace {

/// Acute, where nobody read the edge.
Spread<Angle> usual_chisel(const Tables& tables, GrindingWay way) {
  const auto edge = [&](const char* least, const char* usual, const char* most) {
    return Spread<Angle>{degrees_of(tables, least), degrees_of(tables, usual), degrees_of(tables, most)};
  };
  if (way == GrindingWay::two_facet)
    return edge("chisel_two_facet_least", "chisel_two_facet_usual", "chisel_two_facet_most");
  if (way == GrindingWay::four_facet)
    return edge("chisel_four_facet_least", "chisel_four_facet_usual", "chisel_four_facet_most");
  return edge("chisel_cone_least", "chisel_cone_usual", "chisel_cone_most");
}

} // namespace

PointTargets targets_of(const Tables& tables, const Ground& ground, Length diameter, GrindingWay way) {
  const PointShape point{diameter, ground.web.web, ground.point->point.range.low};
  const Angle least = least_relief(point, ground.land);
  const Angle from_table = ground.relief != nullptr ? ground.relief->relief.range.low : least;
  if (way == GrindingWay::two_facet)
    return {point.included, least, chisel_edge_of_flat(point, flank_slope(point, least))};
  if (way == GrindingWay::cone) return {point.included, from_table, degrees_of(tables, "chisel_usual")};
  const double first = flank_slope(point, from_table);
  const double second = second_slope(point, std::max(degrees_of(tables, "second_relief"), from_table + degrees(5)));
  return {point.included, from_table, chisel_edge_of_four({point, first, second, mm(0)})};
}

PointDefaults defaults_of(const Tables& tables, const Ground& ground, Length diameter, GrindingWay way,
                          const PointTargets& targets) {
  PointDefaults all{};
  const double doubt = limit(tables.limits, "web_doubt").ratio;
  all.web = {(1 - doubt) * ground.web.web, ground.web.web, (1 + doubt) * ground.web.web};
  all.chisel = usual_chisel(tables, way);
  const auto share = [&](const char* key) { return limit(tables.limits, key).ratio; };
  all.cones = {share("cone_steep"), share("cone_usual"), share("cone_blunt")};
  // A point nobody measured is one of the usual ones, or near the wanted one.
  constexpr Angle near = degrees(4);
  all.included = {std::min(degrees_of(tables, "unread_angle_least"), targets.included - near), targets.included,
                  std::max(degrees_of(tables, "unread_angle_most"), targets.included + near)};
  if (const auto* row = choose_point_limit(tables.point_limits, "half_angle_difference", {}, diameter)) {
    all.unread_difference = read_angle_range(row->touch_up).high;
    all.kept_difference = read_angle_range(row->keep).high;
  }
  all.wanted_relief = targets.relief;
  all.land = ground.land;
  all.least_light = limit(tables.limits, "least_light").length;
  all.unseen_light_most = degrees_of(tables, "unseen_light_most");
  all.helix = {degrees_of(tables, "helix_least"), degrees_of(tables, "helix_usual"), degrees_of(tables, "helix_most")};
  all.clean_up = {mm(0), limit(tables.limits, "clean_up").length, limit(tables.limits, "clean_up_most").length};
  if (const auto* usual = choose_usual_oversize(tables.usual_oversizes, diameter)) {
    const auto& range = usual->oversize.range;
    all.usual_oversize = {range.low, (range.low + range.high) / 2.0, range.high};
  }
  return all;
}

} // namespace quillside
