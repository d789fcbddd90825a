#pragma once
// Sheets to lay on a grinder's rest, true to size: one a hold, its lines at the swing angle, the wedge to saw; or the
// lines of a swing fixture. Each carries a ruler to prove its print.

#include <optional>

#include "card_drawing.hpp"

namespace quillside::page {

/// Nothing for an answer that sets nothing.
std::optional<CardDrawing> drawing_of_grind(const Document& document);

} // namespace quillside::page
