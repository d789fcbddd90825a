// A difference where a point on the scale is wanted.
// says: ScalePoint<
#include <quillside/quantity/units.hpp>

using namespace quillside;

double heat() {
#ifdef REFUSE
  return in_celsius(kelvins(160));
#else
  return in_celsius(celsius(20) + kelvins(160));
#endif
}
