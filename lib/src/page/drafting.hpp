#pragma once
// Marks of a workshop drawing: pens, arrow heads, dimension lines, angle arcs, section lines, the zigzag where a piece
// is broken off. Every length is one on the paper.

#include <quillside/page/canvas.hpp>

namespace quillside::page {

/// Pens of a tool or of how it is set, as heavy as what they draw matters.
namespace pen {
inline constexpr Pen heavy{mm(0.55)};           // to be set by, or as measured
inline constexpr Pen wanted{mm(0.35), 0, true}; // as wanted
inline constexpr Pen outline{mm(0.2)};          // the tool
inline constexpr Pen thin{mm(0.12)};            // dimensions and what is there to go by
inline constexpr Pen axis{mm(0.12), 0, true};
} // namespace pen

/// From one place to the other, with a head there.
void draw_arrow(Canvas& canvas, Spot from, Spot tip, const Pen& pen);

/// Three quarters round, with the clock, with a head at its end.
void draw_turning_arrow(Canvas& canvas, Spot centre, Length radius, const Pen& pen);

/// From one place to the other, with a head at each; where they are near, the heads stand outside and point inward.
void draw_dimension(Canvas& canvas, Spot one, Spot other, const Pen& pen = pen::thin);

/// An arc with a head at both ends, against the clock from the one direction to the other; without them where it is
/// too short.
void draw_angle(Canvas& canvas, Spot corner, Length radius, Angle from, Angle to);

/// Section lines at 45 degrees. Boxes that touch are hatched as one.
void hatch(Canvas& canvas, const Box& box, const Pen& pen, Length apart = mm(1.6));

/// Down from \p top: the piece goes on beyond.
void broken_edge(Canvas& canvas, Spot top, Length height, const Pen& pen);

} // namespace quillside::page
