#pragma once
// The plate in the vise seen from above, from its back and from its front: jaw, slot and pocket, where the holes and
// the ends of the cut are in X, what is turned over between.

#include "card_slot_sheet.hpp"

namespace quillside::page::card_slot {

// Each from the top of the room down, as far as it needs. Gives where the next begins.

/// Of a plan that opens the back.
Length draw_back_up(const SlotSheet& sheet, const Box& room);
/// End for end, about an axis that stands upright in the views.
Length draw_turning_over(const SlotSheet& sheet, const Box& room);
Length draw_front_up(const SlotSheet& sheet, const Box& room);

} // namespace quillside::page::card_slot
