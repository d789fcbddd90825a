#include "drafting.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <quillside/quantity/angle.hpp>

namespace quillside::page {

namespace {

constexpr std::array<Scale, 21> scales{{{1000, 1}, {500, 1}, {200, 1}, {100, 1}, {50, 1},  {20, 1},  {10, 1},
                                        {5, 1},    {4, 1},   {3, 1},   {2, 1},   {1, 1},   {1, 2},   {1, 5},
                                        {1, 10},   {1, 20},  {1, 50},  {1, 100}, {1, 200}, {1, 500}, {1, 1000}}};

constexpr Pen thin{mm(0.18)};
constexpr Length head = mm(2);

} // namespace

Scale largest_scale(const std::vector<Fitting>& all) {
  const auto fits = [&](const Scale& scale) {
    return std::all_of(all.begin(), all.end(),
                       [&](const Fitting& one) { return scale.drawn(one.of_work) <= one.on_paper; });
  };
  const auto* found = std::find_if(scales.begin(), scales.end(), fits);
  return found == scales.end() ? scales.back() : *found;
}

void arrow(Canvas& canvas, Spot from, Spot tip, const Pen& pen) {
  const double right = in_mm(tip.right - from.right);
  const double down = in_mm(tip.down - from.down);
  const double long_as = std::hypot(right, down);
  if (!(long_as > 0)) return;
  const Spot along{head * (right / long_as), head * (down / long_as)};
  constexpr double slim = 0.19; // half of the head's width, over its length
  const Spot back{tip.right - along.right, tip.down - along.down};
  canvas.line(from, back, pen);
  canvas.fill({tip,
               {back.right - slim * along.down, back.down + slim * along.right},
               {back.right + slim * along.down, back.down - slim * along.right}},
              0);
}

void turning_arrow(Canvas& canvas, Spot centre, Length radius, const Pen& pen) {
  canvas.arc(centre, radius, degrees(-90), degrees(160), pen);
  // Where the arc ends it runs to the left.
  const Spot last{centre.right, centre.down + radius};
  arrow(canvas, {last.right + mm(0.1), last.down}, {last.right - 0.8 * head, last.down}, pen);
}

void dimension_line(Canvas& canvas, Spot one, Spot other) {
  const Length across = other.right - one.right;
  const Length down = other.down - one.down;
  const Length apart = std::max({across, -across, down, -down});
  if (!(apart > mm(0))) return;
  if (apart > 2.6 * head) {
    const Spot middle{one.right + 0.5 * across, one.down + 0.5 * down};
    arrow(canvas, middle, one, thin);
    arrow(canvas, middle, other, thin);
    return;
  }
  const double reach = 2 * (head / apart);
  arrow(canvas, {one.right - reach * across, one.down - reach * down}, one, thin);
  arrow(canvas, {other.right + reach * across, other.down + reach * down}, other, thin);
  canvas.line(one, other, thin);
}

void hatch(Canvas& canvas, const Box& box, Length apart) {
  // A line at 45 degrees is where right + down is a whole number of steps.
  const double step = in_mm(apart) * std::sqrt(2.0);
  const double left = in_mm(box.left);
  const double right = in_mm(box.right());
  const double top = in_mm(box.top);
  const double bottom = in_mm(box.bottom());
  for (double sum = std::ceil((left + top) / step) * step; sum < right + bottom; sum += step) {
    const double from = std::max(left, sum - bottom);
    const double to = std::min(right, sum - top);
    if (to > from) canvas.line({mm(from), mm(sum - from)}, {mm(to), mm(sum - to)}, thin);
  }
}

void broken_edge(Canvas& canvas, Spot top, Length height, const Pen& pen) {
  const auto at = [&](double right, double share) { return Spot{top.right + mm(right), top.down + share * height}; };
  canvas.path({at(0, 0), at(0, 0.42), at(1.5, 0.46), at(-1.5, 0.54), at(0, 0.58), at(0, 1)}, pen);
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
    for (int i = 0; i <= 18; ++i) {
      const Angle at = corner.from + degrees(5.0 * i);
      spots.push_back({corner.middle.right + most * cosine(at), corner.middle.down - most * sine(at)});
    }
  return spots;
}

} // namespace quillside::page
