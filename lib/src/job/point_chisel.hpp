#pragma once
// The chisel edge, acute against the lips: read, off a photograph end on, or from its length over the web.

#include "point_work.hpp"

namespace quillside {

/// Sets `chisel`, `chisel_read` and `chisel_length`; an unread edge is as that way of grinding usually leaves it. Needs
/// the web solved. Throws a Fault of the kind `conflict` when readings contradict each other.
void solve_chisel(PointWork& work);

/// Ends of a wide doubt are cut where an edge leaves no lip, and where it is square to the lips.
Spread<Angle> within_edges(Spread<Angle> acute);

} // namespace quillside
