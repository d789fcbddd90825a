#include "drafting.hpp"

#include <algorithm>
#include <cmath>

#include <quillside/quantity/angle.hpp>

#include "geometry.hpp"

namespace quillside::page {

namespace {

constexpr Length of_dimension = mm(1.5); // its head
constexpr Length of_arrow = mm(2);       // longer: its line is heavier
constexpr Angle half_head = degrees(12);

void draw_head(Canvas& canvas, Spot tip, Angle pointing, Length length) {
  const Angle back = pointing + turns(0.5);
  canvas.fill({tip, from(tip, length, back + half_head), from(tip, length, back - half_head)}, 0);
}

} // namespace

void draw_arrow(Canvas& canvas, Spot start, Spot tip, const Pen& pen) {
  const Angle along = direction_of(start, tip);
  // To the foot of the head: a heavy line would blunt its tip.
  canvas.line(start, from(tip, of_arrow * cosine(half_head), along + turns(0.5)), pen);
  draw_head(canvas, tip, along, of_arrow);
}

void draw_turning_arrow(Canvas& canvas, Spot centre, Length radius, const Pen& pen) {
  canvas.arc(centre, radius, degrees(-90), degrees(160), pen);
  // Where the arc ends it runs to the left.
  const Spot last{centre.right, centre.down + radius};
  draw_arrow(canvas, {last.right + mm(0.1), last.down}, {last.right - 0.8 * of_arrow, last.down}, pen);
}

void draw_dimension(Canvas& canvas, Spot one, Spot other, const Pen& pen) {
  const Angle along = direction_of(one, other);
  const Angle back = along + turns(0.5);
  if (distance(one, other) > 3.0 * of_dimension) {
    canvas.line(one, other, pen);
    draw_head(canvas, other, along, of_dimension);
    draw_head(canvas, one, back, of_dimension);
    return;
  }
  canvas.line(from(one, 2.5 * of_dimension, back), from(other, 2.5 * of_dimension, along), pen);
  draw_head(canvas, one, along, of_dimension);
  draw_head(canvas, other, back, of_dimension);
}

void draw_angle(Canvas& canvas, Spot corner, Length radius, Angle start, Angle end) {
  canvas.arc(corner, radius, start, end, pen::thin);
  // Each head leans by half the arc that it covers.
  const Angle lean = radians(0.5 * (of_dimension / radius));
  if (in_radians(end - start) * (radius / of_dimension) < 2.5) return;
  draw_head(canvas, from(corner, radius, end), end + turns(0.25) - lean, of_dimension);
  draw_head(canvas, from(corner, radius, start), start - turns(0.25) + lean, of_dimension);
}

void hatch(Canvas& canvas, const Box& box, const Pen& pen, Length apart) {
  // A line at 45 degrees is where right + down is a whole number of steps.
  const double step = in_mm(apart) * std::sqrt(2.0);
  const double left = in_mm(box.left);
  const double right = in_mm(box.right());
  const double top = in_mm(box.top);
  const double bottom = in_mm(box.bottom());
  for (double sum = std::ceil((left + top) / step) * step; sum < right + bottom; sum += step) {
    const double from = std::max(left, sum - bottom);
    const double to = std::min(right, sum - top);
    if (to > from) canvas.line({mm(from), mm(sum - from)}, {mm(to), mm(sum - to)}, pen);
  }
}

void broken_edge(Canvas& canvas, Spot top, Length height, const Pen& pen) {
  const auto at = [&](double right, double share) { return Spot{top.right + mm(right), top.down + share * height}; };
  canvas.path({at(0, 0), at(0, 0.42), at(1.5, 0.46), at(-1.5, 0.54), at(0, 0.58), at(0, 1)}, pen);
}

} // namespace quillside::page
