#include <quillside/job/slot.hpp>

#include <algorithm>
#include <array>

#include <quillside/model/chain_holes.hpp>
#include <quillside/model/slot_ends.hpp>
#include <quillside/model/slot_walls.hpp>
#include <quillside/quantity/propagate.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>

#include "bench_doubt.hpp"
#include "slot_plan.hpp"
#include "slot_steps.hpp"
#include "slot_width.hpp"
#include "telling.hpp"

namespace quillside {

namespace {

void refuse_reading(const std::optional<Typed<Reading<Length>>>& reading, const char* what) {
  if (!reading) return;
  const std::string typed = reading->text.value_or("0");
  if (!(reading->value.value > mm(0))) throw wrong_word(typed, std::string("is no ") + what + ": give more than 0");
  if (!(reading->value.half_width < reading->value.value))
    throw wrong_word(typed, std::string("is no reading of a ") + what + ": its error is as large as the reading");
}

void refuse_length(const std::optional<Typed<Length>>& length, const char* what) {
  if (length && !(length->value > mm(0)))
    throw wrong_word(length->text.value_or("0"), std::string("is no ") + what + ": give more than 0");
}

void refuse_contradictions(const SlotQuestion& ask) {
  const auto together = [](const char* one, const char* other) {
    throw contradiction(one, std::string(one) + " and " + other +
                                 " say different fits; give one of --fit, --clearance, --interference");
  };
  if (ask.fit && ask.clearance) together("--fit", "--clearance");
  if (ask.fit && ask.interference) together("--fit", "--interference");
  if (ask.clearance && ask.interference) together("--clearance", "--interference");
  const auto needs_thick = [&](bool given, const char* flag) {
    if (given && !ask.thick)
      throw contradiction(flag, std::string(flag) + " needs --thick, the thickness of the plate");
  };
  needs_thick(ask.leave.has_value(), "--leave");
  needs_thick(ask.pocket_width.has_value(), "--pocket-width");
  refuse_reading(ask.part, "thickness of a part");
  refuse_reading(ask.part_width, "width of a part");
  refuse_reading(ask.thick, "thickness of a plate");
  refuse_reading(ask.cut_width, "width of a cut");
  refuse_length(ask.length, "length of a slot");
  refuse_length(ask.pocket_width, "width of a pocket");
  const auto all_of_it = [&](const std::optional<Typed<Length>>& allowance) {
    if (allowance && !(allowance->value < ask.part.value.value))
      throw wrong_word(allowance->text.value_or(""), "is no allowance for a part of " + ask.part.text.value_or(""));
  };
  all_of_it(ask.clearance);
  all_of_it(ask.interference);
}

std::optional<Typed<Length>> value_of(const std::optional<Typed<Reading<Length>>>& reading) {
  if (!reading) return std::nullopt;
  return Typed<Length>{reading->value.value, reading->text};
}

void tell_inputs(const Tables& tables, Answer& answer, const SlotQuestion& ask, const Tightness& tight) {
  answer.input_word("material", ask.material.value.material->key, ask.material.text);
  answer.input("part", Typed<Length>{ask.part.value.value, ask.part.text});
  const auto if_given = [&](const char* name, const std::optional<Typed<Length>>& value) {
    if (value) answer.input(name, *value);
  };
  if_given("part_width", value_of(ask.part_width));
  if_given("length", ask.length);
  answer.input_word("ends", ask.ends.value == SlotEnds::clear ? "clear" : "filed", ask.ends.text);
  if_given("thick", value_of(ask.thick));
  if (ask.thick)
    answer.input("leave", ask.leave.value_or(Typed<Length>{limit(tables.limits, "slot_leave").length, std::nullopt}));
  if_given("cut_width", value_of(ask.cut_width));
  if_given("clearance", ask.clearance);
  if_given("interference", ask.interference);
  if (!tight.fit.empty()) answer.input_word("fit", tight.fit, ask.fit ? ask.fit->text : std::nullopt);
  answer.input_word("cutter", ask.cutter.value->key, ask.cutter.text);
  if (ask.machine) answer.input_word("machine", ask.machine->value->key, ask.machine->text);
}

/// The part's own doubt and the slot's together.
Spread<Length> interference_of(const Spread<Length>& part, const Spread<Length>& slot) {
  return propagate([](Length thickness, Length width) { return thickness - width; }, part, slot);
}

void tell_width(Answer& answer, Telling& telling, const Tightness& tight, const Band<Length>& width) {
  if (tight.interference.low < tight.interference.high)
    answer.set(key::slot_width, width);
  else
    answer.set(key::slot_width, width.first);
  const Measure allowed = Answer::of(Spread<Length>{
      tight.interference.low, (tight.interference.low + tight.interference.high) / 2.0, tight.interference.high});
  if (tight.sources.empty()) {
    telling.because_of_law("width of the slot", slot_opening_law, Answer::of(width));
  } else {
    for (const auto source : tight.sources) telling.because_of_row("fit", tight.described, allowed, source);
    telling.because_of_law("width of the slot", slot_opening_law, Answer::of(width));
  }
}

void tell_plan(const Tables& tables, Answer& answer, Telling& telling, const SlotQuestion& ask, const SlotPlan& plan) {
  answer.input("cutter_size",
               Typed<Length>{plan.cutter.length, ask.cutter_size ? ask.cutter_size->text : std::nullopt});
  if (plan.length) {
    if (plan.length->low < plan.length->high)
      answer.set(key::slot_length, *plan.length);
    else
      answer.set(key::slot_length, plan.length->first);
  }
  answer.set(key::side_offset, plan.side_offset);
  telling.because_of_law("offset each side", side_offset_law, measure(plan.side_offset));
  answer.set(key::wall_to_wall, 2.0 * plan.side_offset);
  telling.because_of_law("wall to wall", wall_to_wall_law, measure(2.0 * plan.side_offset));
  const Length corner = ask.ends.value == SlotEnds::clear ? mm(0) : corner_left(plan.first_cut.value);
  answer.found(key::corner_left, corner);
  telling.because_of_law("left in each corner", corner_left_law, measure(corner));
  if (ask.ends.value == SlotEnds::clear && plan.length)
    telling.because_of_law("length of the slot", cleared_length_law, measure(plan.length->first));
  if (!plan.pocket) return;
  answer.input("pocket_width",
               Typed<Length>{plan.pocket->width, ask.pocket_width ? ask.pocket_width->text : std::nullopt});
  if (!plan.pocket->length || !plan.pocket->holes) return;
  telling.because_of_law("pocket, to reach the corners", pocket_length_law, measure(*plan.pocket->length));
  const Limit& least = limit(tables.limits, "hole_pitch_least");
  telling.because_of_row("holes", std::string(least.what), measure(least.ratio), least.source);
  if (plan.pocket->holes->count > 1) {
    telling.because_of_law("pitch of the holes", hole_pitch_law, measure(plan.pocket->holes->pitch));
    telling.because_of_law("metal between the holes", hole_web_law,
                           measure(web_between({plan.pocket->tool.length, plan.pocket->holes->pitch})));
  }
}

std::string in_both(Length length) {
  return print_length_with_unit(length, UnitSystem::inch) + " (" + print_length_with_unit(length, UnitSystem::metric) +
         ")";
}

/// What the slot comes out to, against what the fit allows; says what to do where the readings cannot decide.
void tell_doubt(const Tables& tables, Answer& answer, Telling& telling, const SlotPlan& plan, const Tightness& tight,
                const Spread<Length>& part) {
  const Length setting = limit(tables.limits, "dial_setting").length;
  const Length travel = 2.0 * plan.side_offset;
  const bool moved = !plan.sides.empty();
  const Spread<Length> slot = width_as_cut({plan.first_cut, travel, moved ? setting : mm(0)});
  answer.found(key::width_doubt, half_width(slot));
  const Spread<Length> sits = interference_of(part, slot);
  answer.found(key::interference, sits);
  telling.because_of_law("as it comes out: part less slot", slot_opening_law, Answer::of(sits));
  const Length band = (tight.interference.high - tight.interference.low) / 2.0;
  const Length allowance = std::max(tight.interference.high, -tight.interference.high);
  const Length room = band > mm(0) ? band : allowance;
  if (!(half_width(sits) > room)) return;
  telling.flag("cannot-decide");
  telling.word("doubt", in_both(half_width(sits)));
  telling.word("room", in_both(room));
  std::string instead =
      "stop the side passes short and let the part itself decide, a setting of " + in_both(setting) + " at a time";
  const auto instruments = length_instruments(tables, "part");
  const auto finest = std::min_element(instruments.begin(), instruments.end(),
                                       [](const auto& a, const auto& b) { return a.half_width < b.half_width; });
  if (finest != instruments.end() && finest->half_width < half_width(part))
    instead = "read the part with a " + std::string(finest->instrument->name) + ", good to " +
              in_both(finest->half_width) + "; " + instead;
  answer.instead = instead;
}

bool is_basis(const CautionGiven& caution) { return caution.id.starts_with("basis-"); }

/// The cautions of every tool, each once; what a figure rests on names the tools it is true of.
std::vector<CautionGiven> cautions_of(const std::vector<ToolAnswer>& tools) {
  std::vector<CautionGiven> all;
  std::vector<std::vector<std::string>> whose;
  for (const auto& tool : tools) {
    for (const auto& caution : tool.answer.cautions) {
      const auto told = std::find_if(all.begin(), all.end(), [&](const CautionGiven& one) {
        return one.id == caution.id && one.text == caution.text;
      });
      const auto at = static_cast<std::size_t>(told - all.begin());
      if (told == all.end()) {
        all.push_back(caution);
        whose.emplace_back();
      }
      if (std::find(whose[at].begin(), whose[at].end(), tool.who) == whose[at].end()) whose[at].push_back(tool.who);
    }
  }
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (!is_basis(all[i])) continue;
    std::string names;
    for (const auto& who : whose[i]) names += (names.empty() ? "" : ", ") + who;
    all[i].text = names + ": " + all[i].text;
  }
  return all;
}

void adopt(Answer& whole, const ToolAnswer& tool) {
  for (const auto& why : tool.answer.why)
    whole.why.push_back({tool.who + ": " + why.step, why.formula, why.value, why.source});
  for (const auto& source : tool.answer.sources) {
    const bool named = std::any_of(whole.sources.begin(), whole.sources.end(),
                                   [&](const SourceNamed& one) { return one.id == source.id; });
    if (!named) whole.sources.push_back(source);
  }
  for (const auto* name : {"condition", "hardness"})
    if (const Input* input = find_input(tool.answer, name); input != nullptr && find_input(whole, name) == nullptr)
      whole.inputs.push_back(*input);
  const std::string reason = tool.who + ": " + tool.answer.reason.value_or("");
  if (tool.answer.verdict == "do not" && whole.verdict != "do not") {
    whole.refuse(reason);
    whole.instead = tool.answer.instead;
  } else if (tool.answer.verdict == "back off" && whole.verdict != "do not") {
    whole.reason = whole.verdict == "back off" && whole.reason ? *whole.reason + "; " + reason : reason;
    whole.verdict = "back off";
    if (tool.answer.instead) whole.instead = tool.answer.instead;
  }
}

void by_severity(std::vector<CautionGiven>& cautions) {
  const auto rank = [](const CautionGiven& caution) {
    return std::find(severities.begin(), severities.end(), caution.severity) - severities.begin();
  };
  std::stable_sort(cautions.begin(), cautions.end(),
                   [&](const CautionGiven& a, const CautionGiven& b) { return rank(a) < rank(b); });
}

void tell_climbing(const Tables& tables, Telling& telling, const SlotQuestion& ask, const SlotPlan& plan) {
  const Limit& most = limit(tables.limits, "climb_width_most");
  if (ask.machine && ask.machine->value->backlash_free) {
    telling.flag("backlash-free");
    return;
  }
  telling.flag("backlash");
  telling.word("climb_width", in_both(most.ratio * plan.cutter.length));
  telling.because_of_row("widest cut that may be climbed", std::string(most.what),
                         measure(most.ratio * plan.cutter.length), most.source);
}

void tell_fit(Telling& telling, const Tightness& tight) {
  if (tight.fit == "driven") telling.flag("driven-fit");
  if (tight.interference.low < mm(0) && tight.interference.high > mm(0)) telling.flag("fit-may-slip");
}

void tell_wall(const Tables& tables, Answer& answer, Telling& telling, const SlotPlan& plan, const SlotSteps& steps) {
  if (steps.wall_left) {
    telling.because_of_law("left by the cutter's bend after the spring passes", spring_pass_law,
                           Answer::of(*steps.wall_left));
    const Limit& passes = limit(tables.limits, "spring_passes");
    telling.because_of_row("spring passes", std::string(passes.what), measure(passes.ratio), passes.source);
  }
  if (!plan.too_little) return;
  answer.verdict = "back off";
  answer.reason = "what is left on each wall, " + in_both(plan.side_offset) + ", is less than the table can be set by";
  answer.instead = "a file or a stone along each wall, trying the part";
}

} // namespace

