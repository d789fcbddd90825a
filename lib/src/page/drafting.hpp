#pragma once
// Marks of a workshop drawing: scales, dimension lines, section lines, the zigzag where a piece is broken off.
// Every length handed over is one on the paper, unless it says `of the work`.

#include <string>
#include <vector>

#include <quillside/page/canvas.hpp>

namespace quillside::page {

/// 5:1 draws a millimetre as five. ISO 5455:1979 has 1, 2 and 5 and their tens (from memory, no page seen); 3:1 and
/// 4:1 are there besides, since half a sheet is small.
struct Scale {
  int paper = 1;
  int work = 1;

  /// \param length of the work
  [[nodiscard]] Length drawn(Length length) const { return length * (static_cast<double>(paper) / work); }
  [[nodiscard]] std::string words() const { return std::to_string(paper) + ":" + std::to_string(work); }
};

/// A length of the work, and the most of the paper that it may take.
struct Fitting {
  Length of_work{};
  Length on_paper{};
};
/// The largest scale at which each fits; the smallest there is, 1:1000, where none does.
Scale largest_scale(const std::vector<Fitting>& all);

/// A head at \p tip, coming from \p from.
void arrow(Canvas& canvas, Spot from, Spot tip, const Pen& pen = {});

/// Three quarters round, with the clock, with a head at its end.
void turning_arrow(Canvas& canvas, Spot centre, Length radius, const Pen& pen = {});

/// From one end to the other, with a head at each; where they are near, the heads stand outside and point inward.
void dimension_line(Canvas& canvas, Spot one, Spot other);

/// Section lines at 45 degrees. Boxes that touch are hatched as one.
void hatch(Canvas& canvas, const Box& box, Length apart = mm(1.6));

/// Down from \p top: the piece goes on beyond.
void broken_edge(Canvas& canvas, Spot top, Length height, const Pen& pen = {});

/// A box with round corners, as a cutter leaves them. \param radius no more than half of the shorter side is taken
std::vector<Spot> rounded(const Box& box, Length radius);

} // namespace quillside::page
