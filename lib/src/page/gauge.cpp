#include <quillside/page/gauge.hpp>

#include <algorithm>
#include <array>
#include <numbers>

#include <quillside/job/gauge.hpp>
#include <quillside/page/column.hpp>
#include <quillside/quantity/angle.hpp>
#include <quillside/words/print.hpp>

#include "foot.hpp"
#include "geometry.hpp"
#include "ruler.hpp"

namespace quillside::page {

namespace {

constexpr Length side = mm(8);
constexpr Margins margins{side, mm(19), side + foot_height + ruler_height, ruler_height};
constexpr Pen cut{mm(0.2)};              // what is cut out
constexpr Pen thin{mm(0.12)};            // what is read
constexpr Pen dashed{mm(0.15), 0, true}; // what is neither
constexpr Lettering small{mm(2)};
constexpr Lettering small_strong{small.height, Weight::bold};
constexpr Lettering strong{mm(2.4), Weight::bold};

/// As typed, to a hundredth of a degree: what is cut to it is no truer.
std::string lettered(Angle angle) {
  return significant(in_degrees(angle), 5).find('.') == std::string::npos
             ? significant(in_degrees(angle), 5)
             : shortest_decimal(std::stod(fixed_decimal(in_degrees(angle), 2)));
}

// --- A V, and the set square of its half ---

constexpr Length card_width = mm(40);
constexpr Length card_height = mm(38);
constexpr Length lip = mm(14); // of the V, each side
constexpr Length square_at = mm(45);
constexpr Sheet gauge_room{mm(86), mm(50)};

/// Millimetres along a side of the V, from its corner out, on the side where the card is: to compare the lips.
void lip_scale(Canvas& canvas, Spot corner, Angle along, Angle away) {
  for (int i = 1; mm(i) < lip; ++i) {
    const Spot at = from(corner, mm(i), along);
    canvas.line(at, from(at, i % 5 == 0 ? mm(1.8) : mm(0.9), away), thin);
  }
}

void draw_v(Canvas& canvas, Spot at, Angle included) {
  const Angle half = 0.5 * included;
  const Angle up = turns(0.25);
  const Spot corner{at.right + 0.5 * card_width, at.down + lip * cosine(half)};
  const Spot left = from(corner, lip, up + half);
  const Spot right = from(corner, lip, up - half);
  canvas.outline({at,
                  left,
                  corner,
                  right,
                  {at.right + card_width, at.down},
                  {at.right + card_width, at.down + card_height},
                  {at.right, at.down + card_height}},
                 cut);
  lip_scale(canvas, corner, up + half, up + half + turns(0.25));
  lip_scale(canvas, corner, up - half, up - half - turns(0.25));
  const Spot end{corner.right, at.down + card_height - mm(10.5)};
  canvas.line(corner, end, dashed);
  const std::string half_text = lettered(half);
  const Length text_at = std::max(corner.down + mm(4.5), at.down + mm(20));
  canvas.letters({corner.right - mm(2), text_at}, half_text, small, {Across::right, Along::middle});
  canvas.letters({corner.right + mm(2), text_at}, half_text, small, {Across::left, Along::middle});
  canvas.letters({corner.right, at.down + card_height - mm(3)}, lettered(included), {mm(5), Weight::bold},
                 {Across::centre});
}

/// Its one side lies on the disk's face, the drill along the other.
void draw_square(Canvas& canvas, Spot at, Angle fence, Angle mitre) {
  constexpr Length base = mm(38);
  constexpr Length high = mm(33);
  const Spot corner{at.right, at.down + card_height - mm(2)};
  const Length long_side = std::min(high / sine(fence), base / cosine(fence));
  const Spot top = from(corner, long_side, fence);
  canvas.outline({corner, {corner.right + base, corner.down}, top}, cut);
  canvas.letters(beside(corner, {0.5 * long_side, mm(1)}, fence), "drill", {least_gauge_letters},
                 {Across::centre, Along::foot, fence});
  canvas.letters({corner.right + base, corner.down + mm(3.4)}, "disk", {least_gauge_letters},
                 {Across::right, Along::foot});
  canvas.letters({corner.right, corner.down + mm(3.6)}, "fence " + lettered(fence), strong);
  canvas.letters({corner.right, corner.down + mm(7.4)}, "mitre scale " + lettered(mitre), small);
}

void draw_one(Canvas& canvas, Spot at, const VGauge& gauge) {
  draw_v(canvas, at, gauge.included);
  draw_square(canvas, {at.right + square_at, at.down}, gauge.half, gauge.mitre);
}

// --- The wedge ---

Sheet wedge_room(const Wedge& wedge) { return {wedge.base + mm(12), wedge.rise + mm(14)}; }

void draw_wedge(Canvas& canvas, Spot at, const Wedge& wedge) {
  const Length base = wedge.base;
  const Length rise = wedge.rise;
  const Spot foot{at.right, at.down + rise + mm(1)};
  const Spot corner{foot.right + base, foot.down};
  const Spot top{corner.right, corner.down - rise};
  canvas.outline({foot, corner, top}, cut);
  canvas.letters({foot.right, foot.down + mm(4.2)}, "wedge: table tilt " + lettered(wedge.tilt), strong);
  canvas.letters({corner.right, foot.down + mm(4.2)}, significant(in_mm(base), 3) + " mm long", small, {Across::right});
  canvas.letters({foot.right, foot.down + mm(8.2)},
                 "rise " + print_length_with_unit(rise, UnitSystem::metric) + ", " +
                     print_length_with_unit(rise, UnitSystem::inch) + "; saw it of wood, its slope up toward the disk",
                 small);
}

// --- The disk of degrees ---

constexpr Length disk_radius = mm(36);
constexpr Sheet disk_room{mm(86), mm(86)};
constexpr std::array<int, 4> shank_eighths{1, 2, 3, 4}; // of an inch

void draw_disk(Canvas& canvas, Spot at) {
  const Spot middle{at.right + disk_radius + mm(1), at.down + disk_radius + mm(1)};
  canvas.circle(middle, disk_radius, cut);
  for (int degree = 0; degree < 360; ++degree) {
    const Length length = degree % 10 == 0 ? mm(4.5) : degree % 5 == 0 ? mm(3.2) : mm(2);
    canvas.line(from(middle, disk_radius, degrees(degree)), from(middle, disk_radius - length, degrees(degree)), thin);
  }
  for (int degree = 0; degree < 360; degree += 30)
    canvas.letters(from(middle, disk_radius - mm(8.5), degrees(degree)), std::to_string(degree), small,
                   {Across::centre, Along::middle});
  for (const int eighths : shank_eighths) canvas.circle(middle, 0.5 * inches(eighths, 8), thin);
  const Length inner = inches(1, 16);
  const Length outer = disk_radius - mm(13);
  for (const int degree : {0, 90, 180, 270})
    canvas.line(from(middle, inner, degrees(degree)), from(middle, outer, degrees(degree)), dashed);
  const Length below = middle.down + disk_radius;
  canvas.letters({at.right, below + mm(4.2)}, "degree disk", strong);
  canvas.letters({at.right, below + mm(8)}, "cut the ring of the shank: 1/8, 1/4, 3/8, 1/2 in; read it at", small);
  canvas.letters({at.right, below + mm(11.4)}, "a line on the V-block. Half a turn is 180", small);
}

// --- Two figures flat to flat ---

constexpr Sheet pairs_room{mm(86), mm(38)};

/// A regular figure on one side of it. \param turn of each corner, against the clock: the figure lies on that side
std::vector<Spot> figure_on(Spot start, Length flat, Angle direction, int sides, double turn) {
  std::vector<Spot> corners{start};
  for (int i = 0; i + 1 < sides; ++i)
    corners.push_back(from(corners.back(), flat, direction + turn * (static_cast<double>(i) / sides) * turns(1)));
  return corners;
}

std::string name_of_figure(int sides) {
  return sides == 6 ? "hexagon" : sides == 8 ? "octagon" : sides == 4 ? "square" : std::to_string(sides) + " sides";
}

void draw_pair(Canvas& canvas, Spot at, const FigurePair& pair) {
  const int sides = pair.sides;
  const int other = pair.other_sides;
  const Length flat = mm(9);
  // The flat they share stands upright; its upper corner is that of the notch.
  const Spot corner{at.right + mm(22), at.down + mm(11)};
  const Spot lower{corner.right, corner.down + flat};
  canvas.outline(figure_on(lower, flat, turns(0.25), sides, 1), cut);
  canvas.outline(figure_on(lower, flat, turns(0.25), other, -1), cut);
  // In the middle of the notch: each figure's next side turns off the shared one by its outer angle.
  const Angle middle = turns(0.25) + 0.5 * (turns(1.0 / sides) - turns(1.0 / other));
  canvas.letters(from(corner, mm(5.5), middle), lettered(pair.notch), strong, {Across::centre, Along::middle});
  canvas.letters({at.right, at.down + mm(33)}, name_of_figure(sides) + " and " + name_of_figure(other), small);
}

void draw_pairs(Canvas& canvas, Spot at, const std::vector<FigurePair>& pairs) {
  for (std::size_t i = 0; i < pairs.size(); ++i)
    draw_pair(canvas, {at.right + static_cast<double>(i) * mm(43), at.down}, pairs[i]);
}

// --- The sheets ---

/// Blocks side by side, row below row, sheet behind sheet.
class Shelves {
public:
  Shelves(Canvas& canvas, const Column& column) : canvas_(canvas), column_(column), at_{column.left(), column.down()} {}

