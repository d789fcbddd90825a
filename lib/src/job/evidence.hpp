#pragma once
// Several readings of one figure: do they agree, and which of them answers.

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include <quillside/quantity/spread.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>

#include "point_solve.hpp"

namespace quillside {

inline std::string in_words(Length length) {
  return print_length_with_unit(length, UnitSystem::metric) + " (" + print_length_with_unit(length, UnitSystem::inch) +
         ")";
}
inline std::string in_words(Angle angle) { return print_angle(angle) + " deg"; }

/// "118.0 +- 1.0 deg", or "112.0 to 119.5 deg" where the sides differ.
inline std::string in_words(const Spread<Angle>& spread) {
  return print_angle(spread.value) + " deg (" + print_angle(spread.low) + " to " + print_angle(spread.high) + ")";
}
inline std::string in_words(const Spread<Length>& spread) {
  const auto one = [](Length length) { return print_length(length, UnitSystem::metric); };
  return one(spread.value) + " (" + one(spread.low) + " to " + one(spread.high) + ")";
}

template <class Quantity>
[[noreturn]] void contradict(const std::string& what, const Known<Quantity>& one, const Known<Quantity>& other) {
  const Quantity gap = std::max(one.spread.low - other.spread.high, other.spread.low - one.spread.high);
  throw contradiction(one.from, one.from + " and " + other.from + " contradict each other: " + what + " " +
                                    in_words(one.spread) + " against " + in_words(other.spread) + ", " + in_words(gap) +
                                    " apart beyond their errors; read both again");
}

/// Errors are those of nine readings in ten: two honest ones may lie a little further apart than both together.
template <class Quantity> Spread<Quantity> widened(const Spread<Quantity>& spread) {
  constexpr double slack = 0.25;
  return {spread.low - slack * (spread.value - spread.low), spread.value,
          spread.high + slack * (spread.high - spread.value)};
}

/// The narrowest of the readings answers, and the others have to overlap it and one another. \p what names the figure.
template <class Quantity>
Known<Quantity> agreed(const std::string& what, const std::vector<Known<Quantity>>& readings) {
  for (std::size_t i = 0; i < readings.size(); ++i)
    for (std::size_t j = i + 1; j < readings.size(); ++j) {
      const auto one = widened(readings[i].spread);
      const auto other = widened(readings[j].spread);
      if (one.low > other.high || other.low > one.high) contradict(what, readings[i], readings[j]);
    }
  return *std::min_element(readings.begin(), readings.end(), [](const auto& a, const auto& b) {
    return a.spread.high - a.spread.low < b.spread.high - b.spread.low;
  });
}

} // namespace quillside
