#pragma once
// Lines measured by their ink, on the pixels that another program made of a sheet.

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include <quillside/page/canvas.hpp>

#include "tools.hpp"

namespace quillside::test {

inline constexpr double degree = std::numbers::pi / 180; // rad

/// A sheet as poppler draws it. \param sheet from 0
inline Pixels by_poppler(const Folder& folder, const page::Canvas& canvas, int sheet, int dots_per_inch) {
  return pdf_pixels(folder, folder.write("a.pdf", canvas.picture(page::PictureKind::pdf, {"", ""})), sheet + 1,
                    dots_per_inch);
}

inline double length_in_mm(const page::LineDrawn& line) {
  return std::hypot(in_mm(line.to.right - line.from.right), in_mm(line.to.down - line.from.down));
}
/// From its start to its end [deg, against the clock, -180 to 180].
inline double direction_drawn(const page::LineDrawn& line) {
  return std::atan2(in_mm(line.from.down - line.to.down), in_mm(line.to.right - line.from.right)) * 180 /
         std::numbers::pi;
}
/// Between two lines as they are drawn, start to end [deg, 0 to 180].
inline double angle_drawn(const page::LineDrawn& a, const page::LineDrawn& b) {
  return std::abs(std::remainder(direction_drawn(a) - direction_drawn(b), 360));
}

/// Of one sheet, of that width of pen.
inline std::vector<page::LineDrawn> lines_of_pen(const page::Canvas& canvas, int sheet, double width_mm) {
  std::vector<page::LineDrawn> all;
  for (const auto& line : canvas.lines())
    if (line.sheet == sheet && std::abs(in_mm(line.width) - width_mm) < 1e-6) all.push_back(line);
  return all;
}

/// How many begin or end nearer to the edge of a sheet than a printer reaches.
inline long lines_over_edge(const page::Canvas& canvas, Length edge = mm(5)) {
  const Sheet sheet = canvas.sheet();
  const auto outside = [&](const page::Spot& spot) {
    return spot.right < edge || spot.down < edge || spot.right > sheet.width - edge || spot.down > sheet.height - edge;
  };
  return std::count_if(canvas.lines().begin(), canvas.lines().end(),
                       [&](const auto& line) { return outside(line.from) || outside(line.to); });
}

struct InkLine {
  double right = 0; // of its middle [mm]
  double down = 0;
  double direction = 0; // [deg, against the clock]
};

/// A straight line fitted to the ink of one that was drawn, by least squares square to it. Places where more ink or
/// less lies across it than its pen makes are left out: there another line meets it, or a figure stands on it.
inline InkLine ink_of(const Pixels& pixels, double dots_per_mm, const page::LineDrawn& line) {
  const double length = length_in_mm(line);
  const double pen = in_mm(line.width);
  const double ux = in_mm(line.to.right - line.from.right) / length;
  const double uy = in_mm(line.to.down - line.from.down) / length;
  double n = 0;
  double sum_s = 0;
  double sum_t = 0;
  double sum_ss = 0;
  double sum_st = 0;
  const double reach = 0.5 * pen + 0.2;
  // A program that draws thin lines sets them on whole dots.
  const double allowed = pen < 0.15 ? 1.1 / dots_per_mm : 0.06 * pen + 0.01;
  for (double s = 0.5; s < length - 0.5; s += 0.02) {
    double ink = 0;
    double moment = 0;
    for (double t = -reach; t <= reach; t += 0.01) {
      const double dark = pixels.dark_at((in_mm(line.from.right) + ux * s - uy * t) * dots_per_mm,
                                         (in_mm(line.from.down) + uy * s + ux * t) * dots_per_mm);
      ink += 0.01 * dark;
      moment += 0.01 * dark * t;
    }
    if (std::abs(ink - pen) > allowed) continue;
    const double t = moment / ink;
    n += 1;
    sum_s += s;
    sum_t += t;
    sum_ss += s * s;
    sum_st += s * t;
  }
  REQUIRE(n > 20);
  const double slope = (n * sum_st - sum_s * sum_t) / (n * sum_ss - sum_s * sum_s);
  const double s = sum_s / n;
  const double t = sum_t / n;
  return {in_mm(line.from.right) + ux * s - uy * t, in_mm(line.from.down) + uy * s + ux * t,
          direction_drawn(line) - std::atan(slope) * 180 / std::numbers::pi};
}

/// Between two lines of ink [deg, 0 to 180], start to end.
inline double angle_of_ink(const Pixels& pixels, double dots_per_mm, const page::LineDrawn& a,
                           const page::LineDrawn& b) {
  return std::abs(
      std::remainder(ink_of(pixels, dots_per_mm, a).direction - ink_of(pixels, dots_per_mm, b).direction, 360));
}

/// How far the ink of two lines that run alike lies apart, square to the first.
inline double apart_of_ink(const Pixels& pixels, double dots_per_mm, const page::LineDrawn& a,
                           const page::LineDrawn& b) {
  const InkLine one = ink_of(pixels, dots_per_mm, a);
  const InkLine other = ink_of(pixels, dots_per_mm, b);
  const double along = one.direction / 180 * std::numbers::pi;
  return std::abs((other.right - one.right) * std::sin(along) + (other.down - one.down) * std::cos(along));
}

} // namespace quillside::test
