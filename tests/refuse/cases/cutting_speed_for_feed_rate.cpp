// The time of a cut goes by the feed, not by the edge.
// says: rim_dimension
#include <quillside/model/feed.hpp>

using namespace quillside;

Time cut() {
#ifdef REFUSE
  return time_to_travel(mm(40), m_per_min(25));
#else
  return time_to_travel(mm(40), mm_per_min(120));
#endif
}
