#include "card_drawing.hpp"

namespace quillside::page {

std::optional<CardDrawing> drawing_of(const Document&) { return std::nullopt; }

} // namespace quillside::page
