#include "point_hole.hpp"

#include <algorithm>

#include <quillside/model/uneven_lips.hpp>

#include "point_angles.hpp"
#include "spread_ends.hpp"

namespace quillside {

namespace {

constexpr Spread<Length> nothing{mm(0), mm(0), mm(0)};

Spread<Length> oversize_read(const PointReadings& readings) {
  return propagate([&](Length hole) { return hole - readings.diameter; }, *readings.trial_hole);
}

/// Oversize of a free point. Which lip is higher is not always known: then whichever drills the larger hole.
Length free_oversize(const PointWork& work, Pair<Angle> halves, Length height) {
  const Length at_radius = work.readings.diameter / 4.0;
  const auto with = [&](Length one) {
    return free_point_oversize({work.readings.diameter, halves[0], halves[1], one, mm(0), at_radius});
  };
  if (work.point.higher) return with(*work.point.higher == 'A' ? height : -height);
  return std::max(with(height), with(-height));
}

Spread<Length> oversize_of_lips(const PointWork& work, const Spread<Length>& height) {
  const auto& point = work.point;
  if (halves_known(point)) {
    const auto relation = [&](Angle a, Angle b, Length one) { return free_oversize(work, {a, b}, one); };
    return work.through((*point.halves)[0].from, relation, half_angle(point, 0), half_angle(point, 1), height);
  }
  const auto with_difference = [&](Angle both, Angle apart, Length one) {
    return free_oversize(work, {both + apart / 2.0, both - apart / 2.0}, one);
  };
  return work.through(point.height ? point.height->from : std::string("the angle taken"), with_difference,
                      half_of_whole(point), apart_by(work.defaults.unread_difference), height);
}

/// The height difference that the hole asks at least, once what holes usually are over size, the run-out of the spindle
/// and unequal half angles that were read are taken off.
Spread<Length> least_height_of_hole(const PointWork& work, Length runout) {
  const Spread<Length> running{mm(0), runout / 2.0, runout};
  Spread<Length> by_halves = at_least(oversize_of_lips(work, nothing), mm(0));
  if (!halves_known(work.point)) by_halves = {mm(0), mm(0), by_halves.high}; // unread, they may differ or not
  const auto floor = propagate(
      [](Length oversize, Length usual, Length run, Length halves, Angle included) {
        return least_height_difference(std::max(mm(0), oversize - usual - run - halves), included / 2.0);
      },
      oversize_read(work.readings), work.defaults.usual_oversize, running, by_halves, work.point.included.spread);
  return at_least(floor, mm(0));
}

} // namespace

void heed_trial_hole(PointWork& work) {
  if (!work.readings.trial_hole) return;
  auto& point = work.point;
  const Length runout = work.readings.runout.value_or(mm(0));
  const Spread<Length> least = least_height_of_hole(work, runout);
  work.because("height difference the hole asks at least", hole_backward_law, least);
  if (point.height && !point.height_is_floor) {
    const Length by_lips = std::max(mm(0), oversize_of_lips(work, point.height->spread).high);
    point.explained_oversize = work.defaults.usual_oversize.high + runout + by_lips;
    return;
  }
  if (point.height && point.height->spread.low >= least.low) return;
  point.height = Known<Length>{least, "--trial-hole"};
  point.height_is_floor = true;
}

void solve_oversize(PointWork& work) {
  auto& point = work.point;
  if (work.readings.trial_hole) {
    point.oversize = oversize_read(work.readings);
    return;
  }
  if (!point.height && !halves_known(point)) return;
  const auto bound = oversize_of_lips(work, point.height ? point.height->spread : nothing);
  work.because("oversize of a free point, at most", uneven_lips_law, bound);
  point.oversize = Spread<Length>{mm(0), std::max(mm(0), bound.value), std::max(mm(0), bound.high)};
}

} // namespace quillside
