#pragma once
// What a point ground in one way should be, and what it is held to be where nobody read it.

#include <quillside/data/tables.hpp>

#include "point_ground.hpp"
#include "point_judge.hpp"
#include "point_solve.hpp"

namespace quillside {

/// The relief is that of the table; of one flat, the least that clears its heel.
PointTargets targets_of(const Tables& tables, const Ground& ground, Length diameter, GrindingWay way);

PointDefaults defaults_of(const Tables& tables, const Ground& ground, Length diameter, GrindingWay way,
                          const PointTargets& targets);

} // namespace quillside
