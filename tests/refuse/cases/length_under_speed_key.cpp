// A length filed under the name of a speed.
// says: turn_dimension
#include <quillside/answer/answer.hpp>

using namespace quillside;

void file(Answer& answer) {
#ifdef REFUSE
  answer.set(key::spindle_speed, mm(3));
#else
  answer.set(key::spindle_speed, rev_per_min(800));
#endif
}
