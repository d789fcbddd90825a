#include "point_relief.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <vector>

#include <quillside/model/cone_flank.hpp>
#include <quillside/model/flat_facet.hpp>
#include <quillside/model/lip_angles.hpp>

#include "evidence.hpp"
#include "point_chisel.hpp"
#include "spread_ends.hpp"

namespace quillside {

namespace {

/// A dial stands at the outer corner.
FlankPlace at_corner(const PointWork& work, Angle turn) { return {work.readings.diameter / 2.0, turn}; }

Angle mean_of_drop(const PointWork& work, Length drop, Angle turn) {
  return mean_relief(at_corner(work, turn), std::max(drop, mm(1e-6)));
}

Spread<Angle> flat_relief(PointWork& work) {
  const auto& readings = work.readings;
  const auto& web = work.point.web.spread;
  const auto exact = work.through(
      "--drop",
      [&](Angle included, Length thick, Length drop, Angle turn) {
        const PointShape point = work.shape(thick, included);
        try {
          return relief_of_slope(point, slope_of_flat_drop(point, at_corner(work, turn), drop));
        } catch (const std::domain_error&) {
          return least_relief_of_straight_lip(point); // a flank that hardly falls away, or rises
        }
      },
      work.earlier_included.spread, web, *readings.drop, *readings.turn);
  work.because("relief from the drop of a flat", flat_drop_law, exact);
  // With a second facet the dial leaves the first one where the boundary on the axis comes under it.
  const Angle boundary = radians(std::asin(web.low / readings.diameter));
  if (work.two_facet() || readings.turn->high <= boundary) return exact;
  const Angle least = least_relief_of_straight_lip(work.shape(web.value, work.earlier_included.spread.value));
  return {std::min(least, exact.value), (std::min(least, exact.value) + exact.value) / 2.0, exact.high};
}

/// \param share of half the included angle: the half angle of the cone
Spread<Angle> relief_of_cone(const PointWork& work, double share) {
  return work.through(
      "--drop",
      [&](Angle included, Length web, Length drop, Angle turn) {
        try {
          return relief_of_cone_drop({work.shape(web, included), work.point.chisel.spread.value, included / 2.0 * share,
                                      at_corner(work, turn), drop});
        } catch (const std::domain_error&) {
          return mean_of_drop(work, drop, turn);
        }
      },
      work.earlier_included.spread, work.point.web.spread, *work.readings.drop, *work.readings.turn);
}

/// Between a steep cone, which falls away fastest, and a blunt one.
Spread<Angle> cone_relief(PointWork& work) {
  const auto steep = relief_of_cone(work, work.defaults.cones.steep);
  const auto usual = relief_of_cone(work, work.defaults.cones.usual);
  const auto blunt = relief_of_cone(work, work.defaults.cones.blunt);
  const Spread<Angle> all{std::min({steep.low, usual.low, blunt.low}), usual.value,
                          std::max({steep.high, usual.high, blunt.high})};
  work.because("relief of a cone with that drop", cone_drop_law, all);
  return all;
}

/// A dial on the flank: exact for one flat; a cone falls away faster the further it turns, so that its lip has less
/// than the mean; a flat with a second facet behind it is exact as long as the dial stays on the first.
Spread<Angle> relief_of_drop(PointWork& work) {
  const auto mean = work.through(
      "--drop", [&](Length drop, Angle turn) { return mean_of_drop(work, drop, turn); }, *work.readings.drop,
      *work.readings.turn);
  work.because("mean relief over the turn", mean_relief_law, mean);
  const auto relief = work.cone() ? cone_relief(work) : flat_relief(work);
  return at_least(relief, degrees(0));
}

/// The chisel edge of two flats follows from their relief.
void follow_chisel(PointWork& work) {
  auto& point = work.point;
  if (!work.two_facet() || !point.relief || work.inner_ends_moved()) return;
  const auto edge = [&](Angle included, Length web, Angle relief) {
    const PointShape shape = work.shape(web, included);
    return turns(0.5) - chisel_edge_of_flat(shape, flank_slope(shape, falling_relief(shape, relief)));
  };
  const auto spread =
      work.through(point.relief->from, edge, work.earlier_included.spread, point.web.spread, point.relief->spread);
  point.chisel = {within_edges(spread), point.relief->from};
  point.chisel_follows = true;
  work.because("chisel edge that follows", chisel_edge_law, supplement(spread));
}

/// The edge that was read allows so much relief: two flats have just that, any other flank has less.
void heed_chisel(PointWork& work, std::vector<Known<Angle>> known) {
  auto& point = work.point;
  const auto most = work.through(
      point.chisel.from,
      [&](Angle included, Length web, Angle edge) { return most_relief_of_chisel(work.shape(web, included), edge); },
      work.earlier_included.spread, point.web.spread, point.chisel.spread);
  work.because(work.two_facet() ? "relief from the chisel edge" : "most relief the chisel edge allows", chisel_edge_law,
               most);
  if (work.two_facet()) {
    known.push_back({most, point.chisel.from});
    point.relief = agreed("the lip relief is", known);
    return;
  }
  for (const auto& one : known)
    if (one.spread.low > most.high)
      contradict("the lip relief is", one, {most, point.chisel.from + ", which allows no more,"});
  if (known.empty()) {
    point.relief = Known<Angle>{{degrees(0), most.value, most.high}, point.chisel.from};
    point.relief_is_most = true;
    return;
  }
  point.relief = agreed("the lip relief is", known);
  point.relief->spread = at_most(point.relief->spread, most.high);
}

} // namespace

Angle falling_relief(PointShape point, Angle relief) {
  constexpr Angle no_relief = degrees(0.01);
  return std::max(relief, least_relief_of_straight_lip(point) + no_relief);
}

void solve_relief(PointWork& work) {
  const auto& readings = work.readings;
  std::vector<Known<Angle>> known;
  if (readings.relief) known.push_back({*readings.relief, "--relief"});
  if (readings.drop) known.push_back({relief_of_drop(work), "--drop"});
  if (work.point.chisel_read) return heed_chisel(work, std::move(known));
  if (!known.empty()) work.point.relief = agreed("the lip relief is", known);
  follow_chisel(work);
}

} // namespace quillside
