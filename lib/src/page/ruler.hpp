#pragma once
// A ruler in millimetres and inches, true to size.

#include <quillside/page/canvas.hpp>

namespace quillside::page {

/// From the tops of its millimetre figures to the feet of its inch figures, with what parts it from others.
inline constexpr Length ruler_height = mm(18);

/// Millimetres on its left as it runs, inches on its right, both from the one start: so many millimetres, and the whole
/// inches that do not go past them by more than a tenth of an inch. \param direction against the clock, from the right
void draw_ruler(Canvas& canvas, Spot start, Angle direction, Length length);

} // namespace quillside::page
