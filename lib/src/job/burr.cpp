#include <quillside/job/burr.hpp>

#include <algorithm>

#include <quillside/model/surface_speed.hpp>
#include <quillside/words/print.hpp>

#include "spindle.hpp"
#include "telling.hpp"

namespace quillside {

namespace {

/// The lowest of the marks that must not be exceeded; nothing when none is known.
std::optional<SpindleSpeed> limit_of(const BurrQuestion& ask) {
  std::optional<SpindleSpeed> lowest;
  if (ask.marked) lowest = ask.marked->value;
  if (ask.machine) lowest = std::min(lowest.value_or(fastest(*ask.machine->value)), fastest(*ask.machine->value));
  return lowest;
}

std::string_view limited_by(const SpindleOutcome& outcome, bool marked) {
  if (outcome.lowered_by_mark && !outcome.lowered_by_machine) return marked ? "mark" : "tool";
  return outcome.lowered_by_mark || outcome.lowered_by_tool || outcome.lowered_by_machine ? "tool" : "metal";
}

/// Practice with a small burr in the hand, where it lies under the table's band.
void tell_hand_practice(const Tables& tables, Telling& telling, const BurrQuestion& ask,
                        const Band<SpindleSpeed>& wanted) {
  const SpeedRow* hand = choose_hand_practice(tables, ask.material.value, ask.cutter.value->key, ask.size.value.length);
  if (hand == nullptr || !(hand->spindle_speed.range.low < wanted.low)) return;
  telling.flag("hand-practice");
  telling.word("hand", print_spindle_speed(hand->spindle_speed.range.low));
  telling.because_of_row("hand practice",
                         "heads of " + std::string(hand->diameter.text) +
                             " held in the hand: " + std::string(hand->spindle_speed.text),
                         measure(hand->spindle_speed.range.low), hand->source);
}

/// The fastest hand tool there is, as a mark: a first value beyond it can be set on nothing.
std::optional<SpindleSpeed> ceiling_of(const Tables& tables, Telling& telling, const BurrQuestion& ask,
                                       const Band<SpindleSpeed>& wanted) {
  if (ask.marked) return ask.marked->value;
  const Limit& top = limit(tables.limits, "hand_tool_top");
  if (wanted.first <= rev_per_min(top.ratio)) return std::nullopt;
  telling.flag("beyond-hand-tools");
  telling.word("top", std::string(top.value));
  telling.because_of_row("hand tools", std::string(top.what), measure(rev_per_min(top.ratio)), top.source);
  return rev_per_min(top.ratio);
}

} // namespace

Answer burr(const Tables& tables, const BurrQuestion& ask) {
  const Length diameter = ask.size.value.length;
  const Machine* machine = ask.machine ? ask.machine->value : nullptr;

  Answer answer("burr");
  Telling telling(tables, answer, &ask.material.value, ask.cutter.value->key);
  telling.tool(ask.size, ask.material, ask.cutter, ask.machine);
  if (ask.marked) answer.input("marked", *ask.marked);

  if (const auto wanted = telling.wanted_speed(diameter, "grind it")) {
    const SpindleQuestion spindle{*wanted, 1, machine, ceiling_of(tables, telling, ask, *wanted)};
    const SpindleOutcome outcome = decide_spindle(spindle);
    tell_spindle(answer, telling, spindle, outcome);
    // A hand tool has no steps to name.
    std::erase_if(answer.settings, [](const Member& member) { return member.name == key::step.name; });
    answer.found(key::cutting_speed, cutting_speed(outcome.setting.speed, diameter));
    if (const auto lowest = limit_of(ask)) answer.found(key::limit_speed, *lowest);
    answer.found(key::limited_by, limited_by(outcome, ask.marked.has_value()));
    if (!ask.marked) telling.flag("no-mark");
    tell_hand_practice(tables, telling, ask, *wanted);
    if (outcome.verdict == "do not") answer.refuse(outcome.reason);
  }
  telling.cautions(machine == nullptr ? std::string_view{} : machine->kind);
  return answer;
}

} // namespace quillside
