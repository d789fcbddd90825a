// A number has no unit: 1 could be a degree, a radian or a turn.
// says: Angle
#include <quillside/quantity/angle.hpp>

using namespace quillside;

double side() {
#ifdef REFUSE
  return sine(1.0);
#else
  return sine(degrees(1.0));
#endif
}
