#pragma once
// The thickest chip that run-out makes.
// Assumes: a cutter that turns true but for its axis, which is off the spindle's; a surface that keeps the deepest of
// the cuts made before.

#include <quillside/model/law.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law tooth_load_law{"tooth-load",
                                    "h = least over k = 1..z of k fz + 2 e sin(pi k/z) sin(pi k/z - a), at the worst a",
                                    "each tooth against every surface left before it", "derived"};

/// The thickest chip that any tooth takes when the cutter's axis is off the spindle's, the worst way round [mm].
/// With 2 and 3 flutes it is fz + 2 e sin(pi/z), at most z fz; with more, that closed form is too high (3.3 % at most
/// with 4 flutes, 15 % with 6, 41 % with 12), because a tooth two or more ahead has cut deeper there.
/// \param feed above 0 \param teeth 1 to 12 \param offset half the total indicator reading, 0 or more. Anything else
/// throws std::domain_error.
Length largest_tooth_chip(FeedPerTooth feed, TeethPerTurn teeth, Length offset);

} // namespace quillside
