// Turns times a diameter want pi, and a mark that the length runs round the rim: only model/surface_speed has both.
// says: rim_dimension
#include <quillside/model/surface_speed.hpp>

using namespace quillside;

CuttingSpeed edge() {
#ifdef REFUSE
  return rev_per_min(800) * mm(3);
#else
  return cutting_speed(rev_per_min(800), mm(3));
#endif
}
