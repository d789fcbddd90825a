#pragma once
// How far one lip stands over the other: read, from the lengths of the lips, off a photograph, or what the chips of one
// flute or of both allow.

#include "point_work.hpp"

namespace quillside {

/// Sets `height`, `higher` and `height_is_floor`. Needs the angles solved. Throws a Fault of the kind `conflict` when
/// readings contradict each other.
void solve_heights(PointWork& work);

} // namespace quillside
