#pragma once
// The round ends that a cutter leaves: what has to be filed out of a corner, how long a slot must be to clear a square
// part, and how long a pocket behind it must be to clear the slot's corners.
// Assumes: an end mill square to the face, its corners sharp; a square-ended part.
// Leaves out: run-out, which makes the corner rounder by half of it; bend at the turn of the cutter.

#include <quillside/model/law.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law corner_left_law{"corner-left", "left = (sqrt(2) - 1) D/2, along the diagonal",
                                     "a quarter circle in a square corner", "derived"};
inline constexpr Law cleared_length_law{"cleared-length", "L = part + D", "a square corner at the start of a round end",
                                        "derived"};
inline constexpr Law pocket_length_law{"pocket-length", "S = L + P - sqrt(P^2 - W^2)",
                                       "a square corner on the round end of a wider slot", "derived"};

/// What a cutter leaves in a square corner, along its diagonal [mm]. \param cutter its diameter, 0 or more; otherwise
/// throws std::domain_error
Length corner_left(Length cutter);

/// A square-ended part and the cutter of the slot it goes in, both above 0.
struct SquareInRound {
  Length part_width; // along the slot
  Length cutter;
};
/// Length of a slot whose ends are left round and clear the part's corners, whatever its thickness [mm]. It is exact
/// for a part as thick as the slot is wide; a thinner one would go in a little less.
Length cleared_length(SquareInRound in);

/// A slot with square corners, and a pocket with round ends behind it, its width that of its cutter.
struct PocketBehind {
  Length slot_length;  // above 0
  Length slot_width;   // above 0
  Length pocket_width; // at least the slot's
};
/// Length of the pocket, over its round ends, that reaches every corner of the slot [mm]. Throws std::domain_error for
/// a slot of no size, or a pocket narrower than the slot.
Length pocket_length(PocketBehind behind);

} // namespace quillside
