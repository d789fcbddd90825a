// A power turns at some speed; a torque need not turn.
// says: time_dimension
#include <quillside/quantity/units.hpp>

using namespace quillside;

double twist() {
#ifdef REFUSE
  return in_newton_metres(watts(250));
#else
  return in_newton_metres(newton_metres(0.4));
#endif
}
