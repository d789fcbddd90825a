#pragma once
// A Spread cut at a bound, or told as a figure that follows from it without any new doubt.

#include <algorithm>

#include <quillside/quantity/spread.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

/// A spread with a bound laid over it: no end and no value beyond.
template <class Quantity> Spread<Quantity> at_most(Spread<Quantity> spread, Quantity bound) {
  return {std::min(spread.low, bound), std::min(spread.value, bound), std::min(spread.high, bound)};
}
template <class Quantity> Spread<Quantity> at_least(Spread<Quantity> spread, Quantity bound) {
  return {std::max(spread.low, bound), std::max(spread.value, bound), std::max(spread.high, bound)};
}

/// How large a figure is that may lie to either side of nothing.
template <class Quantity> Spread<Quantity> magnitude(const Spread<Quantity>& spread) {
  const Quantity value = std::max(spread.value, -spread.value);
  const Quantity high = std::max(spread.high, -spread.low);
  const bool straddles = spread.low <= Quantity{} && spread.high >= Quantity{};
  return {straddles ? Quantity{} : std::min(std::max(spread.low, -spread.low), std::max(spread.high, -spread.high)),
          value, high};
}

/// A chisel edge by its other angle: the obtuse one for the acute, the acute one for the obtuse.
inline Spread<Angle> supplement(const Spread<Angle>& edge) {
  return {turns(0.5) - edge.high, turns(0.5) - edge.value, turns(0.5) - edge.low};
}

} // namespace quillside
