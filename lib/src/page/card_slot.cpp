#include "card_slot.hpp"

#include <algorithm>
#include <string>

#include "card_slot_offsets.hpp"
#include "card_slot_plan.hpp"
#include "card_slot_section.hpp"
#include "card_slot_sheet.hpp"
#include "slot_seen.hpp"

namespace quillside::page {

namespace {

using card_slot::note;
using card_slot::SlotSheet;

constexpr Length section_width = mm(71);

std::string about_scales(const SlotSheet& sheet) {
  std::string scales = sheet.units == UnitSystem::metric ? "All in mm. Views " : "All in inches. Views ";
  scales += sheet.scales.view.words();
  if (sheet.slot.thick) scales += ", section " + sheet.scales.section.words();
  return scales + "; the plate's own edges stand anywhere. The figures count: measure nothing off this sheet.";
}

/// Section and offsets side by side, and what is said of them.
void draw_lower_half(const SlotSheet& sheet, const Box& box, Length top) {
  Length foot = top + mm(12);
  if (sheet.slot.thick)
    foot = draw_section(sheet, {box.left, top});
  else
    note(sheet.canvas, {box.left, top + mm(6), section_width - mm(6), mm(20)},
         "No section: the thickness of the plate was not said.");
  const Length left = box.left + section_width;
  foot = std::max(foot, draw_offsets(sheet, {left, top, box.right() - left, mm(0)}));
  note(sheet.canvas, {box.left, foot + mm(2.5), box.width, mm(0)}, about_offsets(sheet));
}

void draw_slot(Canvas& canvas, const Box& box, const Document& document) {
  const auto slot = slot_seen(document.answer);
  if (!slot) return;
  const SlotSheet sheet{canvas, *slot, document.page.units, card_slot::scales_of(*slot, box.width)};
  const auto below = [&](Length down) { return Box{box.left, down, box.width, mm(0)}; };
  Length down = note(canvas, below(box.top), about_scales(sheet)) + mm(2.5);
  if (slot->opens_the_back()) {
    down = draw_back_up(sheet, below(down));
    down = draw_turning_over(sheet, below(down));
  }
  down = draw_front_up(sheet, below(down));
  draw_lower_half(sheet, box, down);
}

void say_nothing_drawn(Canvas& canvas, const Box& box, const Document&) {
  canvas.letters({box.left, box.top + mm(3)}, "No drawing: nothing is planned that could be drawn.", {mm(2.4)});
}

} // namespace

std::optional<CardDrawing> drawing_of_slot(const Document& document) {
  if (!slot_seen(document.answer)) return CardDrawing{mm(6), false, say_nothing_drawn};
  return CardDrawing{mm(0), true, draw_slot};
}

} // namespace quillside::page
