// 17.2 of what: an expansion is no bare number.
// says: Expansion
#include <quillside/model/heat_growth.hpp>

using namespace quillside;

Length growth() {
#ifdef REFUSE
  return heat_growth(17.2e-6, mm(3), kelvins(130));
#else
  return heat_growth(um_per_m_celsius(17.2), mm(3), kelvins(130));
#endif
}
