#include "point_wanted.hpp"

#include <algorithm>

#include <quillside/data/choose.hpp>
#include <quillside/model/flat_facet.hpp>
#include <quillside/model/four_facet.hpp>

namespace quillside {

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

PointDefaults defaults_of(const Tables& tables, const Ground& ground, Length diameter, const PointTargets& targets) {
  PointDefaults all{};
  const double doubt = limit(tables.limits, "web_doubt").ratio;
  all.web = {(1 - doubt) * ground.web.web, ground.web.web, (1 + doubt) * ground.web.web};
  // A point nobody measured is one of the usual ones, or near it.
  constexpr Angle sharp = degrees(88);
  constexpr Angle blunt = degrees(142);
  all.included = {std::min(sharp, targets.included - degrees(4)), targets.included,
                  std::max(blunt, targets.included + degrees(4))};
  if (const auto* row = choose_point_limit(tables.point_limits, "half_angle_difference", {}, diameter)) {
    all.unread_difference = read_angle_range(row->touch_up).high;
    all.kept_difference = read_angle_range(row->keep).high;
  }
  all.wanted_relief = targets.relief;
  all.land = ground.land;
  all.least_light = limit(tables.limits, "least_light").length;
  all.helix = {degrees_of(tables, "helix_least"), degrees_of(tables, "helix_usual"), degrees_of(tables, "helix_most")};
  all.clean_up = {mm(0), limit(tables.limits, "clean_up").length, limit(tables.limits, "clean_up_most").length};
  if (const auto* usual = choose_usual_oversize(tables.usual_oversizes, diameter)) {
    const auto& range = usual->oversize.range;
    all.usual_oversize = {range.low, (range.low + range.high) / 2.0, range.high};
  }
  return all;
}

} // namespace quillside
