// A model carries doubt, and only doubt.
// says: Spread
#include <quillside/model/depth_stop.hpp>
#include <quillside/quantity/band.hpp>

using namespace quillside;

Stop stop(DrillPoint point) {
#ifdef REFUSE
  return stop_at(mm(4), Band<Length>{mm(4.9), mm(5.0), mm(5.1)}, point);
#else
  return stop_at(mm(4), Spread<Length>{mm(4.9), mm(5.0), mm(5.1)}, point);
#endif
}
