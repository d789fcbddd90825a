#include "card_grind.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <quillside/page/card.hpp>
#include <quillside/quantity/angle.hpp>
#include <quillside/words/print.hpp>

#include "drafting.hpp"
#include "drill_end.hpp"
#include "geometry.hpp"
#include "read_answer.hpp"
#include "ruler.hpp"
#include "scale.hpp"
#include "writing.hpp"

namespace quillside::page {

namespace {

constexpr Lettering small{mm(2)};
constexpr Lettering strong{mm(2.2), Weight::bold};
constexpr Lettering number{mm(3.2), Weight::bold};
constexpr Lettering head{mm(6), Weight::bold};

constexpr Angle quarter = turns(0.25);
constexpr Angle half_turn = turns(0.5);

DrillEnd drill_of(const Answer& answer) {
  const auto input = [&](const char* name) { return input_measure(answer, name)->value; };
  return {mm(input("size")), mm(input("web")), half_turn - angle_in(answer.findings, "chisel_edge_angle"),
          degrees(input("land"))};
}

std::string gives(const Answer& answer) {
  return "gives point " + print_angle(angle_in(answer.findings, "included_angle")) + ", relief " +
         print_angle(angle_in(answer.findings, "lip_relief"));
}

struct Wedge {
  std::string title;
  Angle tilt{};
  std::string thick_end; // where it belongs
};

/// One hold, on a sheet of its own.
struct RestSheet {
  std::string name;  // FENCE, WEDGE, FLAT
  std::string with;  // what it is, in a few words
  std::string facet; // FIRST FACET; empty where there is one
  Angle swing{};     // drill to disk; of a fence in the plane of the table
  bool fence = false;
  std::vector<std::string> numbers = {};
  std::vector<Wedge> wedges = {};
  Angle roll{};
  std::string says = {};
};

std::string named(const char* what, Angle angle) { return std::string(what) + " " + print_angle(angle); }

constexpr const char* flute_up = "Shank to the left, flute up, the lip to be ground uppermost";

// --- Which sheets there are ---

std::string facet_name(const Values& facets, std::size_t i) {
  return facets.size() < 2 ? "" : i == 0 ? "FIRST FACET" : "SECOND FACET";
}

std::string feed_of(const Members& facet, UnitSystem units) {
  if (find_measure(facet, "infeed") == nullptr) return "";
  return ". Second facet: feed it by " + print_length_with_unit(length_in(facet, "infeed"), units) +
         " from its first touch";
}

/// One sheet for both facets: the fence stays.
RestSheet fence_sheet(const Values& facets, UnitSystem units) {
  const Members& first = members_in(members_of(facets.front()), "fence");
  RestSheet sheet{"FENCE", "on a table that tilts", "", angle_in(first, "fence_angle"), true};
  sheet.numbers = {named("fence", sheet.swing), named("mitre scale", angle_in(first, "mitre_scale"))};
  for (std::size_t i = 0; i < facets.size(); ++i) {
    const Angle tilt = angle_in(members_in(members_of(facets[i]), "fence"), "table_tilt");
    const std::string which = facets.size() < 2 ? "table tilt" : i == 0 ? "1st table tilt" : "2nd table tilt";
    sheet.numbers.push_back(named(which.c_str(), tilt));
    sheet.wedges.push_back({which + " " + print_angle(tilt), tilt, "to the disk"});
  }
  sheet.says = std::string("Drill along the fence, which stays for both lips") +
               (facets.size() > 1 ? " and both facets" : "") + ". Table sloping up toward the disk. " + flute_up +
               " and level with the table" + feed_of(members_of(facets.back()), units) + ".";
  return sheet;
}

RestSheet wedge_sheet(const Values& facets, std::size_t i, UnitSystem units) {
  const Members& facet = members_of(facets[i]);
  const Members& wedge = members_in(facet, "wedge");
  RestSheet sheet{"WEDGE", "V-block on it, lip level", facet_name(facets, i), angle_in(wedge, "swing")};
  const Angle tilt = angle_in(wedge, "tilt");
  sheet.roll = angle_in(wedge, "roll");
  sheet.numbers = {named("swing", sheet.swing), named("wedge", tilt), named("roll", sheet.roll)};
  sheet.wedges = {{named("wedge", tilt), tilt, "to the disk"}};
  sheet.says = std::string("Level rest. Wedge and V-block along the line, thick end to the disk: the point higher than "
                           "the shank. ") +
               flute_up + " and truly level; end on it shows the roll" + feed_of(facet, units) + ".";
  return sheet;
}

RestSheet flat_sheet(const Values& facets, std::size_t i, UnitSystem units) {
  const Members& facet = members_of(facets[i]);
  const Members& flat = members_in(facet, "flat");
  RestSheet sheet{"FLAT", "level rest, no wedge", facet_name(facets, i), angle_in(flat, "swing")};
  sheet.roll = angle_in(flat, "roll");
  sheet.numbers = {named("swing", sheet.swing), named("roll", sheet.roll)};
  sheet.says = std::string("V-block along the line. ") + flute_up +
               "; turn the drill until that lip's outer end stands up by the roll, as drawn below" +
               feed_of(facet, units) + ".";
  return sheet;
}

/// A swing with tilt or roll that was asked about; a fence that was is the fence's sheet as it stands.
std::optional<RestSheet> sheet_as_asked(const Answer& answer) {
  const Measure* swing = input_measure(answer, "swing");
  if (swing == nullptr) return std::nullopt;
  const auto angle = [&](const char* name) {
    const Measure* measure = input_measure(answer, name);
    return measure == nullptr ? turns(0) : degrees(measure->value);
  };
  RestSheet sheet{"AS ASKED", "swing, tilt and roll", "", degrees(swing->value)};
  const Angle tilt = angle("tilt");
  sheet.roll = angle("roll");
  sheet.numbers = {named("swing", sheet.swing), named("wedge", tilt), named("roll", sheet.roll)};
  if (tilt > turns(0)) sheet.wedges = {{named("wedge", tilt), tilt, "to the disk"}};
  sheet.says = std::string("V-block along the line, ") +
               (tilt > turns(0) ? "on a wedge with its thick end to the disk. " : "no wedge. ") + flute_up +
               "; end on it shows the roll.";
  return sheet;
}

std::vector<RestSheet> rest_sheets(const Answer& answer, UnitSystem units) {
  const Values& facets = std::get<Values>(find(answer.settings, "facets")->held);
  std::vector<RestSheet> sheets;
  if (auto asked = sheet_as_asked(answer)) sheets.push_back(std::move(*asked));
  sheets.push_back(fence_sheet(facets, units));
  for (std::size_t i = 0; i < facets.size(); ++i) sheets.push_back(wedge_sheet(facets, i, units));
  for (std::size_t i = 0; i < facets.size(); ++i) sheets.push_back(flat_sheet(facets, i, units));
  return sheets;
}

// --- What a sheet has ---

constexpr Length face_at = mm(5); // from the top of the box to the line of the disk's face
constexpr Length words_width = mm(45);
constexpr Length proof_room = ruler_height + mm(4);

void draw_face(Canvas& canvas, const Box& box, const char* words) {
  const Length down = box.top + face_at;
  canvas.line({box.left, down}, {box.right(), down}, pen::heavy);
  canvas.letters({box.left, down - mm(1.6)}, words, strong);
}

/// A printer can stretch either way: a ruler across, and a length down the right edge.
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

/// Below the line of the disk's face: lines run down to the left from where the point meets the disk.
struct LinesRoom {
  Spot touch;
  Length left{};
  Length bottom{};
};

/// How far such a line runs until it meets an edge.
Length run(const LinesRoom& room, Spot start, Angle swing) {
  return std::min((room.bottom - start.down) / sine(swing), (start.right - room.left) / cosine(swing));
}

constexpr Pen lip_pen{mm(0.9)};

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

/// \param width of the round drill on the paper
void draw_end_on(Canvas& canvas, const DrillEnd& drill, Spot middle, Length width, Angle roll) {
  const EndView view(drill, middle, width / drill.diameter, roll);
  view.draw_body(canvas, pen::outline);
  const Segment lip = view.lip_a();
  const Segment other = view.lip_b();
  const Segment chisel = view.chisel();
  canvas.line(lip.from, lip.to, lip_pen);
  canvas.line(other.from, other.to, pen::outline);
  canvas.line(chisel.from, chisel.to, pen::outline);
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
  canvas.letters({foot.right, thin_end.down + mm(3.4)}, wedge.thick_end, small, {Across::right});
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

struct WordsColumn {
  Length left{};
  Length down{};
};

/// Gives where the next line would have its foot.
Length write_words(Canvas& canvas, const WordsColumn& column, const RestSheet& sheet, const std::string& gives) {
  Length down = column.down;
  Lettering name = head;
  name.height = std::min(head.height, head.height * (words_width / canvas.width_of(sheet.name, head)));
  canvas.letters({column.left, down}, sheet.name, name);
  down = write_lines(canvas, {column.left, down + mm(4.6)}, sheet.with, strong, words_width);
  if (!sheet.facet.empty()) {
    canvas.letters({column.left, down + mm(2)}, sheet.facet, number);
    down = down + mm(5);
  }
  down = down + mm(1.8);
  for (const auto& line : sheet.numbers) {
    canvas.letters({column.left, down}, line, number);
    down = down + mm(5);
  }
  down = write_lines(canvas, {column.left, down}, gives, {mm(2), Weight::bold}, words_width);
  return write_lines(canvas, {column.left, down + mm(0.6)}, sheet.says, small, words_width, 1.7);
}

void draw_wedges(Canvas& canvas, const RestSheet& sheet, Spot corner, Length base) {
  for (const auto& wedge : sheet.wedges) {
    draw_wedge(canvas, {corner, base}, wedge);
    corner.right = corner.right + base + mm(12);
  }
}

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
  const Length below = write_words(canvas, {box.right() - words_width, face + mm(14)}, sheet, gives(answer));
  if (sheet.wedges.empty()) {
    draw_end_on(canvas, drill, {box.left + mm(42), split + mm(23)}, mm(38), sheet.roll);
    canvas.letters({box.left + mm(42), split + mm(47)}, "end on, seen from the disk", small, {Across::centre});
  } else {
    const Spot middle{box.right() - words_width + mm(12), below + mm(9)};
    draw_end_on(canvas, drill, middle, mm(17), sheet.roll);
    canvas.letters({middle.right - mm(12), middle.down + mm(12.5)}, "end on, seen from the disk", small);
  }
}

void draw_rest_sheets(Canvas& canvas, const Box& box, const Document& document) {
  bool first = true;
  for (const auto& sheet : rest_sheets(document.answer, document.page.units)) {
    if (!first) canvas.add_sheet();
    first = false;
    draw_rest_sheet(canvas, box, sheet, document.answer);
  }
}

// --- A swing fixture ---

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
  const Segment lip = view.lip_a();
  const Segment other = view.lip_b();
  const Segment chisel = view.chisel();
  canvas.line(lip.from, lip.to, lip_pen);
  canvas.line(other.from, other.to, pen::outline);
  canvas.line(chisel.from, chisel.to, pen::outline);
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
  RestSheet words{"FIXTURE", "swings about a pivot", "", fixture.half};
  words.numbers = {named("face to pivot", fixture.half), named("pivot to drill", fixture.axis)};
  words.says = fixture_says;
  write_words(canvas, {words_left, box.top + face_at + words_down + mm(4)}, words, gives(answer));
  const Length each = (box.width - mm(8)) / 3.0;
  const auto third = [&](double i) { return Box{box.left + i * (each + mm(4)), top, std::min(each, mm(42)), views}; };
  draw_corner(canvas, third(0), fixture, units);
  draw_clock(canvas, third(1), fixture, drill_of(answer), units);
  draw_travel(canvas, third(2), fixture);
}

} // namespace

std::optional<CardDrawing> drawing_of_grind(const Document& document) {
  if (document.answer.settings.empty()) return std::nullopt;
  const bool swings = std::holds_alternative<Members>(find(document.answer.settings, "cone")->held);
  return CardDrawing{mm(0), true, swings ? draw_fixture : draw_rest_sheets};
}

} // namespace quillside::page
