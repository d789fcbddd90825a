// Radians in a time where turns in a time are wanted.
// says: turn_dimension
#include <quillside/model/surface_speed.hpp>

using namespace quillside;

CuttingSpeed edge() {
#ifdef REFUSE
  return cutting_speed(rad_per_s(84), mm(3));
#else
  return cutting_speed(rev_per_min(800), mm(3));
#endif
}
