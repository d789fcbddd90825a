#pragma once
// The included angle and its two halves, from whatever tells of them: a protractor, a gauge and its light, a
// photograph, depths and lengths along the axis, the length of the lips.

#include "point_work.hpp"

namespace quillside {

/// Sets `included`, `included_read`, `halves`, `half_difference`, `halves_are_bounds` and `bow`; an unread angle is one
/// of the usual ones. Needs web, chisel edge and relief solved. Throws a Fault of the kind `conflict` when readings
/// contradict each other.
void solve_angles(PointWork& work);

/// Whether both halves are known to more than a bound.
bool halves_known(const SolvedPoint& point);

/// Of lip A (0) or B (1); needs halves_known.
const Spread<Angle>& half_angle(const SolvedPoint& point, std::size_t lip);

/// Where no half was read.
Spread<Angle> half_of_whole(const SolvedPoint& point);

/// How far apart halves may be that nobody read, either way.
Spread<Angle> apart_by(Angle difference);

} // namespace quillside
