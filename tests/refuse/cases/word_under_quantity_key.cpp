// A quantity as a word is out of reach of its unit.
// says: Key<
#include <quillside/answer/answer.hpp>

using namespace quillside;

void file(Answer& answer) {
#ifdef REFUSE
  answer.set(key::feed_per_rev, "0.002 in/rev");
#else
  answer.set(key::feed_per_rev, in_per_rev(0.002));
#endif
}
