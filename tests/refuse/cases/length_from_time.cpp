// No conversion leads from a time to a length, even one that is asked for.
// says: length_dimension
#include <quillside/quantity/units.hpp>

using namespace quillside;

Length reach() {
#ifdef REFUSE
  return Length{seconds(3)};
#else
  return Length{mm(3)};
#endif
}
