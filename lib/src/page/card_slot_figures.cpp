#include "card_slot_figures.hpp"

#include <algorithm>
#include <string>

#include "drafting.hpp"

namespace quillside::page::card_slot {

namespace {

/// What figures under a view are of, at the right of them.
void draw_aside(Canvas& canvas, const Plate& plate, Length top, const std::string& what) {
  canvas.letters({plate.box.right() + mm(3.5), top}, what, words, {Across::left, Along::top});
}

bool is_middle(Length at) { return at < mm(1e-6) && at > mm(-1e-6); }

std::string x_of(const SlotSheet& sheet, Length at) { return is_middle(at) ? "X 0" : sheet.print(at); }

/// How the figures of places stand in a row.
struct Row {
  bool turned = false; // upright, where they would run into one another
  Length widest{};     // of the figures
  Length apart{};      // the least from one to the next
};
/// \param at in order
Row row_of(const SlotSheet& sheet, const Plate& plate, const std::vector<Length>& at) {
  Row row;
  Length nearest = plate.box.width;
  for (std::size_t i = 0; i < at.size(); ++i) {
    row.widest = std::max(row.widest, sheet.canvas.width_of(x_of(sheet, at[i]), figures));
    if (i > 0) nearest = std::min(nearest, sheet.scales.view.drawn(at[i] - at[i - 1]));
  }
  row.turned = nearest < row.widest + mm(1.5);
  row.apart = row.turned ? 1.6 * figures.height : row.widest + mm(1.5);
  return row;
}

} // namespace

Length draw_ordinates(const SlotSheet& sheet, const Plate& plate, std::vector<Length> at, const char* whose) {
  const Length top = plate.box.bottom() + mm(2.2);
  draw_aside(sheet.canvas, plate, top, whose);
  if (std::none_of(at.begin(), at.end(), is_middle)) at.push_back(mm(0));
  std::sort(at.begin(), at.end());
  const Row row = row_of(sheet, plate, at);
  const Hold hold = row.turned ? Hold{Across::right, Along::middle, degrees(90)} : Hold{Across::centre, Along::top};
  Length next = plate.box.left;
  for (const Length one : at) {
    const Length right = plate.middle.right + sheet.scales.view.drawn(one);
    sheet.canvas.line({right, plate.middle.down + mm(1.6)}, {right, plate.box.bottom() + mm(1.5)}, thin);
    if (right < next) continue; // no room to letter it: its place is in the steps
    next = right + row.apart;
    sheet.canvas.letters({right, top}, x_of(sheet, one), figures, hold);
  }
  return top + (row.turned ? row.widest : figures.height) + mm(1);
}

void draw_width(const SlotSheet& sheet, const Plate& plate, Length width, Length right_end) {
  const Length half = 0.5 * sheet.scales.view.drawn(width);
  const Length at = plate.box.right() + mm(3.5);
  for (const double side : {-1.0, 1.0})
    sheet.canvas.line({right_end, plate.middle.down + side * half}, {at + mm(1), plate.middle.down + side * half},
                      thin);
  draw_dimension(sheet.canvas, {at, plate.middle.down - half}, {at, plate.middle.down + half}, thin);
  sheet.canvas.letters({at + mm(2), plate.middle.down}, sheet.print(width), figures, {Across::left, Along::middle});
}

void draw_band(const SlotSheet& sheet, const Plate& plate) {
  const Measure& width = sheet.slot.width;
  if (!width.low || !(*width.low < *width.high)) return;
  const Length left = plate.box.right() + mm(5.5);
  sheet.canvas.letters({left, plate.middle.down + mm(4.6)}, sheet.print(mm(*width.low)), words,
                       {Across::left, Along::middle});
  sheet.canvas.letters({left, plate.middle.down + mm(8)}, "to " + sheet.print(mm(*width.high)), words,
                       {Across::left, Along::middle});
}

Length draw_length(const SlotSheet& sheet, const Plate& plate, Length top) {
  const Length half = 0.5 * sheet.scales.view.drawn(mm(sheet.slot.length->value));
  const Length at = top + mm(1.5);
  for (const double side : {-1.0, 1.0}) {
    const Length right = plate.middle.right + side * half;
    sheet.canvas.line({right, at - mm(1.6)}, {right, at + mm(1)}, thin);
  }
  draw_dimension(sheet.canvas, {plate.middle.right - half, at}, {plate.middle.right + half, at}, thin);
  sheet.canvas.letters({plate.middle.right, at + mm(1.6)}, sheet.print(mm(sheet.slot.length->value)), figures,
                       {Across::centre, Along::top});
  draw_aside(sheet.canvas, plate, at + mm(1.6), "slot");
  return at + mm(1.6) + figures.height;
}

Length say_no_length(Canvas& canvas, const Plate& plate) {
  return note(canvas, {plate.box.left, plate.box.bottom() + mm(1.5), plate.box.width, mm(0)},
              "How long it is, and where it ends, is not known: neither the part's width nor a length was said.");
}

} // namespace quillside::page::card_slot
