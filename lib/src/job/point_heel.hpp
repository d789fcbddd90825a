#pragma once
// How far behind its lip a flank clears: the turn at which its heel is back at the height of the lip.

#include "point_work.hpp"

namespace quillside {

/// Sets `heel` and `heel_clears`. Needs web, chisel edge, relief and included angle solved.
void solve_heel(PointWork& work);

} // namespace quillside
