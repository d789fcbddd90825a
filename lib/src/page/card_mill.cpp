#include "card_mill.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <string>
#include <vector>

#include <quillside/words/print.hpp>

#include "read_answer.hpp"

namespace quillside::page {

namespace {

constexpr Lettering title{mm(2.8), Weight::bold};
constexpr Lettering words{mm(2.1)};
constexpr Lettering figures{mm(2.4), Weight::bold};
constexpr Pen heavy{mm(0.6)};
constexpr Pen plain{mm(0.25)};
constexpr Pen thin{mm(0.15), 0.55};
constexpr Pen dashed{mm(0.3), 0, true};
constexpr Length row = mm(3.8);       // of what stands over the picture
constexpr Length to_names = mm(31);   // at the right of the picture, for the names of its curves
constexpr Length to_figures = mm(14); // at its left
constexpr double far_off = 3;         // a limit that is so many times what is drawn is named and not drawn
constexpr Length whole_height = mm(88);

/// One depth, and what its answer says of it.
struct Point {
  Length depth{};
  Measure wall;
  Length bend{};
  std::string verdict;
  const Answer* answer = nullptr;
};

/// Why there is nothing to draw; empty when there is.
std::string reason_for_none(const Document& document) {
  if (document.answer.verdict == "do not") return "No curve of the depth: it is not to be milled so.";
  if (document.more.empty()) return "No curve of the depth: no page tells of the force in this metal.";
  return "";
}

std::vector<Point> points_of(const Document& document) {
  std::vector<Point> points;
  for (const auto& one : document.more) {
    const auto depth = length_asked(one, "depth");
    const Measure* wall = find_measure(one.findings, "wall_error");
    const Measure* bend = find_measure(one.findings, "deflection");
    if (depth && wall != nullptr && bend != nullptr)
      points.push_back({*depth, *wall, mm(bend->value), one.verdict.value_or(""), &one});
  }
  return points;
}

/// A line across the picture at a depth, and its name over it.
struct Mark {
  Length depth{};
  std::string name;
  Pen pen;
  Lettering lettering = words;
};

/// Round steps of an axis: 1, 2 or 5 and their tens, two to five of them.
double round_step(double most) {
  const double rough = most / 5;
  const double tens = std::pow(10, std::floor(std::log10(rough)));
  for (const double round : {1.0, 2.0, 5.0})
    if (rough <= round * tens) return round * tens;
  return 10 * tens;
}

class MillCurve {
public:
  MillCurve(Canvas& canvas, const Box& box, const Document& document)
      : canvas_(canvas), box_(box), answer_(document.answer), units_(document.page.units),
        points_(points_of(document)) {
    const Measure* width = find_measure(answer_.settings, "width_of_cut");
    const auto size = length_asked(answer_, "size");
    full_slot_ = width != nullptr && size && mm(width->value) >= *size;
    allowed_ = length_asked(answer_, "wall_allow");
  }

  void draw() {
    if (points_.empty()) return;
    choose_axes();
    canvas_.letters({box_.left, box_.top + title.height}, "How far the walls are off, by the depth of a pass", title);
    const auto marks = marks_by_depth();
    const auto rows = rows_of(marks);
    const int most = rows.empty() ? 0 : *std::max_element(rows.begin(), rows.end());
    const Length top = box_.top + mm(6.5) + static_cast<double>(most + 1) * row;
    const Length foot = remarks() - mm(12);
    picture_ = {box_.left + to_figures, top, box_.width - to_figures - to_names, foot - top};
    band();
    axes();
    curve([](const Point& point) { return mm(point.wall.value); }, heavy);
    if (full_slot_) curve([](const Point& point) { return point.bend; }, plain);
    limit_of_the_walls();
    names();
    for (std::size_t i = 0; i < marks.size(); ++i) mark(marks[i], rows[i]);
    verdicts();
  }

private:
  [[nodiscard]] double shown(Length length) const {
    return units_ == UnitSystem::inch ? in_inches(length) : in_mm(length);
  }
  [[nodiscard]] Length of_shown(double number) const {
    return units_ == UnitSystem::inch ? inches(number) : mm(number);
  }
  [[nodiscard]] std::string print(Length length) const { return print_length(length, units_); }
  /// Without its unit, which the axes name.
  [[nodiscard]] std::string number(Length length) const {
    const std::string text = print(length);
    return text.substr(0, text.find(' '));
  }
  [[nodiscard]] Length right_of(Length depth) const { return picture_.left + picture_.width * (depth / deepest_); }
  [[nodiscard]] Length down_of(Length off) const {
    return picture_.bottom() - picture_.height * std::min(1.0, off / most_off_);
  }

