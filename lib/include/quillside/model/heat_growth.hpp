#pragma once
// How a slot grows with heat, and what that does to a fit.
// Assumes: the whole plate at one temperature; a slot in a solid grows as the solid itself would where it is not; the
// mean expansion over the degrees gone through.
// Leaves out: an uneven plate (a slot heated at its rim alone grows less, or closes), a part that warms while it goes
// in, the give of plate and part under an interference, so no pressure and no force are had from here, and yielding:
// what is tighter than the metal can give comes out looser than it went in.

#include <quillside/model/law.hpp>
#include <quillside/quantity/spread.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law heat_growth_law{"heat-growth", "dW = a W (T - T0)",
                                     "linear expansion of a solid; any text of physics", "derived"};
inline constexpr Law clearance_hot_law{"clearance-hot", "clearance hot = dW - interference at room heat",
                                       "geometry of the fit", "derived"};
inline constexpr Law heat_needed_law{"heat-needed", "T = T0 + (interference + clearance wanted) / (a W)",
                                     "linear expansion, solved for the temperature", "derived"};
inline constexpr Law both_heated_law{"both-heated",
                                     "interference at T = interference at room heat - (a plate - a part) W (T - T0)",
                                     "linear expansion of both parts", "derived"};

/// Growth of a length [mm]; below zero when it cools.
/// \param mean  above 0: over the degrees of \p rise
/// \param size  above 0; otherwise the function throws std::domain_error
Length heat_growth(Expansion mean, Length size, TemperatureDifference rise);
/// The same with the doubt of expansion and size.
Spread<Length> heat_growth(const Spread<Expansion>& mean, const Spread<Length>& size, TemperatureDifference rise);

/// Room left round a cold part in the hot slot [mm]; below zero: still tight by so much.
Spread<Length> clearance_hot(const Spread<Length>& interference, const Spread<Length>& growth);

/// A fit that is to be opened by heat.
struct HeatedFit {
  Expansion mean;      // above 0
  Length size;         // above 0
  Length interference; // at room heat; below zero: clearance
  Length clearance;    // wanted when hot
  Temperature room;
};
/// The temperature the slot needs, the part staying cold; never below the room's. Throws std::domain_error as
/// heat_growth does.
Temperature heat_needed(const HeatedFit& fit);

/// Plate and part, each with its mean expansion.
struct TwoExpansions {
  Spread<Expansion> plate;
  Spread<Expansion> part;
};
/// Interference when plate and part are at one temperature [mm]; at no rise, what is left after cooling: as before,
/// whatever the heat was, while neither has yielded.
Spread<Length> interference_at(const Spread<Length>& interference, const TwoExpansions& expansions, Length size,
                               TemperatureDifference rise);

} // namespace quillside
