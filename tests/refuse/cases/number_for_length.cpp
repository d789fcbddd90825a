// A number has no unit: 3 could be inches.
// says: Length
#include <quillside/model/surface_speed.hpp>

using namespace quillside;

SpindleSpeed turn() {
#ifdef REFUSE
  return spindle_speed(m_per_min(25), 3.0);
#else
  return spindle_speed(m_per_min(25), mm(3.0));
#endif
}
