#pragma once
// From readings to what they prove of a point, if it was ground in a given way.

#include <optional>
#include <string>
#include <vector>

#include <quillside/answer/answer.hpp>
#include <quillside/model/law.hpp>

#include "point_readings.hpp"

namespace quillside {

/// A figure with the reading that it was taken from.
template <class Quantity> struct Known {
  Spread<Quantity> spread;
  std::string from; // the flag, as --angle
};

/// Half angles of the cones in use, each as a share of half the included angle.
struct UsualCones {
  double steep;
  double usual;
  double blunt;
};

/// What the point is held to be where nobody read it, and what it should become.
struct PointDefaults {
  Spread<Length> web;
  Spread<Angle> chisel; // acute, as this way leaves it
  UsualCones cones;
  Spread<Angle> included; // about the wanted one
  Angle wanted_relief;    // for this way
  Angle land;
  Length least_light;
  Angle unseen_light_most; // how far off a gauge a half angle may be whose light nobody measured
  Spread<Angle> helix;
  Spread<Length> clean_up;
  Spread<Length> usual_oversize;
  Angle unread_difference; // how far apart half angles may be that nobody read
  Angle kept_difference;   // how far apart they may be and be kept: lips of one length are held against that
};

/// A step on the way, for `why`.
struct SolvedStep {
  std::string step;
  const Law* law;
  Measure value;
};

struct SolvedPoint {
  GrindingWay way{};
  Known<Length> web;
  bool web_read = false;
  Known<Angle> chisel; // acute
  bool chisel_read = false;
  bool chisel_follows = false; // not read, but it follows from the relief of two flats
  Known<Angle> included;
  bool included_read = false;
  std::optional<Pair<Known<Angle>>> halves = {};
  std::optional<Spread<Angle>> half_difference = {};
  bool halves_are_bounds = false;           // from light whose size nobody measured
  std::optional<Known<Length>> height = {}; // of the lips, one over the other, as a magnitude
  std::optional<char> higher = {};          // 'A' or 'B', where the readings tell
  bool height_is_floor = false;             // from a hole or one chip: it may be more, margins can hide it
  std::optional<Known<Angle>> relief = {};
  bool relief_is_most = false;                   // from the chisel edge alone: it may be less
  std::optional<Spread<Angle>> heel = {};        // turn at which a flat's heel is back at the height of its lip
  bool heel_clears = false;                      // as seen by a dial, or by the nature of a cone
  std::optional<Known<Length>> bow = {};         // hollow of the lips
  std::optional<Spread<Length>> web_found = {};  // as read; of a thinned point not that between the lips
  std::optional<Length> explained_oversize = {}; // the most that lips and habit explain of a trial hole
  std::optional<Spread<Length>> oversize = {};
  std::optional<Spread<Length>> grind_off = {};
  std::optional<Spread<Length>> chisel_length = {};
  std::vector<std::string> not_judged = {}; // flags whose relation does not hold for this point
  std::vector<SolvedStep> steps = {};
};

/// Throws a Fault of the kind `conflict` when two readings contradict each other beyond their errors.
SolvedPoint solve_point(GrindingWay way, const PointReadings& readings, const PointDefaults& defaults);

} // namespace quillside