  void choose_axes() {
    deepest_ = points_.back().depth;
    for (const auto& point : points_)
      most_off_ = std::max({most_off_, mm(point.wall.value), full_slot_ ? point.bend : mm(0)});
    allowance_seen_ = allowed_ && *allowed_ < far_off * most_off_;
    if (allowance_seen_) most_off_ = std::max(most_off_, *allowed_);
    most_off_ = 1.08 * most_off_;
  }

  /// Where the force may lie: nine times in ten between these.
  void band() {
    std::vector<Spot> edge{{picture_.left, picture_.bottom()}};
    for (const auto& point : points_)
      edge.push_back({right_of(point.depth), down_of(mm(point.wall.high.value_or(point.wall.value)))});
    for (auto point = points_.rbegin(); point != points_.rend(); ++point)
      edge.push_back({right_of(point->depth), down_of(mm(point->wall.low.value_or(point->wall.value)))});
    canvas_.fill(edge, 0.86);
  }

  void axes() {
    const Pen grid = thin;
    const double depth_step = round_step(shown(deepest_));
    for (int i = 0; depth_step * i <= shown(deepest_) * (1 + 1e-9); ++i) {
      const Length right = right_of(of_shown(depth_step * i));
      if (i > 0) canvas_.line({right, picture_.top}, {right, picture_.bottom()}, grid);
      canvas_.letters({right, picture_.bottom() + mm(6.5)}, shortest_decimal(rounded_to(depth_step, i)), words,
                      {Across::centre, Along::top});
    }
    const double off_step = round_step(shown(most_off_));
    for (int i = 0; off_step * i <= shown(most_off_); ++i) {
      const Length down = down_of(of_shown(off_step * i));
      if (i > 0) canvas_.line({picture_.left, down}, {picture_.right(), down}, grid);
      canvas_.letters({picture_.left - mm(1.2), down}, shortest_decimal(rounded_to(off_step, i)), words,
                      {Across::right, Along::middle});
    }
    canvas_.path(
        {{picture_.left, picture_.top}, {picture_.left, picture_.bottom()}, {picture_.right(), picture_.bottom()}},
        {mm(0.35)});
    const std::string unit = units_ == UnitSystem::inch ? "in" : "mm";
    canvas_.letters({picture_.right() + mm(3), picture_.bottom() + mm(6.5)}, "deep, " + unit, words,
                    {Across::left, Along::top});
    canvas_.letters({box_.left, picture_.top - mm(3)}, "off, " + unit, words, {Across::left, Along::middle});
  }

  /// Steps of an axis are round: what the sum of many would add is cut off.
  static double rounded_to(double step, int times) {
    const double fine = step / 1000;
    return std::stod(fixed_decimal(std::round(step * times / fine) * fine, 9));
  }

  void curve(const std::function<Length(const Point&)>& off, const Pen& pen) {
    std::vector<Spot> spots{{picture_.left, picture_.bottom()}};
    for (const auto& point : points_) spots.push_back({right_of(point.depth), down_of(off(point))});
    canvas_.path(spots, pen);
  }

  void limit_of_the_walls() {
    if (!allowance_seen_) return;
    canvas_.line({picture_.left, down_of(*allowed_)}, {picture_.right() + mm(1.5), down_of(*allowed_)}, dashed);
  }

