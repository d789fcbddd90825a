// A feed per tooth times the turns is no feed rate until the teeth are counted.
// says: tooth_dimension
#include <quillside/quantity/units.hpp>

using namespace quillside;

FeedRate rate() {
#ifdef REFUSE
  return mm_per_tooth(0.05) * rev_per_min(800);
#else
  return mm_per_tooth(0.05) * flutes(2) * rev_per_min(800);
#endif
}
