#pragma once
// The rules by which a drill's point is judged: how far off is still to be kept, how far off can be touched up.

#include <array>

#include <quillside/data/row.hpp>

namespace quillside {

/// What is judged. The angles off a wanted one, the rest by itself.
inline constexpr std::array<std::string_view, 10> point_items{"included_angle",
                                                              "half_angle_difference",
                                                              "lip_height_difference",
                                                              "lip_relief_below",
                                                              "lip_relief_over",
                                                              "chisel_edge_angle",
                                                              "web",
                                                              "land_wear",
                                                              "margin_wear",
                                                              "lip_bow"};
inline constexpr std::array<std::string_view, 3> grinding_ways{"two-facet", "four-facet", "cone"};

struct PointLimit {
  std::string_view item; // one of `point_items`
  std::string_view way;  // one of `grinding_ways`; empty: any
  Printed<Length> diameter;
  std::string_view keep;     // as typed: an angle, a length, or a share of the diameter (web)
  std::string_view touch_up; // the same; beyond it the point is ground anew
  std::string_view what;
  std::string_view source;
  RowPlace place;
};

/// The most specific row for that item, way (empty: unknown) and drill: one that names the way before one that does
/// not, then one that names the diameter. Null when no row holds.
const PointLimit* choose_point_limit(std::span<const PointLimit> limits, std::string_view item, std::string_view way,
                                     Length diameter);

/// How much over its drill's size a hole usually comes out, of a drill of that size.
struct UsualOversize {
  Printed<Length> diameter; // the low end belongs to it, the high end does not
  Printed<Length> oversize;
  std::string_view source;
  RowPlace place;
};

/// The row for that drill, else the one nearest to it; null when there is none.
const UsualOversize* choose_usual_oversize(std::span<const UsualOversize> rows, Length diameter);

} // namespace quillside
