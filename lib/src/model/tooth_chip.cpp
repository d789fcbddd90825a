#include <quillside/model/tooth_chip.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

#include <boost/math/tools/minima.hpp>

#include "checked.hpp"
#include "one_tooth.hpp"

namespace quillside {

using detail::one_tooth;
using detail::require;

namespace {

constexpr double half_turn = std::numbers::pi;
constexpr double quarter_turn = half_turn / 2;

} // namespace

Length largest_tooth_chip(FeedPerTooth feed, TeethPerTurn teeth, Length offset) {
  require(feed > mm_per_tooth(0), "a feed per tooth is above 0");
  require(teeth >= flutes(1) && teeth <= flutes(12), "an end mill has 1 to 12 flutes");
  require(offset >= mm(0) && std::isfinite(in_mm(offset)), "a run-out is 0 or more");
  const int z = in_flutes(teeth);
  const double e = offset / (feed * one_tooth);
  const auto chip_at = [&](double phase) {
    double least = z;
    for (int k = 1; k < z; ++k) {
      const double half = half_turn * k / z;
      least = std::min(least, k + 2 * e * std::sin(half) * std::sin(half - phase));
    }
    return least;
  };
  // The tooth before has left the most at half a pitch short of a quarter turn back; teeth further ahead move the worst
  // phase from there toward 0.
  const double from = half_turn / z - quarter_turn;
  constexpr int steps = 16;
  double best = chip_at(from);
  double low = from;
  double high = from / steps * (steps - 1);
  for (int step = 1; step <= steps; ++step) {
    const double phase = from * (steps - step) / steps;
    const double chip = chip_at(phase);
    if (chip <= best) continue;
    best = chip;
    low = from * (steps - step + 1) / steps;
    high = from * std::max(0, steps - step - 1) / steps;
  }
  constexpr int bits = 24;
  if (low < high)
    best = std::max(
        best,
        -boost::math::tools::brent_find_minima([&](double phase) { return -chip_at(phase); }, low, high, bits).second);
  return best * (feed * one_tooth);
}

} // namespace quillside
