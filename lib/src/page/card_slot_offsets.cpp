#include "card_slot_offsets.hpp"

#include "drafting.hpp"

namespace quillside::page::card_slot {

namespace {

/// The cutter at a wall, turning clockwise, fed against its turning. \param way 1 to the right, -1 to the left
void draw_cutter(const SlotSheet& sheet, Spot at, Length radius, double way) {
  sheet.canvas.circle(at, radius, plain);
  cross(sheet.canvas, at);
  draw_turning_arrow(sheet.canvas, at, 0.6 * radius, plain);
  if (sheet.slot.climbs_too) return;
  draw_arrow(sheet.canvas, {at.right + way * radius, at.down}, {at.right + way * (radius + mm(7)), at.down}, bold);
}

} // namespace

Length draw_offsets(const SlotSheet& sheet, const Box& room) {
  Canvas& canvas = sheet.canvas;
  canvas.letters({room.left, room.top + title.height}, "Offset, front up", title);
  const Length radius = 0.5 * sheet.scales.cutter.drawn(sheet.slot.cut);
  const Length offset = sheet.scales.offset.drawn(sheet.slot.side_offset);
  const Length middle = room.top + mm(9) + offset + radius;
  const Length right = room.right() - mm(15);
  for (const double side : {-1.0, 1.0}) {
    const Length wall = middle + side * (radius + offset);
    canvas.line({room.left, wall}, {right + mm(3), wall}, bold);
    if (!(offset > mm(0))) continue;
    const Length cut = middle + side * radius;
    canvas.line({room.left, cut}, {right + mm(3), cut}, hidden);
    draw_dimension(canvas, {right + mm(2), cut}, {right + mm(2), wall}, thin);
    canvas.letters({right + mm(4), middle + side * (radius + 0.5 * offset)}, sheet.print(sheet.slot.side_offset),
                   figures, {Across::left, Along::middle});
  }
  canvas.line({room.left, middle}, {right + mm(3), middle}, middle_line);
  canvas.letters({right + mm(4), middle}, "middle", words, {Across::left, Along::middle});
  if (!(offset > mm(0))) {
    canvas.circle({0.5 * (room.left + right), middle}, radius, plain);
    return middle + radius + offset;
  }
  draw_cutter(sheet, {room.left + radius + mm(1.5), middle - offset}, radius, 1);
  draw_cutter(sheet, {right - radius - mm(1.5), middle + offset}, radius, -1);
  // Heads that stand outside reach further.
  return middle + radius + offset + mm(2);
}

std::string about_offsets(const SlotSheet& sheet) {
  const SlotSeen& slot = sheet.slot;
  const Scales& scales = sheet.scales;
  if (!(slot.side_offset > mm(0)))
    return "Offset: none. The first cut is the slot, and no wall is cut again. Cutter " + scales.cutter.words() + ".";
  std::string text = "Offset: " + sheet.print(slot.side_offset) + " each side, wall to wall " +
                     sheet.print(slot.wall_to_wall) + ", set from one direction";
  for (std::size_t i = 0; i + 1 < slot.offsets.size(); ++i)
    text += (i > 0 ? ", " : "; before it ") + sheet.print(slot.offsets[i]);
  text += slot.measured ? ". Dashed: the cut as measured, " + sheet.print(slot.cut) + "." : ". Dashed: the first cut.";
  if (!slot.climbs_too) text += " Arrow: the way the cutter goes.";
  return text + (scales.offset == scales.cutter
                     ? " Offset and cutter " + scales.cutter.words() + "."
                     : " NOT TO ONE SCALE: offset " + scales.offset.words() + ", else it could not be seen; cutter " +
                           scales.cutter.words() + ".");
}

} // namespace quillside::page::card_slot
