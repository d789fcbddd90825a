#include <quillside/model/depth_of_cut.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <functional>
#include <stdexcept>

#include <boost/math/tools/toms748_solve.hpp>

namespace quillside {

namespace {

void check(const DepthQuestion& question, const PassLimits& limits) {
  if (!(limits.wall_error > mm(0)) || !(limits.root_stress > megapascals(0)))
    throw std::domain_error{"a limit is above 0"};
  if (limits.power && (!(limits.power->power > watts(0)) || !(limits.power->speed > rev_per_min(0))))
    throw std::domain_error{"a power limit has a power and a speed above 0"};
  if (!(question.heaviest_feed >= question.pass.feed))
    throw std::domain_error{"the heaviest tooth takes no less than the feed"};
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
Length first_reached(const Used& used, Length most, int steps) {
  double kept = 0; // as shares of the most
  double kept_used = 0;
  for (int step = 1; step <= steps; ++step) {
    const double share = static_cast<double>(step) / steps;
    const double here = used(share * most);
    if (here > 1) {
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
  // pass can be pushed in by a shallow pass and out by a deeper one.
  const int steps = question.pass.engagement.width == question.pass.engagement.diameter ? 8 : 16;
  bind(first_reached([&](Length depth) { return stress_used(question, limits.root_stress, depth); }, deepest.depth, 1),
       DepthLimit::stress);
  bind(first_reached([&](Length depth) { return wall_used(question, limits.wall_error, depth); }, deepest.depth, steps),
       DepthLimit::wall);
  return deepest;
}

} // namespace quillside
