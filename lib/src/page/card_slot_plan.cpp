#include "card_slot_plan.hpp"

#include <algorithm>
#include <vector>

#include "card_slot_figures.hpp"
#include "card_slot_plate.hpp"
#include "drafting.hpp"
#include "geometry.hpp"

namespace quillside::page::card_slot {

namespace {

/// The box that a length and a width of the work take about a middle.
Box box_about(const SlotSheet& sheet, Spot middle, Length half_length, Length width) {
  const Length half = sheet.scales.view.drawn(half_length);
  const Length high = sheet.scales.view.drawn(width);
  return {middle.right - half, middle.down - 0.5 * high, 2.0 * half, high};
}

/// Both sides of what has no known ends.
void draw_sides(const SlotSheet& sheet, const Plate& plate, Length width, const Pen& pen) {
  const Length half = 0.5 * sheet.scales.view.drawn(width);
  for (const double side : {-1.0, 1.0})
    sheet.canvas.line({plate.box.left, plate.middle.down + side * half},
                      {plate.box.right(), plate.middle.down + side * half}, pen);
}

void draw_pocket(const SlotSheet& sheet, const Plate& plate, const Pen& pen) {
  const PocketSeen& pocket = *sheet.slot.pocket;
  if (!pocket.half) {
    draw_sides(sheet, plate, pocket.width, pen);
    return;
  }
  const Length corner = 0.5 * sheet.scales.view.drawn(pocket.tool);
  sheet.canvas.outline(rounded(box_about(sheet, plate.middle, *pocket.half, pocket.width), corner), pen);
}

void draw_holes(const SlotSheet& sheet, const Plate& plate, const std::vector<Length>& centres) {
  for (const Length centre : centres) {
    const Spot at{plate.middle.right + sheet.scales.view.drawn(centre), plate.middle.down};
    sheet.canvas.circle(at, 0.5 * sheet.scales.view.drawn(sheet.slot.pocket->tool), plain);
    cross(sheet.canvas, at);
  }
}

/// Gives where it ends at the right.
Length draw_slot(const SlotSheet& sheet, const Plate& plate) {
  const SlotSeen& slot = sheet.slot;
  const Length width = mm(slot.width.value);
  if (!slot.length) {
    draw_sides(sheet, plate, width, bold);
    return plate.box.right();
  }
  const Box outline = box_about(sheet, plate.middle, 0.5 * mm(slot.length->value), width);
  const Length corner = 0.5 * sheet.scales.view.drawn(slot.cut);
  sheet.canvas.outline(rounded(outline, slot.filed ? mm(0) : corner), bold);
  if (slot.filed) sheet.canvas.outline(rounded(outline, corner), thin);
  return outline.right();
}

std::string about_back(const SlotSheet& sheet) {
  const PocketSeen& pocket = *sheet.slot.pocket;
  std::string mill = pocket.mill + ", pocket " + sheet.print(pocket.depth) + " deep";
  if (!pocket.holes) return mill;
  const auto count = pocket.holes->centres.size();
  return (count == 0 ? "holes" : std::to_string(count) + (count == 1 ? " hole" : " holes")) + ", " +
         pocket.holes->drill + ", then " + mill;
}

std::string about_front(const SlotSheet& sheet) {
  const SlotSeen& slot = sheet.slot;
  std::string about = slot.mill.empty() ? "nothing more to mill" : slot.mill;
  if (slot.first_cut_depth) about += ", " + sheet.print(*slot.first_cut_depth) + " deep";
  if (slot.length) about += slot.filed ? ", corners filed" : ", round ends";
  return about;
}

} // namespace

Length draw_back_up(const SlotSheet& sheet, const Box& room) {
  const PocketSeen& pocket = *sheet.slot.pocket;
  const Plate plate = draw_plate(sheet, room, {"BACK UP", about_back(sheet), "A", "B"});
  draw_pocket(sheet, plate, bold);
  std::vector<Length> centres;
  if (pocket.holes) centres = pocket.holes->centres;
  draw_holes(sheet, plate, centres);
  draw_width(sheet, plate, pocket.width,
             pocket.half ? plate.middle.right + sheet.scales.view.drawn(*pocket.half) : plate.box.right());
  const Length foot =
      centres.empty() ? say_no_length(sheet.canvas, plate) : draw_ordinates(sheet, plate, centres, "drill at");
  return foot + mm(2);
}

Length draw_turning_over(const SlotSheet& sheet, const Box& room) {
  draw_turning_arrow(sheet.canvas, {room.left + mm(6.5), room.top + mm(3.6)}, mm(3.4), bold);
  const Length foot = note(
      sheet.canvas, {room.left + mm(14), room.top + mm(0.8), room.width - mm(14), mm(0)},
      "Turn the plate end for end: the same edge stays at the fixed jaw. Ends A and B change places, so X mirrors.",
      {mm(2.4), Weight::bold});
  return std::max(foot, room.top + mm(7)) + mm(2.5);
}

Length draw_front_up(const SlotSheet& sheet, const Box& room) {
  const SlotSeen& slot = sheet.slot;
  const Plate plate = draw_plate(sheet, room, {"FRONT UP", about_front(sheet), "B", "A"});
  if (slot.opens_the_back()) draw_pocket(sheet, plate, hidden);
  draw_width(sheet, plate, mm(slot.width.value), draw_slot(sheet, plate));
  draw_band(sheet, plate);
  if (!slot.length) return say_no_length(sheet.canvas, plate) + mm(3.5);
  std::vector<Length> run;
  if (slot.half_run) run = {-*slot.half_run, *slot.half_run};
  for (const Length end : run)
    cross(sheet.canvas, {plate.middle.right + sheet.scales.view.drawn(end), plate.middle.down});
  const Length below = draw_ordinates(sheet, plate, run, run.empty() ? "" : "cutter at");
  return draw_length(sheet, plate, below) + mm(3.5);
}

} // namespace quillside::page::card_slot
