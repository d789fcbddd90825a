#pragma once
// The figures of one view of the plate: where in X below it, how wide at its right, how long the slot is.

#include <vector>

#include "card_slot_plate.hpp"

namespace quillside::page::card_slot {

/// Where in X, under the plate; 0, which is the middle of the slot, is among them. Gives where the next begins.
/// \param whose what is there: "drill at"
Length draw_ordinates(const SlotSheet& sheet, const Plate& plate, std::vector<Length> at, const char* whose);

/// At the right of the view. \param right_end where what is so wide ends on the sheet
void draw_width(const SlotSheet& sheet, const Plate& plate, Length width, Length right_end);
/// Below that of the slot, where it may be of more than one width.
void draw_band(const SlotSheet& sheet, const Plate& plate);

/// Of a slot whose length is known. Gives where the next begins.
Length draw_length(const SlotSheet& sheet, const Plate& plate, Length top);
/// In place of places and length. Gives where the next begins.
Length say_no_length(Canvas& canvas, const Plate& plate);

} // namespace quillside::page::card_slot
