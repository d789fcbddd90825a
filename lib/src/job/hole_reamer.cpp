// Holes that are reamed: to a size, or under a pin that is pressed in.

#include <algorithm>
#include <cmath>

#include <quillside/data/choose_fit.hpp>
#include <quillside/model/surface_speed.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>

#include "hole_parts.hpp"
#include "spindle.hpp"

namespace quillside {

namespace {

/// What the reamer itself is made of: its rows are for no other.
constexpr std::string_view reamer_cutter = "hss";

std::string in_words(Length length, const HoleQuestion& ask) {
  return print_length_with_unit(length, ask.size.value.metric ? UnitSystem::metric : UnitSystem::inch);
}

Length middle(const Range<Length>& range) { return (range.low + range.high) / 2.0; }

/// A reamer under the pin: of the steps such reamers come in, the one nearest the middle of what the class asks.
NamedSize reamer_under(const Tables& tables, const HoleQuestion& ask, const FitLimits& fit) {
  const Length pin = ask.size.value.major;
  const Length step = limit(tables.limits, ask.size.value.metric ? "reamer_step_metric" : "reamer_step_inch").length;
  const Length wanted = middle({std::max(fit.interference.low, mm(0)), fit.interference.high});
  const auto size = [&](double steps) { return steps * step; };
  double steps = std::round((pin - wanted) / step);
  if (!(size(steps) + same_size_within / 10.0 < pin)) steps -= 1; // a pin is not held by a hole of its own size
  const Length reamer = size(steps);
  return {ask.size.value.metric ? shortest_decimal(std::round(in_mm(reamer) * 1000) / 1000) + "mm"
                                : fixed_decimal(in_inches(reamer), 4) + "in",
          reamer};
}

void tell_fit(Telling& telling, const FitLimits& fit, const char* step) {
  for (const auto source : fit.sources)
    telling.because_of_row(step, fit.name + (fit.class_name == fit.name ? "" : ", " + fit.class_name),
                           measure(middle(fit.interference)), source);
}

NamedSize pin_reamer(const Tables& tables, Answer& answer, Telling& telling, const HoleQuestion& ask) {
  const Length pin = ask.size.value.major;
  const FitLimits fit = fit_limits(tables, "press", pin);
  NamedSize reamer = reamer_under(tables, ask, fit);
  const Length held = pin - reamer.length;
  // A reamer cuts a hole of its size or up to a class H7 over it.
  const Length over = fit.hole.high - fit.hole.low;
  answer.found(key::interference, Spread<Length>{held - over, held, held});
  tell_fit(telling, fit, "press fit, middle of the class");
  const Limit& step = limit(tables.limits, ask.size.value.metric ? "reamer_step_metric" : "reamer_step_inch");
  telling.because_of_row("reamer under the pin", std::string(step.what), measure(held), step.source);
  telling.word("reamer", reamer.name);
  telling.word("under", in_words(held, ask));
  if (held - over < mm(0)) telling.flag("pin-may-slip");
  // The class is printed in whole micrometres.
  if (held > fit.interference.high + micrometres(1))
    judge(answer, "back off",
          "the next reamer under this pin, " + reamer.name + ", leaves " + in_words(held, ask) +
              ", and the class has no more than " + in_words(fit.interference.high, ask) + ": it may split the part",
          "ream to the size of the pin and secure it, or lap the hole out");
  return reamer;
}

NamedSize reamer_itself(const Tables& tables, Answer& answer, Telling& telling, const HoleQuestion& ask) {
  const Length size = ask.size.value.major;
  try {
    const FitLimits fit = fit_limits(tables, "H7/h6", size);
    answer.found(key::interference, Spread<Length>{-fit.hole.high, -middle(fit.hole), -fit.hole.low});
    tell_fit(telling, fit, "reamed hole, round a part of its size");
  } catch (const Fault&) {
    telling.flag("no-fit-row"); // larger than the classes in the tables: the hole is reamed all the same
  }
  return {ask.size.value.name, size};
}

/// The drill that leaves what a reamer of this size wants.
const SizeRow& drill_under(const Tables& tables, Telling& telling, const HoleQuestion& ask, const NamedSize& reamer) {
  const ReamAllowance* row = choose_ream_allowance(tables, reamer.length);
  if (row == nullptr)
    throw contradiction(ask.size.text.value_or(reamer.name),
                        "no table says what to leave for a reamer of " + in_words(reamer.length, ask));
  const bool metric = ask.size.value.metric;
  const Length least = row->allowance.range.low;
  const Length most = row->allowance.range.high;
  const SizeRow* drill = nearest_drill(tables.sizes, {reamer.length - middle({least, most}), metric});
  if (drill == nullptr || drill->length() + least > reamer.length + same_size_within)
    drill = drill_at_or_below(tables.sizes, {reamer.length - least, metric});
  if (drill == nullptr)
    throw contradiction(ask.size.text.value_or(reamer.name),
                        "no drill of the ladder is small enough for a reamer of " + in_words(reamer.length, ask));
  const Length left = reamer.length - drill->length();
  telling.because_of_row("left for the reamer",
                         "reamers of " + std::string(row->diameter.text) + ": " + std::string(row->allowance.text),
                         measure(left), row->source);
  if (left > most + same_size_within) {
    telling.flag("much-to-ream");
    telling.word("left", in_words(left, ask));
  }
  return *drill;
}

/// The speeds a reamer wants: of its rows; where the metal has none, a share of the drilling speed.
std::optional<Band<SpindleSpeed>> wanted_speed(const Tables& tables, Answer& part, Telling& of_part, Telling& telling,
                                               const HoleQuestion& ask, Length reamer) {
  try {
    return of_part.wanted_speed(reamer, "anneal it, or hone the hole");
  } catch (const Fault& fault) {
    if (fault.kind != FaultKind::conflict) throw;
  }
  Answer drilling("drill");
  Telling of_drilling(tables, drilling, &ask.material->value, ask.cutter.value->key);
  const auto drill = of_drilling.wanted_speed(reamer, "anneal it, or hone the hole");
  if (!drill) {
    part.refuse(drilling.reason.value_or(""));
    part.instead = drilling.instead;
    return std::nullopt;
  }
  take_over(part, drilling, "drill of that size: ");
  const Limit& share = limit(tables.limits, "reaming_speed_share");
  of_part.because_of_row("cutting speed", std::string(share.what), measure(share.ratio), share.source);
  telling.flag("reaming-by-rule");
  telling.word("reaming-share", std::string(share.value));
  return Band<SpindleSpeed>{share.ratio * drill->low, share.ratio * drill->first, share.ratio * drill->high};
}

/// A reamer is fed faster than a drill of its size.
Band<FeedPerRev> reaming_feed(const Tables& tables, Telling& of_part, const HoleQuestion& ask, Length reamer) {
  const FeedChoice feed = choose_drilling_feed(tables, ask.material->value, reamer_cutter, reamer);
  const Limit& least = limit(tables.limits, "reaming_feed_least");
  const Limit& most = limit(tables.limits, "reaming_feed_most");
  const Band<FeedPerRev> band{least.ratio * feed.band.first, least.ratio * feed.band.first,
                              most.ratio * feed.band.first};
  of_part.because_of_row("feed of a drill of that size", std::string(feed.row->diameter.text), measure(feed.band.first),
                         feed.row->source);
  of_part.because_of_row("feed",
                         std::string(least.what) + ", " + std::string(least.value) + " to " + std::string(most.value),
                         Answer::of(band), least.source);
  return band;
}

/// A machine that is too fast for a reamer is none for it: a hand is.
void judge_reamer(Answer& answer, const SpindleOutcome& outcome) {
  judge(answer, "back off", "for the reamer, " + outcome.reason,
        outcome.verdict == "do not" ? "turn the reamer by hand, in a wrench, the spindle only guiding it"
                                    : "turn the reamer by hand, or " + outcome.instead);
}

Value reamer_with_speeds(const Tables& tables, Answer& answer, Telling& telling, const HoleQuestion& ask,
                         const NamedSize& reamer) {
  std::vector<Member> members{{"name", reamer.name}, {key::size.name, measure(reamer.length)}};
  if (!ask.material) return members;
  Answer part("ream");
  Telling of_part(tables, part, &ask.material->value, reamer_cutter);
  const auto wanted = wanted_speed(tables, part, of_part, telling, ask, reamer.length);
  if (wanted) {
    const Machine* machine = ask.machine ? ask.machine->value : nullptr;
    const SpindleOutcome outcome = decide_spindle({*wanted, 1, machine, {}});
    if (outcome.verdict != "go") judge_reamer(answer, outcome);
    if (outcome.verdict != "do not") {
      members.push_back({key::spindle_speed.name, Answer::of(outcome.band)});
      members.push_back({key::feed_per_rev.name, Answer::of(reaming_feed(tables, of_part, ask, reamer.length))});
      if (outcome.setting.step) telling.word("then-step", "; reamer: step " + std::string(outcome.setting.step->name));
    }
  } else {
    judge(answer, "do not", "for the reamer, " + part.reason.value_or(""), part.instead.value_or(""));
  }
  take_over(answer, part, "reamer: ");
  return members;
}

} // namespace

HolePlan plan_reamed(const Tables& tables, Answer& answer, Telling& telling, const HoleQuestion& ask) {
  telling.flag("reamed");
  const NamedSize reamer = ask.what.value == HoleKind::pin ? pin_reamer(tables, answer, telling, ask)
                                                           : reamer_itself(tables, answer, telling, ask);
  const SizeRow& drill = drill_under(tables, telling, ask, reamer);
  return {&drill, reamer_with_speeds(tables, answer, telling, ask, reamer)};
}

} // namespace quillside
