#include <quillside/job/burr.hpp>

#include <algorithm>

#include <quillside/model/surface_speed.hpp>
#include <quillside/words/print.hpp>

#include "spindle.hpp"
#include "telling.hpp"

namespace quillside {

namespace {

void tell_inputs(Answer& answer, const BurrQuestion& ask) {
  answer.input("size", Typed<Length>{ask.size.value.length, ask.size.text});
  answer.input_word("material", ask.material.value.material->key, ask.material.text);
  answer.input_word("cutter", ask.cutter.value->key, ask.cutter.text);
  if (ask.machine) answer.input_word("machine", ask.machine->value->key, ask.machine->text);
  if (ask.marked) answer.input("marked", *ask.marked);
}

/// The lowest of the marks that must not be exceeded; nothing when none is known.
std::optional<SpindleSpeed> limit_of(const BurrQuestion& ask) {
  std::optional<SpindleSpeed> limit;
  if (ask.marked) limit = ask.marked->value;
  if (ask.machine) limit = std::min(limit.value_or(fastest(*ask.machine->value)), fastest(*ask.machine->value));
  return limit;
}

std::string_view limited_by(const SpindleOutcome& outcome) {
  if (outcome.lowered_by_mark && !outcome.lowered_by_machine) return "mark";
  return outcome.lowered_by_tool || outcome.lowered_by_machine ? "tool" : "metal";
}

} // namespace

Answer burr(const Tables& tables, const BurrQuestion& ask) {
  const Work& work = ask.material.value;
  const Length diameter = ask.size.value.length;
  const std::string_view cutter = ask.cutter.value->key;
  const Machine* machine = ask.machine ? ask.machine->value : nullptr;
  const std::string_view machine_kind = machine != nullptr ? machine->kind : std::string_view{};

  Answer answer("burr");
  Telling telling(tables, answer, &work, cutter);
  tell_inputs(answer, ask);

  const SpeedResult result = choose_speed(tables, "burr", work, cutter);
  if (const auto* past = std::get_if<PastLastRow>(&result)) {
    answer.refuse("harder than any row for a burr of " + std::string(ask.cutter.value->name) + ": " +
                  significant(past->brinell, 3) + " HB, and the rows end at " + significant(past->hardest, 3) + " HB");
    answer.instead = "grind it";
    telling.cautions(machine_kind);
    return answer;
  }
  const auto& choice = std::get<SpeedChoice>(result);
  telling.speed(choice);
  const Band<SpindleSpeed> wanted{spindle_speed(choice.band.low, diameter), spindle_speed(choice.band.first, diameter),
                                  spindle_speed(choice.band.high, diameter)};
  answer.found_wanted(wanted);
  telling.because_of_law("spindle speed", surface_speed_law, Answer::of(wanted));

  const SpindleQuestion spindle{wanted, wanted.first, machine,
                                ask.marked ? std::optional(ask.marked->value) : std::nullopt};
  const SpindleOutcome outcome = decide_spindle(spindle);
  tell_spindle(answer, telling, spindle, outcome);
  std::erase_if(answer.settings, [](const Member& member) { return member.name == key::step.name; });
  answer.found(key::cutting_speed, cutting_speed(outcome.setting.speed, diameter));
  if (const auto limit = limit_of(ask)) answer.found(key::limit_speed, *limit);
  answer.found(key::limited_by, limited_by(outcome));

  if (!ask.marked) telling.flag("no-mark");
  if (const SpeedRow* hand = choose_hand_practice(tables, work, cutter, diameter);
      hand != nullptr && hand->spindle_speed.range.low < wanted.low) {
    telling.flag("hand-practice");
    telling.word("hand", print_spindle_speed(hand->spindle_speed.range.low));
    telling.because_of_row("hand practice",
                           "heads of " + std::string(hand->diameter.text) +
                               " held in the hand: " + std::string(hand->spindle_speed.text),
                           measure(hand->spindle_speed.range.low), hand->source);
  }
  if (outcome.verdict == "do not") answer.refuse(outcome.reason);
  telling.cautions(machine_kind);
  return answer;
}

} // namespace quillside
