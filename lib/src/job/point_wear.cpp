#include "point_wear.hpp"

#include <algorithm>

#include <quillside/model/wear.hpp>

#include "spread_ends.hpp"

namespace quillside {

void solve_wear(PointWork& work) {
  const auto& readings = work.readings;
  const auto& defaults = work.defaults;
  auto& point = work.point;
  if (!readings.land_wear && !readings.margin_wear) return;
  constexpr Spread<Length> none{mm(0), mm(0), mm(0)};
  const Spread<Angle> relief = point.relief && !point.relief_is_most ? at_least(point.relief->spread, degrees(1))
                                                                     : give_or_take(defaults.wanted_relief, degrees(4));
  const auto bare = work.through(
      "--land-wear",
      [](Length land, Length margin, Angle at, Angle helix) {
        return length_to_grind_off({{land, std::min(at, degrees(50)), helix}, margin, mm(0)});
      },
      readings.land_wear.value_or(none), readings.margin_wear.value_or(none), relief, defaults.helix);
  work.because("length until land and margin are whole", wear_land_law, bare);
  // The bare length is the least; a clean-up beyond it is a judgement.
  point.grind_off = Spread<Length>{std::max(mm(0), bare.low), bare.value + defaults.clean_up.value,
                                   bare.high + defaults.clean_up.high};
  work.because("length to grind off, cleaned up", grind_off_law, *point.grind_off);
}

} // namespace quillside
