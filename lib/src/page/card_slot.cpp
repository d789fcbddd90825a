#include "card_slot.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include <quillside/words/print.hpp>

#include "drafting.hpp"
#include "geometry.hpp"
#include "scale.hpp"
#include "slot_seen.hpp"
#include "writing.hpp"

namespace quillside::page {

namespace {

constexpr Lettering title{mm(3), Weight::bold};
constexpr Lettering words{mm(2.2)};
constexpr Lettering figures{mm(2.5), Weight::bold};
constexpr Pen bold{mm(0.5)};
constexpr Pen plain{mm(0.25)};
constexpr Pen thin{mm(0.18)};
constexpr Pen hidden{mm(0.25), 0, true};
constexpr Length line_height = mm(3.6);
constexpr Length to_figures = mm(22); // at the right of a view, for its widths

/// The plate as one view shows it.
struct Plate {
  Box box;
  Spot middle; // of the slot
};

/// Letters on the two ends of the plate, so that it is seen how it is turned.
struct Ends {
  const char* left;
  const char* right;
};

class SlotSheet {
public:
  SlotSheet(Canvas& canvas, const Box& box, const Document& document, const SlotSeen& slot)
      : canvas_(canvas), box_(box), units_(document.page.units), slot_(slot), down_(box.top) {}

  void draw() {
    choose_scales();
    head();
    if (opens_the_back()) {
      from_the_back();
      turn_over();
    }
    from_the_front();
    const Length below = down_;
    Length foot = below + mm(12);
    if (slot_.thick)
      foot = section();
    else
      note({box_.left, below + mm(6), left_part() - mm(6), mm(20)},
           "No section: the thickness of the plate was not said.");
    down_ = below;
    foot = std::max(foot, offsets());
    note({box_.left, foot + mm(2.5), box_.width, mm(0)}, about_offsets());
  }

private:
  [[nodiscard]] bool opens_the_back() const { return slot_.pocket && !slot_.pocket->mill.empty(); }
  /// Without its unit, which the head of the sheet names once.
  [[nodiscard]] std::string print(Length length) const {
    std::string text = print_length(length, units_);
    return text.substr(0, text.find(' '));
  }
  [[nodiscard]] Length left_part() const { return mm(71); } // of the lower half: the section
  [[nodiscard]] Length widest() const {
    return std::max(mm(slot_.width.value), slot_.pocket ? slot_.pocket->width : mm(0));
  }

  void choose_scales() {
    std::vector<Fitting> views{{widest(), opens_the_back() ? mm(20) : mm(32)}};
    const Length room = box_.width - to_figures - mm(16);
    if (slot_.length) views.push_back({mm(slot_.length->value), room});
    if (slot_.pocket && slot_.pocket->half) views.push_back({2.0 * *slot_.pocket->half, room});
    view_ = largest_scale(views);
    section_ = largest_scale({{widest(), mm(22)}, {slot_.thick.value_or(mm(0)), mm(28)}});
    cutter_ = largest_scale({{slot_.cut, mm(14)}});
    // The offset is shown as the cutter is, unless it could not be seen.
    const bool seen = cutter_.drawn(slot_.side_offset) >= mm(2.5);
    offset_ = seen ? cutter_ : largest_scale({{slot_.side_offset, mm(6)}});
  }

  /// Lines of words in a box; gives where the next would begin.
  Length note(const Box& box, const std::string& text, const Lettering& lettering = words) {
    Length foot = box.top + lettering.height;
    for (const auto& line : canvas_.broken(text, lettering, box.width)) {
      canvas_.letters({box.left, foot}, line, lettering);
      foot = foot + 1.6 * lettering.height;
    }
    return foot - lettering.height;
  }

  void head() {
    std::string scales = units_ == UnitSystem::metric ? "All in mm. Views " : "All in inches. Views ";
    scales += view_.words();
    if (slot_.thick) scales += ", section " + section_.words();
    down_ =
        note({box_.left, down_, box_.width, mm(0)},
             scales + "; the plate's own edges stand anywhere. The figures count: measure nothing off this sheet.") +
        mm(2.5);
  }

