#pragma once
// Why a point is judged so, told: the steps from its readings, the rows that stood in for others, the limits.

#include <vector>

#include <quillside/job/point.hpp>

#include "point_ground.hpp"
#include "point_judge.hpp"
#include "telling.hpp"

namespace quillside {

/// The steps of every way; one that two ways share is told once.
void tell_steps(const Answer& answer, Telling& telling, const std::vector<JudgedPoint>& ways);

/// The rows of what is wanted, and of what nobody read.
void tell_ground(const Tables& tables, Telling& telling, const PointQuestion& ask, const Ground& ground,
                 const SolvedPoint& point);

void tell_limits(Telling& telling, const std::vector<PointCheck>& checks);

/// What a tilted lens makes of a point that was photographed.
void tell_photo(Telling& telling, const PointQuestion& ask, const SolvedPoint& point);

} // namespace quillside
