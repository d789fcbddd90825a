// A force has no lever until one is named.
// says: length_dimension
#include <quillside/quantity/units.hpp>

using namespace quillside;

Torque twist() {
#ifdef REFUSE
  return newtons(40);
#else
  return newtons(40) * mm(50);
#endif
}
