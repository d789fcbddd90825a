#pragma once
// The width of a slot for a part, and the side passes that bring it there: how far the table goes each side of the
// middle, and what a spring pass leaves of the cutter's bend. Assumes: the first cut centred on the slot; both walls
// cut alike; every setting of the table from one direction, so that backlash drops out. Leaves out: wear of the cutter
// between the walls, give of the work, error of the dial.

#include <quillside/model/law.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law slot_opening_law{"slot-opening", "W = part - interference", "the definition of interference",
                                      "derived"};
inline constexpr Law side_offset_law{"side-offset",
                                     "offset = (W - cut) / 2, cut = the cutter, or the first cut measured",
                                     "geometry of the slot", "derived"};
inline constexpr Law wall_to_wall_law{"wall-to-wall", "travel = 2 offset", "geometry of the slot", "derived"};
inline constexpr Law spring_pass_law{"spring-pass",
                                     "left = width of cut q^(n+1), q = left after the cut / width of cut",
                                     "a cutter that bends in proportion to its chip", "derived"};

/// What a part is to sit in.
struct PartToSit {
  Length part;         // above 0
  Length interference; // above 0 tight, below 0 clearance; less than the part
};
/// Width of its slot [mm]. Throws std::domain_error for a part of no size, or an interference as large as the part.
Length slot_opening(PartToSit sit);

/// A slot and what cuts it.
struct SlotWidths {
  Length slot;      // wanted, above 0
  Length first_cut; // the cutter, or the slot it cut as measured: its run-out and its bend are in that
};
/// From the slot's middle to the middle of the cutter at either wall [mm]; 0 where the first cut is the slot.
/// Throws std::domain_error for a first cut of no width, or wider than the slot.
Length side_offset(SlotWidths widths);

/// A pass along a wall.
struct SidePass {
  Length width_of_cut; // radial, above 0
  Length left;         // what the bend leaves standing, 0 or more and less than the width of cut
};
/// What stands after \p passes more at the same setting [mm]. Throws std::domain_error outside the ranges above, or
/// for less than no pass.
Length left_after_spring_passes(SidePass pass, int passes);

} // namespace quillside
