#pragma once
// Words on a drawing: lines below one another, and a figure that stands on lines.

#include <string>

#include <quillside/page/canvas.hpp>

namespace quillside::page {

/// Lines of text below one another. Gives where the next would have its foot. \param leading from foot to foot, in
/// heights of a letter
Length write_lines(Canvas& canvas, Spot first_foot, const std::string& text, const Lettering& lettering, Length width,
                   double leading = 1.65);

/// A text that stands on lines: what lies under it is white. \param hold not turned
void on_white(Canvas& canvas, Spot at, const std::string& text, const Lettering& lettering, const Hold& hold);

} // namespace quillside::page
