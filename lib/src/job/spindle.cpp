#include "spindle.hpp"

#include <algorithm>

#include <quillside/words/print.hpp>

namespace quillside {

namespace {

std::string named(const SpindleSetting& setting) {
  const std::string speed = print_spindle_speed(setting.speed) + " rev/min";
  return setting.step ? "step " + std::string(setting.step->name) + ", " + speed : speed;
}

/// The table's band, cut to what is left of it and to what machine and mark allow; closed on the speed itself where
/// that lies outside the table's.
Band<SpindleSpeed> cut_to_what_is_allowed(const SpindleQuestion& question, SpindleSpeed speed) {
  if (!holds(question.table, speed)) return only(speed);
  Band<SpindleSpeed> band{question.table.low, speed, question.share * question.table.high};
  if (question.machine != nullptr) {
    band.low = std::max(band.low, question.machine->range.low);
    band.high = std::min(band.high, fastest(*question.machine));
  }
  if (question.mark) band.high = std::min(band.high, *question.mark);
  return {std::min(band.low, speed), speed, std::max(band.high, speed)};
}

struct Lowered {
  SpindleSpeed aim;
  bool by_tool = false;
  bool by_mark = false;
};

/// The speed aimed at, brought under the marks on tool and burr.
Lowered under_the_marks(const SpindleQuestion& question) {
  Lowered lowered{question.share * question.table.first};
  const bool tool_marked = question.machine != nullptr && question.machine->top_speed.given();
  if (tool_marked && question.machine->top_speed.range.low < lowered.aim)
    lowered = {question.machine->top_speed.range.low, true, false};
  if (question.mark && *question.mark < lowered.aim) lowered = {*question.mark, false, true};
  return lowered;
}

} // namespace

SpindleOutcome decide_spindle(const SpindleQuestion& question) {
  SpindleOutcome outcome;
  const Lowered lowered = under_the_marks(question);
  outcome.lowered_by_tool = lowered.by_tool;
  outcome.lowered_by_mark = lowered.by_mark;
  outcome.setting = question.machine == nullptr ? SpindleSetting{lowered.aim, {}, {}, false}
                                                : setting_at_or_below(*question.machine, lowered.aim);
  const SpindleSpeed speed = outcome.setting.speed;
  outcome.lowered_by_machine = speed < lowered.aim;
  outcome.band = cut_to_what_is_allowed(question, speed);
  outcome.under_table = speed < question.table.low;
  if (!outcome.setting.above_wanted) return outcome;

  const std::string slowest = "the slowest of this machine (" + named(outcome.setting) + ") is over ";
  const auto over = [&](const std::string& what) {
    outcome.verdict = "do not";
    outcome.reason = slowest + what + ", " + print_spindle_speed_limit(lowered.aim) + " rev/min";
    outcome.instead = "a machine that runs at " + print_spindle_speed_limit(lowered.aim) + " rev/min or less";
  };
  if (lowered.by_mark) {
    over("the marked maximum");
  } else if (lowered.by_tool) {
    over("the top speed of the tool");
  } else if (speed > question.table.high) {
    over("the table's band, which ends at " + print_spindle_speed(question.table.high) + "; wanted");
  } else {
    outcome.verdict = "back off";
    outcome.reason = slowest + "the " + print_spindle_speed(lowered.aim) + " rev/min wanted";
    outcome.instead = "a slower machine, or a lighter feed with plenty of fluid";
  }
  return outcome;
}

void tell_spindle(Answer& answer, Telling& telling, const SpindleQuestion& question, const SpindleOutcome& outcome) {
  answer.verdict = outcome.verdict;
  if (!outcome.reason.empty()) answer.reason = outcome.reason;
  if (!outcome.instead.empty()) answer.instead = outcome.instead;
  if (question.machine == nullptr) telling.flag("no-machine");
  if (outcome.under_table) telling.flag("under-table");
  if (outcome.verdict == "back off") telling.flag("slowest-is-fast");
  if (question.machine != nullptr) {
    telling.because_of_row("machine",
                           std::string(question.machine->name) + ": at or below the speed aimed at, else its slowest",
                           measure(outcome.setting.speed), question.machine->source);
    if (question.machine->source == "demo") telling.flag("demo-machine");
  }
  answer.set(key::spindle_speed, outcome.band);
  if (outcome.setting.step)
    answer.set(key::step, outcome.setting.step->name);
  else
    answer.set_none(key::step);
}

} // namespace quillside
