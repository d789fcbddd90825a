// A bare 0 is a number like any other: it does not say what it counts.
// says: length_dimension
#include <quillside/quantity/units.hpp>

quillside::Length nothing() {
  using namespace quillside;
#ifdef REFUSE
  return 0;
#else
  return mm(0);
#endif
}
