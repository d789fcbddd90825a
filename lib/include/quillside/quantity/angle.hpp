#pragma once
// Sine, cosine and tangent of an angle, and the way from turns to radians: the only place that knows 2 pi.

#include <quillside/quantity/units.hpp>

namespace quillside {

/// The angle as a pure number, arc over radius.
double in_radians(Angle angle);
/// \param ratio arc over radius
Angle radians(double ratio);

double sine(Angle angle);
double cosine(Angle angle);
/// \param angle not an odd number of quarter turns, where the tangent has no value
double tangent(Angle angle);
/// The angle from 0 to half a turn whose cosine this is. \param ratio -1 to 1; outside it throws std::domain_error
Angle angle_of_cosine(double ratio);

/// Moment that tilts by one radian.
RotationalStiffness newton_metres_per_radian(double amount);

/// The angle gone through in a time, from the turns gone through [rad/min from turn/min].
AngularVelocity angular_velocity(SpindleSpeed speed);

} // namespace quillside
