// A force is no stress until its section is named.
// says: length_dimension
#include <quillside/quantity/units.hpp>

using namespace quillside;

double load() {
#ifdef REFUSE
  return in_megapascals(newtons(40));
#else
  return in_megapascals(newtons(40) / (mm(2) * mm(3)));
#endif
}
