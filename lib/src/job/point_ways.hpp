#pragma once
// A point solved and judged in every way of grinding that its readings allow.

#include <vector>

#include <quillside/job/point.hpp>

#include "point_ground.hpp"
#include "point_judge.hpp"

namespace quillside {

/// At least one. A way that was named has to be allowed. Throws a Fault of the kind `conflict` when the readings allow
/// none.
std::vector<JudgedPoint> judge_ways(const Tables& tables, const PointQuestion& ask, const Ground& ground,
                                    const PointReadings& readings);

} // namespace quillside