  /// At the right, where each ends; moved apart where they end near one another.
  void names() {
    struct Name {
      Length down;
      std::vector<std::string> lines;
    };
    std::vector<Name> all{{down_of(mm(points_.back().wall.value)), {"the walls are off"}}};
    if (full_slot_) all.push_back({down_of(points_.back().bend), {"the tip bends,", "most of it", "along the cut"}});
    if (allowance_seen_) all.push_back({down_of(*allowed_), {"a wall may be off", number(*allowed_)}});
    std::sort(all.begin(), all.end(), [](const Name& a, const Name& b) { return a.down < b.down; });
    constexpr Length leading = mm(3.2);
    const auto height = [&](const Name& name) { return static_cast<double>(name.lines.size()) * leading; };
    // Up from the foot of the picture, each as near to its place as the one below it lets it be; then down from its
    // top, over which the names of the depths stand.
    Length free = picture_.bottom() + mm(1);
    for (auto name = all.rbegin(); name != all.rend(); ++name) {
      name->down = std::min(name->down - 0.5 * leading, free - height(*name));
      free = name->down - mm(0.8);
    }
    free = picture_.top;
    for (auto& name : all) {
      name.down = std::max(name.down, free);
      for (std::size_t i = 0; i < name.lines.size(); ++i)
        canvas_.letters({picture_.right() + mm(2.5), name.down + (static_cast<double>(i) + 0.5) * leading},
                        name.lines[i], words, {Across::left, Along::middle});
      free = name.down + height(name) + mm(0.8);
    }
  }

  /// The first depth whose finding reaches its limit at the high end of its doubt.
  [[nodiscard]] const Point* reaching(const char* finding, const Measure* limit) const {
    if (limit == nullptr) return nullptr;
    const auto found = std::find_if(points_.begin(), points_.end(), [&](const Point& point) {
      const Measure* is = find_measure(point.answer->findings, finding);
      return is != nullptr && is->high.value_or(is->value) >= limit->value;
    });
    return found == points_.end() ? nullptr : &*found;
  }

  [[nodiscard]] const Measure* stress_limit() const { return find_why(answer_, limit_step::stress); }
  [[nodiscard]] const Measure* power_limit() const { return find_why(answer_, limit_step::power); }
  [[nodiscard]] bool flutes_seen() const {
    const auto flutes = length_asked(answer_, "flute_length");
    return flutes && deepest_ >= *flutes;
  }

  [[nodiscard]] std::vector<Mark> marks_by_depth() const {
    std::vector<Mark> marks;
    const Measure* set = find_measure(answer_.settings, "depth_of_cut");
    const auto asked = length_asked(answer_, "depth");
    const bool set_as_asked = asked && set != nullptr && mm(set->value) == *asked;
    if (set != nullptr)
      marks.push_back({mm(set->value), "SET " + number(mm(set->value)), heavy, {mm(3), Weight::bold}});
    if (asked && !set_as_asked) marks.push_back({*asked, "asked " + number(*asked), plain, figures});
    if (set != nullptr && set->high && *set->high > set->value && mm(*set->high) <= deepest_)
      marks.push_back({mm(*set->high), number(mm(*set->high)) + " if no harder", dashed});
    if (const Point* point = reaching("root_stress", stress_limit()))
      marks.push_back({point->depth, "cutter's strength", dashed});
    if (const Point* point = reaching("power", power_limit()))
      marks.push_back({point->depth, "machine's power", dashed});
    if (flutes_seen()) marks.push_back({deepest_, "flutes end", dashed});
    std::stable_sort(marks.begin(), marks.end(), [](const Mark& a, const Mark& b) { return a.depth < b.depth; });
    return marks;
  }

  /// Rows of the names over the picture, 0 the lowest: a name stands over those at its right that it reaches.
  [[nodiscard]] std::vector<int> rows_of(const std::vector<Mark>& marks) const {
    std::vector<int> rows(marks.size(), 0);
    const Length width = box_.width - to_figures - to_names;
    for (std::size_t i = marks.size(); i-- > 0;) {
      const Length end =
          width * (marks[i].depth / deepest_) + canvas_.width_of(marks[i].name, marks[i].lettering) + mm(2.5);
      for (std::size_t k = i + 1; k < marks.size(); ++k)
        if (width * (marks[k].depth / deepest_) < end) rows[i] = std::max(rows[i], rows[k] + 1);
    }
    return rows;
  }

