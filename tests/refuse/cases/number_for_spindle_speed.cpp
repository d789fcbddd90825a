// A number has no unit: 800 could be a minute's or a second's.
// says: SpindleSpeed
#include <quillside/model/feed.hpp>

using namespace quillside;

FeedRate rate() {
#ifdef REFUSE
  return feed_rate(mm_per_rev(0.05), 800.0);
#else
  return feed_rate(mm_per_rev(0.05), rev_per_min(800.0));
#endif
}
