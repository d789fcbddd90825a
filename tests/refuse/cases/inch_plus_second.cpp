// A length and a time have no sum.
// says: length_dimension
#include <quillside/quantity/units.hpp>

using namespace quillside;

Length reach() {
#ifdef REFUSE
  return inches(1.0) + seconds(1);
#else
  return inches(1.0) + mm(1);
#endif
}