  /// Title, jaw and plate; X and Y of the machine, the marks of the plate's ends.
  Plate view(const std::string& face, const std::string& about, const Ends& ends) {
    canvas_.letters({box_.left, down_ + title.height}, face, title);
    const Length after = canvas_.width_of(face, title) + mm(4);
    const Length foot =
        note({box_.left + after, down_ + title.height - words.height, box_.width - after, mm(0)}, about);
    down_ = std::max(down_ + mm(5), foot);
    const Length width = box_.width - to_figures;
    jaw({box_.left, down_, width, mm(4)});
    const Length height = std::max(view_.drawn(widest()) + mm(12), mm(22));
    const Plate plate{{box_.left, down_ + mm(4), width, height},
                      {box_.left + 0.5 * width, down_ + mm(4) + 0.5 * height}};
    canvas_.line({plate.box.left, plate.box.top}, {plate.box.right(), plate.box.top}, bold);
    canvas_.line({plate.box.left, plate.box.bottom()}, {plate.box.right(), plate.box.bottom()}, bold);
    broken_edge(canvas_, {plate.box.left, plate.box.top}, height, plain);
    broken_edge(canvas_, {plate.box.right(), plate.box.top}, height, plain);
    canvas_.line({plate.box.left, plate.middle.down}, {plate.box.right(), plate.middle.down}, {thin.width, 0, true});
    canvas_.line({plate.middle.right, plate.box.top}, {plate.middle.right, plate.box.bottom()}, {thin.width, 0, true});
    if (opens_the_back()) {
      end_mark({plate.box.left + mm(4), plate.box.bottom() - mm(3.3)}, ends.left);
      end_mark({plate.box.right() - mm(4), plate.box.bottom() - mm(3.3)}, ends.right);
    }
    const Spot axis{plate.box.right() - mm(14), plate.box.top + mm(3.3)};
    draw_arrow(canvas_, axis, {axis.right + mm(7), axis.down}, plain);
    canvas_.letters({axis.right + mm(8), axis.down}, "+X", words, {Across::left, Along::middle});
    down_ = plate.box.bottom();
    return plate;
  }

  void jaw(const Box& box) {
    const std::string name = "fixed jaw";
    const Length half = 0.5 * canvas_.width_of(name, figures) + mm(2);
    const Length middle = box.left + 0.5 * box.width;
    hatch(canvas_, {box.left, box.top, middle - half - box.left, box.height}, thin, mm(1.1));
    hatch(canvas_, {middle + half, box.top, box.right() - middle - half, box.height}, thin, mm(1.1));
    canvas_.frame(box, plain);
    canvas_.letters({middle, box.top + 0.5 * box.height}, name, figures, {Across::centre, Along::middle});
  }

  void end_mark(Spot at, const char* letter) {
    canvas_.circle(at, mm(2.2), plain);
    canvas_.letters(at, letter, figures, {Across::centre, Along::middle});
  }

  /// The box that a length and a width of the work take about a middle.
  [[nodiscard]] Box about(Spot middle, Length half_length, Length width) const {
    const Length half = view_.drawn(half_length);
    const Length high = view_.drawn(width);
    return {middle.right - half, middle.down - 0.5 * high, 2.0 * half, high};
  }

  /// Where in X, under the plate; 0 is the middle of the slot.
  void ordinates(const Plate& plate, std::vector<Length> at, Length from, const char* whose) {
    aside(plate, plate.box.bottom() + mm(2.2), whose);
    const auto near_middle = [](Length one) { return one < mm(1e-6) && one > mm(-1e-6); };
    if (std::none_of(at.begin(), at.end(), near_middle)) at.push_back(mm(0));
    std::sort(at.begin(), at.end());
    Length widest_text{};
    Length nearest = plate.box.width;
    for (std::size_t i = 0; i < at.size(); ++i) {
      widest_text = std::max(widest_text, canvas_.width_of(x_of(at[i]), figures));
      if (i > 0) nearest = std::min(nearest, view_.drawn(at[i] - at[i - 1]));
    }
    const bool turned = nearest < widest_text + mm(1.5);
    const Length least = turned ? 1.6 * figures.height : widest_text + mm(1.5);
    Length next = plate.box.left;
    for (const Length one : at) {
      const Length right = plate.middle.right + view_.drawn(one);
      canvas_.line({right, from}, {right, plate.box.bottom() + mm(1.5)}, thin);
      if (right < next) continue; // no room to letter it: its place is in the steps
      next = right + least;
      if (turned)
        canvas_.letters({right, plate.box.bottom() + mm(2.2)}, x_of(one), figures,
                        {Across::right, Along::middle, degrees(90)});
      else
        canvas_.letters({right, plate.box.bottom() + mm(2.2)}, x_of(one), figures, {Across::centre, Along::top});
    }
    down_ = plate.box.bottom() + mm(2.2) + (turned ? widest_text : figures.height) + mm(1);
  }

