#pragma once
// Setting up a regrind: how to hold a drill to a disk, a wheel or a swing fixture for a wanted point; or what point a
// hold gives.
//
// Wanted: the point, its relief, its chisel edge, and the way of grinding (one flat, two flats a lip, a cone). What is
// not given is taken: the point by material, the relief by size and way (one flat: the least that clears its heel), a
// chisel edge of 130 deg for a cone, web and land from the tables. A hold whose heel or whose other lip would touch is
// refused, and what would do is named. Leaves out: the spring of hand and rest, wear of disk or wheel while it grinds,
// thinned and split points.

#include <optional>

#include <quillside/answer/answer.hpp>
#include <quillside/data/choose.hpp>
#include <quillside/job/point.hpp>
#include <quillside/words/read.hpp>

namespace quillside {

/// A wheel that the drill is ground on, and what it runs at. Without one the face is a flat disk's.
struct WheelQuestion {
  std::optional<Typed<Length>> diameter = {};
  std::optional<Typed<SpindleSpeed>> speed = {};
  std::optional<Typed<SpindleSpeed>> marked = {}; // the most that is marked on it
};

/// A hold to be read forward: fence and table tilt, or swing with tilt and roll.
struct HoldQuestion {
  std::optional<Typed<Angle>> fence = {};      // needs table_tilt
  std::optional<Typed<Angle>> table_tilt = {}; // needs fence
  std::optional<Typed<Angle>> swing = {};      // needs tilt or roll
  std::optional<Typed<Angle>> tilt = {};
  std::optional<Typed<Angle>> roll = {};

  [[nodiscard]] bool given() const { return fence || table_tilt || swing || tilt || roll; }
};

struct GrindQuestion {
  Typed<NamedSize> size;
  std::optional<Typed<Work>> material = {};
  std::optional<Typed<GrindingWay>> way = {};
  std::optional<Typed<Angle>> angle = {};
  std::optional<Typed<Angle>> relief = {};
  std::optional<Typed<Angle>> chisel = {}; // obtuse or its supplement
  std::optional<Typed<Reading<Length>>> web = {};
  std::optional<Typed<Angle>> second_relief = {};   // of four facets
  std::optional<Typed<Angle>> flute_angle = {};     // the point the flutes were made for
  std::optional<Typed<Angle>> cone_half_angle = {}; // of a cone
  std::optional<Typed<Angle>> land = {};            // outer corner to heel
  std::optional<Typed<Reading<Length>>> land_wear = {};
  std::optional<Typed<Reading<Length>>> margin_wear = {};
  HoldQuestion hold = {};
  WheelQuestion wheel = {};
};

/// Throws a Fault of the kind `word` for a figure outside what is answered (points of 60 to 150 deg, reliefs of 4 to
/// 35, webs of 0.1 to 0.3 of the diameter), of the kind `conflict` for words that contradict each other.
Answer grind(const Tables& tables, const GrindQuestion& question);

} // namespace quillside
