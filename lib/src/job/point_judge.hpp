#pragma once
// What was found of a point, held against what is wanted: one check an item, and what they come to.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <quillside/data/point_limit.hpp>

#include "point_solve.hpp"

namespace quillside {

/// From good to bad.
enum class PointVerdict { keep, touch_up, regrind };

/// The verdicts that a doubt covers; one where both are the same.
struct VerdictRange {
  PointVerdict best = PointVerdict::keep;
  PointVerdict worst = PointVerdict::keep;

  [[nodiscard]] bool settled() const { return best == worst; }
};

struct PointCheck {
  std::string_view item;
  std::optional<Measure> value;    // absent where it is not judged
  std::optional<Measure> want_low; // of the unit of the value
  std::optional<Measure> want_high;
  std::optional<VerdictRange> range; // absent where it is not judged
  std::string lip = "both";
  const PointLimit* limit = nullptr;
  bool bound_only = false; // only a bound is known, and it speaks for nothing
};

/// What a point should be, ground in one way.
struct PointTargets {
  Angle included;
  Angle relief;
  Angle chisel; // obtuse
};

struct JudgedPoint {
  SolvedPoint solved;
  PointTargets targets;
  std::vector<PointCheck> checks;

  [[nodiscard]] bool knows_included() const { return solved.included_read; }
  [[nodiscard]] bool knows_lips() const { return solved.height.has_value() && !solved.height_is_floor; }
  [[nodiscard]] bool knows_relief() const {
    return solved.relief.has_value() && !solved.relief_is_most && (solved.heel || solved.heel_clears);
  }
};

/// Holds a point against its targets and the rows of `point_limit`; the heel against the land.
JudgedPoint judge_point(const Tables& tables, SolvedPoint solved, const PointTargets& targets, Angle land,
                        const PointReadings& readings);

/// The same item of several ways that are all possible: every verdict that any of them allows.
std::vector<PointCheck> checks_of_all(const std::vector<JudgedPoint>& ways);

} // namespace quillside
