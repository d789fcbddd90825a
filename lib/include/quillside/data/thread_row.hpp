#pragma once
// Screws and the holes they want: thread series, clearance holes, heads, how much thread a metal is given, and what is
// left for a reamer.

#include <array>

#include <quillside/data/row.hpp>

namespace quillside {

/// One thread of a series.
struct ScrewThread {
  std::string_view key;   // M3x0.5, 4-40
  std::string_view screw; // what the size alone is called: M3, no4
  Printed<Length> major;
  Printed<Length> pitch;
  bool metric = false;
  bool usual = false; // taken when only the size is named
  std::string_view source;
  RowPlace place;
};

/// Holes that a screw goes through, as a standard steps them.
struct ClearanceHole {
  std::string_view screw;
  Printed<Length> normal;
  Printed<Length> close;
  Printed<Length> loose;
  std::string_view source;
  RowPlace place;
};

/// A head that is sunk into the face: a cone, or a round one that lies in a counterbore.
struct ScrewHead {
  std::string_view screw;
  std::string_view shape; // one of `head_shapes`
  Printed<Length> height;
  Printed<Angle> cone;         // of a flat head
  Printed<Length> counterbore; // for a cap head: its width
  std::string_view source;
  RowPlace place;
};

inline constexpr std::array<std::string_view, 2> head_shapes{"flat", "cap"};

/// Percentage of thread for a metal, in the trade's count (model/screw_thread).
struct ThreadEngagement {
  Words metal; // empty: any
  Printed<double> engagement;
  Printed<double> first;
  std::string_view source;
  RowPlace place;
};

/// What a drill leaves for a reamer of this size, on the diameter: the low end belongs to the row, the high end does
/// not.
struct ReamAllowance {
  Printed<Length> diameter;
  Printed<Length> allowance;
  std::string_view source;
  RowPlace place;
};

} // namespace quillside
