// How fast the table moves is not how fast the edge does, though both are lengths in a time.
// says: rim_dimension
#include <quillside/model/surface_speed.hpp>

using namespace quillside;

SpindleSpeed turn() {
#ifdef REFUSE
  return spindle_speed(mm_per_min(120), mm(3));
#else
  return spindle_speed(m_per_min(25), mm(3));
#endif
}
