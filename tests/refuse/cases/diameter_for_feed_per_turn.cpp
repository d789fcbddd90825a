// A diameter where a feed per turn is wanted.
// says: FeedPerRev
#include <quillside/model/feed.hpp>

using namespace quillside;

FeedRate rate() {
#ifdef REFUSE
  return feed_rate(mm(3), rev_per_min(800));
#else
  return feed_rate(mm_per_rev(0.05), rev_per_min(800));
#endif
}
