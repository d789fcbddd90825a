// Two lengths of one call have names, so that neither can stand for the other.
// says: Engagement
#include <quillside/model/chip.hpp>

using namespace quillside;

Angle arc() {
#ifdef REFUSE
  return arc_of_engagement(mm(1), mm(3));
#else
  return arc_of_engagement({.width = mm(1), .diameter = mm(3)});
#endif
}
