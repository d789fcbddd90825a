// Surface speed dialled in as turns.
// says: SpindleSpeed
#include <quillside/model/feed.hpp>

using namespace quillside;

FeedRate rate() {
#ifdef REFUSE
  return feed_rate(mm_per_rev(0.05), ft_per_min(90));
#else
  return feed_rate(mm_per_rev(0.05), rev_per_min(800));
#endif
}
