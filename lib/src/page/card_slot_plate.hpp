#pragma once
// The plate in the vise as one view shows it: its title, the jaw, its edges, X of the machine, its two ends.

#include <string>

#include "card_slot_sheet.hpp"

namespace quillside::page::card_slot {

/// The plate as one view shows it.
struct Plate {
  Box box;
  Spot middle; // of the slot
};

/// What stands over a view, and the letters on the two ends of the plate, so that it is seen how it is turned.
struct Heading {
  const char* face;
  std::string about;
  const char* left_end;
  const char* right_end;
};

/// From the top of the room down.
Plate draw_plate(const SlotSheet& sheet, const Box& room, const Heading& heading);

} // namespace quillside::page::card_slot
