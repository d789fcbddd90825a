// An angle and a length have no order.
// says: turn_dimension
#include <quillside/quantity/units.hpp>

using namespace quillside;

bool steeper() {
#ifdef REFUSE
  return degrees(118) < mm(3);
#else
  return degrees(118) < degrees(135);
#endif
}