  [[nodiscard]] std::string x_of(Length at) const { return at < mm(1e-6) && at > mm(-1e-6) ? "X 0" : print(at); }

  /// A width at the right of a view.
  void width_figure(const Plate& plate, Length width, Length right_end, const std::string& text) {
    const Length half = 0.5 * view_.drawn(width);
    const Length at = plate.box.right() + mm(3.5);
    for (const double side : {-1.0, 1.0})
      canvas_.line({right_end, plate.middle.down + side * half}, {at + mm(1), plate.middle.down + side * half}, thin);
    draw_dimension(canvas_, {at, plate.middle.down - half}, {at, plate.middle.down + half}, thin);
    canvas_.letters({at + mm(2), plate.middle.down}, text, figures, {Across::left, Along::middle});
  }

  void pocket_outline(const Plate& plate, const PocketSeen& pocket, const Pen& pen) {
    if (pocket.half) {
      canvas_.outline(rounded(about(plate.middle, *pocket.half, pocket.width), 0.5 * view_.drawn(pocket.tool)), pen);
      return;
    }
    along_the_plate(plate, pocket.width, pen);
  }

  /// Both sides of what has no known ends.
  void along_the_plate(const Plate& plate, Length width, const Pen& pen) {
    const Length half = 0.5 * view_.drawn(width);
    for (const double side : {-1.0, 1.0})
      canvas_.line({plate.box.left, plate.middle.down + side * half},
                   {plate.box.right(), plate.middle.down + side * half}, pen);
  }

  void cross(Spot at) {
    constexpr Length arm = mm(1.6);
    canvas_.line({at.right - arm, at.down}, {at.right + arm, at.down}, thin);
    canvas_.line({at.right, at.down - arm}, {at.right, at.down + arm}, thin);
  }

  void from_the_back() {
    const PocketSeen& pocket = *slot_.pocket;
    std::string about_it = pocket.mill + ", pocket " + print(pocket.depth) + " deep";
    if (pocket.holes) {
      const auto count = pocket.holes->centres.size();
      about_it = (count == 0 ? "holes" : std::to_string(count) + (count == 1 ? " hole" : " holes")) + ", " +
                 pocket.holes->drill + ", then " + about_it;
    }
    const Plate plate = view("BACK UP", about_it, {"A", "B"});
    pocket_outline(plate, pocket, bold);
    std::vector<Length> centres;
    if (pocket.holes) centres = pocket.holes->centres;
    for (const Length centre : centres) {
      const Spot at{plate.middle.right + view_.drawn(centre), plate.middle.down};
      canvas_.circle(at, 0.5 * view_.drawn(pocket.tool), plain);
      cross(at);
    }
    width_figure(plate, pocket.width, pocket.half ? plate.middle.right + view_.drawn(*pocket.half) : plate.box.right(),
                 print(pocket.width));
    if (centres.empty())
      no_length(plate);
    else
      ordinates(plate, centres, plate.middle.down + mm(1.6), "drill at");
    down_ = down_ + mm(2);
  }

  void no_length(const Plate& plate) {
    down_ = note({plate.box.left, plate.box.bottom() + mm(1.5), plate.box.width, mm(0)},
                 "How long it is, and where it ends, is not known: neither the part's width nor a length was said.");
  }

  /// End for end, about an axis that stands upright in the views.
  void turn_over() {
    draw_turning_arrow(canvas_, {box_.left + mm(6.5), down_ + mm(3.6)}, mm(3.4), bold);
    const Length foot = note(
        {box_.left + mm(14), down_ + mm(0.8), box_.width - mm(14), mm(0)},
        "Turn the plate end for end: the same edge stays at the fixed jaw. Ends A and B change places, so X mirrors.",
        {mm(2.4), Weight::bold});
    down_ = std::max(foot, down_ + mm(7)) + mm(2.5);
  }

