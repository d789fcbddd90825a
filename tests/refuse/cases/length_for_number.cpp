// A length does not shed its unit by itself: only a function that names the unit takes it off.
// says: Length
#include <quillside/quantity/units.hpp>

using namespace quillside;

double thick() {
#ifdef REFUSE
  const double bare = inches(1, 8);
#else
  const double bare = in_mm(inches(1, 8));
#endif
  return bare;
}
