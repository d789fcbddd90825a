#include "spindle.hpp"

#include <algorithm>

#include <quillside/words/print.hpp>

namespace quillside {

namespace {

std::string named(const SpindleSetting& setting) {
  return setting.step
             ? "step " + std::string(setting.step->name) + ", " + print_spindle_speed(setting.speed) + " rev/min"
             : print_spindle_speed(setting.speed) + " rev/min";
}

/// The table's band, cut to what machine and mark allow; closed on the speed itself where that lies outside it.
Band<SpindleSpeed> cut_to_what_is_allowed(const SpindleQuestion& question, SpindleSpeed speed) {
  if (!holds(question.table, speed)) return only(speed);
  Band<SpindleSpeed> band{question.table.low, speed, question.table.high};
  if (question.machine != nullptr) {
    band.low = std::max(band.low, question.machine->range.low);
    band.high = std::min(band.high, fastest(*question.machine));
  }
  if (question.mark) band.high = std::min(band.high, *question.mark);
  return {std::min(band.low, speed), speed, std::max(band.high, speed)};
}

} // namespace

SpindleOutcome decide_spindle(const SpindleQuestion& question) {
  SpindleOutcome outcome;
  SpindleSpeed aim = question.aim;
  if (question.machine != nullptr && question.machine->top_speed.given() &&
      question.machine->top_speed.range.low < aim) {
    aim = question.machine->top_speed.range.low;
    outcome.lowered_by_tool = true;
  }
  if (question.mark && *question.mark < aim) {
    aim = *question.mark;
    outcome.lowered_by_mark = true;
    outcome.lowered_by_tool = false;
  }
  outcome.setting =
      question.machine == nullptr ? SpindleSetting{aim, {}, {}, false} : setting_at_or_below(*question.machine, aim);
  const SpindleSpeed speed = outcome.setting.speed;
  outcome.lowered_by_machine = speed < aim;
  outcome.band = cut_to_what_is_allowed(question, speed);
  outcome.under_table = speed < question.table.low;

  const auto over = [&](std::string_view what, SpindleSpeed limit) {
    outcome.verdict = "do not";
    outcome.reason = "the slowest of this machine (" + named(outcome.setting) + ") is over " + std::string(what) +
                     ", " + print_spindle_speed(limit) + " rev/min";
    outcome.instead = "a machine that runs at " + print_spindle_speed(aim) + " rev/min or less";
  };
  if (question.mark && speed > *question.mark) {
    over("the marked maximum", *question.mark);
  } else if (outcome.setting.above_wanted && speed > question.table.high) {
    over("the top of the table's band", question.table.high);
  } else if (outcome.setting.above_wanted) {
    outcome.verdict = "back off";
    outcome.reason = "the slowest of this machine (" + named(outcome.setting) + ") is over the " +
                     print_spindle_speed(aim) + " rev/min wanted";
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
