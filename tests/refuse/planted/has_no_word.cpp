// Without a word anything would do.
// driver says: names no word
#include <quillside/quantity/units.hpp>

quillside::Length thick() {
#ifdef REFUSE
  return quillside::seconds(1);
#else
  return quillside::mm(1);
#endif
}
