#include <quillside/job/fit.hpp>

#include <algorithm>
#include <array>
#include <cmath>

#include <quillside/data/choose_fit.hpp>
#include <quillside/data/choose_heat.hpp>
#include <quillside/data/limit.hpp>
#include <quillside/model/heat_growth.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>

#include "bench_doubt.hpp"
#include "telling.hpp"

namespace quillside {

namespace {

constexpr std::string_view press_fit = "FN2"; // nothing tighter is pressed into a plate that matters

/// 0.4 thou (10 um): what fits are talked of in.
std::string in_words(Length length) {
  return print_thou(length) + " (" + shortest_decimal(std::round(10000 * in_mm(length)) / 10) + " um)";
}
/// How a fit stands in words, tight above zero and loose below it.
std::string as_fit(Length tight) {
  if (tight == mm(0)) return "size for size";
  return in_words(tight < mm(0) ? -tight : tight) + (tight < mm(0) ? " loose" : " tight");
}

/// The way of the part that the slot closes on.
struct Closing {
  std::string_view name; // thickness, width
  std::string_view flag;
  Typed<Reading<Length>> reading;
  Spread<Length> size;
};

Closing closing_of(const Tables& tables, const Typed<Reading<Length>>& reading, std::string_view name,
                   std::string_view flag, std::string_view what) {
  const std::string typed = reading.text.value_or("");
  if (!(reading.value.value > mm(0)))
    throw wrong_word(typed, "is no " + std::string(name) + " of a part: give more than 0");
  if (!(reading.value.half_width < reading.value.value))
    throw wrong_word(typed, "is no reading of a " + std::string(name) + ": its error is as large as the reading");
  return {name, flag, reading, doubt_of(tables, what, reading.value)};
}

struct Part {
  Closing closing;              // what gain and clearance are over
  std::optional<Closing> other; // its width, where the thickness closes
};

Part part_of(const Tables& tables, const FitQuestion& ask) {
  const auto width = [&] { return closing_of(tables, *ask.part_width, "width", "part_width", "part-width"); };
  if (ask.part) {
    Part part{closing_of(tables, *ask.part, "thickness", "part", "part"), {}};
    if (ask.part_width) part.other = width();
    return part;
  }
  if (ask.part_width) return {width(), {}};
  throw wrong_word("--part",
                   "is missing: give the measured thickness of the part, --part L, or its width, --part-width L",
                   {"--part L", "--part-width L"}, "--part");
}

void check(const FitQuestion& ask, Temperature room) {
  std::vector<std::string> ways;
  if (ask.interference) ways.emplace_back("--interference");
  if (ask.clearance) ways.emplace_back("--clearance");
  if (ask.fit) ways.emplace_back("--fit");
  if (ways.size() > 1)
    throw contradiction(ways[1], ways[0] + " and " + ways[1] + " both say how tight it is; give one of them");
  const auto warm = [&](const std::optional<Typed<Temperature>>& heat, const std::string& flag) {
    if (heat && !(heat->value > room))
      throw wrong_word(heat->text.value_or(""),
                       "is no heat for " + flag + ": give more than the shop's " + print_temperature(room));
  };
  warm(ask.heat, "--heat");
  warm(ask.tempered, "--tempered");
}

/// How tight it is at the shop's heat.
struct Tightness {
  Spread<Length> interference; // below zero: clearance
  std::optional<FitLimits> limits;
};

Tightness tightness_of(const Tables& tables, const FitQuestion& ask, const Closing& closing) {
  if (ask.interference || ask.clearance) {
    const Length tight = ask.interference ? ask.interference->value : -ask.clearance->value;
    // The slot is cut to the reading: what the part is more or less, the fit is tighter or looser.
    return {{tight - (closing.size.value - closing.size.low), tight, tight + (closing.size.high - closing.size.value)},
            {}};
  }
  const FitLimits limits =
      fit_limits(tables, ask.fit ? std::string_view(ask.fit->value) : usual_fit, closing.size.value);
  const auto range = limits.interference;
  return {{range.low, (range.low + range.high) / 2.0, range.high}, limits};
}

/// The limits of a fit that nobody asked for; nothing where its rows do not reach.
std::optional<FitLimits> limits_within_reach(const Tables& tables, std::string_view name, Length size) {
  try {
    return fit_limits(tables, name, size);
  } catch (const Fault&) {
    return std::nullopt;
  }
}

/// The three that the trade asks for, side by side.
void tell_usual_fits(const Tables& tables, Telling& telling, Length size) {
  std::string three;
  for (const std::string_view name : {"slide", "push", "press"})
    if (const auto limits = limits_within_reach(tables, name, size))
      three += (three.empty() ? "" : "; ") + limits->name + " " + limits->class_name + " " +
               as_fit(limits->interference.low) + " to " + as_fit(limits->interference.high);
  if (three.empty()) return;
  telling.word("three", three);
  telling.flag("fits-here");
}

/// A reading whose doubt is wider than the fit is high cannot tell one end of it from the other.
void tell_doubt(Telling& telling, const Closing& closing, const Tightness& tight) {
  const Length doubt = closing.size.high - closing.size.low;
  const Length wide = tight.limits ? tight.interference.high - tight.interference.low
                                   : std::max(tight.interference.value, -tight.interference.value);
  if (!(doubt > wide)) return;
  telling.word("closing", std::string(closing.name));
  telling.word("doubt", in_words(doubt / 2.0));
  telling.word("wide", in_words(wide));
  telling.flag("reading-too-coarse");
}

void tell_tightness(const Tables& tables, Answer& answer, Telling& telling, const FitQuestion& ask,
                    const Closing& closing, const Tightness& tight) {
  if (ask.interference) answer.input("interference", *ask.interference);
  if (ask.clearance) answer.input("clearance", *ask.clearance);
  answer.found(key::interference, tight.interference);
  if (tight.limits) {
    answer.input_word("fit", tight.limits->name, ask.fit ? ask.fit->text : std::nullopt);
    const std::string named = tight.limits->class_name.empty() ? tight.limits->name : tight.limits->class_name;
    const Measure interference = Answer::of(tight.interference);
    for (const auto source : tight.limits->sources)
      telling.because_of_row("interference, " + named,
                             tight.limits->words.empty() ? "shaft limits less hole limits" : tight.limits->words,
                             interference, source);
    telling.word("class", named);
    telling.flag("of-a-class");
    if (tight.limits->transition()) telling.flag("may-slip");
    if (tight.limits->class_name.empty()) telling.flag("driven-fit");
  } else {
    telling.because_of_row("doubt of the fit", "as far as the reading of the part may be off", Answer::of(closing.size),
                           "common-practice");
  }
  tell_usual_fits(tables, telling, closing.size.value);
  tell_doubt(telling, closing, tight);
}

/// How hot it may get, who says so, and what is lost past it.
struct Ceiling {
  Temperature heat;
  std::string whose;
  std::string what;
};

std::optional<Ceiling> ceiling_of(const Tables& tables, Telling& telling, const FitQuestion& ask) {
  std::optional<Ceiling> lowest;
  const auto add = [&](Ceiling one) {
    if (!lowest || one.heat < lowest->heat) lowest = std::move(one);
  };
  const auto of = [&](const Work& work, const std::string& whose) {
    const HeatCeiling* row = choose_ceiling(tables, work, ask.tempered.has_value());
    if (row == nullptr) return;
    telling.because_of_row("ceiling of the " + whose, std::string(row->ceiling.text) + ": " + std::string(row->what),
                           measure(row->ceiling.range.low), row->source);
    const Source& source = source_of(tables, row->source);
    if (source.standing == "from memory") {
      telling.flag("ceiling-from-memory");
      telling.word("ceiling-of", std::string(work.material->key));
    }
    if (row->until_tempered) telling.flag("temper-unknown");
    add({row->ceiling.range.low, std::string(work.material->key), std::string(row->what)});
  };
  of(ask.material.value, "plate");
  if (ask.to) of(ask.to->value, "part");
  if (ask.tempered) {
    telling.because_of_row("ceiling by the temper", "a hardened part loses it past the heat it was tempered at",
                           measure(ask.tempered->value), "common-practice");
    add({ask.tempered->value, ask.to ? std::string(ask.to->value.material->key) : "the tempered part",
         "the temper drawn at that heat"});
  }
  return lowest;
}

/// What the plate's slot does with heat.
struct Heat {
  const Tables& tables;
  const FitQuestion& ask;
  Temperature room;
  Spread<Length> interference;

