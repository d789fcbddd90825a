#pragma once
// Flat facets: one or two behind each lip, and how to hold the drill for each.

#include <optional>

#include <quillside/model/four_facet.hpp>

#include "grind_wanted.hpp"

namespace quillside {

/// Wanted points of one and of two flats a lip: tells the settings, what they give, and objects to what would rub.
void grind_two_facet(GrindWork& work);
void grind_four_facet(GrindWork& work);

/// One flat as a hold gives it: settings, findings, effects, and whether its heel clears.
/// \param instead what would do where it does not
struct OneFlat {
  FlatFlank flank;
  std::string told; // what a reason calls it, as "one flat of relief 14 deg"
  std::string instead;
};
void tell_one_flat(GrindWork& work, const OneFlat& flat);

/// The second facet, ground up to the axis, that would clear the heel behind this first one, in words; empty where none
/// does.
std::string second_facet_that_clears(const GrindWork& work, double first_slope);

/// Heels are held against a land to this much: a heel ground to the bound itself just touches.
inline constexpr Angle heel_touches = degrees(1e-9);

} // namespace quillside
