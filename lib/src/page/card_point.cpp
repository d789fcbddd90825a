#include "card_point.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include <quillside/quantity/angle.hpp>
#include <quillside/words/print.hpp>

#include "drafting.hpp"
#include "drill_end.hpp"
#include "geometry.hpp"
#include "read_answer.hpp"
#include "scale.hpp"
#include "writing.hpp"

namespace quillside::page {

namespace {

constexpr Lettering small{mm(1.9)};
constexpr Lettering strong{mm(2.1), Weight::bold};
constexpr Lettering number{mm(2.6), Weight::bold};

constexpr Angle quarter = turns(0.25);
constexpr Angle half_turn = turns(0.5);

// --- What the answer knows ---

/// Of one figure: as read, and as wanted.
struct Figure {
  std::optional<double> read;
  std::vector<double> wanted = {}; // the one to grind for; of a point that is kept, the ends of what is kept
  std::string lip;                 // the one that is worse, A or B, where it matters
};

const Members* check_of(const Answer& answer, std::string_view item) {
  const Value* checks = find(answer.findings, "checks");
  if (checks == nullptr) return nullptr;
  for (const auto& check : std::get<Values>(checks->held))
    if (find_word(members_of(check), "item") == item) return &members_of(check);
  return nullptr;
}

/// Both ends of what is kept; nothing where it has one end only.
std::vector<double> kept(const Members* check) {
  if (check == nullptr) return {};
  const Measure* low = find_measure(*check, "want_low");
  const Measure* high = find_measure(*check, "want_high");
  if (low == nullptr || high == nullptr || low->value <= 0) return {};
  return {low->value, high->value};
}

Figure figure_of(const Answer& answer, const char* name) {
  Figure figure;
  if (const Measure* found = find_measure(answer.findings, name)) figure.read = found->value;
  const Members* check = check_of(answer, name);
  if (const Measure* set = find_measure(answer.settings, name))
    figure.wanted = {set->value};
  else
    figure.wanted = kept(check);
  if (check != nullptr) figure.lip = find_word(*check, "lip");
  return figure;
}

struct Halves {
  double a = 0;
  double b = 0;
};

/// Everything that is drawn, in millimetres and degrees as the record has it.
struct PointRead {
  Length diameter{};
  Figure included;
  std::optional<Halves> halves;
  Figure height; // of the lips
  Figure chisel; // obtuse
  Figure relief;
  Figure web;
  Figure heel;
  Length taken_web{};
  Angle land{};
};

PointRead read_point(const Answer& answer) {
  PointRead point;
  point.diameter = mm(input_measure(answer, "size")->value);
  point.included = figure_of(answer, "included_angle");
  if (const Value* halves = find(answer.findings, "half_angles")) {
    const auto& pair = std::get<Values>(halves->held);
    point.halves = Halves{std::get<Measure>(pair[0].held).value, std::get<Measure>(pair[1].held).value};
  }
  point.height = figure_of(answer, "lip_height_difference");
  point.chisel = figure_of(answer, "chisel_edge_angle");
  point.relief = figure_of(answer, "lip_relief");
  point.web = figure_of(answer, "web");
  if (const Members* heel = check_of(answer, "heel_clear_angle"))
    if (const Measure* clear = find_measure(*heel, "value")) point.heel.read = clear->value;
  const Measure* taken = input_measure(answer, "web");
  point.taken_web = mm(point.web.read     ? *point.web.read
                       : taken == nullptr ? 0.15 * in_mm(point.diameter)
                                          : taken->value);
  point.land = degrees(input_measure(answer, "land")->value);
  return point;
}

std::string angle(double value) { return print_angle(degrees(value)); }

// --- Where the views stand ---

struct View {
  Box box; // of the picture, below its title
  std::string title;
};

void draw_title(Canvas& canvas, const View& view) {
  canvas.letters({view.box.left, view.box.top - mm(1.6)}, view.title, strong);
}

/// What was read is heavy; what was not, thin.
const Pen& pen_of(bool read) { return read ? pen::heavy : pen::thin; }

// --- The end ---

/// What a usual point has, to draw one whose chisel edge nobody read.
constexpr Angle usual_chisel = degrees(55);

void draw_land(Canvas& canvas, const EndView& view, const PointRead& point) {
  // Behind lip A along the margin: where it clears its heel, and where it rubs.
  const Length radius = view.radius() + mm(1.6);
  const Angle corner = view.corner();
  const Angle clear = std::min(degrees(*point.heel.read), point.land);
  canvas.arc(view.middle(), radius, corner - clear, corner, pen::thin);
  canvas.line(from(view.middle(), view.radius(), corner - clear), from(view.middle(), radius + mm(1.2), corner - clear),
              pen::thin);
  if (clear < point.land) canvas.arc(view.middle(), radius, corner - point.land, corner - clear, {mm(1.2)});
}

void draw_end(Canvas& canvas, const View& at, const PointRead& point, double times) {
  draw_title(canvas, at);
  const bool chisel_read = point.chisel.read.has_value();
  const Angle acute = chisel_read ? half_turn - degrees(*point.chisel.read) : usual_chisel;
  const Spot middle{at.box.left + 0.5 * at.box.width, at.box.top + 0.5 * at.box.height};
  const EndView view({point.diameter, point.taken_web, acute, point.land}, middle, times);
  view.draw_body(canvas, pen::thin);
  const Pen& lips = pen_of(point.web.read.has_value());
  const Segment a = view.lip_a();
  const Segment b = view.lip_b();
  canvas.line(a.from, a.to, lips);
  canvas.line(b.from, b.to, lips);
  const Segment edge = view.chisel();
  canvas.line(edge.from, edge.to, pen_of(chisel_read));
  for (const double obtuse : point.chisel.wanted) {
    const Segment wanted = view.chisel(half_turn - degrees(obtuse));
    const Angle along = direction_of(wanted.from, wanted.to);
    canvas.line(from(wanted.from, mm(3), along + half_turn), from(wanted.to, mm(3), along), pen::wanted);
  }
  if (chisel_read) {
    const Length radius = std::max(mm(4.5), 2.2 * view.half_web());
    draw_angle(canvas, a.from, radius, -degrees(*point.chisel.read), degrees(0));
    const Spot at_arc = from(a.from, radius + mm(4.2), -0.5 * degrees(*point.chisel.read));
    on_white(canvas, at_arc, angle(*point.chisel.read), number, {Across::centre, Along::middle});
  }
  canvas.letters({a.to.right + mm(1.4), a.to.down - mm(1.2)}, "A", number);
  canvas.letters({b.to.right - mm(1.4), b.to.down + mm(3.6)}, "B", number, {Across::right});
  if (point.heel.read) draw_land(canvas, view, point);
}

// --- The side ---

/// What half angle a lip is drawn with: as read, else as wanted, else that of a usual drill.
double half_of(const PointRead& point, bool is_a) {
  if (point.halves) return is_a ? point.halves->a : point.halves->b;
  constexpr double usual = 118;
  return 0.5 * point.included.read.value_or(point.included.wanted.empty() ? usual : point.included.wanted.front());
}

/// Of the sharpest lip that is drawn, outer corner to axis: not on the paper, but of the drill.
Length point_height(const PointRead& point) {
  double sharpest = std::min(half_of(point, true), half_of(point, false));
  for (const double wanted : point.included.wanted) sharpest = std::min(sharpest, 0.5 * wanted);
  return 0.5 * point.diameter / tangent(degrees(sharpest));
}

/// One lip in the side view, from its outer corner up to where it would meet the axis.
struct SideLip {
  Spot corner;
  Angle direction{}; // from the corner inward
  Length span{};     // from corner to axis, across
};

Spot inward(const SideLip& lip, double share) {
  return from(lip.corner, (share * lip.span) / std::abs(cosine(lip.direction)), lip.direction);
}

struct SideFrame {
  Length axis{};    // from the left edge of the sheet
  Length top{};     // of the picture, from the top of the sheet
  Length corners{}; // how far down the outer corners stand
  Length radius{};
};

SideLip lip_of(const SideFrame& frame, double half, bool is_a, Length raised) {
  const Angle rises = quarter - degrees(half);
  return {{frame.axis + (is_a ? 1.0 : -1.0) * frame.radius, frame.corners - raised},
          is_a ? half_turn - rises : rises,
          frame.radius};
}

struct Raised {
  Length a{};
  Length b{};
  double times = 1; // that a difference of heights is drawn
};

/// Large enough to be seen, whatever the picture's own scale is.
Raised raised_of(const PointRead& point, double times) {
  Raised raised;
  raised.times = times;
  if (!point.height.read || *point.height.read <= 0) return raised;
  raised.times = std::max(times, times_drawn({mm(*point.height.read), mm(4.5)}));
  const Length by = raised.times * mm(*point.height.read);
  (point.height.lip == "B" ? raised.b : raised.a) = by;
  return raised;
}

void draw_body(Canvas& canvas, const SideFrame& frame, const SideLip& a, const SideLip& b, Length bottom) {
  canvas.path({a.corner, {a.corner.right, bottom}}, pen::thin);
  canvas.path({b.corner, {b.corner.right, bottom}}, pen::thin);
  canvas.line({frame.axis, frame.corners - 0.75 * frame.radius}, {frame.axis, bottom}, pen::axis);
}

/// Their figures stand above the lips, that of the whole point within it.
void draw_point_angles(Canvas& canvas, const SideFrame& frame, const PointRead& point, const SideLip& a,
                       const SideLip& b) {
  if (point.halves) {
    const Length down = frame.top + number.height;
    canvas.letters({frame.axis + 0.5 * frame.radius, down}, angle(point.halves->a), number);
    canvas.letters({frame.axis - 0.5 * frame.radius, down}, angle(point.halves->b), number, {Across::right});
  }
  if (!point.included.read) return;
  const Spot apex = crossing(a.corner, a.direction, b.corner, b.direction);
  const Length radius = 0.8 * frame.radius;
  draw_angle(canvas, apex, radius, b.direction + half_turn, a.direction + half_turn);
  on_white(canvas, {frame.axis, apex.down + radius}, angle(*point.included.read), number,
           {Across::centre, Along::middle});
}

void draw_heights(Canvas& canvas, const SideFrame& frame, const PointRead& point, const SideLip& a, const SideLip& b) {
  if (!point.height.read) return;
  const Length edge = frame.axis + frame.radius + mm(4.5);
  const Length out = edge + mm(1);
  canvas.line({a.corner.right + mm(0.8), a.corner.down}, {out, a.corner.down}, pen::thin);
  canvas.line({b.corner.right + mm(0.8), b.corner.down}, {out, b.corner.down}, pen::thin);
  if (a.corner.down != b.corner.down) draw_dimension(canvas, {edge, a.corner.down}, {edge, b.corner.down});
}

void draw_side(Canvas& canvas, const View& at, const PointRead& point, double times) {
  draw_title(canvas, at);
  const Raised raised = raised_of(point, times);
  const Length radius = 0.5 * times * point.diameter;
  const Length highest = times * point_height(point) + std::max(raised.a, raised.b);
  const SideFrame frame{at.box.left + 0.5 * at.box.width - mm(1), at.box.top, at.box.top + mm(1) + highest, radius};
  const SideLip a = lip_of(frame, half_of(point, true), true, raised.a);
  const SideLip b = lip_of(frame, half_of(point, false), false, raised.b);
  draw_body(canvas, frame, a, b, std::min(at.box.bottom(), frame.corners + mm(16)));
  // Up to the chisel edge, which the web makes.
  const double inner = 1 - 0.7 * (point.taken_web / point.diameter);
  const Pen& lips = pen_of(point.included.read.has_value());
  canvas.line(a.corner, inward(a, inner), lips);
  canvas.line(b.corner, inward(b, inner), lips);
  canvas.line(inward(a, inner), inward(b, inner), pen::thin);
  for (const double included : point.included.wanted)
    for (const bool is_a : {true, false}) {
      const SideLip wanted = lip_of(frame, 0.5 * included, is_a, mm(0));
      canvas.line(wanted.corner, inward(wanted, 1), pen::wanted);
    }
  draw_point_angles(canvas, frame, point, a, b);
  draw_heights(canvas, frame, point, a, b);
  canvas.letters({frame.axis + radius + mm(1.2), frame.corners + mm(7)}, "A", number);
  canvas.letters({frame.axis - radius - mm(1.2), frame.corners + mm(7)}, "B", number, {Across::right});
}

// --- The flank at a corner ---

void draw_corner(Canvas& canvas, const View& at, const PointRead& point) {
  draw_title(canvas, at);
  const Spot corner{at.box.right() - mm(2), at.box.top + mm(6)};
  const Length length = at.box.width - mm(4);
  const auto flank = [&](double relief) {
    return from(corner, length / cosine(degrees(relief)), half_turn + degrees(relief));
  };
  canvas.line(corner, from(corner, length + mm(1.5), half_turn), pen::thin);
  canvas.line(corner, {corner.right, at.box.bottom() - mm(6)}, pen::thin);
  for (const double wanted : point.relief.wanted) canvas.line(corner, flank(wanted), pen::wanted);
  if (!point.relief.read) return;
  canvas.line(corner, flank(*point.relief.read), pen::heavy);
  const Length radius = 0.72 * length;
  draw_angle(canvas, corner, radius, half_turn, half_turn + degrees(*point.relief.read));
  canvas.letters({corner.right - radius, corner.down - mm(1.2)}, angle(*point.relief.read), number, {Across::centre});
}

// --- What stands below ---

struct Told {
  std::vector<std::string> end;
  std::vector<std::string> side;
  std::vector<std::string> corner;
};

std::string read_and_wanted(const std::string& what, const Figure& figure, const std::string& not_read = " not read") {
  std::string line = what + (figure.read ? " " + angle(*figure.read) : not_read);
  if (!figure.wanted.empty()) line += ", want " + angle(figure.wanted.front());
  if (figure.wanted.size() > 1) line += " to " + angle(figure.wanted.back());
  return line;
}

Told told_of(const PointRead& point, double times, UnitSystem units) {
  Told told;
  told.end.push_back(read_and_wanted("chisel edge", point.chisel));
  told.end.push_back(point.web.read ? "web " + print_length(mm(*point.web.read), units)
                                    : "web not read, drawn as " + print_length(point.taken_web, units));
  told.side.push_back(read_and_wanted("point", point.included));
  told.side.push_back(point.halves ? "half angles A " + angle(point.halves->a) + ", B " + angle(point.halves->b)
                                   : "half angles not read");
  if (!point.height.read) {
    told.side.push_back("lip heights not read");
  } else if (*point.height.read <= 0) {
    told.side.push_back("lip heights alike");
  } else {
    const Raised raised = raised_of(point, times);
    const bool known = point.height.lip == "A" || point.height.lip == "B";
    told.side.push_back("lip " + (known ? point.height.lip : std::string("A or B")) + " higher by " +
                        print_length(mm(*point.height.read), units) + ",");
    told.side.push_back("drawn " + shortest_decimal(raised.times) + " times its size");
  }
  told.corner.push_back(read_and_wanted("relief", point.relief));
  if (point.heel.read && degrees(*point.heel.read) < point.land) told.end.push_back("the black arc behind lip A rubs");
  if (point.heel.read)
    told.corner.push_back("heel clear to " + angle(*point.heel.read) + " of " + print_angle(point.land));
  else
    told.corner.push_back("heel not known");
  return told;
}

void write_told(Canvas& canvas, const Box& box, const std::vector<std::string>& lines) {
  Length down = box.top;
  for (const auto& line : lines) down = write_lines(canvas, {box.left, down}, line, small, box.width, 1.6);
}

constexpr Length title_height = mm(5);
constexpr Length picture_height = mm(41);
constexpr Length words_height = mm(16);
constexpr Length key_height = mm(8);

/// What each pen means, and how large all is drawn.
void draw_key(Canvas& canvas, const Box& box, double times) {
  struct Sample {
    const Pen& pen;
    const char* words;
  };
  Spot at{box.left, box.top + mm(2)};
  for (const Sample& sample : {Sample{pen::heavy, "as read"}, Sample{pen::wanted, "as wanted"},
                               Sample{pen::thin, "not read: as usual drills are"}}) {
    canvas.line({at.right, at.down - mm(0.9)}, {at.right + mm(9), at.down - mm(0.9)}, sample.pen);
    canvas.letters({at.right + mm(10.5), at.down}, sample.words, small);
    at.right = at.right + mm(14.5) + canvas.width_of(sample.words, small);
  }
  canvas.letters({box.left, at.down + mm(3.4)},
                 times == 1 ? "End and side true to size."
                            : "End and side drawn " + shortest_decimal(times) + " times their size. Angles are true.",
                 small);
}

void draw_point(Canvas& canvas, const Box& box, const Document& document) {
  const PointRead point = read_point(document.answer);
  const Length gap = mm(3);
  const Length wide = 0.365 * (box.width - 2.0 * gap);
  const Length narrow = box.width - 2.0 * (wide + gap);
  const Length top = box.top + title_height;
  const double times = std::min(times_drawn({point.diameter, wide - mm(8.5)}),
                                times_drawn({point_height(point), picture_height - mm(14)}));
  const Box end{box.left, top, wide, picture_height};
  const Box side{end.right() + gap, top, wide, picture_height};
  const Box corner{side.right() + gap, top, narrow, picture_height};
  draw_end(canvas, {end, "END, from the point"}, point, times);
  draw_side(canvas, {side, "SIDE"}, point, times);
  draw_corner(canvas, {corner, "FLANK at corner"}, point);
  const Told told = told_of(point, times, document.page.units);
  const auto below = [&](const Box& view) { return Box{view.left, view.bottom() + mm(3), view.width, words_height}; };
  write_told(canvas, below(end), told.end);
  write_told(canvas, below(side), told.side);
  write_told(canvas, below(corner), told.corner);
  draw_key(canvas, {box.left, box.bottom() - key_height, box.width, key_height}, times);
}

} // namespace

std::optional<CardDrawing> drawing_of_point(const Document& document) {
  if (input_measure(document.answer, "size") == nullptr || input_measure(document.answer, "land") == nullptr)
    return std::nullopt;
  return CardDrawing{title_height + picture_height + words_height + key_height, false, draw_point};
}

} // namespace quillside::page
