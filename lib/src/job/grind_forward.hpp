#pragma once
// A hold read forward: what one flat a lip it grinds.

#include <quillside/model/lip_angles.hpp>

#include "grind_wanted.hpp"

namespace quillside {

/// The facet that the hold grinds. Throws a Fault of the kind `conflict` for settings that lack one another or stand
/// beside wanted figures; objects to a hold that grinds no flank falling from its lip, and gives nothing then.
std::optional<Facet> facet_held(const GrindQuestion& ask, std::vector<Objection>& objections);

/// What it gives: settings, findings, and whether the heel clears. The subject's point is that of the facet.
void grind_forward(GrindWork& work, Facet facet);

} // namespace quillside
