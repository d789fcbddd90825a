#pragma once
// How thick the web is at the point: read across it, off a photograph end on, or from the length of the chisel edge.

#include "point_work.hpp"

namespace quillside {

/// Sets `web`, `web_read` and `web_found`; an unread web is the usual one. Throws a Fault of the kind `conflict` when
/// readings contradict each other.
void solve_web(PointWork& work);

/// No web reaches the diameter, no lip goes on without a reach: ends of a wide doubt are cut there.
Spread<Length> fitting(const PointWork& work, Spread<Length> web);

} // namespace quillside