  void mark(const Mark& mark, int over) {
    const Length right = right_of(mark.depth);
    const Length top = picture_.top - (static_cast<double>(over) + 1) * row;
    canvas_.line({right, top}, {right, picture_.bottom()}, mark.pen);
    canvas_.letters({right + mm(1), top + 0.5 * row}, mark.name, mark.lettering, {Across::left, Along::middle});
  }

  /// Under the picture: as far as each verdict goes.
  void verdicts() {
    const Length top = picture_.bottom() + mm(0.8);
    constexpr Length height = mm(4.6);
    Length from = picture_.left;
    for (std::size_t i = 0; i < points_.size(); ++i) {
      if (i + 1 < points_.size() && points_[i + 1].verdict == points_[i].verdict) continue;
      // What is judged worse begins right behind the last that is not.
      const Length to = right_of(points_[i].depth);
      verdict({from, top, to - from, height}, points_[i].verdict);
      from = to;
    }
  }

  void verdict(const Box& box, const std::string& name) {
    const bool no = name == "do not";
    canvas_.fill(box, no ? 0 : name == "back off" ? 0.82 : 1);
    canvas_.frame(box, plain);
    Lettering lettering = figures;
    lettering.grey = no ? 1 : 0;
    if (canvas_.width_of(name, lettering) + mm(1.5) > box.width) return;
    canvas_.letters({box.left + 0.5 * box.width, box.top + 0.5 * box.height}, name, lettering,
                    {Across::centre, Along::middle});
  }

  /// At the foot of the box; gives where they begin.
  Length remarks() {
    constexpr Length leading = mm(3.4);
    const auto lines = canvas_.broken(what_is_not_seen(), words, box_.width);
    const Length top = box_.bottom() - static_cast<double>(lines.size()) * leading;
    for (std::size_t i = 0; i < lines.size(); ++i)
      canvas_.letters({box_.left, top + words.height + static_cast<double>(i) * leading}, lines[i], words);
    return top;
  }

  [[nodiscard]] std::string what_is_not_seen() const {
    std::string text = "Grey: where the doubt of the force puts the walls.";
    std::string beyond;
    const auto add = [&](const std::string& name) { beyond += (beyond.empty() ? "" : ", ") + name; };
    if (allowed_ && !allowance_seen_) add("what a wall may be off, " + print(*allowed_));
    if (stress_limit() != nullptr && reaching("root_stress", stress_limit()) == nullptr)
      add("the cutter's strength, " + print_stress(megapascals(stress_limit()->value)));
    if (power_limit() != nullptr && reaching("power", power_limit()) == nullptr)
      add("the machine's power, " + print_power(watts(power_limit()->value)));
    const auto flutes = length_asked(answer_, "flute_length");
    if (flutes && !flutes_seen()) add("the end of the flutes, " + print(*flutes));
    if (!beyond.empty()) text += " Not reached so deep: " + beyond + ".";
    if (power_limit() == nullptr) text += " The machine's power is not known.";
    return text;
  }

  Canvas& canvas_;
  Box box_;
  const Answer& answer_;
  UnitSystem units_;
  std::vector<Point> points_;
  bool full_slot_ = false;
  std::optional<Length> allowed_;
  bool allowance_seen_ = false;
  Length deepest_{};
  Length most_off_{};
  Box picture_;
};

void draw_mill(Canvas& canvas, const Box& box, const Document& document) { MillCurve(canvas, box, document).draw(); }

void say_no_curve(Canvas& canvas, const Box& box, const Document& document) {
  canvas.letters({box.left, box.top + mm(3)}, reason_for_none(document), {mm(2.4)});
}

} // namespace

std::optional<CardDrawing> drawing_of_mill(const Document& document) {
  if (!reason_for_none(document).empty()) return CardDrawing{mm(6), false, say_no_curve};
  return CardDrawing{whole_height, false, draw_mill};
}

} // namespace quillside::page
