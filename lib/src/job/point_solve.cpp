#include "point_solve.hpp"

#include "point_angles.hpp"
#include "point_chisel.hpp"
#include "point_heel.hpp"
#include "point_heights.hpp"
#include "point_hole.hpp"
#include "point_relief.hpp"
#include "point_wear.hpp"
#include "point_web.hpp"
#include "point_work.hpp"

namespace quillside {

namespace {

/// One part after another, each from those before it; the included angle that the relief needs is that of the pass
/// before.
SolvedPoint solve_once(GrindingWay way, const PointReadings& readings, const PointDefaults& defaults,
                       const Known<Angle>& earlier_included) {
  PointWork work{readings, defaults, earlier_included, {}};
  work.point.way = way;
  solve_web(work);
  solve_chisel(work);
  solve_relief(work);
  solve_angles(work);
  solve_heel(work);
  solve_heights(work);
  heed_trial_hole(work);
  solve_oversize(work);
  solve_wear(work);
  return std::move(work.point);
}

} // namespace

SolvedPoint solve_point(GrindingWay way, const PointReadings& readings, const PointDefaults& defaults) {
  Known<Angle> included{defaults.included, ""};
  SolvedPoint solved;
  // Relief wants the included angle, and a depth read as an angle wants the relief: each pass brings the two closer by
  // a factor of ten or more (w/R times the turn).
  constexpr int passes = 6;
  for (int i = 0; i < passes; ++i) {
    solved = solve_once(way, readings, defaults, included);
    included = solved.included;
  }
  return solved;
}

} // namespace quillside
