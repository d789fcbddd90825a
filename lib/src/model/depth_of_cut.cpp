#include <quillside/model/depth_of_cut.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <functional>
#include <stdexcept>

#include <boost/math/tools/toms748_solve.hpp>

#include <quillside/model/milling_forces.hpp>

namespace quillside {

namespace {

void check(const DepthQuestion& question, const PassLimits& limits) {
  if (!(limits.wall_error > mm(0)) || !(limits.root_stress > megapascals(0)))
    throw std::domain_error{"a limit is above 0"};
  if (limits.power && (!(limits.power->power > watts(0)) || !(limits.power->speed > rev_per_min(0))))
    throw std::domain_error{"a power limit has a power and a speed above 0"};
  if (!(question.heaviest_feed >= question.pass.feed))
    throw std::domain_error{"the heaviest tooth takes no less than the feed"};
  if (!(question.kept >= mm(0)) || !(question.kept <= question.cutter.flute_length))
    throw std::domain_error{"a depth that is kept is 0 or more, and no more than the flutes"};
}

MillPass at_depth(MillPass pass, Length depth) {
  pass.depth = depth;
  return pass;
}

/// How much of the limit is used up: 1 at the limit.
using Used = std::function<double(Length depth)>;

double wall_used(const DepthQuestion& question, Length limit, Length depth) {
  const MillingLoad load(at_depth(question.pass, depth), question.tooth);
  double most = 0;
  for (const MillSide side : {MillSide::conventional, MillSide::climb})
    if (forms_wall(load.pass(), side))
      most = std::max(most, std::abs(wall_error(question.cutter, load, side).largest / limit));
  return most;
}

double stress_used(const DepthQuestion& question, Stress limit, Length depth) {
  MillPass pass = at_depth(question.pass, depth);
  pass.feed = question.heaviest_feed;
  return peak_root_stress(question.cutter, MillingLoad(pass, question.tooth), question.notch) / limit;
}

/// Mean power grows in step with the depth.
Length depth_of_power(const DepthQuestion& question, const PowerLimit& limit) {
  const MillingLoad load(at_depth(question.pass, question.cutter.flute_length), question.tooth);
  return question.cutter.flute_length * (limit.power / mean_power(load, limit.speed));
}

/// The least depth up to \p most at which the limit is used up, on the safe side of it; \p most where it never is.
/// Walked up in steps, for where a measure falls again a deeper pass can keep a limit that a shallower one breaks.
Length first_reached(const Used& used, Length from, Length most, Length longest_step) {
  if (!(from < most)) return most;
  const double begin = from / most; // as shares of the most
  const int steps = std::max(1, static_cast<int>(std::ceil((most - from) / longest_step)));
  double kept = begin;
  double kept_used = begin > 0 ? used(from) : 0;
  for (int step = 1; step <= steps; ++step) {
    const double share = step == steps ? 1 : begin + (1 - begin) * step / steps;
    const double here = used(share * most);
    if (here > 1) {
      if (!(kept_used < 1)) return kept * most;
      const auto over = [&](double depth) { return depth > 0 ? used(depth * most) - 1 : -1.0; };
      const auto near_enough = [](double low, double high) { return high - low < 1e-3 * high; };
      std::uintmax_t tries = 60;
      return most *
             boost::math::tools::toms748_solve(over, kept, share, kept_used - 1, here - 1, near_enough, tries).first;
    }
    kept = share;
    kept_used = here;
  }
  return most;
}

} // namespace

DeepestPass deepest_pass(const DepthQuestion& question, const PassLimits& limits) {
  check(question, limits);
  DeepestPass deepest{question.cutter.flute_length, DepthLimit::flute};
  const auto bind = [&](Length depth, DepthLimit limit) {
    if (depth < deepest.depth) deepest = {depth, limit};
  };
  if (limits.power) bind(depth_of_power(question, *limits.power), DepthLimit::power);
  // Stress grew with depth in every pass that was tried (tests), and so did the walls of most slots; the wall of a side
  // pass can be pushed in by a shallow pass and out by a deeper one, so it is looked at more often.
  bind(first_reached([&](Length depth) { return stress_used(question, limits.root_stress, depth); }, question.kept,
                     deepest.depth, question.cutter.flute_length),
       DepthLimit::stress);
  const Length diameter = question.pass.engagement.diameter;
  const bool slot = question.pass.engagement.width == diameter;
  constexpr double step_in_slot = 0.25; // diameters
  constexpr double step_at_side = 0.15;
  bind(first_reached([&](Length depth) { return wall_used(question, limits.wall_error, depth); }, question.kept,
                     deepest.depth, (slot ? step_in_slot : step_at_side) * diameter),
       DepthLimit::wall);
  return deepest;
}

} // namespace quillside
