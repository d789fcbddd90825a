#include <quillside/model/lip.hpp>

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <quillside/quantity/angle.hpp>

namespace quillside {

namespace {

void require_shape(PointShape point) {
  if (!(point.diameter > mm(0))) throw std::domain_error{"point of a drill with no diameter"};
  if (!(point.web >= mm(0)) || !(point.web < point.diameter))
    throw std::domain_error{"a web is 0 or more and less than the diameter"};
  if (!(point.included > turns(0)) || !(point.included < turns(0.5)))
    throw std::domain_error{"a point angle is above 0 and under 180 deg"};
}

void require_relief(Angle relief) {
  if (!(relief > turns(0)) || !(relief < turns(0.25))) throw std::domain_error{"a relief is above 0 and under 90 deg"};
}

double cotangent(Angle angle) { return cosine(angle) / sine(angle); }
Angle half(PointShape point) { return point.included / 2.0; }

/// An obtuse chisel edge angle is the supplement of the acute one.
Angle acute(Angle chisel_edge) {
  if (!(chisel_edge > turns(0)) || !(chisel_edge < turns(0.5)))
    throw std::domain_error{"a chisel edge angle is above 0 and under 180 deg"};
  return chisel_edge > turns(0.25) ? turns(0.5) - chisel_edge : chisel_edge;
}

/// Sine of the angle by which the outer corner lies off the lip's own direction: w/R.
double sine_of_offset(PointShape point) { return point.web / point.diameter; }

} // namespace

Length corner_reach(PointShape point) {
  require_shape(point);
  const double offset = sine_of_offset(point);
  return std::sqrt(1 - offset * offset) * (point.diameter / 2.0);
}

Length lip_reach(PointShape point, Angle chisel_edge) {
  const Length reach = corner_reach(point) - cotangent(acute(chisel_edge)) * (point.web / 2.0);
  if (!(reach > mm(0))) throw std::domain_error{"a chisel edge that leaves no lip"};
  return reach;
}

Length lip_length(PointShape point, Angle chisel_edge) { return lip_reach(point, chisel_edge) / sine(half(point)); }

Length lip_depth(PointShape point, Angle chisel_edge) { return cotangent(half(point)) * lip_reach(point, chisel_edge); }

Angle included_from_lip_depth(LipDepthReading reading) {
  if (!(reading.depth > mm(0))) throw std::domain_error{"a lip with no depth"};
  // The reach does not depend on the point angle: any stands in.
  const Length reach = lip_reach({reading.diameter, reading.web, degrees(118)}, reading.chisel_edge);
  return 2.0 * radians(std::atan2(in_mm(reach), in_mm(reading.depth)));
}

Angle included_from_flat_lip_depth(FlatLipDepthReading reading) {
  if (!(reading.depth > mm(0))) throw std::domain_error{"a lip with no depth"};
  require_relief(reading.relief);
  const PointShape any{reading.diameter, reading.web, degrees(118)};
  const Length radius = reading.diameter / 2.0;
  // h = x_o cot k - w m, and m holds cot k once more: linear in cot k.
  const Length adjacent = (corner_reach(any) / radius) * reading.depth + tangent(reading.relief) * (reading.web / 2.0);
  return 2.0 * radians(std::atan2(in_mm(radius), in_mm(adjacent)));
}

Angle included_from_lip_triangle(LipTriangle lip) {
  if (!(lip.depth > mm(0)) || !(lip.depth < lip.length)) throw std::domain_error{"a lip is longer than it is deep"};
  return 2.0 * angle_of_cosine(lip.depth / lip.length);
}

Angle included_from_lip_length(LipLengthReading reading) {
  const Length reach = lip_reach({reading.diameter, reading.web, degrees(118)}, reading.chisel_edge);
  if (!(reach <= reading.length)) throw std::domain_error{"a lip shorter than its own reach"};
  return 2.0 * radians(std::asin(reach / reading.length));
}

IncludedBounds included_from_point_length(PointLengthReading reading, double slope) {
  if (!(reading.length > mm(0))) throw std::domain_error{"a point with no length"};
  if (!(slope >= 0)) throw std::domain_error{"a flank that does not fall away from its lip"};
  const PointShape any{reading.diameter, reading.web, degrees(118)};
  const Length crowned = lip_reach(any, reading.chisel_edge);
  const Length level = slope * (reading.web / 2.0) + reading.length;
  const Angle least = 2.0 * radians(std::atan2(in_mm(crowned), in_mm(reading.length)));
  const Angle most = 2.0 * radians(std::atan2(in_mm(corner_reach(any)), in_mm(level)));
  // A chisel edge sharper than the slope allows leaves nothing between; then the two are one.
  return {std::min(least, most), std::max(least, most)};
}

Angle included_ignoring_web(TipReading reading) {
  if (!(reading.length > mm(0)) || !(reading.diameter > mm(0))) throw std::domain_error{"a point with no length"};
  return 2.0 * radians(std::atan2(in_mm(reading.diameter) / 2, in_mm(reading.length)));
}

Length chisel_length(Length web, Angle chisel_edge) { return web / sine(acute(chisel_edge)); }

Length web_from_chisel(ChiselReading reading) { return sine(acute(reading.edge)) * reading.length; }

Angle chisel_edge_from_lengths(ChiselLengths lengths) {
  if (!(lengths.web > mm(0)) || !(lengths.web <= lengths.chisel))
    throw std::domain_error{"a chisel edge is as long as the web, or longer"};
  return radians(std::asin(lengths.web / lengths.chisel));
}

double flank_slope(PointShape point, Angle relief) {
  require_shape(point);
  require_relief(relief);
  const double offset = sine_of_offset(point);
  return (tangent(relief) - offset * cotangent(half(point))) / std::sqrt(1 - offset * offset);
}

Angle relief_of_slope(PointShape point, double slope) {
  require_shape(point);
  const double offset = sine_of_offset(point);
  return radians(std::atan(slope * std::sqrt(1 - offset * offset) + offset * cotangent(half(point))));
}

Angle chisel_edge_of_flat(PointShape point, double slope) {
  require_shape(point);
  if (!(slope > 0)) throw std::domain_error{"a flank that does not fall away from its lip"};
  return turns(0.25) + radians(std::atan(slope * tangent(half(point))));
}

Angle most_relief_of_chisel(PointShape point, Angle chisel_edge) {
  return relief_of_slope(point, cotangent(acute(chisel_edge)) * cotangent(half(point)));
}

Angle least_relief_of_straight_lip(PointShape point) {
  require_shape(point);
  return radians(std::atan(sine_of_offset(point) * cotangent(half(point))));
}

} // namespace quillside
