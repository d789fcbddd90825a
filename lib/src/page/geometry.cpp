#include "geometry.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

#include <quillside/quantity/angle.hpp>

namespace quillside::page {

Spot from(Spot at, Length length, Angle direction) {
  return {at.right + length * cosine(direction), at.down - length * sine(direction)};
}

Spot beside(Spot at, const Way& way, Angle direction) {
  return from(from(at, way.along, direction), way.left, direction + turns(0.25));
}

Length distance(Spot one, Spot other) {
  return mm(std::hypot(in_mm(other.right - one.right), in_mm(other.down - one.down)));
}

Angle direction_of(Spot one, Spot other) {
  return radians(std::atan2(in_mm(one.down - other.down), in_mm(other.right - one.right)));
}

Spot crossing(Spot on_one, Angle one, Spot on_other, Angle other) {
  const double sine_between = sine(other - one);
  if (std::abs(sine_between) < 1e-9) throw std::domain_error{"two lines that never cross"};
  const Length right = on_other.right - on_one.right;
  const Length up = on_one.down - on_other.down;
  return from(on_one, (right * sine(other) - up * cosine(other)) / sine_between, one);
}

std::vector<Spot> rounded(const Box& box, Length radius) {
  const Length most = std::min({radius, 0.5 * box.width, 0.5 * box.height});
  struct Corner {
    Spot middle;
    Angle from;
  };
  const std::array<Corner, 4> corners{{{{box.right() - most, box.top + most}, degrees(0)},
                                       {{box.left + most, box.top + most}, degrees(90)},
                                       {{box.left + most, box.bottom() - most}, degrees(180)},
                                       {{box.right() - most, box.bottom() - most}, degrees(270)}}};
  std::vector<Spot> spots;
  for (const auto& corner : corners)
    for (int i = 0; i <= 18; ++i) spots.push_back(from(corner.middle, most, corner.from + degrees(5.0 * i)));
  return spots;
}

} // namespace quillside::page
