#pragma once
// The plan of a slot on a sheet of its own, each view to a scale that it names: the plate from the back with its holes
// and pocket, turned end for end, from the front with the slot; a section across it; the offset each side, enlarged
// where it could not be seen. What the answer does not know is left out, and that is said.

#include <optional>

#include "card_drawing.hpp"

namespace quillside::page {

/// For an answer that plans nothing, a line that says so.
std::optional<CardDrawing> drawing_of_slot(const Document& document);

} // namespace quillside::page
