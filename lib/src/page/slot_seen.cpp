#include "slot_seen.hpp"

#include <algorithm>

#include "read_answer.hpp"

namespace quillside::page {

namespace {

std::vector<Length> places_in(const Members& step) {
  std::vector<Length> places;
  const Value* value = find(step, "positions");
  const auto* list = value == nullptr ? nullptr : std::get_if<std::vector<Value>>(&value->held);
  if (list == nullptr) return places;
  for (const auto& one : *list) places.push_back(mm(std::get<Measure>(one.held).value));
  return places;
}

struct StepSeen {
  const Members* members;
  std::string side;
  std::string cutter;

  [[nodiscard]] bool with(std::string_view tool) const { return cutter.ends_with(tool); }
};

std::vector<StepSeen> steps_seen(const Answer& answer) {
  std::vector<StepSeen> seen;
  const Value* value = find(answer.settings, "steps");
  const auto* list = value == nullptr ? nullptr : std::get_if<std::vector<Value>>(&value->held);
  if (list == nullptr) return seen;
  for (const auto& one : *list) {
    const auto& members = std::get<Members>(one.held);
    seen.push_back({&members, find_word(members, "side"), find_word(members, "cutter")});
  }
  return seen;
}

void see_back(PocketSeen& pocket, const StepSeen& step) {
  if (step.with("drill")) {
    pocket.holes = HolesSeen{step.cutter, places_in(*step.members), length_if_any(*step.members, "depth"),
                             length_if_any(*step.members, "point_allowance")};
  } else if (step.with("end mill")) {
    pocket.mill = step.cutter;
    pocket.depth = length_if_any(*step.members, "depth").value_or(pocket.depth);
    pocket.tool = pocket.width - 2.0 * length_if_any(*step.members, "offset").value_or(mm(0));
    if (const auto run = places_in(*step.members); !run.empty()) pocket.half = run.back() + pocket.tool / 2.0;
  }
}

void see_front(SlotSeen& slot, const StepSeen& step) {
  if (!step.with("end mill")) return;
  slot.mill = step.cutter;
  const Length offset = length_if_any(*step.members, "offset").value_or(mm(0));
  if (const auto run = places_in(*step.members); !run.empty()) slot.half_run = run.back();
  if (!(offset > mm(0))) {
    slot.first_cut_depth = length_if_any(*step.members, "depth");
  } else if (slot.offsets.empty() || offset > slot.offsets.back()) {
    slot.offsets.push_back(offset);
  }
}

} // namespace

std::optional<SlotSeen> slot_seen(const Answer& answer) {
  const Measure* width = find_measure(answer.settings, "slot_width");
  const auto cutter = length_asked(answer, "cutter_size");
  if (width == nullptr || !cutter) return std::nullopt;
  SlotSeen slot;
  const auto measured = length_asked(answer, "cut_width");
  slot.measured = measured.has_value();
  slot.cut = measured.value_or(*cutter);
  slot.width = *width;
  if (const Measure* length = find_measure(answer.settings, "slot_length")) slot.length = *length;
  const Input* ends = find_input(answer, "ends");
  const auto* end = ends == nullptr ? nullptr : std::get_if<std::string>(&ends->value.held);
  slot.filed = end == nullptr || *end != "clear";
  slot.thick = length_asked(answer, "thick");
  slot.leave = length_asked(answer, "leave");
  slot.side_offset = length_if_any(answer.settings, "side_offset").value_or(mm(0));
  slot.wall_to_wall = length_if_any(answer.settings, "wall_to_wall").value_or(mm(0));
  slot.climbs_too = std::any_of(answer.cautions.begin(), answer.cautions.end(),
                                [](const CautionGiven& one) { return one.id == "slot-no-backlash"; });
  const auto pocket_width = length_asked(answer, "pocket_width");
  if (pocket_width && slot.thick && slot.leave) {
    slot.pocket = PocketSeen{};
    slot.pocket->width = *pocket_width;
    slot.pocket->tool = *pocket_width;
    slot.pocket->depth = *slot.thick - *slot.leave;
  }
  for (const auto& step : steps_seen(answer)) {
    if (step.side == "front")
      see_front(slot, step);
    else if (slot.pocket)
      see_back(*slot.pocket, step);
  }
  return slot;
}

} // namespace quillside::page
