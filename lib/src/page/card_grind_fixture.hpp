#pragma once
// The sheet for a swing fixture: wheel's face, pivot and drill laid in one plane, true to size; below them the corner
// where they meet, the drill end on, and the swing, each with its letters and lengths.

#include <quillside/page/document.hpp>

namespace quillside::page::card_grind {

/// Of an answer that sets a cone.
void draw_fixture(Canvas& canvas, const Box& box, const Document& document);

} // namespace quillside::page::card_grind
