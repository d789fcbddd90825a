#pragma once
// What every part of the solving of a point works with: its readings, what stands in where nobody read, and the point
// as far as it is solved.

#include <stdexcept>
#include <string>
#include <utility>

#include <quillside/model/lip.hpp>
#include <quillside/quantity/angle.hpp>
#include <quillside/quantity/propagate.hpp>
#include <quillside/words/fault.hpp>

#include "point_solve.hpp"

namespace quillside {

/// A needle and a flat: no reading tells of a point beyond them.
inline constexpr Angle sharpest_point = degrees(40);
inline constexpr Angle bluntest_point = degrees(178);

struct PointWork {
  const PointReadings& readings;
  const PointDefaults& defaults;
  const Known<Angle>& earlier_included; // of the pass before
  SolvedPoint point;

  [[nodiscard]] bool two_facet() const { return point.way == GrindingWay::two_facet; }
  [[nodiscard]] bool cone() const { return point.way == GrindingWay::cone; }
  /// Thinning and splitting move the inner ends of the lips: what hangs on those ends no longer holds.
  [[nodiscard]] bool inner_ends_moved() const { return readings.split || readings.thinned; }
  [[nodiscard]] PointShape shape(Length web, Angle included) const { return {readings.diameter, web, included}; }

  /// A relation worked out for a reading; what cannot be said of any point is a contradiction of the reading.
  template <class Relation, class... Quantity>
  auto through(const std::string& from, const Relation& relation, const Spread<Quantity>&... spreads) const {
    try {
      return propagate(relation, spreads...);
    } catch (const std::domain_error& error) {
      throw contradiction(from, from + " is no reading of this drill: " + error.what());
    }
  }

  template <class Quantity> void because(std::string step, const Law& law, const Spread<Quantity>& spread) {
    point.steps.push_back({std::move(step), &law, Answer::of(spread)});
  }
  void not_judged(const char* flag) { point.not_judged.emplace_back(flag); }
};

} // namespace quillside
