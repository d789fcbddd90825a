#include "point_inputs.hpp"

#include <array>
#include <string_view>

#include "grinding_way.hpp"

namespace quillside {

namespace {

std::string_view word_of(LightAt at) {
  constexpr std::array<std::string_view, 4> words{"none", "tip", "middle", "corner"};
  return words[static_cast<std::size_t>(at)];
}

template <class Quantity> Value numbers(const Pair<Reading<Quantity>>& pair) {
  return std::vector<Value>{measure(pair[0].value), measure(pair[1].value)};
}
Value numbers_of(const std::vector<Mark>& marks) {
  std::vector<Value> all;
  for (const auto& mark : marks) {
    all.emplace_back(measure(mark.x));
    all.emplace_back(measure(mark.y));
  }
  return all;
}

} // namespace

void tell_inputs(Answer& answer, const PointQuestion& ask, const Ground& ground, const std::vector<JudgedPoint>& ways) {
  answer.input("size", Typed<Length>{ask.size.value.length, ask.size.text});
  if (ask.material) answer.input_word("material", ask.material->value.material->key, ask.material->text);
  if (ask.machine) answer.input_word("machine", ask.machine->value->key, ask.machine->text);
  if (ask.way) answer.input_word("way", name_of(ask.way->value), ask.way->text);
  if (ask.feed) answer.input("feed", *ask.feed);
  const auto reading = [&](const char* name, const auto& word) {
    if (word) answer.inputs.push_back({name, measure(word->value.value), word->text});
  };
  const auto pair = [&](const char* name, const auto& word) {
    if (word) answer.inputs.push_back({name, numbers(word->value), word->text});
  };
  reading("angle", ask.angle);
  pair("half_angles", ask.half_angles);
  reading("lip_depth", ask.lip_depth);
  reading("point_length", ask.point_length);
  pair("lip_lengths", ask.lip_lengths);
  reading("lip_height", ask.lip_height);
  reading("web", ask.web);
  reading("chisel", ask.chisel);
  reading("chisel_length", ask.chisel_length);
  reading("relief", ask.relief);
  reading("drop", ask.drop);
  reading("turn", ask.turn);
  reading("gauge_angle", ask.gauge_angle);
  if (ask.light)
    answer.inputs.push_back(
        {"light", std::vector<Value>{word_of(ask.light->value[0]), word_of(ask.light->value[1])}, ask.light->text});
  pair("light_gap", ask.light_gap);
  reading("trial_hole", ask.trial_hole);
  if (ask.chips) answer.input_word("chips", ask.chips->value == Chips::one ? "one" : "two", ask.chips->text);
  reading("land_wear", ask.land_wear);
  reading("margin_wear", ask.margin_wear);
  if (ask.thinned) answer.input_flag("thinned");
  if (ask.split) answer.input_flag("split");
  if (ask.side_marks) {
    const auto& m = ask.side_marks->value.marks;
    answer.inputs.push_back({"side_marks",
                             numbers_of({m.corner_a, m.inner_a, m.inner_b, m.corner_b, m.margin_a, m.margin_b}),
                             ask.side_marks->text});
  }
  if (ask.end_marks) {
    const auto& m = ask.end_marks->value.marks;
    answer.inputs.push_back(
        {"end_marks", numbers_of({m.corner_a, m.inner_a, m.inner_b, m.corner_b}), ask.end_marks->text});
  }
  if (!ask.web && !ways.front().solved.web_read) answer.input("web", Typed<Length>{ground.web.web, std::nullopt});
  if (!ways.front().solved.included_read)
    answer.input("angle", Typed<Angle>{ways.front().solved.included.spread.value, std::nullopt});
  answer.input("land", Typed<Angle>{ground.land, std::nullopt});
}

} // namespace quillside
