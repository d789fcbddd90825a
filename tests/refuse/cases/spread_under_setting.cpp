// What may be dialled is a Band: doubt about a figure gives nobody leave to dial it.
// says: Band
#include <quillside/answer/answer.hpp>

using namespace quillside;

void file(Answer& answer) {
#ifdef REFUSE
  answer.set(key::spindle_speed, Spread<SpindleSpeed>{rev_per_min(600), rev_per_min(800), rev_per_min(900)});
#else
  answer.set(key::spindle_speed, Band<SpindleSpeed>{rev_per_min(600), rev_per_min(800), rev_per_min(900)});
#endif
}
