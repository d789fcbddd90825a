#pragma once
// What a regrind is to give: as asked for, the rest as the tables have it.

#include <optional>
#include <string>
#include <vector>

#include <quillside/job/grind.hpp>
#include <quillside/model/lip.hpp>
#include <quillside/quantity/spread.hpp>

#include "point_ground.hpp"
#include "telling.hpp"

namespace quillside {

/// Points and reliefs that are answered.
inline constexpr Angle least_included = degrees(60);
inline constexpr Angle most_included = degrees(150);
inline constexpr Angle slightest_relief = degrees(4);
inline constexpr Angle steepest_relief = degrees(35);

/// Why a hold will not do, and what would.
struct Objection {
  std::string reason;
  std::string instead;
};

/// A drill to be ground, whatever the way.
struct GrindSubject {
  Ground ground;
  PointShape point; // with the included angle that is wanted
  Spread<Length> web;
  Angle land;
  Spread<Angle> helix;
};

/// Throws a Fault for figures out of range.
GrindSubject subject_of(const Tables& tables, const GrindQuestion& ask);

/// The way, and why it was taken where nobody named it.
struct TakenWay {
  GrindingWay way;
  std::string because; // empty: named
};
/// Throws a Fault of the kind `conflict` when words belong to different ways.
TakenWay way_of(const GrindQuestion& ask);

/// What a job of a part of `grind` works with.
struct GrindWork {
  const Tables& tables;
  const GrindQuestion& ask;
  const GrindSubject& subject;
  Answer& answer;
  Telling& telling;
  std::vector<Objection> objections = {};

  void object(std::string reason, std::string instead) {
    objections.push_back({std::move(reason), std::move(instead)});
  }
};

/// The relief of a cone or a first facet: as asked for, else that of the table, raised where a straight lip of this
/// point needs more. Tells which.
/// \param of what it is, as "a cone"
Angle relief_by_size(GrindWork& work, const std::string& of);
/// Whether the flank falls from its lip with it; objects where it does not.
bool falls(GrindWork& work, Angle relief);

std::string typed_or(const std::optional<std::string>& text, Angle angle);

} // namespace quillside
