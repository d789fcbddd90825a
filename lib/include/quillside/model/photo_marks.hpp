#pragma once
// What marks on a photograph of a drill's point tell. The drill's own size gives the scale, its margins the axis, so
// that the photograph may lie at any angle.
// Assumes: a lens far enough off to look along one direction; in the side view the lips square to that direction (seen
// at full length), in the end view the axis along it.
// Leaves out: what a tilted lens does (foreshortened below says how much), distortion by the lens, the helix: a mark up
// a margin is taken where the drill is at its widest.
// Marks are in pixels: pure counts, either axis in either direction.

#include <quillside/model/law.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law side_marks_law{"side-marks", "tan(half) = across / along the axis; scale = margins / D",
                                    "geometry of the side view", "derived"};
inline constexpr Law end_marks_law{"end-marks", "W = distance of the two lips; scale = outer corners / D",
                                   "geometry of the end view", "derived"};
inline constexpr Law foreshortened_law{"foreshortened", "tan(half seen) = tan(half) / cos(tilt)",
                                       "a lens tilted along the axis", "derived"};

struct Mark {
  double x = 0;
  double y = 0;
};

/// Lip A is either one; the same in every reading.
struct SideMarks {
  Mark corner_a, inner_a, inner_b, corner_b;
  Mark margin_a, margin_b; // one point up each margin, toward the shank
};
struct SideView {
  Angle half_a;
  Angle half_b;
  Length length_a; // of the lips
  Length length_b;
  Length height_difference; // A over B, toward the work, at half the radius
};
/// \param diameter above 0. Throws std::domain_error with the reason when marks coincide or cannot be those of a point.
SideView side_view(const SideMarks& marks, Length diameter);

struct EndMarks {
  Mark corner_a, inner_a, inner_b, corner_b;
};
struct EndView {
  Length web;
  Length chisel_length;
  Angle chisel_edge; // obtuse
};
EndView end_view(const EndMarks& marks, Length diameter);

/// The included angle that a lens sees when it is tilted along the axis by \p tilt (0 to under 90 deg): the axis looks
/// shorter, the point blunter.
struct TiltedLens {
  Angle included;
  Angle tilt;
};
Angle foreshortened(TiltedLens seen);

} // namespace quillside
