#include "drill_forces.hpp"

#include <algorithm>
#include <cmath>

#include <quillside/model/lip.hpp>
#include <quillside/words/print.hpp>

namespace quillside {

namespace {

/// Metals whose models lie apart by factors, not by shares.
bool soft_and_sticky(std::string_view metal) {
  return metal == "brass" || metal == "nickel-silver" || metal == "bronze" || metal == "copper" || metal == "aluminium";
}

std::string in_both(Force force) {
  return significant(in_newtons(force), 2) + " N (" + significant(in_pounds_force(force), 2) + " lb)";
}
std::string in_both(Length length) {
  return print_length_with_unit(length, UnitSystem::metric) + " (" + print_length_with_unit(length, UnitSystem::inch) +
         ")";
}

std::string describe(const DrillForceRow& row) {
  return std::string(row.material) + (row.hardness.given() ? ", " + std::string(row.hardness.text) : "") + ", " +
         std::string(row.model) + ": torque " + std::string(row.torque.text) +
         (row.thrust.given() ? ", thrust " + std::string(row.thrust.text) : "");
}

/// The factors as printed; a pure number from the row stands in `why`.
DrillModels models_of(const Tables& tables, Telling& telling, const ForceQuestion& question) {
  DrillModels models;
  const auto row_of = [&](std::string_view model) {
    const auto* row = choose_drill_force(tables, question, model);
    if (row != nullptr)
      telling.because_of_row("constants of the metal", describe(*row), measure(row->torque.range.low), row->source);
    return row;
  };
  if (const auto* row = row_of("handbook")) {
    const double thrust = row->thrust.given() ? row->thrust.range.low : row->torque.range.low;
    models.handbook = DrillWork{row->torque.range.low, thrust};
  }
  if (const auto* row = row_of("catalogue")) models.catalogue = row->torque.range.low;
  if (const auto* row = row_of("power-law")) models.power_law = row->torque.range.low;
  return models;
}

/// Of a standard point; of the web, where somebody measured it.
Length chisel_of(const Tables& tables, const DrillQuestion& ask) {
  const Length diameter = ask.size.value.length;
  if (!ask.web) return standard_chisel * diameter;
  const Angle edge = degrees(limit(tables.limits, "chisel_usual").ratio);
  constexpr double widest = 0.4; // what the handbook's tables end at
  return std::min(chisel_length(ask.web->value, edge), widest * diameter);
}

/// Torque goes with the feed to the 0.8: the feed at which it comes down to what the motor gives.
FeedPerRev feed_for_torque(FeedPerRev feed, Torque at_feed, Torque limit) {
  constexpr double exponent = 0.8;
  return feed * std::pow(limit / at_feed, 1 / exponent);
}

} // namespace

std::optional<DrillAtWork> drill_at_work(const Tables& tables, Telling& telling, const DrillQuestion& ask,
                                         Length overhang, SpindleSpeed speed) {
  const ForceQuestion question{ask.material.value, telling.assumed_hardness()};
  const auto* strength = choose_cutter_strength(tables, ask.cutter.value->key);
  if (strength == nullptr || choose_drill_force(tables, question, "handbook") == nullptr) return std::nullopt;
  const bool soft = soft_and_sticky(ask.material.value.material->metal);
  DrillAtWork drill{{ask.size.value.length, chisel_of(tables, ask)},
                    {ask.size.value.length, overhang},
                    models_of(tables, telling, question),
                    soft ? copper_alloy_scatter : steel_torque_scatter,
                    soft ? copper_alloy_scatter : steel_thrust_scatter,
                    strength->modulus.range.low,
                    std::nullopt,
                    speed};
  if (ask.machine && ask.machine->value->power.given()) {
    constexpr double at_the_spindle = 1; // what a machine's row gives
    drill.stall = stall_torque(ask.machine->value->power.range.low, speed, at_the_spindle);
  }
  return drill;
}

AllowedFeed allowed_feed(const DrillAtWork& drill, FeedPerRev wanted, FeedPerRev rubs) {
  AllowedFeed allowed{wanted, AllowedFeed::By::nothing, "", ""};
  const Force buckles = buckling_load(drill.column, drill.modulus, DrillTip::located);
  const auto thrust = drill_thrust(drill.edges, wanted, drill.models, drill.thrust_scatter);
  if (thrust.high > buckles) {
    const auto feed = feed_for_thrust(buckles * (thrust.value / thrust.high), drill.edges, *drill.models.handbook);
    // The column bears with the square of its length.
    const Length shorter = drill.column.overhang * std::sqrt(buckles / thrust.high);
    allowed.by = AllowedFeed::By::buckling;
    allowed.instead = "no more than " + in_both(shorter) + " out of the chuck, or a pilot hole";
    if (feed) allowed.feed = std::min(allowed.feed, *feed);
    if (!feed || *feed < rubs) {
      allowed.feed = feed ? *feed : rubs;
      allowed.reason =
          "so long a drill buckles under " + in_both(buckles) + ", and to cut it wants up to " + in_both(thrust.high);
    }
  }
  if (!drill.stall) return allowed;
  const auto torque = drill_torque(drill.edges, allowed.feed, drill.models, drill.torque_scatter);
  if (!(torque.value > *drill.stall)) return allowed;
  allowed.feed = feed_for_torque(allowed.feed, torque.value, *drill.stall);
  allowed.by = AllowedFeed::By::stall;
  if (allowed.feed < rubs) {
    allowed.reason = "the motor gives " + significant(in_newton_metres(*drill.stall), 2) +
                     " N m at this speed, and the cut wants " + significant(in_newton_metres(torque.value), 2);
    allowed.instead = "a slower step, which has more torque, or a hole drilled in two sizes";
  }
  return allowed;
}

namespace {

void tell_holding(Telling& telling, const Spread<Torque>& grab) {
  const Length arm = inches(2.0);
  telling.flag("grab");
  telling.word("hold", in_both(holding_force(grab.low, arm)) + " to " + in_both(holding_force(grab.high, arm)));
  telling.because_of_law("hold 2 in from the spindle if it grabs", holding_force_law,
                         measure(holding_force(grab.value, arm)));
}

void tell_lever(Answer& answer, Telling& telling, const DrillQuestion& ask, const Spread<Force>& thrust) {
  if (!ask.machine) return;
  const Machine& machine = *ask.machine->value;
  const auto lever = ask.lever               ? std::optional(ask.lever->value)
                     : machine.lever.given() ? std::optional(machine.lever.range.low)
                                             : std::nullopt;
  if (!lever || !machine.pinion_radius.given()) return;
  const QuillLever quill{machine.pinion_radius.range.low, *lever};
  const Spread<Force> hand{lever_force(thrust.low, quill), lever_force(thrust.value, quill),
                           lever_force(thrust.high, quill)};
  answer.found(key::lever_force, hand);
  telling.because_of_law("force at the lever", lever_force_law, Answer::of(hand));
}

} // namespace

void tell_drill_forces(Answer& answer, Telling& telling, const DrillQuestion& ask, const DrillAtWork& drill,
                       FeedPerRev feed) {
  const auto thrust = drill_thrust(drill.edges, feed, drill.models, drill.thrust_scatter);
  const auto torque = drill_torque(drill.edges, feed, drill.models, drill.torque_scatter);
  answer.found(key::torque, torque);
  telling.because_of_law("torque", drill_torque_law, Answer::of(torque));
  answer.found(key::thrust, thrust);
  telling.because_of_law("thrust", drill_thrust_law, Answer::of(thrust));
  const Spread<Power> power{spindle_power(torque.low, drill.speed), spindle_power(torque.value, drill.speed),
                            spindle_power(torque.high, drill.speed)};
  answer.found(key::power, power);
  telling.because_of_law("power", spindle_power_law, Answer::of(power));
  tell_lever(answer, telling, ask, thrust);
  const auto grab = grab_torque(drill.edges, feed, *drill.models.handbook);
  answer.found(key::grab_torque, grab);
  telling.because_of_law("torque if it grabs", grab_torque_law, Answer::of(grab));
  tell_holding(telling, grab);
  const Force buckles = buckling_load(drill.column, drill.modulus, DrillTip::located);
  const Force bare = buckling_load(drill.column, drill.modulus, DrillTip::free);
  answer.found(key::buckling_load, buckles);
  telling.because_of_law("thrust that buckles it, its tip in the metal", drill_buckling_law, measure(buckles));
  telling.because_of_law("thrust that buckles it before it bites", drill_buckling_law, measure(bare));
  if (thrust.value > bare) {
    telling.flag("slender");
    telling.word("bare", in_both(bare));
  }
  if (drill.stall) {
    answer.found(key::stall_torque, *drill.stall);
    telling.because_of_law("torque the motor holds at this speed", stall_torque_law, measure(*drill.stall));
  }
  if (!in_printed_range(drill.edges, feed)) telling.flag("small-drill-forces");
}

} // namespace quillside
