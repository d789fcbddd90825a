#pragma once
// The readings of one point as Spreads, free of the words they were typed in.

#include <optional>

#include <quillside/data/tables.hpp>
#include <quillside/job/point.hpp>
#include <quillside/quantity/spread.hpp>

namespace quillside {

struct LightReadings {
  Spread<Angle> gauge;
  Pair<LightAt> at;
  std::optional<Pair<Spread<Length>>> gap;
};

struct MarkedSide {
  Pair<Spread<Angle>> half;
  Pair<Spread<Length>> length;
  Spread<Length> height; // A over B
};
struct MarkedEnd {
  Spread<Length> web;
  Spread<Length> chisel_length;
  Spread<Angle> chisel_edge; // obtuse
};

struct PointReadings {
  Length diameter{};
  std::optional<Spread<Angle>> angle = {};
  std::optional<Pair<Spread<Angle>>> half_angles = {};
  std::optional<Spread<Length>> lip_depth = {};
  std::optional<Spread<Length>> point_length = {};
  std::optional<Pair<Spread<Length>>> lip_lengths = {};
  std::optional<Spread<Length>> lip_height = {};
  std::optional<Spread<Length>> web = {};
  std::optional<Spread<Angle>> chisel = {}; // acute
  std::optional<Spread<Length>> chisel_length = {};
  std::optional<Spread<Angle>> relief = {};
  std::optional<Spread<Length>> drop = {};
  std::optional<Spread<Angle>> turn = {};
  std::optional<LightReadings> light = {};
  std::optional<Spread<Length>> trial_hole = {};
  std::optional<Chips> chips = {};
  std::optional<Spread<Length>> feed = {}; // travel in one turn
  std::optional<Spread<Length>> land_wear = {};
  std::optional<Spread<Length>> margin_wear = {};
  std::optional<MarkedSide> side = {};
  std::optional<MarkedEnd> end = {};
  std::optional<Length> runout = {}; // of the machine, total
  bool thinned = false;
  bool split = false;
};

/// Throws a Fault for readings that cannot be, or that lack another one.
PointReadings readings_of(const Tables& tables, const PointQuestion& question);

} // namespace quillside
