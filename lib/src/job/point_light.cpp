#include "point_light.hpp"

#include <algorithm>

#include <quillside/model/lip.hpp>
#include <quillside/model/notch.hpp>

#include "point_depth.hpp"
#include "spread_ends.hpp"

namespace quillside {

namespace {

/// No light: the lip follows the gauge to within the narrowest gap that shows.
Spread<Angle> unseen_light(const PointWork& work) {
  const auto& gauge = work.readings.light->gauge;
  const PointShape shape = work.shape(work.point.web.spread.value, gauge.value);
  const Length reach = lip_reach(shape, work.point.chisel.spread.value);
  const double slack = work.defaults.least_light * sine(gauge.value / 2.0) / reach;
  const Angle unseen = radians(slack);
  return propagate([](Angle whole, Angle off) { return whole / 2.0 + off; }, gauge,
                   Spread<Angle>{-unseen, turns(0), unseen});
}

/// Sharper, or blunter, than the gauge by more than the least that shows; by how much, nobody measured.
Spread<Angle> sized_by_nobody(const PointWork& work, LightAt at) {
  const auto unseen = unseen_light(work);
  const Angle off = (unseen.high - unseen.low) / 2.0;
  const Angle side = work.readings.light->gauge.value / 2.0;
  const Angle no_more = work.defaults.unseen_light_most;
  if (at == LightAt::corner) return {side - no_more, side - off, std::max(side - off, unseen.high)};
  const Angle value = std::min(side + off, bluntest_point / 2.0);
  return {std::min(unseen.low, value), value, std::max(value, std::min(side + no_more, bluntest_point / 2.0))};
}

Spread<Angle> half_of_corner(const PointWork& work, const Spread<Length>& gap) {
  const auto half = [&](Angle gauge, Length web, Angle chisel, Length light) {
    return half_angle_from_light(gauge, {work.readings.diameter, web, chisel, {LightGap::Where::corner, light}});
  };
  return work.through("--light-gap", half, work.readings.light->gauge, work.point.web.spread, work.point.chisel.spread,
                      gap);
}

/// Light under the tip is what the notch is deep less what the point is long: a reading over the tip, and on a cone it
/// decides as little.
Spread<Angle> half_of_tip(PointWork& work, const Spread<Length>& gap) {
  const Length least = 0.01 * work.readings.diameter;
  const auto long_as = [&](Angle gauge, Length web, Length light) {
    return std::max(least, corner_reach(work.shape(web, degrees(118))) / tangent(gauge / 2.0) - light);
  };
  const auto length = work.through("--light-gap", long_as, work.readings.light->gauge, work.point.web.spread, gap);
  const auto whole = length_as_angle(work, "--light-gap", at_least(length, least));
  const Spread<Angle> half{whole.low / 2.0, whole.value / 2.0, whole.high / 2.0};
  return at_least(half, unseen_light(work).low);
}

void note_bow(PointWork& work, std::size_t lip) {
  const auto& light = *work.readings.light;
  const Length least = work.defaults.least_light;
  const Spread<Length> hollow = light.gap ? (*light.gap)[lip] : Spread<Length>{least, 2.0 * least, 10.0 * least};
  auto& bow = work.point.bow;
  if (!bow || hollow.value > bow->spread.value) bow = Known<Length>{hollow, "--light"};
}

Spread<Angle> half_of_light(PointWork& work, std::size_t lip) {
  const auto& light = *work.readings.light;
  const LightAt at = light.at[lip];
  if (at == LightAt::middle) note_bow(work, lip);
  if (at == LightAt::middle || at == LightAt::none) return unseen_light(work);
  if (!light.gap) return sized_by_nobody(work, at);
  const auto& gap = (*light.gap)[lip];
  const auto spread = at == LightAt::corner ? half_of_corner(work, gap) : half_of_tip(work, gap);
  work.because(lip == 0 ? "half angle of lip A from its light" : "half angle of lip B from its light", light_gap_law,
               spread);
  return spread;
}

} // namespace

Pair<Spread<Angle>> halves_of_light(PointWork& work) { return {half_of_light(work, 0), half_of_light(work, 1)}; }

bool light_tells_size(const LightReadings& light) {
  return light.gap || std::none_of(light.at.begin(), light.at.end(),
                                   [](LightAt at) { return at == LightAt::corner || at == LightAt::tip; });
}

Spread<Angle> difference_of_light(const PointWork& work) {
  const auto& light = *work.readings.light;
  const auto half_with = [&](std::size_t lip, Length gap) {
    const auto where = light.at[lip] == LightAt::corner ? LightGap::Where::corner
                       : light.at[lip] == LightAt::tip  ? LightGap::Where::tip
                                                        : LightGap::Where::none;
    return half_angle_from_light(
        light.gauge.value,
        {work.readings.diameter, work.point.web.spread.value, work.point.chisel.spread.value, {where, gap}});
  };
  return magnitude(work.through(
      "--light-gap", [&](Length a, Length b) { return half_with(0, a) - half_with(1, b); }, (*light.gap)[0],
      (*light.gap)[1]));
}

} // namespace quillside
