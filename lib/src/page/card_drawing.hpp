#pragma once
// What a card shows besides words, by ask. To give an ask a drawing of its own: a function here with its body in
// card_ASK.cpp, and a line of the list in card_drawing.cpp.

#include <optional>

#include <quillside/page/document.hpp>

namespace quillside::page {

/// A drawing for one answer. \p draw keeps inside the box it is given.
struct CardDrawing {
  Length height{};        // that it wants; the box it gets is as wide as the card's text
  bool own_sheet = false; // it stands alone on a whole sheet of the paper behind the card: to be laid on, true to size
  void (*draw)(Canvas& canvas, const Box& box, const Document& document) = nullptr;
};

/// Nothing for an answer that has none.
std::optional<CardDrawing> drawing_of(const Document& document);

} // namespace quillside::page
