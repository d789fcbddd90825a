#include <quillside/job/mill.hpp>

#include <algorithm>

#include <quillside/model/chip.hpp>
#include <quillside/model/feed.hpp>
#include <quillside/model/surface_speed.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>

#include "mill_forces.hpp"
#include "spindle.hpp"
#include "telling.hpp"

namespace quillside {

namespace {

void refuse_contradictions(const MillQuestion& ask) {
  if (ask.dial && !(ask.dial->value > mm(0)))
    throw wrong_word(ask.dial->text.value_or("0"), "is no travel of a handwheel: give more than 0");
  if (!ask.width) return;
  if (!(ask.width->value > mm(0)))
    throw wrong_word(ask.width->text.value_or("0"), "is no width of a cut: give more than 0");
  if (ask.width->value > ask.size.value.length)
    throw contradiction("--width", "--width " + ask.width->text.value_or("") + " is wider than the cutter, " +
                                       ask.size.text.value_or(ask.size.value.name) +
                                       "; it cuts at most a slot of its own size");
}

std::optional<Typed<Length>> dial_of(const MillQuestion& ask) {
  if (ask.dial) return ask.dial;
  if (ask.machine && ask.machine->value->dial.given())
    return Typed<Length>{ask.machine->value->dial.range.low, std::nullopt};
  return std::nullopt;
}

std::string describe(const ChipLoad& row, Length diameter) {
  const std::string who = std::string(row.material) + ", " + std::string(row.cutter) + ": ";
  if (row.share.given()) return who + std::string(row.share.text) + " of the diameter a tooth";
  const auto end = [](const ChipPoint& point) {
    const std::string low = print_feed_per_tooth(point.load.low, UnitSystem::inch);
    return (point.load.low < point.load.high ? low + " to " + print_feed_per_tooth(point.load.high, UnitSystem::inch)
                                             : low) +
           " at " + print_length_with_unit(point.diameter, UnitSystem::inch);
  };
  if (row.points.size() == 1 || diameter <= row.points.front().diameter) return who + end(row.points.front());
  if (diameter >= row.points.back().diameter) return who + end(row.points.back());
  std::size_t above = 1;
  while (row.points[above].diameter < diameter) ++above;
  return who + end(row.points[above - 1]) + ", " + end(row.points[above]);
}

void tell_chip_load(const Tables& tables, Telling& telling, const ChipChoice& chip, Length diameter) {
  telling.because_of_row("chip load", describe(*chip.row, diameter), Answer::of(chip.band), chip.row->source);
  for (const auto* row : chip.spanning)
    telling.because_of_row("spans the band", describe(*row, diameter), Value{}, row->source);
  if (chip.slot_reduced)
    telling.because_of_row("full slot", "the page takes " + std::string(chip.row->slot.text) + " of it in a full slot",
                           measure(chip.row->slot.range.low), chip.row->source);
  const Source& source = source_of(tables, chip.row->source);
  const bool weak = chip.other_cutter || source.standing == "derived" || source.standing == "from memory";
  const std::string rule =
      chip.other_cutter ? "the row of " + std::string(chip.row->cutter) : std::string(source.title);
  if (chip.scaled) {
    telling.flag("chip-scaled");
    const Length printed = chip.row->points.front().diameter;
    telling.word("printed", print_fraction(printed).value_or(print_length(printed, UnitSystem::metric)));
    telling.word("held",
                 (weak ? " (" + rule + ")" : "") +
                     (chip.held_against == nullptr
                          ? ""
                          : ", held within " + std::string(chip.held_against->share.text) + " of the diameter"));
    if (chip.held_against != nullptr)
      telling.because_of_row("held against", describe(*chip.held_against, diameter), Answer::of(chip.band),
                             chip.held_against->source);
  } else if (weak) {
    telling.flag("chip-weak");
    telling.word("standing", source.standing == "from memory" ? "FROM MEMORY" : "DERIVED");
    telling.word("cite", rule);
  }
}

/// A narrow cut is fed faster, so that its thickest chip is the table's; beyond a limit that is no longer trusted.
FeedPerTooth restored(FeedPerTooth load, Engagement engagement, double most) {
  constexpr auto one_tooth = Quantity<detail::tooth>::from_value(1);
  return std::min(feed_for_chip(load * one_tooth, engagement), most * load);
}

/// A chip thinner than the edge cuts is raised to one that it does cut, within the band the tables give.
Band<FeedPerTooth> raised(const Tables& tables, Telling& telling, const Band<FeedPerTooth>& feed, Engagement engagement,
                          const std::optional<Length>& least) {
  if (!least) return feed;
  const Limit& margin = limit(tables.limits, "least_chip_margin");
  const FeedPerTooth cuts = feed_for_chip(*least, engagement);
  const FeedPerTooth enough = std::min(feed_for_chip(margin.ratio * *least, engagement), feed.high);
  if (feed.first >= enough) return {std::max(feed.low, std::min(cuts, feed.first)), feed.first, feed.high};
  telling.flag("chip-raised");
  telling.because_of_row("chip load, raised", std::string(margin.what), measure(margin.ratio), margin.source);
  return {std::max(feed.low, std::min(cuts, enough)), enough, feed.high};
}

Band<FeedPerTooth> tell_feed(const Tables& tables, Answer& answer, Telling& telling, const ChipChoice& chip,
                             Engagement engagement, const std::optional<Length>& least) {
  const Limit& most = limit(tables.limits, "thinning_most");
  const Band<FeedPerTooth> of_table{restored(chip.band.low, engagement, most.ratio),
                                    restored(chip.band.first, engagement, most.ratio),
                                    restored(chip.band.high, engagement, most.ratio)};
  const Band<FeedPerTooth> feed = raised(tables, telling, of_table, engagement, least);
  if (of_table.first == most.ratio * chip.band.first) {
    telling.flag("thin-width");
    telling.word("thinning", std::string(most.value));
    telling.because_of_row("narrow cut", std::string(most.what), measure(most.ratio), most.source);
  }
  answer.set(key::feed_per_tooth, feed);
  answer.found(key::chip_thickness, largest_chip(feed.first, engagement));
  telling.because_of_law("largest chip", largest_chip_law, measure(largest_chip(feed.first, engagement)));
  return feed;
}

void tell_handwheel(const Tables& tables, Answer& answer, Telling& telling, const MillQuestion& ask, FeedRate rate) {
  const auto dial = dial_of(ask);
  if (!dial) return;
  const Time turn = time_to_travel(dial->value, rate);
  answer.set(key::turn_time, turn);
  telling.because_of_law("handwheel turn", turn_time_law, measure(turn));
  if (turn < seconds(limit(tables.limits, "handwheel_fastest").ratio)) telling.flag("handwheel-fast");
}

/// What no end mill should run in, whatever the speed.
std::optional<std::string> unfit(const Machine& machine, Telling& telling) {
  if (machine.holder == "drill chuck") {
    telling.flag("drill-chuck");
    return "an end mill in a drill chuck: this machine holds it in one (holder = \"drill chuck\")";
  }
  if (machine.kind == "hand-tool" || machine.kind == "air-grinder" || machine.kind == "flexible-shaft") {
    telling.flag("hand-held-mill");
    return "an end mill in a tool held in the hand, " + std::string(machine.name) + ": it climbs out of the cut";
  }
  return std::nullopt;
}

std::string_view name_of(DepthLimit limit) {
  switch (limit) {
  case DepthLimit::wall: return "wall";
  case DepthLimit::stress: return "stress";
  case DepthLimit::power: return "power";
  case DepthLimit::flute: return "flute";
  }
  return "flute";
}

void tell_held(Answer& answer, const MillQuestion& ask, const HeldMill& held) {
  answer.input("overhang", held.overhang);
  answer.input("flute_length", held.flute_length);
  answer.input("shank", held.shank);
  answer.input("helix", held.helix);
  answer.input("wall_allow", held.wall_allow);
  if (held.runout) answer.input("runout", *held.runout);
  if (ask.depth) answer.input("depth", *ask.depth);
  if (ask.climb) answer.input_flag("climb");
}

/// Back off, or do not: the worse of two verdicts stays.
void worsen(Answer& answer, const std::string& verdict, const std::string& reason, const std::string& instead) {
  if (verdict == "go" || answer.verdict == "do not") return;
  if (verdict == "do not") {
    answer.refuse(reason);
  } else {
    answer.reason = answer.verdict == "back off" && answer.reason ? *answer.reason + "; " + reason : reason;
    answer.verdict = "back off";
  }
  answer.instead = instead;
}

/// A chip thinner than the edge cuts rubs, and work-hardens what hardens.
void judge_chip(const Tables& tables, Answer& answer, Telling& telling, const MillAtWork& mill) {
  const Length chip = largest_chip(mill.question.pass.feed, mill.question.pass.engagement);
  const Length least = mill.question.tooth.least_chip;
  const auto microns = [](Length length) { return significant(in_mm(length) * 1000, 2) + " um"; };
  if (chip < least) {
    worsen(answer, "do not",
           "the thickest chip, " + microns(chip) + ", is thinner than this edge cuts, " + microns(least) + ": it rubs",
           "a heavier feed, a wider cut, or a sharper edge");
  } else if (chip < limit(tables.limits, "near_rubbing").ratio * least) {
    telling.flag("near-rubbing");
    telling.word("least_chip", microns(least));
  }
}

/// A finishing pass thinner than the hard skin of an austenitic stainless spends its life in it.
void judge_finish(const Tables& tables, Answer& answer, const MillQuestion& ask, Length width) {
  const Limit& least = limit(tables.limits, "finish_least");
  if (ask.material.value.material->metal != "austenitic-stainless") return;
  const bool thin = width < least.length || (ask.depth && ask.depth->value < least.length);
  if (!thin) return;
  worsen(answer, "back off",
         "a pass under " + print_length_with_unit(least.length, UnitSystem::metric) + " (" +
             print_length_with_unit(least.length, UnitSystem::inch) +
             ") runs in the skin that the last one hardened, and hardens its own",
         "take at least that much, in width and in depth, and leave it for the last pass");
}

/// The deepest pass, or the one asked for, and what it comes to.
void tell_depth(Answer& answer, Telling& telling, const MillQuestion& ask, const MillAtWork& mill) {
  const AllowedDepth allowed = allowed_depth(mill);
  telling.because_of_law("deepest pass, of a metal as hard as may be and as the tables say", deepest_pass_law,
                         Answer::of(allowed.band));
  const Length depth = ask.depth ? ask.depth->value : allowed.band.first;
  tell_mill_forces(answer, telling, mill, depth);
  if (ask.depth) {
    const DepthVerdict judged = judge_depth(mill, allowed, depth);
    answer.found(key::limited_by, judged.verdict == "go" ? std::string_view("given") : name_of(allowed.bound_by));
    answer.set(key::depth_of_cut, Band<Length>{std::min(allowed.band.low, depth), std::min(depth, allowed.band.first),
                                               std::max(allowed.band.high, std::min(depth, allowed.band.first))});
    worsen(answer, judged.verdict, judged.reason,
           "passes of " + print_length_with_unit(allowed.band.first, UnitSystem::metric) + " (" +
               print_length_with_unit(allowed.band.first, UnitSystem::inch) + ")");
  } else {
    answer.found(key::limited_by, name_of(allowed.bound_by));
    answer.set(key::depth_of_cut, allowed.band);
  }
  if (mill.handbook.unit_power == megapascals(0)) telling.flag("one-force-model");
  if (mill.question.heaviest_feed <= mill.question.pass.feed) telling.flag("no-runout");
  if (!mill.question.cutter.machine.sideways) telling.flag("cutter-alone");
}

} // namespace

Answer mill(const Tables& tables, const MillQuestion& ask) {
  refuse_contradictions(ask);
  const HeldMill held = held_mill(tables, ask);
  const Work& work = ask.material.value;
  const Length diameter = ask.size.value.length;
  const std::string_view cutter = ask.cutter.value->key;
  const Typed<Length> width = ask.width.value_or(Typed<Length>{diameter, std::nullopt});
  const Machine* machine = ask.machine ? ask.machine->value : nullptr;

  Answer answer("mill");
  Telling telling(tables, answer, &work, cutter);
  telling.tool(ask.size, ask.material, ask.cutter, ask.machine);
  answer.inputs.push_back({"flutes", ask.flutes.value, ask.flutes.text});
  answer.input("width", width);
  if (const auto dial = dial_of(ask)) answer.input("dial", *dial);

  if (const auto wanted = telling.wanted_speed(diameter, cutter == "carbide" ? "anneal it, or grind it"
                                                                             : "a carbide cutter, or anneal it")) {
    const SpindleQuestion spindle{*wanted, 1, machine};
    const SpindleOutcome outcome = decide_spindle(spindle);
    tell_spindle(answer, telling, spindle, outcome);
    const SpindleSpeed speed = outcome.setting.speed;
    answer.found(key::cutting_speed, cutting_speed(speed, diameter));

    const ChipChoice chip = choose_chip_load(tables, work, cutter, diameter, width.value == diameter);
    tell_chip_load(tables, telling, chip, diameter);
    const auto feed = tell_feed(tables, answer, telling, chip, {width.value, diameter},
                                least_chip_of(tables, work.material->metal, cutter));
    const FeedRate rate = feed_rate(feed.first, flutes(ask.flutes.value), speed);
    answer.set(key::feed_rate, rate);
    telling.because_of_law("feed rate", feed_per_tooth_law, measure(rate));
    tell_handwheel(tables, answer, telling, ask, rate);
    answer.set(key::width_of_cut, width.value);
    telling.fluid();
    if (outcome.verdict == "do not") answer.refuse(outcome.reason);
    if (const auto at_work = mill_at_work(tables, telling, ask, held, width.value, feed.first, speed)) {
      tell_held(answer, ask, held);
      tell_depth(answer, telling, ask, *at_work);
      judge_chip(tables, answer, telling, *at_work);
      judge_finish(tables, answer, ask, width.value);
    } else {
      telling.flag("depth-unjudged");
    }
    if (answer.verdict == "do not") answer.settings.clear();
    if (const auto why = machine == nullptr ? std::nullopt : unfit(*machine, telling)) {
      answer.refuse(*why);
      answer.instead = "a collet in a mill's spindle";
    }
  }
  telling.cautions(machine == nullptr ? std::string_view{} : machine->kind);
  return answer;
}

} // namespace quillside
