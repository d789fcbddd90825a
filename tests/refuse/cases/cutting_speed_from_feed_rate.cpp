// The rim is not put on by a cast either.
// says: rim_dimension
#include <quillside/quantity/units.hpp>

using namespace quillside;

CuttingSpeed edge() {
#ifdef REFUSE
  return static_cast<CuttingSpeed>(mm_per_min(25000));
#else
  return static_cast<CuttingSpeed>(m_per_min(25));
#endif
}
