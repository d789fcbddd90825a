// A point on the scale where a difference is wanted.
// says: ScalePoint<
#include <quillside/quantity/units.hpp>

using namespace quillside;

double rise() {
#ifdef REFUSE
  return in_kelvins(celsius(180));
#else
  return in_kelvins(celsius(180) - celsius(20));
#endif
}
