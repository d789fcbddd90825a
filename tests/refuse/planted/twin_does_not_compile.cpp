// Refused for a fault that the right line has too.
// says: Length
// driver says: the right line does not compile
#include <quillside/quantity/units.hpp>

quillside::Length thick() {
#ifdef REFUSE
  return quillside::seconds(1);
#else
  return quillside::minutes(1);
#endif
}
