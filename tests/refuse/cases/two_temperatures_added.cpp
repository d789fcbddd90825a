// 20 degC and 30 degC are not 50 degC.
// says: temperature_dimension
#include <quillside/quantity/units.hpp>

using namespace quillside;

Temperature heat() {
#ifdef REFUSE
  return celsius(20) + celsius(30);
#else
  return celsius(20) + kelvins(30);
#endif
}
