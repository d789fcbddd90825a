#include <quillside/quantity/angle.hpp>

#include <cmath>
#include <numbers>
#include <stdexcept>

namespace quillside {

namespace {
constexpr double radians_per_turn = 2 * std::numbers::pi;
}

double in_radians(Angle angle) { return in_turns(angle) * radians_per_turn; }
Angle radians(double ratio) { return turns(ratio / radians_per_turn); }

double sine(Angle angle) { return std::sin(in_radians(angle)); }
double cosine(Angle angle) { return std::cos(in_radians(angle)); }
double tangent(Angle angle) { return std::tan(in_radians(angle)); }

Angle angle_of_cosine(double ratio) {
  if (!(ratio >= -1 && ratio <= 1)) throw std::domain_error{"no angle has a cosine beyond -1 to 1"};
  return radians(std::acos(ratio));
}

RotationalStiffness newton_metres_per_radian(double amount) { return newton_metres(amount) / radians(1); }

AngularVelocity angular_velocity(SpindleSpeed speed) {
  return AngularVelocity::from_value(in_rev_per_min(speed) * radians_per_turn);
}

} // namespace quillside
