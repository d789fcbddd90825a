#include <quillside/job/notch.hpp>

#include <array>
#include <charconv>

#include <quillside/data/choose.hpp>
#include <quillside/model/notch.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/suggest.hpp>

#include "telling.hpp"

namespace quillside {

namespace {

struct NamedFigure {
  std::string_view name;
  int sides;
};
constexpr std::array<NamedFigure, 12> figures{{{"triangle", 3},
                                               {"square", 4},
                                               {"pentagon", 5},
                                               {"hexagon", 6},
                                               {"heptagon", 7},
                                               {"octagon", 8},
                                               {"nonagon", 9},
                                               {"decagon", 10},
                                               {"hendecagon", 11},
                                               {"dodecagon", 12},
                                               {"hex", 6},
                                               {"flat", 0}}};

std::string name_of(Figure figure) {
  for (const auto& one : figures)
    if (one.sides == figure.sides) return std::string(one.name);
  return std::to_string(figure.sides);
}

Angle angle_of(Figure figure) { return figure.sides == 0 ? turns(0.5) : interior_angle(figure.sides); }

Angle notch_of(const NotchQuestion& ask) {
  const Angle figure = angle_of(ask.figure.value);
  const Angle other = angle_of(ask.other.value);
  constexpr Angle least = degrees(1e-9);
  const Angle left = turns(1) - figure - other;
  if (left > least && left < turns(0.5) - least) return notch_between(figure, other);
  throw contradiction(ask.other.text.value_or(name_of(ask.other.value)),
                      "a " + name_of(ask.figure.value) + " and a " + name_of(ask.other.value) +
                          " flat to flat leave no notch that a point stands in: it would be " +
                          (left > least ? "180 deg or more" : "shut"));
}

/// The drill whose light is told: large enough to see by, its size an assumption that is shown.
constexpr Length shown_drill = inches(1, 2);
constexpr Angle shown_relief = degrees(12);
constexpr std::array<double, 6> usual_points{90, 118, 120, 130, 135, 140};

Value light_of(Telling& telling, Angle notch, Length web) {
  std::vector<Value> list;
  for (const double included : usual_points) {
    const PointShape point{shown_drill, web, degrees(included)};
    const LightGap light = light_gap(notch, point, chisel_edge_of_flat(point, flank_slope(point, shown_relief)));
    const char* where = light.where == LightGap::Where::corner ? "corner"
                        : light.where == LightGap::Where::tip  ? "tip"
                                                               : "none";
    list.emplace_back(std::vector<Member>{
        {key::included_angle.name, measure(degrees(included))}, {"where", where}, {key::gap.name, measure(light.gap)}});
    telling.because_of_law("light at " + std::to_string(static_cast<int>(included)), light_gap_law, measure(light.gap));
  }
  return list;
}

} // namespace

Figure read_figure(std::string_view text) {
  std::vector<std::string_view> names;
  for (const auto& one : figures) {
    if (edit_distance(one.name, text) == 0) return {one.sides};
    names.push_back(one.name);
  }
  int sides = 0;
  const auto result = std::from_chars(text.data(), text.data() + text.size(), sides);
  if (result.ec == std::errc{} && result.ptr == text.data() + text.size() && sides >= 3 && sides <= 12) return {sides};
  const auto nearest = nearest_word(text, names);
  throw wrong_word(std::string(text),
                   "is no regular figure of 3 to 12 sides, and not flat" +
                       (nearest ? "; '" + *nearest + "' is meant?" : ""),
                   {names.begin(), names.end()}, nearest);
}

Answer notch(const Tables& tables, const NotchQuestion& ask) {
  const Angle angle = notch_of(ask);
  Answer answer("notch");
  Telling telling(tables, answer, nullptr, {});
  answer.input_word("figure", name_of(ask.figure.value), ask.figure.text);
  answer.input_word("other", name_of(ask.other.value), ask.other.text);
  answer.found(key::notch_angle, angle);
  telling.because_of_law("notch", notch_law, measure(angle));
  if (const auto web = choose_drill_web(tables, shown_drill)) {
    answer.input("size", Typed<Length>{shown_drill, std::nullopt});
    answer.input("web", Typed<Length>{web->web, std::nullopt});
    answer.input("relief", Typed<Angle>{shown_relief, std::nullopt});
    telling.because_of_row("web", "drill of " + std::string(web->row->diameter.text), measure(web->web),
                           web->row->source);
    answer.found(key::light_gap, light_of(telling, angle, web->web));
  }
  if (ask.figure.value.sides == 6 && ask.other.value.sides == 6) telling.flag("hex-pair");
  telling.flag("nuts");
  telling.cautions({});
  return answer;
}

} // namespace quillside
