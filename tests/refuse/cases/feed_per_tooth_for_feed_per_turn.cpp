// A feed per tooth where a feed per turn is wanted: with two flutes it would be half of what was meant.
// says: FeedPerRev
#include <quillside/model/feed.hpp>

using namespace quillside;

FeedRate rate() {
#ifdef REFUSE
  return feed_rate(mm_per_tooth(0.05), rev_per_min(800));
#else
  return feed_rate(mm_per_rev(0.05), rev_per_min(800));
#endif
}