  Spot take(const Sheet& room) {
    if (at_.right + room.width > column_.left() + column_.width()) next_row();
    if (at_.down + room.height > bottom()) {
      canvas_.add_sheet();
      at_ = {column_.left(), margins.top};
      row_ = mm(0);
    }
    const Spot at = at_;
    at_.right = at_.right + room.width;
    row_ = std::max(row_, room.height);
    return at;
  }

private:
  [[nodiscard]] Length bottom() const { return canvas_.sheet().height - margins.bottom; }
  void next_row() {
    at_ = {column_.left(), at_.down + row_};
    row_ = mm(0);
  }

  Canvas& canvas_;
  const Column& column_;
  Spot at_;
  Length row_{};
};

// --- The cautions, in the room beside the disk ---

constexpr double leading = 1.6;
constexpr Length words_width = mm(84);

/// Lines with the bold words that some begin with.
struct Words {
  std::string lead;
  std::vector<std::string> lines;
};

std::vector<Words> cautions_of(const Canvas& canvas, const Document& document) {
  std::vector<Words> all;
  for (const auto& line : document.text) {
    const std::string lead = line.part == Part::danger ? "DANGER" : line.part == Part::care ? "Care" : "Note";
    if (line.part == Part::danger || line.part == Part::care || line.part == Part::note)
      all.push_back({lead, canvas.broken(line.text, small, words_width - canvas.width_of("DANGER ", small_strong))});
    if (line.part == Part::taken) all.push_back({"", canvas.broken(line.text, small, words_width)});
  }
  return all;
}

Length height_of(const std::vector<Words>& all) {
  Length height{};
  for (const auto& words : all)
    height = height + (static_cast<double>(words.lines.size()) * leading + 0.4) * small.height;
  return height;
}

void draw_cautions(Canvas& canvas, Spot at, const std::vector<Words>& all) {
  const Length start = canvas.width_of("DANGER ", small_strong);
  for (const auto& words : all) {
    if (!words.lead.empty()) canvas.letters({at.right, at.down + small.height}, words.lead, small_strong);
    for (const auto& line : words.lines) {
      canvas.letters({words.lead.empty() ? at.right : at.right + start, at.down + small.height}, line, small);
      at.down = at.down + leading * small.height;
    }
    at.down = at.down + 0.4 * small.height;
  }
}

/// On every sheet, since each goes through the printer by itself.
void draw_rulers(Canvas& canvas, Length length) {
  const Sheet sheet = canvas.sheet();
  for (int number = 0; number < canvas.sheets(); ++number) {
    canvas.turn_to(number);
    canvas.letters({side, side + mm(4)}, "Print at 100 %. Cut nothing before both rulers measure true",
                   {mm(3.2), Weight::bold});
    const Length down = sheet.height - foot_height - mm(2) - 0.5 * ruler_height;
    const Length across = 0.5 * (sheet.width - inches(6.0));
    draw_ruler(canvas, {across, down}, degrees(0), length);
    draw_ruler(canvas, {side + 0.5 * ruler_height, margins.top + inches(6.0) + mm(3)}, degrees(90), length);
  }
}

} // namespace

Canvas draw_gauge(const Document& document) {
  const GaugeShapes shapes = gauge_shapes(document.answer);
  Canvas canvas(find_paper(document.page.paper).whole);
  const Column column(canvas, margins);
  Shelves shelves(canvas, column);
  for (const auto& gauge : shapes.gauges) draw_one(canvas, shelves.take(gauge_room), gauge);
  if (shapes.wedge) draw_wedge(canvas, shelves.take(wedge_room(*shapes.wedge)), *shapes.wedge);
  draw_disk(canvas, shelves.take(disk_room));
  const auto cautions = cautions_of(canvas, document);
  const Spot beside = shelves.take({pairs_room.width, pairs_room.height + height_of(cautions)});
  draw_pairs(canvas, beside, shapes.pairs);
  draw_cautions(canvas, {beside.right, beside.down + pairs_room.height}, cautions);
  draw_rulers(canvas, mm(find_measure(document.answer.findings, "ruler_length")->value));
  draw_feet(canvas, document, margins, "sheet");
  return canvas;
}

} // namespace quillside::page
