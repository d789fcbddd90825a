// Turns in a time where radians in a time are wanted: they differ by 2 pi.
// says: turn_dimension
#include <quillside/quantity/angle.hpp>

using namespace quillside;

double spin() {
#ifdef REFUSE
  return in_rad_per_s(rev_per_min(800));
#else
  return in_rad_per_s(angular_velocity(rev_per_min(800)));
#endif
}
