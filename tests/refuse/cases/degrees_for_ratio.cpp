// An angle where its cosine is wanted.
// says: Angle
#include <quillside/quantity/angle.hpp>

using namespace quillside;

Angle lean() {
#ifdef REFUSE
  return angle_of_cosine(degrees(60));
#else
  return angle_of_cosine(0.5);
#endif
}
