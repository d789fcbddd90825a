// Holes for screws: tapped, gone through, countersunk.

#include <algorithm>

#include <quillside/data/point_limit.hpp>
#include <quillside/model/countersink.hpp>
#include <quillside/model/depth_stop.hpp>
#include <quillside/model/screw_thread.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>

#include "hole_parts.hpp"
#include "spindle.hpp"

namespace quillside {

namespace {

std::string percent(double share) { return significant(100 * share, 2) + " %"; }

UnitSystem units_of(const HoleQuestion& ask) { return ask.size.value.metric ? UnitSystem::metric : UnitSystem::inch; }
std::string in_words(Length length, const HoleQuestion& ask) { return print_length_with_unit(length, units_of(ask)); }

std::string in_words(const SizeRow& drill, const HoleQuestion& ask) {
  return std::string(drill.name) + " (" + in_words(drill.length(), ask) + ")";
}

/// How much wider than its drill a hole usually is at the most.
Length usual_oversize(const Tables& tables, Length drill) {
  const UsualOversize* row = choose_usual_oversize(tables.usual_oversizes, drill);
  return row == nullptr ? mm(0) : std::max(mm(0), row->oversize.range.high);
}

const ScrewThread& thread_of(const HoleQuestion& ask) {
  if (ask.thread) return *ask.thread->value;
  if (ask.size.value.thread != nullptr) return *ask.size.value.thread;
  throw wrong_word(ask.size.text.value_or(ask.size.value.name),
                   "is the size of no thread in the tables: name a screw, as M3, no4 or 1/4-20",
                   {"M3", "no4", "1/4-20"});
}

/// Metals that hold on to a tap.
bool holds_taps(std::string_view metal) {
  return metal.ends_with("stainless") || metal == "tool-steel" || metal == "titanium";
}

const Limit& most_thread(const Tables& tables, const HoleQuestion& ask) {
  return limit(tables.limits, holds_taps(metal_of(ask)) ? "thread_most_stainless" : "thread_most");
}

/// The drill nearest to what is wanted; where nobody asked for a percentage, the next larger when that is over what the
/// metal bears.
const SizeRow& tap_drill(const Tables& tables, const HoleQuestion& ask, Thread thread, double wanted) {
  const DrillWanted hole{tap_hole(thread, wanted), thread_of(ask).metric};
  const SizeRow* drill = nearest_drill(tables.sizes, hole);
  if (drill != nullptr && !ask.engagement && share_of_thread(thread, drill->length()) > most_thread(tables, ask).ratio)
    drill = drill_at_or_above(tables.sizes, hole);
  if (drill == nullptr)
    throw contradiction(ask.size.text.value_or(ask.size.value.name),
                        percent(wanted) + " of this thread wants a hole of " + in_words(hole.hole, ask) +
                            ", and no drill comes near it");
  return *drill;
}

void judge_thread(const Tables& tables, Answer& answer, const HoleQuestion& ask, Thread thread, const SizeRow& drill) {
  const double share = share_of_thread(thread, drill.length());
  const Limit& most = most_thread(tables, ask);
  const Limit& least = limit(tables.limits, "thread_least");
  const auto other = [&](double wanted) {
    const SizeRow* row = nearest_drill(tables.sizes, {tap_hole(thread, wanted), thread_of(ask).metric});
    return row == nullptr ? std::string("another drill")
                          : in_words(*row, ask) + ": " + percent(share_of_thread(thread, row->length()));
  };
  const double first = choose_engagement(tables, metal_of(ask)).first.range.low;
  if (share_of_basic_profile(thread, drill.length()) > 1)
    judge(answer, "do not",
          "a hole of " + in_words(drill.length(), ask) + " is under the least minor diameter of this thread, " +
              in_words(basic_minor_diameter(thread), ask) + ": the screw binds and the tap breaks",
          other(first));
  else if (share > most.ratio)
    judge(answer, "back off",
          percent(share) + " of thread is over the " + percent(most.ratio) + " that this metal is given: taps break",
          other(first));
  else if (share < least.ratio)
    judge(answer, "back off",
          percent(share) + " of thread is under the " + percent(least.ratio) + " that is relied on: it strips",
          other(first));
}

/// A blind hole instead of a through one: how deep, and whether it fits into the part.
void tell_blind(const Tables& tables, Telling& telling, const HoleQuestion& ask, Thread thread, const SizeRow& drill) {
  const Limit& lead = limit(tables.limits, "tap_lead");
  const Length full = limit(tables.limits, "thread_length").ratio * thread.major;
  const Length depth = blind_hole_depth({full, thread.pitch, lead.ratio});
  telling.because_of_row("lead of a plug tap", std::string(lead.what), measure(lead.ratio), lead.source);
  telling.because_of_law("blind hole, full width", blind_thread_law, measure(depth));
  telling.flag("blind");
  telling.word("blind", in_words(depth, ask));
  telling.word("full-thread", in_words(full, ask));
  const DrillPointRow& point =
      ask.material ? choose_drill_point(tables, ask.material->value) : choose_drill_point(tables);
  const Length tip = depth + point_allowance({drill.length(), point.point.range.low});
  const Length thick = ask.thick->value.value;
  telling.word("blind-fit", tip < thick ? "; the tip then stops " + in_words(thick - tip, ask) + " above the back"
                                        : "; this part is too thin for it");
}

/// Close and loose beside the normal hole, and the counterbore of a cap head, where the tables have them.
void tell_other_holes(const Tables& tables, Telling& telling, const HoleQuestion& ask, const ClearanceChoice& choice) {
  if (choice.of_next_larger) return;
  if (choice.row->close.given())
    telling.because_of_row("close hole", std::string(choice.row->close.text), measure(choice.row->close.range.low),
                           choice.row->source);
  if (choice.row->loose.given())
    telling.because_of_row("loose hole", std::string(choice.row->loose.text), measure(choice.row->loose.range.low),
                           choice.row->source);
  if (const ScrewHead* cap = choose_screw_head(tables, ask.size.value, "cap")) {
    telling.because_of_row("counterbore for a cap head", "width", measure(cap->counterbore.range.low), cap->source);
    telling.because_of_row("counterbore for a cap head", "depth: the height of the head",
                           measure(cap->height.range.low), cap->source);
    telling.flag("counterbore");
    telling.word("counterbore", in_words(cap->counterbore.range.low, ask));
    telling.word("cap", in_words(cap->height.range.low, ask));
  }
}

const SizeRow& clearance_drill(const Tables& tables, Telling& telling, const HoleQuestion& ask) {
  const auto choice = choose_clearance(tables, ask.size.value);
  if (!choice)
    throw wrong_word(ask.size.text.value_or(ask.size.value.name),
                     "is larger than any screw with a clearance hole in the tables; 'quillside tables new "
                     "clearance_hole' prints a row to fill in");
  const SizeRow* drill = drill_at_or_above(tables.sizes, {choice->hole, ask.size.value.metric});
  if (drill == nullptr)
    throw contradiction(ask.size.text.value_or(ask.size.value.name),
                        "its hole is " + in_words(choice->hole, ask) + ", and no drill of the ladder is so large");
  telling.because_of_row(choice->of_next_larger ? "room of the next larger screw" : "normal hole",
                         std::string(choice->row->screw) + ": " + std::string(choice->row->normal.text),
                         measure(choice->hole), choice->row->source);
  if (choice->of_next_larger) {
    telling.flag("next-larger-screw");
    telling.word("screw", std::string(choice->row->screw));
  }
  tell_other_holes(tables, telling, ask, *choice);
  return *drill;
}

/// The cone of a head: as named, of this screw's row, or of any in its series.
Typed<Angle> cone_of(const Tables& tables, const HoleQuestion& ask, const ScrewHead* head) {
  if (ask.cone) {
    if (!(ask.cone->value >= degrees(30) && ask.cone->value <= degrees(150)))
      throw wrong_word(ask.cone->text.value_or(""), "is no cone of a countersink: give 30 to 150 deg",
                       {"82", "90", "100"});
    return *ask.cone;
  }
  if (head != nullptr) return {head->cone.range.low, std::nullopt};
  for (const auto& row : tables.screw_heads) {
    const bool metric = row.screw.starts_with('M');
    if (row.shape == "flat" && metric == ask.size.value.metric) return {row.cone.range.low, std::nullopt};
  }
  throw contradiction("--cone", "no table has the cone of such a head: give --cone");
}

Typed<Length> head_of(Telling& telling, const HoleQuestion& ask, const ScrewHead* head, Angle cone, Length hole) {
  if (ask.head) {
    if (!(ask.head->value > hole))
      throw contradiction("--head", "--head " + ask.head->text.value_or("") + " is no wider than the hole of " +
                                        in_words(hole, ask) + " that the screw goes through");
    return *ask.head;
  }
  if (head == nullptr)
    throw contradiction("--head", "no table has the flat head of " + ask.size.text.value_or(ask.size.value.name) +
                                      ": measure it and give --head");
  telling.because_of_row("height of the head", std::string(head->height.text), measure(head->height.range.low),
                         head->source);
  const Length sharp = sharp_head({ask.size.value.major, head->height.range.low, cone});
  telling.because_of_law("head to its sharp edge", sharp_head_law, measure(sharp));
  if (!(sharp > hole))
    throw contradiction("--cone", "a head of " + in_words(sharp, ask) + " is no wider than its hole of " +
                                      in_words(hole, ask) + ": give --head as you measure it");
  return {sharp, std::nullopt};
}

void judge_countersink(const Tables& tables, Answer& answer, const HoleQuestion& ask, Length depth) {
  if (!ask.thick) return;
  const Length thick = ask.thick->value.value;
  const Limit& most = limit(tables.limits, "countersink_most");
  const std::string deep = "the countersink is " + in_words(depth, ask) + " deep and the part " + in_words(thick, ask);
  if (depth >= thick)
    judge(answer, "do not", deep + ": it comes out at the back", "a thicker part, a smaller screw or another head");
  else if (depth > most.ratio * thick)
    judge(answer, "back off", deep + ": it leaves a knife edge round the hole",
          "a thicker part, a smaller screw, or a head of a blunter cone");
}

/// What the countersink runs at: slower than a drill as wide as it cuts.
void tell_countersink_speed(const Tables& tables, Answer& answer, Telling& telling, const HoleQuestion& ask,
                            Length head) {
  if (!ask.material) return;
  Answer wide("drill");
  Telling of_wide(tables, wide, &ask.material->value, ask.cutter.value->key);
  const auto drill = of_wide.wanted_speed(head, "");
  if (!drill) return; // the drill itself is refused for the same reason
  const Limit& least = limit(tables.limits, "countersink_speed_least");
  const Limit& most = limit(tables.limits, "countersink_speed_most");
  const Band<SpindleSpeed> band{least.ratio * drill->low, least.ratio * drill->first, most.ratio * drill->high};
  const Machine* machine = ask.machine ? ask.machine->value : nullptr;
  const SpindleOutcome outcome = decide_spindle({band, 1, machine, {}});
  telling.because_of_row("countersink, speed at the least", std::string(least.what), measure(least.ratio),
                         least.source);
  telling.because_of_row("countersink, speed at the most", std::string(most.what), measure(most.ratio), most.source);
  telling.because_of_row("countersink, spindle speed", "share x that of a drill as wide as the head",
                         Answer::of(outcome.band), least.source);
  telling.flag("countersink-speed");
  telling.word("cs-speed", print_spindle_speed(outcome.setting.speed) + " rev/min");
  if (outcome.setting.step) telling.word("then-step", "; countersink: step " + std::string(outcome.setting.step->name));
  if (outcome.setting.speed > band.high)
    judge(answer, "back off",
          "for the countersink, which wants " + print_spindle_speed(band.first) +
              " rev/min, the slowest of this machine is too fast: it chatters",
          "turn the countersink by hand in a brace, or a slower machine");
}

} // namespace

HolePlan plan_tap(const Tables& tables, Answer& answer, Telling& telling, const HoleQuestion& ask) {
  const ScrewThread& row = thread_of(ask);
  const Thread thread{row.major.range.low, row.pitch.range.low};
  const ThreadEngagement& given = choose_engagement(tables, metal_of(ask));
  if (ask.engagement && !(ask.engagement->value >= 0.01 && ask.engagement->value <= 1))
    throw wrong_word(ask.engagement->text.value_or(""), "is no percentage of thread: give 1 to 100, as 75",
                     {"65", "75"});
  const Typed<double> wanted = ask.engagement.value_or(Typed<double>{given.first.range.low, std::nullopt});
  answer.input("engagement", wanted);
  const SizeRow& drill = tap_drill(tables, ask, thread, wanted.value);
  telling.because_of_row(
      "thread", std::string(row.key) + ": " + std::string(row.major.text) + ", pitch " + std::string(row.pitch.text),
      measure(thread.pitch), row.source);
  telling.because_of_law("basic minor diameter", basic_profile_law, measure(basic_minor_diameter(thread)));
  if (!ask.engagement)
    telling.because_of_row("percentage of thread",
                           (given.metal.empty() ? "any metal: " : "this metal: ") + std::string(given.engagement.text),
                           measure(given.first.range.low), given.source);
  telling.because_of_law("wanted hole", tap_drill_law, measure(tap_hole(thread, wanted.value)));
  const double share = share_of_thread(thread, drill.length());
  const Length widest = std::min(thread.major, drill.length() + usual_oversize(tables, drill.length()));
  answer.found(key::engagement, Spread<double>{std::min(share, share_of_thread(thread, widest)), share, share});
  telling.because_of_law("share of the basic profile", basic_profile_law,
                         measure(share_of_basic_profile(thread, drill.length())));
  judge_thread(tables, answer, ask, thread, drill);
  if (holds_taps(metal_of(ask))) telling.flag("holds-taps");
  if (ask.thick) tell_blind(tables, telling, ask, thread, drill);
  return {&drill, {}};
}

HolePlan plan_clear(const Tables& tables, Answer& answer, Telling& telling, const HoleQuestion& ask) {
  const SizeRow& drill = clearance_drill(tables, telling, ask);
  const Length room = drill.length() - ask.size.value.major;
  answer.found(key::clearance, Spread<Length>{room, room, room + usual_oversize(tables, drill.length())});
  return {&drill, {}};
}

HolePlan plan_countersink(const Tables& tables, Answer& answer, Telling& telling, const HoleQuestion& ask) {
  const SizeRow& drill = clearance_drill(tables, telling, ask);
  const ScrewHead* row = choose_screw_head(tables, ask.size.value, "flat");
  const Typed<Angle> cone = cone_of(tables, ask, row);
  const Typed<Length> head = head_of(telling, ask, row, cone.value, drill.length());
  answer.input("head", head);
  answer.input("cone", cone);
  const Length depth = countersink_depth({head.value, drill.length(), cone.value});
  answer.found(key::countersink_depth, depth);
  telling.because_of_law("countersink depth", countersink_law, measure(depth));
  judge_countersink(tables, answer, ask, depth);
  if (ask.head) telling.flag("head-measured");
  tell_countersink_speed(tables, answer, telling, ask, head.value);
  return {&drill, {}};
}

} // namespace quillside
