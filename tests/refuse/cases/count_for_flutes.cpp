// Flutes are teeth in a turn, which makes a feed per tooth one per turn: a bare count does not.
// says: TeethPerTurn
#include <quillside/model/feed.hpp>

using namespace quillside;

FeedRate rate() {
#ifdef REFUSE
  return feed_rate(mm_per_tooth(0.05), 2, rev_per_min(800));
#else
  return feed_rate(mm_per_tooth(0.05), flutes(2), rev_per_min(800));
#endif
}
