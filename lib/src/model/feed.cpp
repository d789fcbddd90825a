#include <quillside/model/feed.hpp>

#include <stdexcept>

namespace quillside {

FeedRate feed_rate(FeedPerTooth feed, TeethPerTurn teeth, SpindleSpeed speed) { return feed * teeth * speed; }

FeedRate feed_rate(FeedPerRev feed, SpindleSpeed speed) { return feed * speed; }

Time time_to_travel(Length path, FeedRate rate) {
  if (!(rate > mm_per_min(0))) throw std::domain_error{"time of a cut that does not advance"};
  return path / rate;
}

} // namespace quillside
