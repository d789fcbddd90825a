#pragma once
// A hole over the size of its drill: what a trial hole asks of the lips, and what lips as read make of a hole.

#include "point_work.hpp"

namespace quillside {

/// A trial hole over size sets `height` where no better reading stands: margins can hide more, so that it is a floor,
/// and it names no lip. Else it sets `explained_oversize`: what lips, run-out and habit make of it at most. Needs
/// angles and heights solved.
void heed_trial_hole(PointWork& work);

/// Sets `oversize`: of the trial hole, else the most that such lips drill. Needs angles and heights solved.
void solve_oversize(PointWork& work);

} // namespace quillside