  void from_the_front() {
    std::string about_it = slot_.mill.empty() ? "nothing more to mill" : slot_.mill;
    if (slot_.first_cut_depth) about_it += ", " + print(*slot_.first_cut_depth) + " deep";
    if (slot_.length) about_it += slot_.filed ? ", corners filed" : ", round ends";
    const Plate plate = view("FRONT UP", about_it, {"B", "A"});
    if (opens_the_back()) pocket_outline(plate, *slot_.pocket, hidden);
    const Length width = mm(slot_.width.value);
    const auto band = slot_.width.low && *slot_.width.low < *slot_.width.high;
    Length right_end = plate.box.right();
    if (slot_.length) {
      const Box outline = about(plate.middle, 0.5 * mm(slot_.length->value), width);
      canvas_.outline(slot_.filed ? rounded(outline, mm(0)) : rounded(outline, 0.5 * view_.drawn(slot_.cut)), bold);
      if (slot_.filed) canvas_.outline(rounded(outline, 0.5 * view_.drawn(slot_.cut)), thin);
      right_end = outline.right();
    } else {
      along_the_plate(plate, width, bold);
    }
    width_figure(plate, width, right_end, print(width));
    if (band) {
      const Length left = plate.box.right() + mm(5.5);
      canvas_.letters({left, plate.middle.down + mm(4.6)}, print(mm(*slot_.width.low)), words,
                      {Across::left, Along::middle});
      canvas_.letters({left, plate.middle.down + mm(8)}, "to " + print(mm(*slot_.width.high)), words,
                      {Across::left, Along::middle});
    }
    if (!slot_.length) {
      no_length(plate);
    } else {
      std::vector<Length> run;
      if (slot_.half_run) run = {-*slot_.half_run, *slot_.half_run};
      for (const Length end : run) cross({plate.middle.right + view_.drawn(end), plate.middle.down});
      ordinates(plate, run, plate.middle.down + mm(1.6), run.empty() ? "" : "cutter at");
      slot_length(plate);
    }
    down_ = down_ + mm(3.5);
  }

  void slot_length(const Plate& plate) {
    const Length half = 0.5 * view_.drawn(mm(slot_.length->value));
    const Length at = down_ + mm(1.5);
    for (const double side : {-1.0, 1.0}) {
      const Length right = plate.middle.right + side * half;
      canvas_.line({right, at - mm(1.6)}, {right, at + mm(1)}, thin);
    }
    draw_dimension(canvas_, {plate.middle.right - half, at}, {plate.middle.right + half, at}, thin);
    canvas_.letters({plate.middle.right, at + mm(1.6)}, print(mm(slot_.length->value)), figures,
                    {Across::centre, Along::top});
    aside(plate, at + mm(1.6), "slot");
    down_ = at + mm(1.6) + figures.height;
  }

  /// What figures under a view are of, at the right of them.
  void aside(const Plate& plate, Length top, const std::string& what) {
    canvas_.letters({plate.box.right() + mm(3.5), top}, what, words, {Across::left, Along::top});
  }

