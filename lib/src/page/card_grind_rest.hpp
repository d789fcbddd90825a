#pragma once
// A sheet to lay on a grinder's rest: the drill as it lies, the line of the fence or of the V-block at the swing angle,
// the wedge to saw, the drill end on with its roll.

#include "card_grind_holds.hpp"

namespace quillside::page::card_grind {

/// True to size. \param answer what the sheet was made of
void draw_rest_sheet(Canvas& canvas, const Box& box, const RestSheet& sheet, const Answer& answer);

} // namespace quillside::page::card_grind
