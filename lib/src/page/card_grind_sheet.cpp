#include "card_grind_sheet.hpp"

#include <algorithm>
#include <cmath>

#include <quillside/page/card.hpp>
#include <quillside/quantity/angle.hpp>
#include <quillside/words/print.hpp>

#include "drafting.hpp"
#include "read_answer.hpp"
#include "writing.hpp"

namespace quillside::page::card_grind {

namespace {

constexpr Lettering head{mm(6), Weight::bold};

} // namespace

DrillEnd drill_of(const Answer& answer) {
  const auto input = [&](const char* name) { return input_measure(answer, name)->value; };
  return {mm(input("size")), mm(input("web")), half_turn - angle_in(answer.findings, "chisel_edge_angle"),
          degrees(input("land"))};
}

std::string gives(const Answer& answer) {
  return "gives point " + print_angle(angle_in(answer.findings, "included_angle")) + ", relief " +
         print_angle(angle_in(answer.findings, "lip_relief"));
}

std::string named(const std::string& what, Angle angle) { return what + " " + print_angle(angle); }

void draw_face(Canvas& canvas, const Box& box, const char* words) {
  const Length down = box.top + face_at;
  canvas.line({box.left, down}, {box.right(), down}, pen::heavy);
  canvas.letters({box.left, down - mm(1.6)}, words, strong);
}

void draw_proof(Canvas& canvas, const Box& box) {
  canvas.letters({box.left, box.bottom() - ruler_height - mm(0.2)},
                 "Printed at 100 % only if this measures true, and the right edge 100 mm:", small);
  draw_ruler(canvas, {box.left + mm(1.5), box.bottom() - 0.5 * ruler_height}, degrees(0),
             mm(10 * std::floor(in_mm(box.width - mm(6)) / 10)));
  constexpr Length down = mm(100);
  const Spot top{box.right() + mm(1), box.top + face_at};
  const Spot end{top.right, top.down + down};
  canvas.line(top, end, pen::thin);
  for (const Spot& mark : {top, end})
    canvas.line({mark.right - mm(1.5), mark.down}, {mark.right + mm(1.5), mark.down}, pen::thin);
  canvas.letters({top.right + mm(0.7), top.down + 0.5 * down}, "100 mm", {least_letters},
                 {Across::centre, Along::foot, turns(-0.25)});
}

void draw_edges(Canvas& canvas, const EndView& view) {
  const Segment lip = view.lip_a();
  const Segment other = view.lip_b();
  const Segment chisel = view.chisel();
  canvas.line(lip.from, lip.to, lip_pen);
  canvas.line(other.from, other.to, pen::outline);
  canvas.line(chisel.from, chisel.to, pen::outline);
}

Length run(const LinesRoom& room, Spot start, Angle swing) {
  return std::min((room.bottom - start.down) / sine(swing), (start.right - room.left) / cosine(swing));
}

Length write_words(Canvas& canvas, Spot first_foot, const SheetWords& words, const std::string& gives) {
  const Length left = first_foot.right;
  Length down = first_foot.down;
  Lettering name = head;
  name.height = std::min(head.height, head.height * (words_width / canvas.width_of(words.name, head)));
  canvas.letters({left, down}, words.name, name);
  down = write_lines(canvas, {left, down + mm(4.6)}, words.with, strong, words_width);
  if (!words.facet.empty()) {
    canvas.letters({left, down + mm(2)}, words.facet, number);
    down = down + mm(5);
  }
  down = down + mm(1.8);
  for (const auto& line : words.numbers) {
    canvas.letters({left, down}, line, number);
    down = down + mm(5);
  }
  down = write_lines(canvas, {left, down}, gives, {mm(2), Weight::bold}, words_width);
  return write_lines(canvas, {left, down + mm(0.6)}, words.says, small, words_width, 1.7);
}

} // namespace quillside::page::card_grind
