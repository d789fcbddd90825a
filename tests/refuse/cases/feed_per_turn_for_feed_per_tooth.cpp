// A feed per turn times the flutes would count the teeth twice.
// says: FeedPerTooth
#include <quillside/model/feed.hpp>

using namespace quillside;

FeedRate rate() {
#ifdef REFUSE
  return feed_rate(mm_per_rev(0.05), flutes(2), rev_per_min(800));
#else
  return feed_rate(mm_per_tooth(0.05), flutes(2), rev_per_min(800));
#endif
}
