#include <quillside/model/depth_stop.hpp>

#include <algorithm>
#include <stdexcept>

#include <quillside/quantity/angle.hpp>

namespace quillside {

namespace {

double tangent_of_half(DrillPoint point) {
  if (!(point.diameter > mm(0))) throw std::domain_error{"point of a drill with no diameter"};
  if (!(point.included > turns(0)) || !(point.included < turns(0.5)))
    throw std::domain_error{"a point angle is above 0 and under 180 deg"};
  return tangent(point.included / 2.0);
}

Spread<Length> less(Spread<Length> from, Length what) { return {from.low - what, from.value - what, from.high - what}; }

} // namespace

Length point_allowance(DrillPoint point) { return point.diameter / 2.0 / tangent_of_half(point); }

Length width_behind_tip(DrillPoint point, Length depth) {
  return std::min(point.diameter, 2.0 * tangent_of_half(point) * std::max(depth, mm(0)));
}

Stop stop_at(Length tip_depth, Spread<Length> thickness, DrillPoint point) {
  const Spread<Length> under_tip = less(thickness, tip_depth);
  return {tip_depth, under_tip, less(under_tip, -point_allowance(point))};
}

} // namespace quillside
