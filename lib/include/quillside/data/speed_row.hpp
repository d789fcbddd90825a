#pragma once
// Cutting speeds as tables print them, and speeds by rule.

#include <quillside/data/row.hpp>

namespace quillside {

/// One printed speed, for one material, condition, hardness band and cutter.
struct SpeedRow {
  std::string_view material;
  std::string_view condition; // empty: any
  PrintedHardness hardness;   // not given: any
  std::string_view cutter;
  Printed<CuttingSpeed> speed;         // this,
  Printed<SpindleSpeed> spindle_speed; // or this (burrs only)
  Printed<Length> diameter;            // the head it was printed for (burrs only); not given: any
  bool usual = false;                  // taken when neither condition nor hardness is named
  bool hand = false;                   // practice with a burr held in the hand
  std::string_view source;
  std::string_view note;
  RowPlace place;
};

/// The speed of one cutter as so many times that of another.
struct SpeedRatio {
  std::string_view ask;
  std::string_view cutter;
  std::string_view of;
  Printed<double> ratio;
  std::string_view source;
  RowPlace place;
};

} // namespace quillside
