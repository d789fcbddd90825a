#include "card_slot_section.hpp"

#include <algorithm>
#include <vector>

#include "drafting.hpp"

namespace quillside::page::card_slot {

namespace {

/// The plate as it is cut through, on the paper.
struct Cut {
  Box plate;
  Length floor{}; // of the pocket, from the top of the sheet; the back where there is none
  Length slot_half{};
  Length pocket_half{};

  [[nodiscard]] Length middle() const { return plate.left + 0.5 * plate.width; }
};

Cut cut_of(const SlotSheet& sheet, Spot back) {
  const SlotSeen& slot = sheet.slot;
  const Scale& scale = sheet.scales.section;
  Cut cut{{back.right, back.down, scale.drawn(slot.widest()) + mm(14), scale.drawn(*slot.thick)}};
  cut.slot_half = 0.5 * scale.drawn(mm(slot.width.value));
  cut.floor = slot.pocket ? cut.plate.top + scale.drawn(slot.pocket->depth) : cut.plate.top;
  cut.pocket_half = slot.pocket ? 0.5 * scale.drawn(slot.pocket->width) : cut.slot_half;
  return cut;
}

/// The metal on one side of the slot. \param side 1 at its right, -1 at its left
void draw_metal(Canvas& canvas, const Cut& cut, double side) {
  const Box& plate = cut.plate;
  const Length outer = cut.middle() + side * 0.5 * plate.width;
  const Length pocket = cut.middle() + side * cut.pocket_half;
  const Length slot = cut.middle() + side * cut.slot_half;
  canvas.path({{outer, plate.top},
               {pocket, plate.top},
               {pocket, cut.floor},
               {slot, cut.floor},
               {slot, plate.bottom()},
               {outer, plate.bottom()}},
              bold);
  broken_edge(canvas, {outer, plate.top}, plate.height, plain);
  const auto between = [&](Length inner, Length top, Length bottom) {
    hatch(canvas, {std::min(inner, outer), top, std::max(inner, outer) - std::min(inner, outer), bottom - top}, thin);
  };
  between(pocket, plate.top, cut.floor);
  between(slot, cut.floor, plate.bottom());
}

void draw_drill(const SlotSheet& sheet, const Cut& cut, const HolesSeen& holes) {
  if (!holes.stop || !holes.point) return;
  const Scale& scale = sheet.scales.section;
  const Length middle = cut.middle();
  const Length back = cut.plate.top;
  const Length half = 0.5 * scale.drawn(sheet.slot.pocket->tool);
  const Length tip = back + scale.drawn(*holes.stop);
  const Length corner = back + scale.drawn(*holes.stop - *holes.point);
  const Length top = std::min(back - mm(5), corner);
  sheet.canvas.path(
      {{middle - half, top}, {middle - half, corner}, {middle, tip}, {middle + half, corner}, {middle + half, top}},
      hidden);
  sheet.canvas.letters({middle, top - mm(1)}, holes.drill, words, {Across::centre});
}

/// From the plate out to where a dimension stands.
void draw_end(Canvas& canvas, Length from, Length to, Length down) { canvas.line({from, down}, {to, down}, thin); }

/// At the left: how thick the plate is, and which side is which.
void draw_thickness(const SlotSheet& sheet, const Box& plate) {
  Canvas& canvas = sheet.canvas;
  const Length left = plate.left - mm(3);
  draw_end(canvas, plate.left, left - mm(1), plate.top);
  draw_end(canvas, plate.left, left - mm(1), plate.bottom());
  draw_dimension(canvas, {left, plate.top}, {left, plate.bottom()}, thin);
  const Length middle = plate.top + 0.5 * plate.height;
  canvas.letters({left - mm(1.5), middle}, sheet.print(*sheet.slot.thick), figures, {Across::right, Along::middle});
  canvas.letters({left - mm(1.5), std::min(plate.top, middle - mm(4))}, "back", words, {Across::right, Along::middle});
  canvas.letters({left - mm(1.5), std::max(plate.bottom(), middle + mm(4))}, "front", words,
                 {Across::right, Along::middle});
}

/// A figure and what it is, about a height.
void draw_label(Canvas& canvas, Spot at, const std::string& figure, const std::string& what) {
  if (!figure.empty()) canvas.letters({at.right, at.down - mm(0.4)}, figure, figures);
  canvas.letters({at.right, at.down + mm(0.8)}, what, words, {Across::left, Along::top});
}

/// At the right: how deep the pocket is, and what is left under it.
void draw_depths(const SlotSheet& sheet, const Cut& cut) {
  const SlotSeen& slot = sheet.slot;
  const Box& plate = cut.plate;
  const Length right = plate.right() + mm(3);
  for (const Length at : {plate.top, cut.floor, plate.bottom()})
    draw_end(sheet.canvas, plate.right(), right + mm(1), at);
  draw_dimension(sheet.canvas, {right, plate.top}, {right, cut.floor}, thin);
  draw_dimension(sheet.canvas, {right, cut.floor}, {right, plate.bottom()}, thin);
  // The two labels stand apart, however thin what they name is.
  constexpr Length apart = mm(7);
  Length upper = 0.5 * (plate.top + cut.floor);
  Length lower = 0.5 * (cut.floor + plate.bottom());
  if (const Length lack = apart - (lower - upper); lack > mm(0)) {
    upper = upper - 0.5 * lack;
    lower = lower + 0.5 * lack;
  }
  const bool opens = slot.opens_the_back();
  draw_label(sheet.canvas, {right + mm(1.5), upper}, opens ? sheet.print(slot.pocket->depth) : "",
             opens ? "STOP, tip" : "pocket");
  draw_label(sheet.canvas, {right + mm(1.5), lower}, sheet.print(*slot.leave), "left");
}

} // namespace

Length draw_section(const SlotSheet& sheet, Spot corner) {
  const SlotSeen& slot = sheet.slot;
  Canvas& canvas = sheet.canvas;
  canvas.letters({corner.right, corner.down + title.height}, "Across the slot, back up", title);
  const bool drilled = slot.opens_the_back() && slot.pocket->holes.has_value();
  const Cut cut = cut_of(sheet, {corner.right + mm(17), corner.down + mm(drilled ? 14 : 9)});
  for (const double side : {-1.0, 1.0}) draw_metal(canvas, cut, side);
  if (drilled) draw_drill(sheet, cut, *slot.pocket->holes);
  const Length below = cut.plate.bottom() + mm(1.2);
  canvas.letters({cut.middle(), below}, sheet.print(mm(slot.width.value)), figures, {Across::centre, Along::top});
  draw_thickness(sheet, cut.plate);
  if (slot.pocket) draw_depths(sheet, cut);
  return std::max(below + figures.height, cut.plate.top + 0.5 * cut.plate.height + mm(5.5));
}

} // namespace quillside::page::card_slot
