#include "card_grind_rest.hpp"

#include <algorithm>
#include <cmath>

#include <quillside/quantity/angle.hpp>

#include "drafting.hpp"
#include "geometry.hpp"
#include "writing.hpp"

namespace quillside::page::card_grind {

namespace {

// --- The lines that it is laid by, from above ---

/// The drill as it lies, seen from above, its lip along the disk's face.
void draw_laid(Canvas& canvas, const LinesRoom& room, Angle swing, Length diameter) {
  const Angle back = half_turn + swing;
  const Length radius = 0.5 * diameter;
  const Length length = 0.75 * run(room, room.touch, swing);
  const Spot lip_end = from(room.touch, radius / sine(swing), half_turn);
  const Spot other_end = beside(room.touch, {radius / tangent(swing), radius}, back);
  canvas.path({lip_end, beside(room.touch, {length, -radius}, back)}, pen::outline);
  canvas.path({room.touch, other_end, beside(room.touch, {length, radius}, back)}, pen::outline);
  canvas.line(room.touch, lip_end, lip_pen);
}

void draw_along(Canvas& canvas, const LinesRoom& room, const RestSheet& sheet, Length off, const std::string& words) {
  const Angle back = half_turn + sheet.swing;
  const Spot at = beside(room.touch, {0.55 * run(room, room.touch, sheet.swing), off}, back);
  canvas.letters(at, words, strong, {Across::centre, Along::middle, sheet.swing});
}

void draw_fence(Canvas& canvas, const LinesRoom& room, const RestSheet& sheet, Length diameter) {
  const Angle back = half_turn + sheet.swing;
  const Length length = run(room, room.touch, sheet.swing);
  // On this side of the drill: the disk presses it against the fence.
  const Length off = 0.5 * diameter;
  canvas.line(beside(room.touch, {off / tangent(sheet.swing) + mm(4), off}, back),
              beside(room.touch, {length, off}, back), pen::heavy);
  draw_along(canvas, room, sheet, off + mm(2.6), "FENCE: its edge along this line");
}

void draw_block_lines(Canvas& canvas, const LinesRoom& room, const RestSheet& sheet, Length diameter) {
  const Angle back = half_turn + sheet.swing;
  canvas.line(room.touch, from(room.touch, run(room, room.touch, sheet.swing), back), pen::heavy);
  for (const double step : {-12.0, -6.0, 6.0}) {
    const Length off = 0.5 * diameter + mm(std::abs(step));
    const Spot start = from(room.touch, (step < 0 ? -1.0 : 1.0) * off / sine(sheet.swing), degrees(0));
    canvas.line(from(start, mm(3), back), from(start, run(room, start, sheet.swing), back), pen::thin);
  }
  draw_along(canvas, room, sheet, 0.5 * diameter + mm(3), "V-BLOCK: its middle on the heavy line");
}

void draw_swing(Canvas& canvas, const LinesRoom& room, const RestSheet& sheet, Length diameter) {
  draw_laid(canvas, room, sheet.swing, diameter);
  if (sheet.fence)
    draw_fence(canvas, room, sheet, diameter);
  else
    draw_block_lines(canvas, room, sheet, diameter);
  draw_along(canvas, room, sheet, -0.5 * diameter - mm(2.4), "drill, from above, true to size");
  // A slim corner has its figure further out.
  const Length radius =
      std::max(mm(sheet.swing < degrees(45) ? 46 : 30), 0.5 * diameter / sine(0.5 * sheet.swing) + mm(14));
  draw_angle(canvas, room.touch, radius, half_turn, half_turn + sheet.swing);
  on_white(canvas, from(room.touch, radius + mm(2), half_turn + 0.4 * sheet.swing), print_angle(sheet.swing), number,
           {Across::right, Along::middle});
}

// --- End on ---

/// \param width of the round drill on the paper
void draw_end_on(Canvas& canvas, const DrillEnd& drill, Spot middle, Length width, Angle roll) {
  const EndView view(drill, middle, width / drill.diameter, roll);
  view.draw_body(canvas, pen::outline);
  draw_edges(canvas, view);
  const Segment lip = view.lip_a();
  const Length out = 1.3 * view.radius();
  const Lettering& figures = width > mm(30) ? number : strong;
  canvas.line(lip.from, from(lip.from, out, degrees(0)), pen::thin);
  if (roll > turns(0)) {
    canvas.line(lip.to, from(lip.from, out, roll), pen::thin);
    draw_angle(canvas, lip.from, out - mm(1), turns(0), roll);
    canvas.letters(from(lip.from, out + mm(1), 0.5 * roll), print_angle(roll), figures, {Across::left, Along::middle});
  } else {
    canvas.letters(from(lip.from, out + mm(1), degrees(0)), "level", figures, {Across::left, Along::middle});
  }
}

// --- Its wedges ---

constexpr Length under_wedge = mm(11.5); // its letters

struct WedgeRoom {
  Spot thin_end;
  Length base{};
};

void draw_wedge(Canvas& canvas, const WedgeRoom& room, const Wedge& wedge) {
  const Spot thin_end = room.thin_end;
  const Spot foot{thin_end.right + room.base, thin_end.down};
  canvas.outline({thin_end, foot, {foot.right, foot.down - room.base * tangent(wedge.tilt)}}, {mm(0.35)});
  const Length radius = 0.5 * room.base;
  draw_angle(canvas, thin_end, radius, degrees(0), wedge.tilt);
  if (radius * sine(wedge.tilt) > mm(4))
    canvas.letters(from(thin_end, radius + mm(1.2), 0.5 * wedge.tilt), print_angle(wedge.tilt), number,
                   {Across::left, Along::middle});
  const Length over = mm(100) * tangent(wedge.tilt);
  canvas.letters({thin_end.right, thin_end.down + mm(3.4)}, wedge.title, strong);
  canvas.letters({foot.right, thin_end.down + mm(3.4)}, "to the disk", small, {Across::right});
  const std::string rise = "rise " + fixed_decimal(in_mm(over), 2) + " mm over 100 mm";
  const std::string inch = fixed_decimal(in_inches(over) * (inches(4.0) / mm(100)), 4) + " in over 4 in";
  canvas.letters({thin_end.right, thin_end.down + mm(6.8)}, rise, small);
  canvas.letters({thin_end.right, thin_end.down + mm(10.2)}, inch, small);
}

/// How long a wedge is drawn: 100 mm, less where two stand side by side or one is steep.
Length wedge_base(const RestSheet& sheet, const Box& box) {
  const double count = static_cast<double>(sheet.wedges.size());
  Length base = std::min(mm(100), box.width / count - mm(6));
  for (const auto& wedge : sheet.wedges) base = std::min(base, mm(62) / tangent(wedge.tilt));
  return base;
}

void draw_wedges(Canvas& canvas, const RestSheet& sheet, Spot corner, Length base) {
  for (const auto& wedge : sheet.wedges) {
    draw_wedge(canvas, {corner, base}, wedge);
    corner.right = corner.right + base + mm(12);
  }
}

} // namespace

void draw_rest_sheet(Canvas& canvas, const Box& box, const RestSheet& sheet, const Answer& answer) {
  const DrillEnd drill = drill_of(answer);
  draw_face(canvas, box, "CUT HERE: this edge against the face of the disk");
  draw_proof(canvas, box);
  const Length bottom = box.bottom() - proof_room;
  const Length face = box.top + face_at;
  Length split = bottom - mm(52);
  if (!sheet.wedges.empty()) {
    const Length base = wedge_base(sheet, box);
    Length rise{};
    for (const auto& wedge : sheet.wedges) rise = std::max(rise, base * tangent(wedge.tilt));
    split = bottom - under_wedge - rise - mm(5);
    draw_wedges(canvas, sheet, {box.left, bottom - under_wedge}, base);
  }
  const Length touch = box.right() - words_width - mm(7) - 0.35 * drill.diameter;
  draw_swing(canvas, {{touch, face}, box.left, split}, sheet, drill.diameter);
  const Length below = write_words(canvas, {box.right() - words_width, face + mm(14)}, sheet.words, gives(answer));
  if (sheet.wedges.empty()) {
    draw_end_on(canvas, drill, {box.left + mm(42), split + mm(23)}, mm(38), sheet.roll);
    canvas.letters({box.left + mm(42), split + mm(47)}, "end on, seen from the disk", small, {Across::centre});
  } else {
    const Spot middle{box.right() - words_width + mm(12), below + mm(9)};
    draw_end_on(canvas, drill, middle, mm(17), sheet.roll);
    canvas.letters({middle.right - mm(12), middle.down + mm(12.5)}, "end on, seen from the disk", small);
  }
}

} // namespace quillside::page::card_grind
