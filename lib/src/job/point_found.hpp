#pragma once
// What was found of a point, told: its figures and its checks.

#include <vector>

#include <quillside/answer/answer.hpp>

#include "point_judge.hpp"

namespace quillside {

/// The figures that every one of the ways gives, which are at least one.
void tell_found(Answer& answer, const std::vector<JudgedPoint>& ways);

void tell_checks(Answer& answer, const std::vector<PointCheck>& checks);

} // namespace quillside
