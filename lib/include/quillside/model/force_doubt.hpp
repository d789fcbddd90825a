#pragma once
// Where the truth of a force lies between two models that part company, most of all at thin chips.

#include <quillside/model/law.hpp>
#include <quillside/quantity/spread.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law size_effect_law{
    "size-effect", "force up to 1.5 times under 0.02 mm of chip, 2 times under 0.005 mm",
    "how far published power laws part company below the feeds they were fitted to", "derived"};

/// By how many times the force may lie above a power law fitted to thicker chips: 2 under 0.005 mm, 1.5 under 0.02 mm,
/// else 1. \param chip the largest of the cut, above 0; otherwise throws std::domain_error
double size_effect_doubt(Length chip);

struct TwoForces {
  Force kienzle;
  Force handbook;
};
struct ForceScatter {
  double scatter;     // of each model, as a share: 0 or more, less than 1
  double size_effect; // size_effect_doubt of the largest chip; 1 or more
};
/// Where the truth lies: the value is Kienzle's; low and high are the lower and the higher of the two models with their
/// scatter, and the size effect on top of the high one: at thin chips the published laws
/// that were compared lie above a family's own, none below.
/// Both forces above 0; otherwise throws std::domain_error.
Spread<Force> joined_force(TwoForces forces, ForceScatter doubt);

/// What is in proportion to a force (torque, power, bend, stress), with the doubt of the force.
template <class Quantity> Spread<Quantity> in_proportion(Quantity value, const Spread<Force>& force) {
  return {value * (force.low / force.value), value, value * (force.high / force.value)};
}

} // namespace quillside
