#pragma once
// What was asked of a point, as the answer repeats it: every reading as typed, and what was taken where nobody read.

#include <vector>

#include <quillside/job/point.hpp>

#include "point_ground.hpp"
#include "point_judge.hpp"

namespace quillside {

/// \param ways at least one
void tell_inputs(Answer& answer, const PointQuestion& ask, const Ground& ground, const std::vector<JudgedPoint>& ways);

} // namespace quillside
