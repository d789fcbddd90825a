#pragma once
// A card to carry to the machine: half a sheet, the number to dial in very large, what it rests on, what else to set,
// steps to tick off, dangers in frames, what was taken for granted. A text that is too long for one card is set
// smaller, to no less than least_letters, and then goes on to a second one.

#include <quillside/page/document.hpp>

namespace quillside::page {

/// Height of the smallest capitals on a card: about 7 point, what is read in the hand (common practice, no source).
inline constexpr Length least_letters = mm(1.8);

Canvas draw_card(const Document& document);

} // namespace quillside::page
