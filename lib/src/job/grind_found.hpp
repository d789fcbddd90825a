#pragma once
// What a ground point is told by, whatever the way; and what one degree more of a setting does to it.

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include <quillside/model/curved_lip.hpp>

#include "grind_wanted.hpp"

namespace quillside {

/// The angles a protractor finds.
struct PointAngles {
  Angle included;
  Angle relief;
  std::optional<Angle> chisel = {}; // obtuse
};

/// Angles of the point, height error of a degree of indexing; with its doubt where the web was not measured.
/// \param relief_at the relief that the same settings give with another web
void tell_angles(GrindWork& work, const PointAngles& angles, const std::function<Angle(Length web)>& relief_at);

/// A change of one setting by a step, and what the hold then gives; nothing where it would grind no point.
struct SettingMoved {
  std::string setting; // as "fence", with the step before it: "1 deg more fence"
  std::function<PointAngles()> gives;
};
/// Differences from \p base through the forward formula, one step of `why` each; those under 0.005 deg are left out.
void tell_effects(GrindWork& work, const PointAngles& base, const std::vector<SettingMoved>& moves, const Law& law);

/// Flutes that were made for another point: the bow of the lip, the clocking on the outer corner, and what a protractor
/// then finds instead of \p straight.
PointAngles with_flutes(GrindWork& work, const GroundFlank& flank, const PointAngles& straight);

} // namespace quillside
