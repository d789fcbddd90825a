#pragma once
// The relief of the lips at the outer corner: read, off a dial over a turn, or what the chisel edge allows of it; and
// the chisel edge of two flats, which follows from their relief.

#include "point_work.hpp"

namespace quillside {

/// Sets `relief` and `relief_is_most`, of two flats whose edge nobody read also `chisel` and `chisel_follows`. Needs
/// web and chisel edge solved. Throws a Fault of the kind `conflict` when readings contradict each other.
void solve_relief(PointWork& work);

/// No less than what makes the flank fall away behind a straight lip: one that does not has no slope to work with.
Angle falling_relief(PointShape point, Angle relief);

} // namespace quillside
