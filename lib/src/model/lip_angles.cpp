#include <quillside/model/lip_angles.hpp>

#include <cmath>
#include <stdexcept>

#include <quillside/quantity/angle.hpp>

namespace quillside {

namespace {

double cotangent(Angle angle) { return cosine(angle) / sine(angle); }

void require_falling(double slope) {
  if (!(slope > 0) || !std::isfinite(slope)) throw std::domain_error{"a flank that does not fall away from its lip"};
}

void require_helix(Angle helix) {
  if (!(helix >= turns(0)) || !(helix < turns(0.25)))
    throw std::domain_error{"a helix angle is 0 or more and under 90 deg"};
}

/// The lip itself leans so far against the plane square to the axis, seen along the lip.
double lean_of_lip(PointShape point, Length radius) {
  return std::atan(cosine(point.included / 2.0) * tangent(lip_offset(point, radius)));
}

void require_place(FlankPlace place) {
  if (!(place.radius > mm(0))) throw std::domain_error{"a dial indicator stands off the axis"};
  if (!(place.turn >= turns(0)) || !(place.turn <= turns(1)))
    throw std::domain_error{"a dial indicator follows a flank over a turn at most"};
}

Angle half(Facet facet) {
  if (!(facet.included > turns(0)) || !(facet.included < turns(0.5)))
    throw std::domain_error{"a point angle is above 0 and under 180 deg"};
  require_falling(facet.slope);
  return facet.included / 2.0;
}

} // namespace

Angle flank_tilt(Facet facet) { return radians(std::atan(sine(half(facet)) * facet.slope)); }

Angle flank_roll(Facet facet) { return radians(std::atan(tangent(half(facet)) * facet.slope)); }

Angle lip_offset(PointShape point, Length radius) {
  corner_reach(point); // refuses what is no point
  if (!(radius > point.web / 2.0) || !(radius <= point.diameter / 2.0))
    throw std::domain_error{"a lip runs outside half the web, up to half the diameter"};
  return radians(std::asin(point.web / 2.0 / radius));
}

Angle side_clearance(PointShape point, double slope, Length radius) {
  require_falling(slope);
  const Angle offset = lip_offset(point, radius);
  return radians(std::atan(slope * cosine(offset) + cotangent(point.included / 2.0) * sine(offset)));
}

Angle normal_clearance(PointShape point, double slope, Length radius) {
  return flank_tilt({point.included, slope}) + radians(lean_of_lip(point, radius));
}

Angle orthogonal_clearance(PointShape point, double slope, Length radius) {
  const Angle normal = normal_clearance(point, slope, radius);
  return radians(std::atan(tangent(normal) * cosine(lip_inclination(point, radius))));
}

Angle lip_inclination(PointShape point, Length radius) {
  return radians(std::asin(sine(point.included / 2.0) * sine(lip_offset(point, radius))));
}

Angle side_rake(PointShape point, Angle helix, Length radius) {
  require_helix(helix);
  lip_offset(point, radius); // refuses a radius off the lip
  return radians(std::atan(tangent(helix) * (radius / (point.diameter / 2.0))));
}

Angle normal_rake(PointShape point, Angle helix, Length radius) {
  const double rake = tangent(side_rake(point, helix, radius));
  const Angle offset = lip_offset(point, radius);
  const Angle half_point = point.included / 2.0;
  const double face = std::atan2(rake * cosine(offset), sine(half_point) - rake * cosine(half_point) * sine(offset));
  return radians(face - lean_of_lip(point, radius));
}

Angle orthogonal_rake(PointShape point, Angle helix, Length radius) {
  const Angle normal = normal_rake(point, helix, radius);
  return radians(std::atan(tangent(normal) / cosine(lip_inclination(point, radius))));
}

Angle working_clearance(Angle side_clearance, Length radius, FeedPerRev feed) {
  if (!(side_clearance > turns(0)) || !(side_clearance < turns(0.25)))
    throw std::domain_error{"a clearance is above 0 and under 90 deg"};
  if (!(radius > mm(0))) throw std::domain_error{"no path of a lip point on the axis"};
  if (!(feed >= mm_per_rev(0))) throw std::domain_error{"a feed is 0 or more"};
  const Length advance = feed * radians(1); // while the lip point goes once its radius along its circle
  return side_clearance - radians(std::atan(advance / radius));
}

Length uniform_drop(FlankPlace place, Angle relief) {
  require_place(place);
  if (!(relief > turns(0)) || !(relief < turns(0.25))) throw std::domain_error{"a relief is above 0 and under 90 deg"};
  return in_radians(place.turn) * tangent(relief) * place.radius;
}

Angle mean_relief(FlankPlace place, Length drop) {
  require_place(place);
  if (!(place.turn > turns(0))) throw std::domain_error{"no relief without a turn"};
  if (!(drop > mm(0))) throw std::domain_error{"a flank with relief drops"};
  return radians(std::atan(drop / (in_radians(place.turn) * place.radius)));
}

} // namespace quillside
