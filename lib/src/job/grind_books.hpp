#pragma once
// Beside the geometry: the wheel and its mark, what a worn drill costs, the web it has after that.

#include <quillside/model/lip_angles.hpp>

#include "grind_wanted.hpp"

namespace quillside {

/// Which part of a land a facet covers, seen along the axis.
struct FacetReach {
  bool to_heel = true;
  bool from_axis = false; // begins at the axis, not at the lip
};
/// On the rim of a wheel: how hollow the facet comes out, and how much steeper at the lip. Nothing on a flat disk.
void tell_rim(GrindWork& work, const std::string& which, Facet facet, FacetReach reach);

/// Rim speed, and the wheel's speed against the most that is marked on it.
void judge_wheel(GrindWork& work);

/// Length to grind off for wear, web after it, when to thin, how many such regrinds are left.
/// \param relief that is ground
void tell_books(GrindWork& work, Angle relief);

} // namespace quillside
