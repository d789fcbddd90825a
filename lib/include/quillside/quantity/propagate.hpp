#pragma once
// Doubt through a relation: each reading alone is moved to either end of its Spread, the relation is worked out exactly
// there, and what the result moves by is added up in squares, each side for itself.
// Holds for readings whose errors have nothing to do with one another. Exact for one reading in a relation that only
// rises or only falls; for several, as good as first order, and better where the relation bends.
// Leaves out: what happens when two readings are off together.

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <tuple>
#include <utility>

#include <quillside/quantity/spread.hpp>

namespace quillside {

/// Spread of \p relation(quantities...), which gives a quantity, from a Spread of each of them. \p relation has to hold
/// with any one reading at either end of its Spread and the others at their values; what it throws passes through.
template <class Relation, class... Quantity>
auto propagate(const Relation& relation, const Spread<Quantity>&... readings) {
  using Result = decltype(relation(readings.value...));
  const auto all = std::tie(readings...);
  const Result middle = relation(readings.value...);
  double below = 0;
  double above = 0;
  const auto with_one_moved = [&]<std::size_t moved, std::size_t... i>(bool up, std::index_sequence<i...>) {
    const auto at = [&]<std::size_t which>() {
      const auto& reading = std::get<which>(all);
      if (which != moved) return reading.value;
      return up ? reading.high : reading.low;
    };
    return relation(at.template operator()<i>()...);
  };
  const auto add = [&]<std::size_t moved>() {
    constexpr auto indices = std::index_sequence_for<Quantity...>{};
    const double one = (with_one_moved.template operator()<moved>(false, indices) - middle).value();
    const double other = (with_one_moved.template operator()<moved>(true, indices) - middle).value();
    const double down = std::max({0.0, -one, -other});
    const double up = std::max({0.0, one, other});
    below += down * down;
    above += up * up;
  };
  [&]<std::size_t... i>(std::index_sequence<i...>) { (add.template operator()<i>(), ...); }
  (std::index_sequence_for<Quantity...>{});
  return Spread<Result>{middle - Result::from_value(std::sqrt(below)), middle,
                        middle + Result::from_value(std::sqrt(above))};
}

} // namespace quillside
