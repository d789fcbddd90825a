#include "card_grind_fixture.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include <quillside/quantity/angle.hpp>
#include <quillside/words/print.hpp>

#include "card_grind_sheet.hpp"
#include "drafting.hpp"
#include "geometry.hpp"
#include "read_answer.hpp"
#include "scale.hpp"
#include "writing.hpp"

namespace quillside::page::card_grind {

namespace {

struct Fixture {
  Angle half{};  // wheel face to pivot
  Angle axis{};  // pivot to drill
  Angle clock{}; // in the end view, lip to pivot
  Length skew{};
  Length overhang{};
  Length distance{}; // along the pivot, from the face to the foot of the skew
  Angle needed{};
  std::optional<Angle> limit;
};

Fixture fixture_of(const Answer& answer) {
  const Members& cone = members_in(answer.settings, "cone");
  Fixture fixture{angle_in(cone, "cone_half_angle"), angle_in(cone, "cone_axis_angle"),
                  angle_in(cone, "lip_clock"),       length_in(cone, "cone_skew"),
                  length_in(cone, "point_overhang"), length_in(cone, "axis_distance"),
                  angle_in(cone, "swing_needed"),    {}};
  if (find_measure(cone, "swing_limit") != nullptr) fixture.limit = angle_in(cone, "swing_limit");
  return fixture;
}

/// Face, pivot and drill, laid in one plane: seen along the skew, which stands out of the paper.
struct Plan {
  Spot pierced; // where the pivot meets the wheel's face
  double times = 1;
};
Spot foot_of(const Plan& plan, const Fixture& fixture) {
  return from(plan.pierced, plan.times * fixture.distance, half_turn + fixture.half);
}
Spot tip_of(const Plan& plan, const Fixture& fixture) {
  return from(foot_of(plan, fixture), plan.times * fixture.overhang, fixture.half + fixture.axis);
}

void draw_layout(Canvas& canvas, const LinesRoom& room, const Fixture& fixture) {
  const Plan plan{room.touch};
  const Spot foot = foot_of(plan, fixture);
  const Spot tip = tip_of(plan, fixture);
  const Angle pivot = half_turn + fixture.half;
  const Angle drill = pivot + fixture.axis;
  const Length pivot_length = run(room, plan.pierced, fixture.half);
  const Length drill_length = run(room, tip, fixture.half + fixture.axis);
  canvas.line(plan.pierced, from(plan.pierced, pivot_length, pivot), pen::heavy);
  canvas.line(tip, from(tip, drill_length, drill), pen::heavy);
  const auto label = [&](Spot start, Length length, Angle along, Length left, const char* words) {
    canvas.letters(beside(from(start, 0.68 * length, along), {mm(0), left}, along), words, strong,
                   {Across::centre, Along::middle, along - half_turn});
  };
  label(plan.pierced, pivot_length, pivot, mm(-2.4), "PIVOT");
  label(tip, drill_length, drill, mm(-2.4), "DRILL");
  const Length wide = mm(38);
  draw_angle(canvas, plan.pierced, wide, half_turn, pivot);
  on_white(canvas, from(plan.pierced, wide + mm(2), half_turn + 0.5 * fixture.half), print_angle(fixture.half), number,
           {Across::right, Along::middle});
  const Length far = 0.42 * drill_length;
  draw_angle(canvas, foot, far, pivot, drill);
  on_white(canvas, from(foot, far + mm(2), pivot + 0.5 * fixture.axis), print_angle(fixture.axis), number,
           {Across::right, Along::middle});
}

// Three views below the lines, each with what its letters stand for.

struct View {
  Box box;
  std::string title;
  std::vector<std::string> legend;
};

constexpr Length legend_at = mm(48); // from the top of a view

void draw_words(Canvas& canvas, const View& view) {
  write_lines(canvas, {view.box.left, view.box.top + mm(2)}, view.title, small, view.box.width, 1.6);
  Length down = view.box.top + legend_at;
  for (const auto& line : view.legend)
    down = write_lines(canvas, {view.box.left, down}, line, strong, view.box.width) + mm(0.5);
}

/// A dimension beside a line, with its letter. \param left of the line as one walks
void draw_lettered(Canvas& canvas, const Segment& line, Length left, const char* letter) {
  const Angle along = direction_of(line.from, line.to);
  const auto off = [&](Spot spot, Length by) { return beside(spot, {mm(0), by}, along); };
  const Length side = left < mm(0) ? mm(-1) : mm(1);
  for (const Spot end : {line.from, line.to}) canvas.line(off(end, 0.6 * side), off(end, left + 0.8 * side), pen::thin);
  draw_dimension(canvas, off(line.from, left), off(line.to, left));
  const Spot middle{0.5 * (line.from.right + line.to.right), 0.5 * (line.from.down + line.to.down)};
  canvas.letters(off(middle, left + 2.6 * side), letter, number, {Across::centre, Along::middle});
}

/// What foot and tip take up beside the place where the pivot meets the face, which either may lie beyond.
struct CornerReach {
  Length left{};
  Length right{};
  Length up{};
  Length down{};
};
CornerReach corner_reach(const Fixture& fixture) {
  CornerReach reach;
  const Plan plan;
  for (const Spot& spot : {foot_of(plan, fixture), tip_of(plan, fixture)}) {
    reach.left = std::max(reach.left, -spot.right);
    reach.right = std::max(reach.right, spot.right);
    reach.up = std::max(reach.up, -spot.down);
    reach.down = std::max(reach.down, spot.down);
  }
  return reach;
}

/// The corner of that plan, enlarged.
void draw_corner(Canvas& canvas, const Box& box, const Fixture& fixture, UnitSystem units) {
  const CornerReach reach = corner_reach(fixture);
  const double times =
      std::min(times_drawn({reach.left + reach.right, 0.62 * box.width}), times_drawn({reach.up + reach.down, mm(24)}));
  draw_words(canvas, {box,
                      "At the face, " + how_large(times),
                      {"A  to foot " + print_length(fixture.distance, units),
                       "B  tip out " + print_length(fixture.overhang, units)}});
  const Plan plan{{box.right() - mm(3) - times * reach.right, box.top + mm(11) + times * reach.up}, times};
  const Spot foot = foot_of(plan, fixture);
  const Spot tip = tip_of(plan, fixture);
  const Angle pivot = half_turn + fixture.half;
  const Angle drill = pivot + fixture.axis;
  const bool tip_out = fixture.overhang > mm(0);
  canvas.line({box.left, plan.pierced.down}, {box.right(), plan.pierced.down}, pen::heavy);
  canvas.line(fixture.distance > mm(0) ? plan.pierced : foot,
              from(fixture.distance > mm(0) ? foot : plan.pierced, mm(4), pivot), pen::outline);
  canvas.line(tip_out ? tip : foot, from(tip_out ? foot : tip, mm(5), drill), pen::outline);
  canvas.circle(foot, mm(0.5), pen::heavy);
  draw_lettered(canvas, {plan.pierced, foot}, fixture.distance > mm(0) ? mm(3) : mm(-3), "A");
  draw_lettered(canvas, {foot, tip}, tip_out ? mm(3) : mm(-3), "B");
}

/// The drill from its point: how it is clocked, and by how much the pivot passes its axis.
void draw_clock(Canvas& canvas, const Box& box, const Fixture& fixture, const DrillEnd& drill, UnitSystem units) {
  const double times = times_drawn({drill.diameter, 0.8 * box.width});
  draw_words(canvas, {box,
                      "End on, from the point, " + how_large(times),
                      {"C  lip clock " + print_angle(fixture.clock), "D  skew " + print_length(fixture.skew, units)}});
  const Spot middle{box.left + 0.46 * box.width, box.top + mm(9) + 0.44 * box.width};
  const EndView view(drill, middle, times);
  view.draw_body(canvas, pen::thin);
  draw_edges(canvas, view);
  const Spot foot = from(middle, times * fixture.skew, fixture.clock + quarter);
  const Length half = 0.46 * box.width;
  canvas.line(from(foot, half, fixture.clock + half_turn), from(foot, half, fixture.clock), pen::heavy);
  canvas.line(foot, from(foot, half, degrees(0)), pen::thin);
  draw_angle(canvas, foot, half - mm(1), degrees(0), fixture.clock);
  canvas.letters(from(foot, half + mm(0.8), 0.5 * fixture.clock), "C", number, {Across::left, Along::middle});
  const Length out = 0.3 * box.width;
  const Angle back = fixture.clock + half_turn;
  canvas.line(from(middle, mm(1), fixture.clock), from(middle, out + mm(1), back), pen::thin);
  draw_dimension(canvas, from(middle, out, back), from(foot, out, back));
  canvas.letters(from(foot, out + mm(2), back - degrees(20)), "D", number, {Across::centre, Along::foot});
}

/// The swing of the arm, seen along the pivot.
void draw_travel(Canvas& canvas, const Box& box, const Fixture& fixture) {
  std::vector<std::string> legend{"swing " + print_angle(fixture.needed)};
  legend.push_back(fixture.limit ? "STOP before " + print_angle(*fixture.limit) : "then back off");
  draw_words(canvas, {box, "The swing, seen along the pivot", legend});
  const Spot middle{box.left + 0.4 * box.width, box.top + mm(26)};
  const Length radius = mm(15);
  const Angle end = quarter - fixture.needed;
  canvas.line(middle, from(middle, radius, quarter), pen::heavy);
  canvas.line(middle, from(middle, radius, end), pen::heavy);
  draw_angle(canvas, middle, 0.8 * radius, end, quarter);
  canvas.letters(from(middle, radius + mm(1), quarter), "lip", strong, {Across::centre});
  canvas.letters(from(middle, 0.8 * radius + mm(1.5), 0.5 * (end + quarter)), print_angle(fixture.needed), strong);
  if (!fixture.limit) return;
  const Angle limit = quarter - *fixture.limit;
  canvas.line(middle, from(middle, radius, limit), {mm(0.35), 0, true});
  canvas.letters(from(middle, radius + mm(4.5), limit), "STOP", strong, {Across::centre, Along::middle});
}

constexpr const char* fixture_says =
    "Wheel's face, pivot and drill, seen along the skew. Start with the face along the lip, swing to the heel and back "
    "off; half a turn, clocked alike, for the other lip.";

} // namespace

void draw_fixture(Canvas& canvas, const Box& box, const Document& document) {
  const Answer& answer = document.answer;
  const Fixture fixture = fixture_of(answer);
  const UnitSystem units = document.page.units;
  draw_face(canvas, box, "CUT HERE: this edge against the flat face of the wheel");
  draw_proof(canvas, box);
  const Length views = mm(60);
  const Length top = box.bottom() - proof_room - views;
  // The drill's line passes on the left of the words.
  const Length words_left = box.right() - words_width;
  const Length words_down = mm(48);
  const Angle steep = fixture.half + fixture.axis;
  const Length tip_left_of_pierced = fixture.distance * cosine(fixture.half) - fixture.overhang * cosine(steep);
  const Length pierced =
      std::min(box.right() - mm(14), words_left - mm(5) + words_down / tangent(steep) + tip_left_of_pierced);
  draw_layout(canvas, {{pierced, box.top + face_at}, box.left, top - mm(4)}, fixture);
  const SheetWords words{"FIXTURE",
                         "swings about a pivot",
                         "",
                         {named("face to pivot", fixture.half), named("pivot to drill", fixture.axis)},
                         fixture_says};
  write_words(canvas, {words_left, box.top + face_at + words_down + mm(4)}, words, gives(answer));
  const Length each = (box.width - mm(8)) / 3.0;
  const auto third = [&](double i) { return Box{box.left + i * (each + mm(4)), top, std::min(each, mm(42)), views}; };
  draw_corner(canvas, third(0), fixture, units);
  draw_clock(canvas, third(1), fixture, drill_of(answer), units);
  draw_travel(canvas, third(2), fixture);
}

} // namespace quillside::page::card_grind
