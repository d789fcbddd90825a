#include "card_slot_sheet.hpp"

#include <vector>

#include "writing.hpp"

namespace quillside::page::card_slot {

Scales scales_of(const SlotSeen& slot, Length width) {
  Scales scales;
  std::vector<Fitting> views{{slot.widest(), slot.opens_the_back() ? mm(20) : mm(32)}};
  const Length room = width - to_figures - mm(16);
  if (slot.length) views.push_back({mm(slot.length->value), room});
  if (slot.pocket && slot.pocket->half) views.push_back({2.0 * *slot.pocket->half, room});
  scales.view = largest_scale(views);
  scales.section = largest_scale({{slot.widest(), mm(22)}, {slot.thick.value_or(mm(0)), mm(28)}});
  scales.cutter = largest_scale({{slot.cut, mm(14)}});
  const bool seen = scales.cutter.drawn(slot.side_offset) >= mm(2.5);
  scales.offset = seen ? scales.cutter : largest_scale({{slot.side_offset, mm(6)}});
  return scales;
}

std::string SlotSheet::print(Length length) const {
  const std::string text = print_length(length, units);
  return text.substr(0, text.find(' '));
}

Length note(Canvas& canvas, const Box& box, const std::string& text, const Lettering& lettering) {
  return write_lines(canvas, {box.left, box.top + lettering.height}, text, lettering, box.width, 1.6) -
         lettering.height;
}

void cross(Canvas& canvas, Spot at) {
  constexpr Length arm = mm(1.6);
  canvas.line({at.right - arm, at.down}, {at.right + arm, at.down}, thin);
  canvas.line({at.right, at.down - arm}, {at.right, at.down + arm}, thin);
}

} // namespace quillside::page::card_slot
