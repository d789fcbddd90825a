#pragma once
// A gauge made of two regular figures laid flat to flat with a corner shared, and where a drill's point shows light in
// it. Assumes: figures true to shape, sides that meet in the shared corner, a point true to its axis stood upright in
// the notch. Leaves out: the tolerance of nuts (they carry none for angles), a radius in the corner of the notch, the
// crown of a conical chisel edge. With equal angles the lips lie along both sides and the chisel edge still clears the
// corner: no light counts there.

#include <quillside/model/law.hpp>
#include <quillside/model/lip.hpp>

namespace quillside {

inline constexpr Law notch_law{"notch", "notch = 360 - I1 - I2, I = 180 (1 - 2/n)", "angles of regular figures",
                               "derived"};
inline constexpr Law light_gap_law{"light-gap", "at the corner L sin(v - k); under the tip x_o cot v - h",
                                   "a point stood in a V", "derived"};

/// Interior angle of a regular figure. \param sides 3 or more; less throws std::domain_error
Angle interior_angle(int sides);
/// The notch between two figures; a flat plate is a figure of 180 deg. Throws std::domain_error for a notch of 180 deg
/// or more: no point stands in it.
Angle notch_between(Angle figure, Angle other);

struct LightGap {
  enum class Where { none, corner, tip };
  Where where;
  Length gap; // square to the side of the notch at the corner; along the axis under the tip
};
/// Where light shows, and how wide. \param notch above 0 and under 180 deg \param chisel_edge of the point, as in
/// lip.hpp Angles that differ by less than 1e-9 deg count as equal.
LightGap light_gap(Angle notch, PointShape point, Angle chisel_edge);

/// What the light shows of one lip, with the drill's axis in the middle of the notch: the light_gap of that lip, read
/// backward.
struct LightReading {
  Length diameter;
  Length web;
  Angle chisel_edge;
  LightGap light; // with a gap of 0 or more; where none, the gap is not looked at
};
/// Half angle of the lip. Light under the tip less than the chisel edge alone shows is taken for none: such a lip lies
/// along the side. Throws std::domain_error for a gap that no lip can show.
Angle half_angle_from_light(Angle notch, LightReading reading);

} // namespace quillside
