#include <quillside/job/gauge.hpp>

#include <algorithm>
#include <array>
#include <set>

#include <quillside/job/grind.hpp>
#include <quillside/job/notch.hpp>
#include <quillside/model/flat_facet.hpp>
#include <quillside/model/notch.hpp>
#include <quillside/quantity/angle.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>

#include "telling.hpp"

namespace quillside {

namespace {

/// What can be cut out of paper and held to a drill: no published limit.
constexpr Angle sharpest = degrees(20);
constexpr Angle bluntest = degrees(170);
constexpr std::size_t most_angles = 48;
constexpr Angle least_tilt = degrees(0.5);
constexpr Angle most_tilt = degrees(45);
/// The longest that a ruler can be on every paper there is, in whole centimetres.
constexpr Length ruler = mm(150);
constexpr Length wedge_base = mm(100);
constexpr Angle same_angle = degrees(1e-9);

std::string number_of(Angle angle) { return shortest_decimal(in_degrees(angle)); }

void check_angles(const std::vector<Angle>& angles) {
  if (angles.empty() || angles.size() > most_angles)
    throw wrong_word("--angles", "takes 1 to " + std::to_string(most_angles) +
                                     " included angles parted by commas, and here are " +
                                     std::to_string(angles.size()));
  for (std::size_t i = 0; i < angles.size(); ++i) {
    if (angles[i] < sharpest || angles[i] > bluntest)
      throw wrong_word(number_of(angles[i]), "is no included angle that is cut out as a gauge: give 20 to 170 deg");
    for (std::size_t k = 0; k < i; ++k)
      if (angles[i] - angles[k] < same_angle && angles[k] - angles[i] < same_angle)
        throw wrong_word(number_of(angles[i]), "is named twice; once will do");
  }
}

/// The included angles that the tables want of any metal, the sharpest first.
std::vector<Angle> usual_angles(const Tables& tables) {
  std::set<Angle> all;
  for (const auto& row : tables.drill_points)
    if (row.point.range.low >= sharpest && row.point.range.low <= bluntest) all.insert(row.point.range.low);
  return {all.begin(), all.end()};
}

Value angles_of(const std::vector<Angle>& angles) {
  std::vector<Value> list;
  for (const auto angle : angles) list.emplace_back(measure(angle));
  return list;
}

/// Table tilt of `grind` for an ordinary drill with one flat a lip; nothing for a point that it does not answer.
std::optional<Angle> tilt_by_grind(const Tables& tables, const NamedSize& drill, Angle included) {
  try {
    const Answer hold = grind(tables, {.size = {drill, std::nullopt}, .angle = Typed<Angle>{included, std::nullopt}});
    const Value* facets = find(hold.settings, key::facets.name);
    const auto* list = facets == nullptr ? nullptr : std::get_if<std::vector<Value>>(&facets->held);
    if (list == nullptr || list->empty()) return std::nullopt;
    const Value* fence = find(std::get<std::vector<Member>>(list->front().held), "fence");
    const Measure* tilt = find_measure(std::get<std::vector<Member>>(fence->held), key::table_tilt.name);
    return degrees(tilt->value);
  } catch (const Fault&) {
    return std::nullopt;
  }
}

void tell_wedge(Telling& telling, Answer& answer, const Tables& tables, const GaugeQuestion& ask,
                const std::vector<Angle>& angles) {
  if (ask.table_tilt) {
    const Angle tilt = ask.table_tilt->value;
    if (tilt < least_tilt || tilt > most_tilt)
      throw wrong_word(ask.table_tilt->text.value_or(number_of(tilt)),
                       "is no table tilt to saw a wedge for: give 0.5 to 45 deg");
    answer.input("table_tilt", *ask.table_tilt);
    return;
  }
  const NamedSize drill{"1/4", inches(1, 4)};
  for (const auto angle : angles) {
    const auto tilt = tilt_by_grind(tables, drill, angle);
    if (!tilt || *tilt < least_tilt || *tilt > most_tilt) continue;
    answer.input("size", Typed<Length>{drill.length, std::nullopt});
    answer.input("table_tilt", Typed<Angle>{*tilt, std::nullopt});
    telling.because_of_law("table tilt", facet_fence_law, measure(*tilt));
    telling.word("angle", print_angle(angle));
    telling.flag("tilt-taken");
    return;
  }
}

/// The pairs that are commonly at hand: two nuts, a nut and a square bar.
std::vector<FigurePair> pairs() {
  std::vector<FigurePair> all{{6, 6, {}}, {8, 4, {}}};
  for (auto& pair : all) pair.notch = notch_between(interior_angle(pair.sides), interior_angle(pair.other_sides));
  return all;
}

void tell_pairs(Telling& telling) {
  for (const auto& pair : pairs())
    telling.because_of_law("notch of figures with " + std::to_string(pair.sides) + " and " +
                               std::to_string(pair.other_sides) + " sides",
                           notch_law, measure(pair.notch));
}

} // namespace

Answer gauge(const Tables& tables, const GaugeQuestion& ask) {
  const std::vector<Angle> angles = ask.angles ? ask.angles->value : usual_angles(tables);
  check_angles(angles);
  Answer answer("gauge");
  Telling telling(tables, answer, nullptr, {});
  answer.inputs.push_back({"angles", angles_of(angles), ask.angles ? ask.angles->text : std::nullopt});
  answer.input_word("paper", ask.paper.value->name, ask.paper.text);
  answer.found(key::angles, angles_of(angles));
  answer.found(key::ruler_length, ruler);
  answer.found(key::file, ask.file ? Value(*ask.file) : Value{});
  tell_wedge(telling, answer, tables, ask, angles);
  tell_pairs(telling);
  telling.cautions({});
  return answer;
}

GaugeShapes gauge_shapes(const Answer& answer) {
  GaugeShapes shapes;
  const Value* angles = find(answer.findings, key::angles.name);
  if (angles != nullptr)
    for (const auto& value : std::get<std::vector<Value>>(angles->held)) {
      const Angle included = degrees(std::get<Measure>(value.held).value);
      shapes.gauges.push_back({included, 0.5 * included, turns(0.25) - 0.5 * included});
    }
  if (const Input* input = find_input(answer, "table_tilt")) {
    const Angle tilt = degrees(std::get<Measure>(input->value.held).value);
    shapes.wedge = Wedge{tilt, wedge_base, wedge_base * tangent(tilt)};
  }
  shapes.pairs = pairs();
  return shapes;
}

} // namespace quillside
