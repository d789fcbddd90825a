#include <quillside/job/point.hpp>

#include <algorithm>

#include "grinding_way.hpp"
#include "point_found.hpp"
#include "point_ground.hpp"
#include "point_inputs.hpp"
#include "point_judge.hpp"
#include "point_outcome.hpp"
#include "point_readings.hpp"
#include "point_ways.hpp"
#include "point_why.hpp"
#include "telling.hpp"

namespace quillside {

namespace {

/// What to grind for: that way, or the one the readings allow whose settings suit a hand on a wheel.
const JudgedPoint& to_be_set(const std::vector<JudgedPoint>& ways) { return ways.back(); }

void tell_settings(const Tables& tables, Answer& answer, const JudgedPoint& way, Length diameter) {
  const auto& targets = way.targets;
  const auto limit_of = [&](std::string_view item) {
    return choose_point_limit(tables.point_limits, item, name_of(way.solved.way), diameter);
  };
  const auto off = [](const PointLimit* row) { return row == nullptr ? turns(0) : read_angle_range(row->keep).high; };
  const PointLimit* included = limit_of("included_angle");
  answer.set(key::included_angle,
             Band<Angle>{targets.included - off(included), targets.included, targets.included + off(included)});
  answer.set(key::lip_relief, Band<Angle>{targets.relief - off(limit_of("lip_relief_below")), targets.relief,
                                          targets.relief + off(limit_of("lip_relief_over"))});
  const PointLimit* chisel = limit_of("chisel_edge_angle");
  Range<Angle> range{targets.chisel, targets.chisel};
  if (chisel != nullptr) range = read_angle_range(chisel->keep);
  answer.set(key::chisel_edge_angle,
             Band<Angle>{std::min(range.low, targets.chisel), targets.chisel, std::max(range.high, targets.chisel)});
}

void tell_cautions(Telling& telling, const PointQuestion& ask, const Ground& ground, const PointOutcome& outcome,
                   const std::vector<JudgedPoint>& ways, const std::vector<PointCheck>& checks) {
  if (outcome.word != "keep") telling.flag("grind");
  if (ask.split) telling.flag("split");
  if (ask.thinned) telling.flag("thinned");
  if (!ask.way && ways.size() > 1) telling.flag("way-unknown");
  if (ask.trial_hole) telling.flag("trial-hole");
  if (ways.front().solved.oversize && !ask.trial_hole) telling.flag("oversize-bound");
  const bool relief_judged =
      std::any_of(checks.begin(), checks.end(), [](const PointCheck& check) { return check.item == "lip_relief"; });
  if (relief_judged && ground.relief != nullptr) telling.flag("relief-limits");
  if (!ways.front().solved.web_read) telling.flag("web-taken");
}

} // namespace

Answer point(const Tables& tables, const PointQuestion& ask) {
  const PointReadings readings = readings_of(tables, ask);
  const Ground ground = ground_of(tables, ask.size.value.length, ask.material ? &ask.material->value : nullptr);
  const auto ways = judge_ways(tables, ask, ground, readings);
  const auto checks = checks_of_all(ways);
  const PointOutcome outcome = outcome_of(ways, checks);

  Answer answer("point");
  Telling telling(tables, answer, ask.material ? &ask.material->value : nullptr, {});
  tell_inputs(answer, ask, ground, ways);
  answer.verdict = outcome.word;
  if (outcome.word != "keep") {
    answer.reason = reason_of(outcome, ways, checks);
    tell_settings(tables, answer, to_be_set(ways), readings.diameter);
  }
  const bool more_to_read = !outcome.settled || (outcome.word == "touch up" && !what_is_missing(ways).empty());
  if (more_to_read) answer.instead = next_step(tables, ask, ground, readings, ways, checks);
  tell_found(answer, ways);
  tell_checks(answer, checks);
  tell_steps(answer, telling, ways);
  tell_ground(tables, telling, ask, ground, ways.front().solved);
  tell_limits(telling, checks);
  tell_photo(telling, ask, ways.front().solved);
  tell_cautions(telling, ask, ground, outcome, ways, checks);
  telling.cautions(ask.machine ? ask.machine->value->kind : std::string_view{});
  return answer;
}

} // namespace quillside
