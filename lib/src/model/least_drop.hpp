#pragma once
// The least of drop / turn over a land: the greatest feed that its flank clears.

#include <algorithm>
#include <stdexcept>

#include <boost/math/tools/minima.hpp>

#include <quillside/quantity/angle.hpp>

namespace quillside::detail {

/// \param at_lip the ratio at the lip itself, where drop and turn are none
/// \param drop of an Angle, a Length; 180 steps find where the ratio is least, a search between its neighbours the
/// bottom
template <class Drop> FeedPerRev least_drop_per_turn(Angle land, FeedPerRev at_lip, const Drop& drop) {
  if (!(land > turns(0)) || !(land < turns(0.5))) throw std::domain_error{"a land angle is above 0 and under 180 deg"};
  const auto ratio = [&](double behind) { return in_mm_per_rev(drop(turns(behind)) / turns(behind)); };
  constexpr int steps = 180;
  const double step = in_turns(land) / steps;
  int least = 1;
  for (int i = 2; i <= steps; ++i)
    if (ratio(i * step) < ratio(least * step)) least = i;
  const double from = std::max(least - 1.0, 1e-3) * step; // nearer the lip a quotient of two small ones has no digits
  const double to = std::min(least + 1, steps) * step;
  constexpr int half_the_digits = 26; // of the place; the least itself is then known to all of its own
  const auto found = boost::math::tools::brent_find_minima(ratio, from, to, half_the_digits);
  const FeedPerRev feed = std::min(at_lip, mm_per_rev(std::min(found.second, ratio(to))));
  if (!(feed > mm_per_rev(0))) throw std::domain_error{"the flank stands above its lip on this land"};
  return feed;
}

} // namespace quillside::detail
