#pragma once
// The plate cut across the middle of the slot, its back up as it is opened: pocket, what is left under it, the drill at
// its stop.

#include "card_slot_sheet.hpp"

namespace quillside::page::card_slot {

/// Of a plate whose thickness is known. Gives how far down it reaches.
Length draw_section(const SlotSheet& sheet, Spot corner);

} // namespace quillside::page::card_slot
