#pragma once
// Gauges to print, true to size: a V for each included angle, a set square for the fence, a wedge to saw for the tilt
// of a grinder's table, a disk of degrees, the outlines of two pairs of regular figures, and rulers that prove the
// print.
//
// The answer says which and how large; page/gauge draws them. Where no tilt is named it is that of `grind` for a 1/4 in
// drill with one flat a lip, ground to the first of the angles that grind answers; where there is none, no wedge.
// Leaves out: how far paper stretches as it is printed, glued and cut. The rulers tell the first; the rest is a hand's.

#include <vector>

#include <quillside/answer/answer.hpp>
#include <quillside/data/paper.hpp>
#include <quillside/data/tables.hpp>

namespace quillside {

struct GaugeQuestion {
  std::optional<Typed<std::vector<Angle>>> angles = {}; // included; the points of the tables when absent
  std::optional<Typed<Angle>> table_tilt = {};
  Typed<const Paper*> paper;
  std::optional<std::string> file = {}; // that the picture goes to
};

/// Throws a Fault of the kind `word` for an angle outside 20 to 170 deg, one named twice, none, or more than 48; and
/// for a tilt outside 0.5 to 45 deg.
Answer gauge(const Tables& tables, const GaugeQuestion& question);

/// A V to hold to a point, and the set square of its half to set a fence by.
struct VGauge {
  Angle included;
  Angle half;  // of the V; the fence from the disk
  Angle mitre; // the complement of it, as mitre gauges are marked
};
/// A wedge to saw.
struct Wedge {
  Angle tilt;
  Length base;
  Length rise;
};
/// Two regular figures laid flat to flat.
struct FigurePair {
  int sides;
  int other_sides;
  Angle notch;
};
/// What the sheets of an answer show; it follows from the answer alone.
struct GaugeShapes {
  std::vector<VGauge> gauges;
  std::optional<Wedge> wedge; // nothing where no tilt was named or taken
  std::vector<FigurePair> pairs;
};
/// \param answer of `gauge`
GaugeShapes gauge_shapes(const Answer& answer);

} // namespace quillside
