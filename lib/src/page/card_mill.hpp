#pragma once
// What a deeper pass comes to: the walls' error against the depth, with the doubt of the force as a band, and the
// limits where they are reached. The points are the document's further answers; nothing is computed between them.

#include <optional>

#include "card_drawing.hpp"

namespace quillside::page {

/// For an answer that has no curve, a line that says so.
std::optional<CardDrawing> drawing_of_mill(const Document& document);

} // namespace quillside::page
