#include <quillside/model/notch.hpp>

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

} // namespace quillside
