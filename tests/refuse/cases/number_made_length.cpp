// Not even when it is asked for by name.
// says: millimetre_base
#include <quillside/quantity/units.hpp>

using namespace quillside;

Length thick() {
#ifdef REFUSE
  return Length{0.125};
#else
  return inches(0.125);
#endif
}
