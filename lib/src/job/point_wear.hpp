#pragma once
// What to grind off until land and margin are whole again.

#include "point_work.hpp"

namespace quillside {

/// Sets `grind_off`, where wear was read. Needs the relief solved.
void solve_wear(PointWork& work);

} // namespace quillside
