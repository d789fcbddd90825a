#include "card_slot_plate.hpp"

#include <algorithm>

#include "drafting.hpp"

namespace quillside::page::card_slot {

namespace {

void draw_jaw(Canvas& canvas, const Box& box) {
  const std::string name = "fixed jaw";
  const Length half = 0.5 * canvas.width_of(name, figures) + mm(2);
  const Length middle = box.left + 0.5 * box.width;
  hatch(canvas, {box.left, box.top, middle - half - box.left, box.height}, thin, mm(1.1));
  hatch(canvas, {middle + half, box.top, box.right() - middle - half, box.height}, thin, mm(1.1));
  canvas.frame(box, plain);
  canvas.letters({middle, box.top + 0.5 * box.height}, name, figures, {Across::centre, Along::middle});
}

void draw_end_mark(Canvas& canvas, Spot at, const char* letter) {
  canvas.circle(at, mm(2.2), plain);
  canvas.letters(at, letter, figures, {Across::centre, Along::middle});
}

/// Its two edges, and broken off at both ends.
void draw_edges(Canvas& canvas, const Plate& plate) {
  const Box& box = plate.box;
  canvas.line({box.left, box.top}, {box.right(), box.top}, bold);
  canvas.line({box.left, box.bottom()}, {box.right(), box.bottom()}, bold);
  broken_edge(canvas, {box.left, box.top}, box.height, plain);
  broken_edge(canvas, {box.right(), box.top}, box.height, plain);
  canvas.line({box.left, plate.middle.down}, {box.right(), plate.middle.down}, middle_line);
  canvas.line({plate.middle.right, box.top}, {plate.middle.right, box.bottom()}, middle_line);
}

} // namespace

Plate draw_plate(const SlotSheet& sheet, const Box& room, const Heading& heading) {
  Canvas& canvas = sheet.canvas;
  canvas.letters({room.left, room.top + title.height}, heading.face, title);
  const Length after = canvas.width_of(heading.face, title) + mm(4);
  const Length foot = note(
      canvas, {room.left + after, room.top + title.height - words.height, room.width - after, mm(0)}, heading.about);
  const Length top = std::max(room.top + mm(5), foot);
  const Length width = room.width - to_figures;
  draw_jaw(canvas, {room.left, top, width, mm(4)});
  const Length height = std::max(sheet.scales.view.drawn(sheet.slot.widest()) + mm(12), mm(22));
  const Plate plate{{room.left, top + mm(4), width, height}, {room.left + 0.5 * width, top + mm(4) + 0.5 * height}};
  draw_edges(canvas, plate);
  if (sheet.slot.opens_the_back()) {
    draw_end_mark(canvas, {plate.box.left + mm(4), plate.box.bottom() - mm(3.3)}, heading.left_end);
    draw_end_mark(canvas, {plate.box.right() - mm(4), plate.box.bottom() - mm(3.3)}, heading.right_end);
  }
  const Spot axis{plate.box.right() - mm(14), plate.box.top + mm(3.3)};
  draw_arrow(canvas, axis, {axis.right + mm(7), axis.down}, plain);
  canvas.letters({axis.right + mm(8), axis.down}, "+X", words, {Across::left, Along::middle});
  return plate;
}

} // namespace quillside::page::card_slot
