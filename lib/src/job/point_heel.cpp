#include "point_heel.hpp"

#include <cmath>
#include <stdexcept>

#include <quillside/model/flat_facet.hpp>
#include <quillside/model/four_facet.hpp>

#include "point_relief.hpp"

namespace quillside {

namespace {

/// The edge itself shows where the two flats meet: neither angle nor relief is needed.
Spread<Angle> heel_of_edge(const PointWork& work) {
  return work.through(
      work.point.chisel.from,
      [&](Length web, Angle edge) {
        return 2.0 * (radians(std::asin(web / work.readings.diameter)) + turns(0.25) - edge);
      },
      work.point.web.spread, work.point.chisel.spread);
}

Spread<Angle> heel_of_flat(const PointWork& work) {
  return work.through(
      work.point.relief->from,
      [&](Angle included, Length web, Angle relief) {
        const PointShape shape = work.shape(web, included);
        return heel_clear_angle(FlatFlank{shape, flank_slope(shape, falling_relief(shape, relief))});
      },
      work.point.included.spread, work.point.web.spread, work.point.relief->spread);
}

/// A chisel edge that asks no second facet steeper than the first is that of one flat.
Angle heel_behind(PointShape shape, double first, Angle edge) {
  try {
    const double second = second_slope_of_chisel({shape.included, first}, edge);
    return heel_clear_angle(FourFacet{shape, first, second, mm(0)});
  } catch (const std::domain_error&) {
    return heel_clear_angle(FlatFlank{shape, first});
  }
}

Spread<Angle> heel_of_four(const PointWork& work) {
  return work.through(
      work.point.chisel.from,
      [&](Angle included, Length web, Angle relief, Angle edge) {
        const PointShape shape = work.shape(web, included);
        return heel_behind(shape, flank_slope(shape, falling_relief(shape, relief)), edge);
      },
      work.point.included.spread, work.point.web.spread, work.point.relief->spread, work.point.chisel.spread);
}

} // namespace

void solve_heel(PointWork& work) {
  const auto& readings = work.readings;
  auto& point = work.point;
  if (readings.drop && readings.turn->low >= work.defaults.land && readings.drop->low > mm(0)) point.heel_clears = true;
  if (!point.relief || point.relief_is_most) return;
  if (work.cone()) {
    point.heel_clears = true; // a cone falls away ever faster behind its lip
    return;
  }
  const auto found = [&](const Law& law, const Spread<Angle>& turn) {
    point.heel = turn;
    work.because("turn at which the heel is back at the lip", law, turn);
  };
  if (work.two_facet())
    found(flat_heel_law, point.chisel_read ? heel_of_edge(work) : heel_of_flat(work));
  else if (point.chisel_read)
    found(four_facet_heel_law, heel_of_four(work));
}

} // namespace quillside
