#include "point_angles.hpp"

#include <algorithm>
#include <vector>

#include <quillside/model/lip.hpp>
#include <quillside/model/notch.hpp>
#include <quillside/model/photo_marks.hpp>

#include "evidence.hpp"
#include "point_depth.hpp"
#include "point_light.hpp"
#include "spread_ends.hpp"

namespace quillside {

namespace {

using KnownAngles = std::vector<Known<Angle>>;

Spread<Angle> sum_of(const Pair<Spread<Angle>>& halves) {
  return propagate([](Angle a, Angle b) { return a + b; }, halves[0], halves[1]);
}

/// A magnitude: two halves as far apart either way.
Spread<Angle> difference(const Spread<Angle>& a, const Spread<Angle>& b) {
  return magnitude(propagate([](Angle one, Angle other) { return one - other; }, a, b));
}

void of_light(PointWork& work, Pair<KnownAngles>& known, KnownAngles& included) {
  const Pair<Spread<Angle>> halves = halves_of_light(work);
  work.point.halves_are_bounds = known[0].empty() && !light_tells_size(*work.readings.light);
  for (std::size_t lip = 0; lip < 2; ++lip)
    known[lip].push_back({at_most(halves[lip], bluntest_point / 2.0), "--light"});
  // One gauge, one web: what is off for one lip is off for the other as much.
  included.push_back(
      {{halves[0].low + halves[1].low, halves[0].value + halves[1].value, halves[0].high + halves[1].high}, "--light"});
  work.because("included angle against the gauge", light_gap_law, included.back().spread);
}

void solve_halves(PointWork& work, KnownAngles& included) {
  const auto& readings = work.readings;
  auto& point = work.point;
  Pair<KnownAngles> known;
  const auto add = [&](const Pair<Spread<Angle>>& halves, const char* from) {
    for (std::size_t lip = 0; lip < 2; ++lip) known[lip].push_back({halves[lip], from});
    included.push_back({sum_of(halves), from});
  };
  if (readings.half_angles) add(*readings.half_angles, "--half-angles");
  if (readings.side) {
    add(readings.side->half, "--side-marks");
    work.because("half angle of lip A from the photograph", side_marks_law, readings.side->half[0]);
    work.because("half angle of lip B from the photograph", side_marks_law, readings.side->half[1]);
  }
  if (readings.light) of_light(work, known, included);
  if (known[0].empty()) return;
  point.halves = {agreed("half angle A is", known[0]), agreed("half angle B is", known[1])};
  const bool by_light = (*point.halves)[0].from == "--light" && (*point.halves)[1].from == "--light";
  point.half_difference = by_light && readings.light->gap ? difference_of_light(work)
                                                          : difference(half_angle(point, 0), half_angle(point, 1));
}

/// Neither web nor chisel edge is needed where the lip was read along itself and along the axis.
void of_lip_triangle(PointWork& work, const Spread<Length>& length, KnownAngles& known) {
  const auto& depth = *work.readings.lip_depth;
  if (depth.low > length.high)
    throw contradiction("--lip-depth", "--lip-depth " + in_words(depth) + " is more than --lip-lengths, in the mean " +
                                           in_words(length) + ": no lip is deeper than it is long");
  const auto triangle = [](Length along, Length deep) {
    return included_from_lip_triangle({along, std::min(deep, along * 0.999)});
  };
  const auto spread = work.through("--lip-lengths", triangle, length, depth);
  work.because("included angle from lip depth and length", depth_over_length_law, spread);
  known.push_back({spread, "--lip-lengths with --lip-depth"});
}

void of_lip_lengths(PointWork& work, KnownAngles& known) {
  const auto& lengths = *work.readings.lip_lengths;
  const auto& web = work.point.web.spread;
  const auto& chisel = work.point.chisel.spread;
  const auto mean = propagate([](Length a, Length b) { return (a + b) / 2.0; }, lengths[0], lengths[1]);
  if (work.inner_ends_moved()) return work.not_judged("--lip-lengths for the angle");
  if (work.readings.lip_depth) of_lip_triangle(work, mean, known);
  const auto reach_of = [&](Length thick, Angle edge) { return lip_reach(work.shape(thick, degrees(118)), edge); };
  const auto reach = work.through("--lip-lengths", reach_of, web, chisel);
  if (mean.high < reach.low)
    throw contradiction("--lip-lengths", "--lip-lengths, in the mean " + in_words(mean) +
                                             ", are shorter than the lips reach from web to margin, " +
                                             in_words(reach) + ": no drill has such lips");
  const auto angle = [&](Length thick, Angle edge, Length length) {
    const Length least = reach_of(thick, edge) * 1.0000001;
    return included_from_lip_length({work.readings.diameter, thick, edge, std::max(length, least)});
  };
  auto spread = work.through("--lip-lengths", angle, web, chisel, mean);
  // Where the reach may be as long as the lip, how blunt the point is cannot be told.
  if (reach.high >= mean.low) spread.high = bluntest_point;
  spread = {spread.low, std::min(spread.value, (spread.low + spread.high) / 2.0), spread.high};
  work.because("included angle from the lengths of the lips", lip_length_angle_law, spread);
  known.push_back({spread, "--lip-lengths"});
}

void of_lip_depth(PointWork& work, KnownAngles& known) {
  if (work.inner_ends_moved()) return work.not_judged("--lip-depth");
  known.push_back({depth_as_angle(work, "--lip-depth", *work.readings.lip_depth), "--lip-depth"});
}

void of_point_length(PointWork& work, KnownAngles& known) {
  if (work.inner_ends_moved()) return work.not_judged("--point-length");
  known.push_back({length_as_angle(work, "--point-length", *work.readings.point_length), "--point-length"});
}

} // namespace

void solve_angles(PointWork& work) {
  const auto& readings = work.readings;
  auto& point = work.point;
  KnownAngles known;
  if (readings.angle) known.push_back({*readings.angle, "--angle"});
  solve_halves(work, known);
  if (readings.lip_depth) of_lip_depth(work, known);
  if (readings.point_length) of_point_length(work, known);
  if (readings.lip_lengths) of_lip_lengths(work, known);
  // A shallow relation may reach beyond any point: its ends are cut at a needle and at a flat.
  for (auto& one : known) one.spread = at_most(at_least(one.spread, sharpest_point), bluntest_point);
  point.included_read = !known.empty();
  point.included =
      point.included_read ? agreed("the included angle is", known) : Known<Angle>{work.defaults.included, ""};
}

bool halves_known(const SolvedPoint& point) { return point.halves && !point.halves_are_bounds; }

const Spread<Angle>& half_angle(const SolvedPoint& point, std::size_t lip) { return (*point.halves)[lip].spread; }

Spread<Angle> half_of_whole(const SolvedPoint& point) {
  return propagate([](Angle whole) { return whole / 2.0; }, point.included.spread);
}

Spread<Angle> apart_by(Angle difference) { return {-difference, turns(0), difference}; }

} // namespace quillside
