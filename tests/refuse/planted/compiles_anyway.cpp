// The wrong line is not wrong.
// says: Length
// driver says: compiles, and must not
#include <quillside/quantity/units.hpp>

quillside::Length thick() {
#ifdef REFUSE
  return quillside::inches(1.0);
#else
  return quillside::mm(1);
#endif
}
