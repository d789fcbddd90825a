#pragma once
// A cone before a flat face: the numbers of a swing fixture, the swing it needs and the swing it may not reach.

#include "grind_wanted.hpp"

namespace quillside {

/// Tells the fixture and what it gives, and objects to a heel that stands up or a swing that would cut the other lip.
/// Throws a Fault of the kind `conflict` when the figures asked for make no cone.
void grind_cone(GrindWork& work);

} // namespace quillside
