// A bare number filed under the name of a length.
// says: length_dimension
#include <quillside/answer/answer.hpp>

using namespace quillside;

void file(Answer& answer) {
#ifdef REFUSE
  answer.set(key::depth_stop, 0.125);
#else
  answer.set(key::depth_stop, inches(0.125));
#endif
}