Answer slot(const Tables& tables, const SlotQuestion& ask) {
  refuse_contradictions(ask);
  const Spread<Length> part = doubt_of(tables, "part", ask.part.value);
  const Tightness tight = tightness(tables, ask, part.value);
  const Band<Length> width = opening(part.value, tight.interference);
  std::optional<Band<Length>> length;
  if (ask.part_width) {
    const Length along = ask.part_width->value.value;
    length = opening(along, at_the_ends(tightness(tables, ask, along).interference));
  }

  Answer answer("slot");
  answer.verdict = "go";
  Telling telling(tables, answer, &ask.material.value, ask.cutter.value->key);
  tell_inputs(tables, answer, ask, tight);
  tell_width(answer, telling, tight, width);
  tell_fit(telling, tight);
  const auto planned = plan_slot(tables, ask, width, length);
  if (const auto* no = std::get_if<Unworkable>(&planned)) {
    answer.refuse(no->reason);
    answer.instead = no->instead;
    telling.cautions("");
    return answer;
  }
  const auto& plan = std::get<SlotPlan>(planned);
  tell_plan(tables, answer, telling, ask, plan);
  const SlotSteps steps = steps_of(tables, ask, plan, shank_gauges(tables, width));
  tell_doubt(tables, answer, telling, plan, tight, part);
  if (steps.depth_stop) answer.set(key::depth_stop, *steps.depth_stop);
  answer.set(key::steps, steps.steps);
  if (steps.passes > 0) answer.found(key::passes, static_cast<double>(steps.passes));
  if (steps.time > minutes(0)) answer.found(key::time, steps.time);
  tell_wall(tables, answer, telling, plan, steps);
  tell_climbing(tables, telling, ask, plan);
  if (plan.fits_now) telling.flag("fits-now");
  if (!ask.thick) telling.flag("no-thick");
  if (!plan.length) telling.flag("no-length");
  for (const auto& tool : steps.tools) adopt(answer, tool);
  telling.cautions(ask.machine ? ask.machine->value->kind : std::string_view{});
  for (auto& caution : cautions_of(steps.tools)) answer.cautions.push_back(std::move(caution));
  by_severity(answer.cautions);
  return answer;
}

} // namespace quillside
