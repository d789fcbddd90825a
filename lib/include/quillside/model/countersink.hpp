#pragma once
// The countersink for a cone-shaped head.
// Assumes: a true cone on the axis of the hole; the head's angle and the cutter's alike.
// Leaves out: the flat or round edge of a real head (it stands proud of a countersink that is only as wide as the head
// measures), the fillet under it, give of the quill.

#include <quillside/model/law.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law countersink_law{"countersink", "depth = (head - hole) / (2 tan(cone/2))", "geometry of a cone",
                                     "derived"};
inline constexpr Law sharp_head_law{"sharp-head", "head to its sharp edge = D + 2 k tan(cone/2)", "geometry of a cone",
                                    "derived"};

/// Hole above 0, head wider than the hole, cone above 0 and under 180 deg; otherwise std::domain_error.
struct Countersink {
  Length head; // width at the face
  Length hole;
  Angle cone; // included
};
/// From the face down to where the cone runs out into the hole [mm]: as far as the quill goes down from where the
/// cutter first touches the edge of the hole all round.
Length countersink_depth(Countersink countersink);

/// Screw above 0, height 0 or more, cone above 0 and under 180 deg; otherwise std::domain_error.
struct FlatHead {
  Length screw;  // major diameter
  Length height; // k, from the face down to where the cone has the width of the screw
  Angle cone;
};
/// How wide the head would be if its cone went up to the face: what its countersink has to be for it to lie flush [mm].
Length sharp_head(FlatHead head);

} // namespace quillside
