#include <quillside/job/burr.hpp>

#include <algorithm>
#include <array>
#include <stdexcept>

#include <quillside/data/choose_force.hpp>
#include <quillside/model/surface_speed.hpp>
#include <quillside/model/whirl.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>
#include <quillside/words/suggest.hpp>

#include "spindle.hpp"
#include "telling.hpp"

namespace quillside {

namespace {

constexpr std::array<std::string_view, 7> shape_names{"cylinder", "ball",  "oval",         "cone",
                                                      "tree",     "flame", "inverted-cone"};

/// The burr as a beam with a head on it.
struct Shaft {
  Typed<Length> shank;
  Typed<Length> overhang;
  Typed<Length> head_length;
  Spread<SpindleSpeed> whirl;
  HeadBody head;
};

std::optional<Shaft> shaft_of(const Tables& tables, const BurrQuestion& ask) {
  const BurrSizeRow* usual = choose_burr_size(tables, ask.size.value.length);
  if (usual == nullptr && (!ask.shank || !ask.head_length)) return std::nullopt;
  const auto typed = [](const std::optional<Typed<Length>>& word, Length taken) {
    return word.value_or(Typed<Length>{taken, std::nullopt});
  };
  Shaft shaft{typed(ask.shank, usual == nullptr ? mm(0) : usual->shank.range.low),
              typed(ask.overhang, limit(tables.limits, "burr_overhang").length),
              typed(ask.head_length, usual == nullptr ? mm(0) : usual->head_length.range.low),
              {},
              {}};
  // Heads of carbide or diamond are brazed or plated on shanks of steel; a solid carbide shank is stiffer.
  const Density density = ask.cutter.value->key == "carbide" ? carbide_density : steel_density;
  try {
    shaft.head = head_body({ask.shape.value, ask.size.value.length, shaft.head_length.value, density});
    shaft.whirl = whirl_speed({shaft.shank.value, shaft.overhang.value, steel_modulus, steel_density}, shaft.head,
                              usual_grip(shaft.shank.value));
  } catch (const std::domain_error& error) {
    const auto& word = ask.overhang ? ask.overhang : ask.shank ? ask.shank : ask.head_length;
    throw contradiction(word ? word->text.value_or("") : "",
                        "no whirl can be computed for a shank of " +
                            print_length_with_unit(shaft.shank.value, UnitSystem::metric) + " standing out " +
                            print_length_with_unit(shaft.overhang.value, UnitSystem::metric) + ": " + error.what());
  }
  return shaft;
}

void tell_shaft(const Tables& tables, Answer& answer, Telling& telling, const BurrQuestion& ask, const Shaft& shaft) {
  answer.input("shank", shaft.shank);
  answer.input("overhang", shaft.overhang);
  answer.input("head_length", shaft.head_length);
  answer.input_word("shape", name_of(ask.shape.value), ask.shape.text);
  if (const auto* usual = choose_burr_size(tables, ask.size.value.length); usual != nullptr && !ask.shank)
    telling.because_of_row("shank and head",
                           "heads of " + std::string(usual->diameter.text) + ": shank " +
                               std::string(usual->shank.text) + ", head " + std::string(usual->head_length.text),
                           measure(shaft.shank.value), usual->source);
  answer.found(key::whirl_speed, shaft.whirl);
  telling.because_of_law("whirl speed", whirl_law, Answer::of(shaft.whirl));
  const SpindleSpeed most = hand_whirl_limit(shaft.whirl);
  telling.because_of_law("half of it for the hand", hand_whirl_law, measure(most));
  // A head that breaks off as its shank folds leaves on a circle of the overhang.
  const SpindleSpeed at = most;
  telling.because_of_law("energy of a head thrown at that speed, the shank folded", thrown_head_law,
                         measure(thrown_energy(shaft.head, at, shaft.overhang.value)));
  telling.word("whirl", print_spindle_speed_limit(most));
  telling.word("overhang", print_length_with_unit(shaft.overhang.value, UnitSystem::metric) + " (" +
                               print_length_with_unit(shaft.overhang.value, UnitSystem::inch) + ")");
}

/// What must not be exceeded, the lowest first, with the name an answer gives it.
struct Bound {
  SpindleSpeed speed;
  std::string_view name;
};

Bound lower(const std::optional<Bound>& one, Bound other) { return one && !(other.speed < one->speed) ? *one : other; }

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

/// The lowest of what must not be exceeded, whatever the metal wants: the mark on the burr, half its whirl speed, the
/// end of the machine, and where no mark is known the fastest hand tool there is.
std::optional<Bound> bound_of(const Tables& tables, Telling& telling, const BurrQuestion& ask,
                              const std::optional<Shaft>& shaft, const Band<SpindleSpeed>& wanted) {
  std::optional<Bound> lowest;
  if (ask.marked) lowest = Bound{ask.marked->value, "mark"};
  if (ask.machine) lowest = lower(lowest, {fastest(*ask.machine->value), "tool"});
  if (shaft) lowest = lower(lowest, {hand_whirl_limit(shaft->whirl), "whirl"});
  const Limit& top = limit(tables.limits, "hand_tool_top");
  const bool beyond = wanted.first > rev_per_min(top.ratio) && (!lowest || lowest->speed > rev_per_min(top.ratio));
  if (beyond && !ask.marked) {
    telling.flag("beyond-hand-tools");
    telling.word("top", std::string(top.value));
    telling.because_of_row("hand tools", std::string(top.what), measure(rev_per_min(top.ratio)), top.source);
    lowest = lower(lowest, {rev_per_min(top.ratio), "tool"});
  }
  return lowest;
}

std::string_view limited_by(const SpindleOutcome& outcome, const std::optional<Bound>& bound,
                            const Band<SpindleSpeed>& wanted) {
  if (bound && bound->speed < wanted.first && outcome.setting.speed <= bound->speed) return bound->name;
  return outcome.lowered_by_tool || outcome.lowered_by_machine ? "tool" : "metal";
}

} // namespace

std::string_view name_of(HeadShape shape) { return shape_names[static_cast<std::size_t>(shape)]; }

HeadShape read_head_shape(const std::string& word) {
  const auto found = std::find(shape_names.begin(), shape_names.end(), word);
  if (found != shape_names.end()) return static_cast<HeadShape>(found - shape_names.begin());
  const std::vector<std::string_view> all(shape_names.begin(), shape_names.end());
  std::string list;
  for (const auto one : all) list += (list.empty() ? "" : ", ") + std::string(one);
  const auto nearest = nearest_word(word, all);
  throw wrong_word(word,
                   "is no shape of a head" + (nearest ? "; '" + *nearest + "' is meant?" : std::string(";")) +
                       " allowed: " + list,
                   {all.begin(), all.end()}, nearest);
}

Answer burr(const Tables& tables, const BurrQuestion& ask) {
  const Length diameter = ask.size.value.length;
  const Machine* machine = ask.machine ? ask.machine->value : nullptr;
  const auto shaft = shaft_of(tables, ask);

  Answer answer("burr");
  Telling telling(tables, answer, &ask.material.value, ask.cutter.value->key);
  telling.tool(ask.size, ask.material, ask.cutter, ask.machine);
  if (ask.marked) answer.input("marked", *ask.marked);

  if (const auto wanted = telling.wanted_speed(diameter, "grind it")) {
    if (shaft) tell_shaft(tables, answer, telling, ask, *shaft);
    const auto bound = bound_of(tables, telling, ask, shaft, *wanted);
    SpindleQuestion spindle{*wanted, 1, machine, {}};
    if (bound) spindle.mark = bound->speed;
    const SpindleOutcome outcome = decide_spindle(spindle);
    tell_spindle(answer, telling, spindle, outcome);
    // A hand tool has no steps to name.
    std::erase_if(answer.settings, [](const Member& member) { return member.name == key::step.name; });
    answer.found(key::cutting_speed, cutting_speed(outcome.setting.speed, diameter));
    if (bound) answer.found(key::limit_speed, bound->speed);
    answer.found(key::limited_by, limited_by(outcome, bound, *wanted));
    if (!ask.marked) telling.flag("no-mark");
    tell_hand_practice(tables, telling, ask, *wanted);
    if (outcome.verdict == "do not") answer.refuse(outcome.reason);
  }
  telling.cautions(machine == nullptr ? std::string_view{} : machine->kind);
  return answer;
}

} // namespace quillside
