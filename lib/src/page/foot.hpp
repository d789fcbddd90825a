#pragma once
// The foot of every sheet: the ask as typed, the day, which sheet of how many.

#include <string>

#include <quillside/page/column.hpp>
#include <quillside/page/document.hpp>

namespace quillside::page {

/// How high it is, from the lower edge of the sheet up to its line.
inline constexpr Length foot_height = mm(12.5);
/// Height of its capitals: the smallest on any page.
inline constexpr Length foot_letters = mm(1.8);

/// On each sheet of the canvas. \param noun what a sheet is called: "card"
void draw_feet(Canvas& canvas, const Document& document, const Margins& margins, const std::string& noun);

} // namespace quillside::page