  /// The plate cut across the middle of the slot, its back up as it is opened. Gives how far down it reaches.
  Length section() {
    canvas_.letters({box_.left, down_ + title.height}, "Across the slot, back up", title);
    const bool drilled = opens_the_back() && slot_.pocket->holes.has_value();
    const Length thick = section_.drawn(*slot_.thick);
    const Length width = section_.drawn(widest()) + mm(14);
    const Box plate{box_.left + mm(17), down_ + mm(drilled ? 14 : 9), width, thick};
    const Length middle = plate.left + 0.5 * width;
    const Length slot_half = 0.5 * section_.drawn(mm(slot_.width.value));
    const Length floor = slot_.pocket ? plate.top + section_.drawn(slot_.pocket->depth) : plate.top;
    const Length pocket_half = slot_.pocket ? 0.5 * section_.drawn(slot_.pocket->width) : slot_half;
    for (const double side : {-1.0, 1.0}) {
      const Length outer = middle + side * 0.5 * width;
      const std::vector<Spot> metal{{outer, plate.top},
                                    {middle + side * pocket_half, plate.top},
                                    {middle + side * pocket_half, floor},
                                    {middle + side * slot_half, floor},
                                    {middle + side * slot_half, plate.bottom()},
                                    {outer, plate.bottom()}};
      canvas_.path(metal, bold);
      broken_edge(canvas_, {outer, plate.top}, thick, plain);
      const auto between = [&](Length inner, Length top, Length bottom) {
        hatch(canvas_, {std::min(inner, outer), top, std::max(inner, outer) - std::min(inner, outer), bottom - top},
              thin);
      };
      between(middle + side * pocket_half, plate.top, floor);
      between(middle + side * slot_half, floor, plate.bottom());
    }
    if (drilled) drill(middle, plate.top, *slot_.pocket->holes);
    canvas_.letters({middle, plate.bottom() + mm(1.2)}, print(mm(slot_.width.value)), figures,
                    {Across::centre, Along::top});
    section_heights(plate, floor);
    return std::max(plate.bottom() + mm(1.2) + figures.height, plate.top + 0.5 * plate.height + mm(5.5));
  }

  void drill(Length middle, Length back, const HolesSeen& holes) {
    if (!holes.stop || !holes.point) return;
    const Length half = 0.5 * section_.drawn(slot_.pocket->tool);
    const Length tip = back + section_.drawn(*holes.stop);
    const Length corner = back + section_.drawn(*holes.stop - *holes.point);
    const Length top = std::min(back - mm(5), corner);
    canvas_.path(
        {{middle - half, top}, {middle - half, corner}, {middle, tip}, {middle + half, corner}, {middle + half, top}},
        hidden);
    canvas_.letters({middle, top - mm(1)}, holes.drill, words, {Across::centre});
  }

  void section_heights(const Box& plate, Length floor) {
    const auto ends = [&](Length from, Length to, Length down) { canvas_.line({from, down}, {to, down}, thin); };
    const Length left = plate.left - mm(3);
    ends(plate.left, left - mm(1), plate.top);
    ends(plate.left, left - mm(1), plate.bottom());
    draw_dimension(canvas_, {left, plate.top}, {left, plate.bottom()}, thin);
    canvas_.letters({left - mm(1.5), plate.top + 0.5 * plate.height}, print(*slot_.thick), figures,
                    {Across::right, Along::middle});
    const Length middle = plate.top + 0.5 * plate.height;
    canvas_.letters({left - mm(1.5), std::min(plate.top, middle - mm(4))}, "back", words,
                    {Across::right, Along::middle});
    canvas_.letters({left - mm(1.5), std::max(plate.bottom(), middle + mm(4))}, "front", words,
                    {Across::right, Along::middle});
    if (!slot_.pocket) return;
    const Length right = plate.right() + mm(3);
    for (const Length at : {plate.top, floor, plate.bottom()}) ends(plate.right(), right + mm(1), at);
    draw_dimension(canvas_, {right, plate.top}, {right, floor}, thin);
    draw_dimension(canvas_, {right, floor}, {right, plate.bottom()}, thin);
    // The two labels stand apart, however thin what they name is.
    constexpr Length apart = mm(7);
    Length upper = 0.5 * (plate.top + floor);
    Length lower = 0.5 * (floor + plate.bottom());
    if (const Length lack = apart - (lower - upper); lack > mm(0)) {
      upper = upper - 0.5 * lack;
      lower = lower + 0.5 * lack;
    }
    label({right + mm(1.5), upper}, opens_the_back() ? print(slot_.pocket->depth) : "",
          opens_the_back() ? "STOP, tip" : "pocket");
    label({right + mm(1.5), lower}, print(*slot_.leave), "left");
  }

  /// A figure and what it is, about a height.
  void label(Spot at, const std::string& figure, const std::string& what) {
    if (!figure.empty()) canvas_.letters({at.right, at.down - mm(0.4)}, figure, figures);
    canvas_.letters({at.right, at.down + mm(0.8)}, what, words, {Across::left, Along::top});
  }

