#pragma once
// The cutter at each wall, seen from the front: how far the table goes each side, and which way the cutter is fed.

#include <string>

#include "card_slot_sheet.hpp"

namespace quillside::page::card_slot {

/// From the top of the room down, as far as it needs. Gives how far down it reaches.
Length draw_offsets(const SlotSheet& sheet, const Box& room);

/// What is said of it: each offset, what is dashed, the scales.
std::string about_offsets(const SlotSheet& sheet);

} // namespace quillside::page::card_slot
