// An angle and a length have no sum.
// says: turn_dimension
#include <quillside/quantity/units.hpp>

using namespace quillside;

Angle lean() {
#ifdef REFUSE
  return degrees(59) + thou(2);
#else
  return degrees(59) + degrees(2);
#endif
}
