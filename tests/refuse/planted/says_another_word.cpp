// It is refused, but not for what the case is about.
// says: SpindleSpeed
// driver says: refused without the word 'SpindleSpeed'
#include <quillside/quantity/units.hpp>

quillside::Length thick() {
#ifdef REFUSE
  return quillside::seconds(1);
#else
  return quillside::mm(1);
#endif
}
