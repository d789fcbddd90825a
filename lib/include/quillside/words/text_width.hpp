#pragma once
// How wide a text is drawn, before anything is drawn: so that rows, columns and pages are counted without a font.
// Leaves out: which font it is. The widths are those of a wide sans-serif, so that a narrower one fits as well.

#include <string>
#include <string_view>
#include <vector>

#include <quillside/quantity/units.hpp>

namespace quillside {

/// At least as wide as the text is drawn, in letters whose capitals are so high; a bold one is a fifth wider.
/// \param height of a capital, 0 or more
Length text_width(std::string_view text, Length height);

/// The text in lines of at most \p width, broken at blanks; a single word that is wider has a line of its own.
struct LineRoom {
  Length width;  // of the whole line
  Length height; // of a capital
};
std::vector<std::string> broken_to(std::string_view text, LineRoom line);

} // namespace quillside
