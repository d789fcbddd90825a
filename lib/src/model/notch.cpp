#include <quillside/model/notch.hpp>

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <quillside/quantity/angle.hpp>

namespace quillside {

Angle interior_angle(int sides) {
  if (sides < 3) throw std::domain_error{"a figure has 3 sides or more"};
  return turns(0.5) * (1 - 2.0 / sides);
}

Angle notch_between(Angle figure, Angle other) {
  const Angle notch = turns(1) - figure - other;
  if (!(notch > turns(0)) || !(notch < turns(0.5))) throw std::domain_error{"no notch that a point stands in"};
  return notch;
}

LightGap light_gap(Angle notch, PointShape point, Angle chisel_edge) {
  if (!(notch > turns(0)) || !(notch < turns(0.5))) throw std::domain_error{"no notch that a point stands in"};
  const Angle wider = notch / 2.0 - point.included / 2.0;
  constexpr Angle equal = degrees(1e-9);
  if (wider > equal) return {LightGap::Where::corner, sine(wider) * lip_length(point, chisel_edge)};
  if (wider < -equal) {
    const Length bottom = corner_reach(point) / tangent(notch / 2.0);
    return {LightGap::Where::tip, bottom - lip_depth(point, chisel_edge)};
  }
  return {LightGap::Where::none, mm(0)};
}

Angle half_angle_from_light(Angle notch, LightReading reading) {
  if (!(notch > turns(0)) || !(notch < turns(0.5))) throw std::domain_error{"no notch that a point stands in"};
  const Angle side = notch / 2.0;
  if (reading.light.where == LightGap::Where::none) return side;
  if (!(reading.light.gap >= mm(0))) throw std::domain_error{"a gap is 0 or more"};
  const PointShape any{reading.diameter, reading.web, notch};
  const Length reach = lip_reach(any, reading.chisel_edge);
  if (reading.light.where == LightGap::Where::corner) {
    // gap = X (sin v cot k - cos v)
    const double cotangent = (reading.light.gap / reach + cosine(side)) / sine(side);
    return radians(std::atan2(1, cotangent));
  }
  // gap = x_o cot v - X cot k
  const Length depth = corner_reach(any) / tangent(side) - reading.light.gap;
  if (!(depth > mm(0))) throw std::domain_error{"more light under the tip than the notch is deep"};
  return std::max(side, radians(std::atan2(in_mm(reach), in_mm(depth))));
}

} // namespace quillside