  /// Seen from the front: how far the table goes each side, and which way the cutter is fed along each wall.
  Length offsets() {
    const Length left = box_.left + left_part();
    canvas_.letters({left, down_ + title.height}, "Offset, front up", title);
    const Length radius = 0.5 * cutter_.drawn(slot_.cut);
    const Length offset = offset_.drawn(slot_.side_offset);
    const Length middle = down_ + mm(9) + offset + radius;
    const Length right = box_.right() - mm(15);
    for (const double side : {-1.0, 1.0}) {
      canvas_.line({left, middle + side * (radius + offset)}, {right + mm(3), middle + side * (radius + offset)}, bold);
      if (offset > mm(0)) {
        canvas_.line({left, middle + side * radius}, {right + mm(3), middle + side * radius}, hidden);
        draw_dimension(canvas_, {right + mm(2), middle + side * radius},
                       {right + mm(2), middle + side * (radius + offset)}, thin);
        canvas_.letters({right + mm(4), middle + side * (radius + 0.5 * offset)}, print(slot_.side_offset), figures,
                        {Across::left, Along::middle});
      }
    }
    canvas_.line({left, middle}, {right + mm(3), middle}, {thin.width, 0, true});
    canvas_.letters({right + mm(4), middle}, "middle", words, {Across::left, Along::middle});
    if (offset > mm(0)) {
      cutter({left + radius + mm(1.5), middle - offset}, radius, 1);
      cutter({right - radius - mm(1.5), middle + offset}, radius, -1);
    } else {
      canvas_.circle({0.5 * (left + right), middle}, radius, plain);
    }
    // Heads that stand outside reach further.
    return middle + radius + offset + (offset > mm(0) ? mm(2) : mm(0));
  }

  /// The cutter at a wall, turning clockwise, fed against its turning. \param way 1 to the right, -1 to the left
  void cutter(Spot at, Length radius, double way) {
    canvas_.circle(at, radius, plain);
    cross(at);
    draw_turning_arrow(canvas_, at, 0.6 * radius, plain);
    if (slot_.climbs_too) return;
    draw_arrow(canvas_, {at.right + way * radius, at.down}, {at.right + way * (radius + mm(7)), at.down}, bold);
  }

  [[nodiscard]] std::string about_offsets() const {
    if (!(slot_.side_offset > mm(0)))
      return "Offset: none. The first cut is the slot, and no wall is cut again. Cutter " + cutter_.words() + ".";
    std::string text = "Offset: " + print(slot_.side_offset) + " each side, wall to wall " + print(slot_.wall_to_wall) +
                       ", set from one direction";
    for (std::size_t i = 0; i + 1 < slot_.offsets.size(); ++i)
      text += (i > 0 ? ", " : "; before it ") + print(slot_.offsets[i]);
    text += slot_.measured ? ". Dashed: the cut as measured, " + print(slot_.cut) + "." : ". Dashed: the first cut.";
    if (!slot_.climbs_too) text += " Arrow: the way the cutter goes.";
    const bool true_to_scale = offset_.paper == cutter_.paper && offset_.work == cutter_.work;
    return text + (true_to_scale ? " Offset and cutter " + cutter_.words() + "."
                                 : " NOT TO ONE SCALE: offset " + offset_.words() +
                                       ", else it could not be seen; cutter " + cutter_.words() + ".");
  }

  Canvas& canvas_;
  Box box_;
  UnitSystem units_;
  const SlotSeen& slot_;
  Length down_;
  Scale view_;
  Scale section_;
  Scale cutter_;
  Scale offset_;
};

void draw_slot(Canvas& canvas, const Box& box, const Document& document) {
  if (const auto slot = slot_seen(document.answer)) SlotSheet(canvas, box, document, *slot).draw();
}

void say_nothing_drawn(Canvas& canvas, const Box& box, const Document&) {
  canvas.letters({box.left, box.top + mm(3)}, "No drawing: nothing is planned that could be drawn.", {mm(2.4)});
}

} // namespace

std::optional<CardDrawing> drawing_of_slot(const Document& document) {
  if (!slot_seen(document.answer)) return CardDrawing{mm(6), false, say_nothing_drawn};
  return CardDrawing{mm(0), true, draw_slot};
}

} // namespace quillside::page
