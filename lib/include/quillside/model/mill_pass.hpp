#pragma once
// One pass of an end mill: what it takes off, which walls it leaves, and the mean force and the power of a specific
// force.
// Assumes: a specific force that is the same all over the pass.

#include <quillside/model/chip.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

/// The two ways an edge meets a wall; both happen in a full slot, one on each wall.
enum class MillSide { conventional, climb };

/// One pass of an end mill. Whatever is outside its range throws std::domain_error where it is used.
struct MillPass {
  Engagement engagement; // width of cut, and diameter; a width equal to the diameter is a full slot
  Length depth;          // axial, above 0
  FeedPerTooth feed;     // above 0
  TeethPerTurn teeth;    // 1 to 12
  Angle helix;           // 0 to 60 deg, right hand
  MillSide side;         // of a pass that is no full slot; in a slot it is not read
};
/// Whether the pass leaves a wall on that side: both in a full slot, else its own.
bool forms_wall(const MillPass& pass, MillSide side);

/// Metal removed by a pass [mm3/min]. \param speed 0 or more; otherwise throws std::domain_error
RemovalRate removal_rate(const MillPass& pass, SpindleSpeed speed);
/// P = kc Q [W].
Power cutting_power(Stress specific, RemovalRate rate);
/// The mean tangential force that a specific force makes in a pass, kc ae ap fz z / (pi D): the same whatever the
/// speed.
Force mean_tangential_force(const MillPass& pass, Stress specific);

} // namespace quillside
