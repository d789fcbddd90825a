// 3/16 of whole numbers is none: written so, it would be no inch at all.
// says: deleted
#include <quillside/quantity/units.hpp>

quillside::Length three_sixteenths() {
  using namespace quillside;
#ifdef REFUSE
  return inches(3 / 16);
#else
  return inches(3, 16);
#endif
}
