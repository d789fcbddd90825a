#include "drill_end.hpp"

#include <cmath>

#include <quillside/quantity/angle.hpp>

#include "geometry.hpp"

namespace quillside::page {

namespace {
constexpr Angle half_turn = turns(0.5);
}

Angle EndView::corner() const { return radians(std::asin(drill_.web / drill_.diameter)); }

Spot EndView::at(Place place) const { return beside(middle_, {place.along, place.across}, turned_); }

Length EndView::inner(Angle acute) const { return half_web() * (cosine(acute) / sine(acute)); }

Segment EndView::lip_a() const {
  return {at({inner(drill_.chisel), half_web()}), at({radius() * cosine(corner()), half_web()})};
}
Segment EndView::lip_b() const {
  return {at({-inner(drill_.chisel), -half_web()}), at({-radius() * cosine(corner()), -half_web()})};
}

Segment EndView::chisel(Angle acute) const {
  return {at({inner(acute), half_web()}), at({-inner(acute), -half_web()})};
}

void EndView::draw_body(Canvas& canvas, const Pen& pen) const {
  for (const Angle half : {turns(0), half_turn}) {
    const Angle lip_corner = turned_ + half + corner();
    canvas.arc(middle_, radius(), lip_corner - drill_.land, lip_corner, pen);
    // The flute, from the inner end of this lip round to the heel of the other land.
    const double side = half == half_turn ? -1 : 1;
    const Spot start = at({side * inner(drill_.chisel), side * half_web()});
    const Spot bend = at({-0.3 * side * radius(), side * half_web()});
    const Spot heel = from(middle_, radius(), lip_corner + half_turn - drill_.land);
    std::vector<Spot> curve;
    constexpr int pieces = 16;
    for (int i = 0; i <= pieces; ++i) {
      const double t = static_cast<double>(i) / pieces;
      const double a = (1 - t) * (1 - t);
      const double b = 2 * t * (1 - t);
      curve.push_back(
          {a * start.right + b * bend.right + t * t * heel.right, a * start.down + b * bend.down + t * t * heel.down});
    }
    canvas.path(curve, pen);
  }
}

} // namespace quillside::page
