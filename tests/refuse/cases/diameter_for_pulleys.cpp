// Which pulley drives is said by name.
// says: Pulleys
#include <quillside/model/belt.hpp>

using namespace quillside;

SpindleSpeed spindle() {
#ifdef REFUSE
  return driven_speed(rev_per_min(1425), mm(50));
#else
  return driven_speed(rev_per_min(1425), {.driving = mm(50), .driven = mm(100)});
#endif
}
