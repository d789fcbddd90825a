#include <quillside/job/hole.hpp>

#include <algorithm>
#include <array>

#include <quillside/job/drill.hpp>
#include <quillside/model/depth_stop.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>

#include "hole_parts.hpp"

namespace quillside {

namespace {

bool is_of(const HoleQuestion& ask, std::initializer_list<HoleKind> kinds) {
  return std::find(kinds.begin(), kinds.end(), ask.what.value) != kinds.end();
}

void refuse_flags(const HoleQuestion& ask) {
  const std::string what(name_of(ask.what.value));
  const auto belongs = [&](const char* flag, const char* to) {
    throw contradiction(flag, std::string(flag) + " belongs to " + to + ", not to a hole for " + what);
  };
  if (ask.thread && !is_of(ask, {HoleKind::tap, HoleKind::clear, HoleKind::countersink}))
    belongs("--thread", "tap, clear and countersink");
  if (ask.engagement && !is_of(ask, {HoleKind::tap})) belongs("--engagement", "tap");
  if (ask.head && !is_of(ask, {HoleKind::countersink})) belongs("--head", "countersink");
  if (ask.cone && !is_of(ask, {HoleKind::countersink})) belongs("--cone", "countersink");
  if (ask.thick && !(ask.thick->value.value > mm(0)))
    throw wrong_word(ask.thick->text.value_or("0"), "is no thickness of a part: give more than 0");
  if (ask.thick && !(ask.thick->value.half_width < ask.thick->value.value))
    throw wrong_word(ask.thick->text.value_or(""),
                     "is no reading of a thickness: its error is as large as the reading");
}

/// The size and --thread have to be one screw.
void refuse_two_screws(const HoleQuestion& ask) {
  if (!ask.thread) return;
  const ScrewThread& thread = *ask.thread->value;
  const Screw& size = ask.size.value;
  const std::string name = ask.thread->text.value_or(std::string(thread.key));
  if (size.thread_named && size.thread != &thread)
    throw contradiction("--thread", "--thread " + name + " is another thread than " + std::string(size.thread->key) +
                                        "; give one of them");
  const Length off =
      thread.major.range.low < size.major ? size.major - thread.major.range.low : thread.major.range.low - size.major;
  if (off > same_size_within)
    throw contradiction("--thread", "--thread " + name + " is " + std::string(thread.major.text) + " across, and " +
                                        ask.size.text.value_or(size.name) + " is not: name one screw");
}

void tell_inputs(Answer& answer, const HoleQuestion& ask) {
  answer.input_word("what", name_of(ask.what.value), ask.what.text);
  answer.input("size", Typed<Length>{ask.size.value.major, ask.size.text});
  if (ask.thread)
    answer.input_word("thread", ask.thread->value->key, ask.thread->text);
  else if (ask.what.value == HoleKind::tap && ask.size.value.thread != nullptr)
    answer.input_word("thread", ask.size.value.thread->key,
                      ask.size.value.thread_named ? ask.size.text : std::optional<std::string>{});
}

Value named(const SizeRow& row) {
  return std::vector<Member>{{"name", row.name}, {key::size.name, measure(row.length())}};
}

HolePlan plan_of(const Tables& tables, Answer& answer, Telling& telling, const HoleQuestion& ask) {
  switch (ask.what.value) {
  case HoleKind::tap: return plan_tap(tables, answer, telling, ask);
  case HoleKind::clear: return plan_clear(tables, answer, telling, ask);
  case HoleKind::countersink: return plan_countersink(tables, answer, telling, ask);
  case HoleKind::pin:
  case HoleKind::ream: break;
  }
  return plan_reamed(tables, answer, telling, ask);
}

/// What the single ask says of this drill in this metal.
Answer drilled(const Tables& tables, const HoleQuestion& ask, const SizeRow& drill_row) {
  DrillQuestion question;
  question.size.value.name = drill_row.name;
  question.size.value.length = drill_row.length();
  question.material = *ask.material;
  question.cutter = ask.cutter;
  question.machine = ask.machine;
  question.thick = ask.thick;
  question.through = ask.thick.has_value();
  return drill(tables, question);
}

/// The inputs, settings and findings of the drill that belong to the hole as well.
void take_drilling(Answer& answer, const Answer& drilling) {
  for (const auto& input : drilling.inputs) {
    constexpr std::array<std::string_view, 7> kept{"material", "condition", "hardness", "cutter",
                                                   "machine",  "thick",     "point"};
    if (std::find(kept.begin(), kept.end(), input.name) != kept.end()) answer.inputs.push_back(input);
  }
  for (const auto* name : {key::spindle_speed.name, key::feed_per_rev.name})
    if (const Value* value = find(drilling.settings, name)) answer.settings.push_back({name, *value});
  for (const auto* name : {key::wanted_spindle_speed.name, key::cutting_speed.name})
    if (const Value* value = find(drilling.findings, name)) answer.findings.push_back({name, *value});
  if (drilling.verdict != "go")
    judge(answer, *drilling.verdict, drilling.reason.value_or(""), drilling.instead.value_or(""));
}

/// How far the tip goes down to drill through.
std::optional<Length> tip_depth(const Tables& tables, const HoleQuestion& ask, Length diameter) {
  if (!ask.thick) return std::nullopt;
  const DrillPointRow& point =
      ask.material ? choose_drill_point(tables, ask.material->value) : choose_drill_point(tables);
  return ask.thick->value.value + point_allowance({diameter, point.point.range.low}) +
         limit(tables.limits, "through_overrun").length;
}

void in_order_of_severity(std::vector<CautionGiven>& cautions) {
  const auto rank = [](const CautionGiven& caution) {
    return std::find(severities.begin(), severities.end(), caution.severity) - severities.begin();
  };
  std::stable_sort(cautions.begin(), cautions.end(),
                   [&](const CautionGiven& a, const CautionGiven& b) { return rank(a) < rank(b); });
}

} // namespace

std::string_view name_of(HoleKind kind) {
  constexpr std::array<std::string_view, 5> names{"pin", "ream", "tap", "clear", "countersink"};
  return names[static_cast<std::size_t>(kind)];
}

void judge(Answer& answer, std::string_view verdict, const std::string& reason, const std::string& instead) {
  constexpr std::array<std::string_view, 3> worse{"go", "back off", "do not"};
  const auto rank = [&](std::string_view word) { return std::find(worse.begin(), worse.end(), word) - worse.begin(); };
  const auto had = rank(answer.verdict.value_or("go"));
  if (rank(verdict) < had || verdict == "go") return;
  const bool adds = rank(verdict) == had && answer.reason;
  answer.reason = adds ? *answer.reason + "; " + reason : reason;
  if (!instead.empty()) answer.instead = adds && answer.instead ? *answer.instead + "; " + instead : instead;
  answer.verdict = verdict;
}

void take_over(Answer& answer, const Answer& part, const std::string& lead) {
  for (auto why : part.why) {
    why.step = lead + why.step;
    answer.why.push_back(std::move(why));
  }
  for (const auto& source : part.sources)
    if (std::none_of(answer.sources.begin(), answer.sources.end(),
                     [&](const SourceNamed& had) { return had.id == source.id; }))
      answer.sources.push_back(source);
  for (const auto& caution : part.cautions)
    if (std::none_of(answer.cautions.begin(), answer.cautions.end(),
                     [&](const CautionGiven& had) { return had.id == caution.id; }))
      answer.cautions.push_back(caution);
}

Answer hole(const Tables& tables, const HoleQuestion& ask) {
  refuse_flags(ask);
  refuse_two_screws(ask);
  Answer answer("hole");
  answer.verdict = "go";
  const Work* work = ask.material ? &ask.material->value : nullptr;
  Telling telling(tables, answer, work, ask.cutter.value->key);
  telling.flag(name_of(ask.what.value));
  tell_inputs(answer, ask);
  const HolePlan plan = plan_of(tables, answer, telling, ask);
  answer.set(key::drill, named(*plan.drill));
  if (work != nullptr) {
    const Answer drilling = drilled(tables, ask, *plan.drill);
    take_drilling(answer, drilling);
    take_over(answer, drilling, "");
    if (const std::string fluid = find_word(drilling.settings, key::fluid.name); !fluid.empty()) {
      telling.flag("fluid");
      telling.word("fluid", fluid);
    }
    if (const std::string step = find_word(drilling.settings, key::step.name); !step.empty()) {
      telling.flag("step");
      telling.word("step", step);
    }
  } else {
    telling.flag("no-material");
    if (ask.machine) answer.input_word("machine", ask.machine->value->key, ask.machine->text);
    if (ask.thick) answer.input("thick", Typed<Length>{ask.thick->value.value, ask.thick->text});
  }
  if (const auto depth = tip_depth(tables, ask, plan.drill->length())) {
    answer.set(key::depth, *depth);
    if (work == nullptr) telling.because_of_law("depth stop", depth_stop_law, measure(*depth));
  } else {
    answer.settings.push_back({key::depth.name, {}});
  }
  answer.set(key::reamer, plan.reamer);
  telling.cautions(ask.machine ? ask.machine->value->kind : std::string_view{});
  in_order_of_severity(answer.cautions);
  if (answer.verdict == "do not") answer.settings.clear();
  return answer;
}

} // namespace quillside
