#include "mill_forces.hpp"

#include <algorithm>
#include <vector>

#include <quillside/model/force_doubt.hpp>
#include <quillside/model/tooth_chip.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>

namespace quillside {

namespace {

constexpr Length smallest_own_shank = inches(1, 8);

std::string typed(const std::optional<Typed<Length>>& word) { return word->text.value_or(""); }

void refuse_contradictions(const MillQuestion& ask) {
  const Length diameter = ask.size.value.length;
  const auto above_nothing = [](const std::optional<Typed<Length>>& word, const char* what) {
    if (word && !(word->value > mm(0)))
      throw wrong_word(typed(word), std::string("is no ") + what + ": give more than 0");
  };
  above_nothing(ask.overhang, "overhang of a cutter");
  above_nothing(ask.flute_length, "length of flutes");
  above_nothing(ask.depth, "depth of a pass");
  above_nothing(ask.wall_allow, "error that a wall may have");
  if (ask.overhang && ask.overhang->value < diameter / 2.0)
    throw contradiction(typed(ask.overhang),
                        "--overhang " + typed(ask.overhang) + " is less than half the cutter: nothing of it could cut");
  if (ask.overhang && ask.flute_length && ask.flute_length->value > ask.overhang->value)
    throw contradiction(typed(ask.overhang),
                        "--overhang " + typed(ask.overhang) + " is shorter than the flutes, --flute-length " +
                            typed(ask.flute_length) + ": flutes in the holder grip badly and break");
  if (ask.depth && ask.flute_length && ask.depth->value > ask.flute_length->value)
    throw contradiction(typed(ask.depth), "--depth " + typed(ask.depth) +
                                              " is more than the flutes are long, --flute-length " +
                                              typed(ask.flute_length));
  if (ask.depth && ask.overhang && ask.depth->value > ask.overhang->value)
    throw contradiction(typed(ask.depth), "--depth " + typed(ask.depth) +
                                              " is more than the cutter stands out, --overhang " + typed(ask.overhang));
  if (ask.shank && ask.shank->value < diameter * 0.5)
    throw contradiction(typed(ask.shank),
                        "--shank " + typed(ask.shank) + " is less than half the cutter: none is made so");
  if (ask.helix && ask.helix->value > degrees(60))
    throw wrong_word(ask.helix->text.value_or(""), "is no helix of an end mill: give 0 to 60 deg");
  if (ask.runout && ask.runout->value > ask.size.value.length * 0.1)
    throw wrong_word(typed(ask.runout), "is no run-out a cutter could run with: it is over a tenth of its diameter");
}

std::string describe(const CuttingForceRow& row) {
  return std::string(row.material) + (row.hardness.given() ? ", " + std::string(row.hardness.text) : "") + ": kc1.1 " +
         std::string(row.kc.text) + ", mc " + std::string(row.mc.text) + ", give or take " +
         std::string(row.doubt.text);
}

bool like_brass(std::string_view metal) { return metal == "brass" || metal == "nickel-silver" || metal == "bronze"; }

const Limit& least_chip_share(const Tables& tables, std::string_view metal) {
  return limit(tables.limits, like_brass(metal) ? "least_chip_share_brass" : "least_chip_share");
}

Length tell_least_chip(const Tables& tables, Telling& telling, std::string_view metal,
                       const CutterStrengthRow& strength) {
  const Limit& share = least_chip_share(tables, metal);
  const Length least = minimum_chip_thickness(strength.edge_radius.range.low, share.ratio);
  telling.because_of_row("radius of the edge",
                         std::string(strength.cutter) + ": " + std::string(strength.edge_radius.text),
                         measure(strength.edge_radius.range.low), strength.source);
  telling.because_of_row("thinnest chip, over that radius", std::string(share.what), measure(share.ratio),
                         share.source);
  telling.because_of_law("thinnest chip that is cut", least_chip_law, measure(least));
  return least;
}

HandbookPower handbook_of(const Tables& tables, Telling& telling, const ForceQuestion& question, FeedPerTooth feed) {
  HandbookPower power{megapascals(0), 1, limit(tables.limits, "wear_milling").ratio};
  const auto* row = choose_unit_power(tables, question);
  if (row == nullptr || tables.feed_factors.size() < 2) return power;
  std::vector<FeedFactor> printed;
  for (const auto& factor : tables.feed_factors) printed.push_back({factor.feed.range.low, factor.factor.range.low});
  power.unit_power = row->unit_power.range.low;
  power.feed_factor = feed_factor(printed, feed);
  telling.because_of_row("unit power",
                         std::string(row->material) +
                             (row->hardness.given() ? ", " + std::string(row->hardness.text) : "") + ": " +
                             std::string(row->unit_power.text),
                         measure(row->unit_power.range.low), row->source);
  telling.because_of_law("specific force by unit power", unit_power_law, measure(specific_force(power)));
  return power;
}

MillingLoad load_of(const MillAtWork& mill, Length depth) {
  MillPass pass = mill.question.pass;
  pass.depth = depth;
  return {pass, mill.question.tooth};
}

/// Doubt of the force: both models with their scatter, and the size effect of thin chips.
Spread<Force> force_doubt(const MillAtWork& mill, Length depth) {
  MillPass pass = mill.question.pass;
  pass.depth = depth;
  const Force kienzle = load_of(mill, depth).mean().torque / (pass.engagement.diameter / 2.0);
  const bool known = mill.handbook.unit_power > megapascals(0);
  const Force handbook = known ? mean_tangential_force(pass, specific_force(mill.handbook)) : kienzle;
  const double size_effect = size_effect_doubt(largest_chip(pass.feed, pass.engagement));
  return joined_force({kienzle, handbook}, {mill.scatter, size_effect});
}

/// The same cutter in a metal that resists more, by this factor.
MillAtWork harder(MillAtWork mill, double factor) {
  mill.question.tooth.metal.kc11 = factor * mill.question.tooth.metal.kc11;
  return mill;
}

std::string in_both(Length length) {
  return print_length_with_unit(length, UnitSystem::metric) + " (" + print_length_with_unit(length, UnitSystem::inch) +
         ")";
}

} // namespace

std::optional<Length> least_chip_of(const Tables& tables, std::string_view metal, std::string_view cutter) {
  const auto* strength = choose_cutter_strength(tables, cutter);
  if (strength == nullptr) return std::nullopt;
  return minimum_chip_thickness(strength->edge_radius.range.low, least_chip_share(tables, metal).ratio);
}

HeldMill held_mill(const Tables& tables, const MillQuestion& ask) {
  refuse_contradictions(ask);
  const Length diameter = ask.size.value.length;
  const Length usual_flutes = limit(tables.limits, "flutes_usual").ratio * diameter;
  const auto or_taken = [](const std::optional<Typed<Length>>& word, Length taken) {
    return word.value_or(Typed<Length>{taken, std::nullopt});
  };
  HeldMill held{or_taken(ask.overhang, usual_flutes + inches(1, 8)),
                {},
                or_taken(ask.shank, std::max(diameter, smallest_own_shank)),
                ask.helix.value_or(Typed<Angle>{degrees(30), std::nullopt}),
                or_taken(ask.wall_allow, thou(1)),
                ask.runout};
  held.flute_length = or_taken(ask.flute_length, std::min(usual_flutes, held.overhang.value));
  if (ask.flute_length && !ask.overhang)
    held.overhang.value = std::max(held.overhang.value, ask.flute_length->value + inches(1, 8));
  if (!held.runout && ask.machine && ask.machine->value->runout.given())
    held.runout = Typed<Length>{ask.machine->value->runout.range.high, std::nullopt};
  return held;
}

std::optional<MillAtWork> mill_at_work(const Tables& tables, Telling& telling, const MillQuestion& ask,
                                       const HeldMill& held, Length width, FeedPerTooth feed, SpindleSpeed speed) {
  const ForceQuestion question{ask.material.value, telling.assumed_hardness()};
  const auto* metal = choose_cutting_force(tables, question);
  const auto* strength = choose_cutter_strength(tables, ask.cutter.value->key);
  if (metal == nullptr || strength == nullptr) return std::nullopt;
  telling.because_of_row("specific force", describe(*metal), measure(metal->kc.range.low), metal->source);
  const Length diameter = ask.size.value.length;
  const TeethPerTurn teeth = flutes(ask.flutes.value);
  MillAtWork mill{};
  mill.question.pass = {
      {width, diameter}, mm(0), feed, teeth, held.helix.value, ask.climb ? MillSide::climb : MillSide::conventional};
  mill.question.tooth = {{metal->kc.range.low, metal->mc.range.low},
                         limit(tables.limits, "radial_ratio").ratio,
                         tell_least_chip(tables, telling, ask.material.value.material->metal, *strength)};
  mill.question.cutter = {diameter, held.flute_length.value, held.overhang.value, held.shank.value,
                          strength->modulus.range.low};
  if (ask.machine && ask.machine->value->stiffness.given()) {
    mill.question.cutter.machine.sideways = ask.machine->value->stiffness.range.low;
    telling.because_of_row("give of the machine", std::string(ask.machine->value->stiffness.text),
                           measure(mm(1) / (ask.machine->value->stiffness.range.low * mm(1))),
                           ask.machine->value->source);
  }
  mill.question.heaviest_feed = feed;
  if (held.runout && held.runout->value > mm(0)) {
    constexpr auto one_tooth = Quantity<detail::tooth>::from_value(1);
    const Length heaviest = largest_tooth_chip(feed, teeth, held.runout->value / 2.0);
    mill.question.heaviest_feed = std::max(feed, heaviest / one_tooth);
    telling.because_of_law("most that one tooth takes, with run-out", tooth_load_law, measure(heaviest));
  }
  mill.question.notch = limit(tables.limits, "flute_end_notch").ratio;
  mill.limits = {held.wall_allow.value, strength->working_stress.range.low, {}};
  telling.because_of_row(limit_step::stress,
                         std::string(strength->cutter) + ": " + std::string(strength->working_stress.text),
                         measure(strength->working_stress.range.low), strength->source);
  if (ask.machine && ask.machine->value->power.given()) {
    mill.limits.power = PowerLimit{ask.machine->value->power.range.low, speed};
    telling.because_of_row(limit_step::power, std::string(ask.machine->value->power.text),
                           measure(mill.limits.power->power), ask.machine->value->source);
  }
  mill.handbook = handbook_of(tables, telling, question, feed);
  mill.scatter = metal->doubt.range.high;
  mill.breaks_at = limit(tables.limits, "breaks_at").ratio;
  mill.speed = speed;
  return mill;
}

AllowedDepth allowed_depth(const MillAtWork& mill) {
  // The doubt, as a factor, does not hang on the depth: any will do to find it.
  const auto force = force_doubt(mill, mill.question.pass.engagement.diameter / 4.0);
  const DeepestPass sure = deepest_pass(harder(mill, force.high / force.value).question, mill.limits);
  DepthQuestion as_told = mill.question;
  as_told.kept = sure.depth; // of a softer metal it keeps its limits the more
  const DeepestPass likely = deepest_pass(as_told, mill.limits);
  return {{sure.depth / 2.0, sure.depth, std::max(sure.depth, likely.depth)}, sure.bound_by};
}

DepthVerdict judge_depth(const MillAtWork& mill, const AllowedDepth& allowed, Length depth) {
  if (depth <= allowed.band.first) return {};
  if (depth > mill.question.cutter.flute_length)
    return {"do not", "the pass is deeper than the flutes are long, " + in_both(mill.question.cutter.flute_length)};
  MillPass heaviest = mill.question.pass;
  heaviest.depth = depth;
  heaviest.feed = mill.question.heaviest_feed;
  const Stress stress = peak_root_stress(mill.question.cutter, {heaviest, mill.question.tooth}, mill.question.notch);
  const auto stressed = "the cutter is stressed to " + print_stress(stress) + ", and for long bears " +
                        print_stress(mill.limits.root_stress);
  if (stress > mill.breaks_at * mill.limits.root_stress) return {"do not", stressed + ": it breaks"};
  if (mill.limits.power && mean_power(load_of(mill, depth), mill.speed) > mill.limits.power->power)
    return {"do not", "it wants " + significant(in_watts(mean_power(load_of(mill, depth), mill.speed)), 2) +
                          " W, and the machine has " + significant(in_watts(mill.limits.power->power), 2)};
  if (stress > mill.limits.root_stress) return {"back off", stressed};
  return {"back off", depth <= allowed.band.high
                          ? "at that depth the pass keeps its limits only if the metal is as soft as the tables say"
                          : "at that depth a wall is off by more than " + in_both(mill.limits.wall_error)};
}

namespace {

struct NamedWall {
  MillSide side;
  const char* name;
};

void tell_walls(Answer& answer, Telling& telling, const MillAtWork& mill, const MillingLoad& load,
                const Spread<Force>& force) {
  std::vector<Value> walls;
  std::optional<Spread<Length>> largest;
  for (const auto& wall : {NamedWall{MillSide::climb, "climb"}, NamedWall{MillSide::conventional, "conventional"}}) {
    if (!forms_wall(load.pass(), wall.side)) continue;
    const Length off = wall_error(mill.question.cutter, load, wall.side).largest;
    const auto error = in_proportion(std::max(off, -off), force);
    walls.emplace_back(std::vector<Member>{{"side", wall.name}, {key::error.name, Answer::of(error)}});
    telling.because_of_law(std::string("error of the wall, ") + wall.name +
                               (off < mm(0) ? ", cut too deep" : ", metal left standing"),
                           wall_error_law, Answer::of(error));
    if (!largest || error.value > largest->value) largest = error;
  }
  answer.found(key::walls, std::move(walls));
  if (largest) answer.found(key::wall_error, *largest);
}

} // namespace

void tell_mill_forces(Answer& answer, Telling& telling, const MillAtWork& mill, Length depth) {
  const MillingLoad load = load_of(mill, depth);
  const MillingForces forces = milling_forces(load);
  const auto force = force_doubt(mill, depth);
  const auto tell = [&](const auto& key, const char* step, const Law& law, auto value) {
    const auto spread = in_proportion(value, force);
    answer.found(key, spread);
    telling.because_of_law(step, law, Answer::of(spread));
  };
  tell(key::tangential_force, "mean tangential force", tooth_force_law, forces.mean_tangential);
  tell(key::bending_force, "largest force across the cutter", tooth_force_law, forces.peak_resultant);
  tell(key::torque, "mean torque", tooth_force_law, forces.mean_torque);
  tell(key::power, "power", tooth_force_law, mean_power(load, mill.speed));
  telling.because_of_law("how far published power laws part at so thin a chip", size_effect_law,
                         measure(size_effect_doubt(largest_chip(load.pass().feed, load.pass().engagement))));
  telling.because_of_law("the tip bends under 1 N at half the depth", cutter_bend_law,
                         measure(compliance(mill.question.cutter, {depth / 2.0, mm(0)})));
  tell(key::deflection, "bend of the tip under the largest force", cutter_bend_law,
       peak_deflection(mill.question.cutter, load));
  tell_walls(answer, telling, mill, load, force);
  MillPass heaviest = load.pass();
  heaviest.feed = mill.question.heaviest_feed;
  tell(key::root_stress, "stress at the end of the flutes", root_stress_law,
       peak_root_stress(mill.question.cutter, {heaviest, mill.question.tooth}, mill.question.notch));
}

} // namespace quillside
