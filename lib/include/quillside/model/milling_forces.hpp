#pragma once
// Peaks and means of an end mill's load over a turn, and the force as a tooth forms a wall.

#include <functional>

#include <quillside/model/milling_load.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

/// The moment, within one tooth pitch, at which a measure of the load is largest.
/// \param rank any number that grows with what is looked for
Angle turn_of_largest(const MillingLoad& load, const std::function<double(const CutterLoad&)>& rank);

struct MillingForces {
  Force peak_resultant;
  Angle peak_turn; // when
  Force mean_resultant;
  Force mean_feed;       // below 0: the work holds the cutter back; above 0 it pulls it in
  Force mean_across;     // above 0: to the left of the travel
  Force mean_tangential; // mean torque over the radius
  Torque peak_torque;
  Torque mean_torque;
};
/// Peaks and means over a turn; the peaks to about 1e-6 of themselves.
MillingForces milling_forces(const MillingLoad& load);
/// Mean power at the cutter [N mm/min]. \param speed 0 or more; otherwise throws std::domain_error
Power mean_power(const MillingLoad& load, SpindleSpeed speed);

/// A place on a wall.
struct WallPoint {
  MillSide side;
  Length height; // above the tip, 0 to the depth
};
/// Where the turn stands when a tooth passes that place, and so gives it its final shape. A wall the pass does not
/// form, or a height out of it, throws std::domain_error.
Angle turn_at_wall(const MillingLoad& load, WallPoint point);
/// Force across the travel at that moment, above 0 to the left: into a wall milled conventionally, away from one that
/// is climb milled.
Force force_at_wall(const MillingLoad& load, WallPoint point);

} // namespace quillside
