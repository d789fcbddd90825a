// What was found is a Spread: freedom to dial is no doubt about the truth.
// says: Spread
#include <quillside/answer/answer.hpp>

using namespace quillside;

void file(Answer& answer) {
#ifdef REFUSE
  answer.found(key::left_under_tip, Band<Length>{mm(0.9), mm(1.0), mm(1.1)});
#else
  answer.found(key::left_under_tip, Spread<Length>{mm(0.9), mm(1.0), mm(1.1)});
#endif
}
