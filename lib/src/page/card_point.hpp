#pragma once
// A drill's point as it was read, solid, against the one that is wanted, dashed: its end, its side, and the flank at an
// outer corner. What nobody read is drawn thin, as a usual drill has it, and said.

#include <optional>

#include "card_drawing.hpp"

namespace quillside::page {

std::optional<CardDrawing> drawing_of_point(const Document& document);

} // namespace quillside::page
