#pragma once
// Rules for drilled holes: what depth takes off speed and feed, when to draw out, which point and relief a metal wants.

#include <array>

#include <quillside/data/row.hpp>

namespace quillside {

/// From this depth on, in diameters, speed and feed come down.
struct DeepHole {
  Printed<double> depth;
  Printed<double> speed_cut;
  Printed<double> feed_cut;
  std::string_view source;
  RowPlace place;
};

/// A peck schedule, in diameters.
struct PeckRow {
  Words metal;           // empty: any
  Printed<Length> below; // only for drills smaller than this
  Printed<double> first;
  Printed<double> next;
  Printed<double> deep_from;
  Printed<double> deep_next;
  std::string_view source;
  RowPlace place;
};

struct DrillPointRow {
  std::string_view material; // empty: any
  Printed<Angle> point;
  std::string_view source;
  RowPlace place;
};

/// Web at the point of a drill of this size; between two rows in proportion to the diameter.
struct DrillWebRow {
  Printed<Length> diameter;
  Printed<Length> web;
  std::string_view source;
  RowPlace place;
};

struct LipReliefRow {
  Printed<Length> diameter;
  Words metal; // empty: any
  Printed<Angle> relief;
  std::string_view source;
  RowPlace place;
};

} // namespace quillside
