// The word stands in the wrong line, not in what the compiler says of it.
// says: Torque
// driver says: refused without the word 'Torque'
#include <quillside/quantity/units.hpp>

quillside::Length thick() {
#ifdef REFUSE
  return undeclared(/* Torque */);
#else
  return quillside::mm(1);
#endif
}