  [[nodiscard]] ExpansionChoice expansion(Temperature hot) const {
    return choose_expansion(tables, ask.material.value, hot);
  }
  [[nodiscard]] Spread<Length> gain(const Spread<Length>& size, Temperature hot) const {
    return heat_growth(expansion(hot).mean, size, hot - room);
  }
  /// The mean expansion depends on where it leads to: a few rounds settle it far below a degree.
  [[nodiscard]] Temperature needed(Length size, Length tight) const {
    const Length clearance = limit(tables.limits, "hot_clearance").length;
    Temperature hot = room + kelvins(100);
    for (int round = 0; round < 8; ++round)
      hot = heat_needed({expansion(hot).mean.value, size, tight, clearance, room});
    return hot;
  }
};

void tell_expansion(const Tables& tables, Telling& telling, const ExpansionChoice& choice, std::string_view whose) {
  for (const auto* row : choice.rows) {
    telling.because_of_row("expansion of the " + std::string(whose),
                           std::string(row->expansion.text) + ", " + std::string(row->over.text),
                           Answer::of(choice.mean), row->source);
    if (source_of(tables, row->source).standing == "derived") {
      telling.flag("expansion-derived");
      telling.word("expansion-of", std::string(row->material));
    }
  }
}

void tell_colour(const Tables& tables, Telling& telling, const FitQuestion& ask, Temperature hot) {
  const auto metal = ask.material.value.material->metal;
  telling.word("plate", std::string(ask.material.value.material->key));
  if (const auto* row = colour_at(tables, metal, hot)) {
    telling.word("colour", std::string(row->colour));
    telling.because_of_row("colour of a bright surface",
                           std::string(row->colour) + " from " + std::string(row->heat.text),
                           measure(row->heat.range.low), row->source);
    telling.flag("oxide-colour");
  } else if (const auto* first = first_colour(tables, metal)) {
    telling.word("colour", std::string(first->colour));
    telling.word("colour-at", print_temperature(first->heat.range.low));
    telling.because_of_row("first colour of a bright surface",
                           std::string(first->colour) + " from " + std::string(first->heat.text),
                           measure(first->heat.range.low), first->source);
    telling.flag("no-colour-yet");
  }
}

/// What the heat does, told once it is settled.
void tell_heat(Answer& answer, Telling& telling, const Heat& heat, const Part& part, Temperature hot) {
  const auto choice = heat.expansion(hot);
  tell_expansion(heat.tables, telling, choice, "plate");
  const Spread<Length> gain = heat.gain(part.closing.size, hot);
  const Spread<Length> left = clearance_hot(heat.interference, gain);
  answer.found(key::gain, gain);
  answer.found(key::clearance_hot, left);
  telling.because_of_law("gain over the " + std::string(part.closing.name), heat_growth_law, Answer::of(gain));
  telling.because_of_law("clearance hot", clearance_hot_law, Answer::of(left));
  telling.word("heat", print_temperature(hot));
  if (part.other) {
    const Spread<Length> other = heat.gain(part.other->size, hot);
    telling.because_of_law("gain over the width", heat_growth_law, Answer::of(other));
    telling.word("width", print_length_with_unit(part.other->size.value, UnitSystem::inch));
    telling.word("width-gain", in_words(other.value));
    telling.flag("gain-over-width");
  }
  if (heat.ask.to) {
    const auto to = choose_expansion(heat.tables, heat.ask.to->value, hot);
    tell_expansion(heat.tables, telling, to, "part");
    const auto both =
        interference_at(heat.interference, {choice.mean, to.mean}, part.closing.size.value, hot - heat.room);
    telling.because_of_law("interference with the part as hot as the plate", both_heated_law, Answer::of(both));
    telling.word("both", as_fit(both.value));
    telling.flag("both-heated");
  }
  tell_colour(heat.tables, telling, heat.ask, hot);
  telling.flag("heated");
}

/// What heat cannot do, where even the ceiling gives little.
void tell_most(Telling& telling, const Heat& heat, const Part& part, const Ceiling& ceiling) {
  const Length most = heat.gain(part.closing.size, ceiling.heat).value;
  telling.because_of_law("most that heat can give over the " + std::string(part.closing.name), heat_growth_law,
                         measure(most));
  if (!(most < limit(heat.tables.limits, "heat_little").length)) return;
  telling.word("closing", std::string(part.closing.name));
  telling.word("size", print_length_with_unit(part.closing.size.value, UnitSystem::inch) + " (" +
                           print_length_with_unit(part.closing.size.value, UnitSystem::metric) + ")");
  telling.word("most", in_words(most));
  telling.flag("heat-little");
}

void back_off(Answer& answer, std::string reason, std::optional<std::string> instead) {
  answer.verdict = "back off";
  answer.reason = std::move(reason);
  answer.instead = std::move(instead);
}

/// With a heat that was asked for: does it keep under the ceiling, does the part go in.
void judge_heat(Answer& answer, const Heat& heat, const std::optional<Ceiling>& ceiling, const Part& part,
                Temperature hot) {
  const TemperatureDifference margin = kelvins(limit(heat.tables.limits, "heat_margin").ratio);
  if (ceiling && hot > ceiling->heat) {
    answer.refuse(print_temperature(hot) + " is past the ceiling of " + ceiling->whose + ", " +
                  print_temperature(ceiling->heat) + ": it loses " + ceiling->what);
    answer.instead =
        "no hotter than " + print_temperature(ceiling->heat - margin) + ", and cut the slot for what that gains";
    return;
  }
  const Length left = heat.gain(part.closing.size, hot).value - heat.interference.value;
  if (left < mm(0)) {
    const Temperature wanted = heat.needed(part.closing.size.value, heat.interference.value);
    const bool can = !ceiling || wanted <= ceiling->heat - margin;
    back_off(answer, "at " + print_temperature(hot) + " it is still " + in_words(-left) + " tight",
             can ? "heat to " + print_temperature(wanted)
                 : "heat alone does not open it: cut the slot wider by " + in_words(-left) + ", or press it cold");
  } else if (ceiling && hot > ceiling->heat - margin) {
    back_off(answer,
             "within an oven's error of the ceiling of " + ceiling->whose + ", " + print_temperature(ceiling->heat),
             "no hotter than " + print_temperature(ceiling->heat - margin));
  }
}

/// With none asked for: what the fit wants, where heat can give it.
void find_heat(Answer& answer, Telling& telling, const Heat& heat, const std::optional<Ceiling>& ceiling,
               const Part& part) {
  const auto none = [&] { answer.settings.push_back({key::heat_to.name, {}}); };
  if (!(heat.interference.value > mm(0))) return none();
  const TemperatureDifference margin = kelvins(limit(heat.tables.limits, "heat_margin").ratio);
  const Temperature wanted = heat.needed(part.closing.size.value, heat.interference.value);
  if (ceiling && wanted > ceiling->heat - margin) {
    none();
    answer.instead = "heat alone does not open it under the ceiling, " + print_temperature(ceiling->heat) +
                     ": press it cold, or cut the slot to a slip fit";
    return;
  }
  telling.because_of_law("heat that opens it", heat_needed_law, measure(wanted));
  const Temperature most = ceiling ? ceiling->heat - margin : wanted;
  answer.set(key::heat_to, Band<Temperature>{wanted, wanted, most});
  tell_heat(answer, telling, heat, part, wanted);
  const Temperature tight_end = heat.needed(part.closing.size.value, heat.interference.high);
  if (ceiling && tight_end > ceiling->heat - margin) {
    telling.flag("tight-end-too-hot");
  }
}

/// Tighter than any press fit is driven: a soft plate only.
void judge_tightness(const Tables& tables, Answer& answer, Telling& telling, const Closing& closing,
                     const Tightness& tight) {
  if (tight.interference.high > mm(0)) telling.flag("pressed");
  const auto top = limits_within_reach(tables, press_fit, closing.size.value);
  if (!top || !(tight.interference.value > top->interference.high)) return;
  telling.flag("driven-fit");
  if (answer.verdict != "go") return;
  back_off(answer,
           in_words(tight.interference.value) + " tight is more than the top of FN2 for this size, " +
               in_words(top->interference.high),
           "press, or FN2, unless a soft plate is to be driven and filed");
}

} // namespace

Answer fit(const Tables& tables, const FitQuestion& ask) {
  const Temperature room = celsius(limit(tables.limits, "room_temperature").ratio);
  check(ask, room);
  const Part part = part_of(tables, ask);
  const Tightness tight = tightness_of(tables, ask, part.closing);

  Answer answer("fit");
  Telling telling(tables, answer, &ask.material.value, {});
  const auto material = [&](const std::string& name, const Typed<Work>& work) {
    const std::string of = name == "material" ? "" : name + "_";
    answer.input_word(name, work.value.material->key, work.text);
    if (!work.value.condition.empty()) answer.input_word(of + "condition", work.value.condition, work.text);
    if (work.value.hardness) answer.input_word(of + "hardness", print_hardness(*work.value.hardness), work.text);
  };
  material("material", ask.material);
  const auto reading = [&](const Closing& one) {
    answer.input(std::string(one.flag), Typed<Length>{one.reading.value.value, one.reading.text});
  };
  reading(part.closing);
  if (part.other) reading(*part.other);
  if (ask.to) material("to", *ask.to);
  if (ask.tempered) answer.input("tempered", *ask.tempered);
  if (ask.heat) answer.input("heat", *ask.heat);
  answer.input("room", Typed<Temperature>{room, std::nullopt});
  answer.verdict = "go";

  tell_tightness(tables, answer, telling, ask, part.closing, tight);
  const auto ceiling = ceiling_of(tables, telling, ask);
  const Heat heat{tables, ask, room, tight.interference};
  if (ceiling) {
    answer.found(key::heat_limit, ceiling->heat);
    telling.word("limit", print_temperature(ceiling->heat));
    telling.word("whose", ceiling->whose);
    telling.word("what", ceiling->what);
    telling.flag("ceiling");
    tell_most(telling, heat, part, *ceiling);
  } else {
    telling.flag("no-ceiling");
  }
  if (ask.heat) {
    answer.set(key::heat_to, ask.heat->value);
    tell_heat(answer, telling, heat, part, ask.heat->value);
    judge_heat(answer, heat, ceiling, part, ask.heat->value);
  } else {
    find_heat(answer, telling, heat, ceiling, part);
  }
  judge_tightness(tables, answer, telling, part.closing, tight);
  telling.cautions({});
  return answer;
}

} // namespace quillside
