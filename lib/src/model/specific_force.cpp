#include <quillside/model/specific_force.hpp>

#include <algorithm>
#include <cmath>

#include "checked.hpp"

namespace quillside {

using detail::check;
using detail::require;

void detail::check(Kienzle metal) {
  require(metal.kc11 > megapascals(0), "a specific force is above 0");
  require(metal.mc >= 0 && metal.mc < 1, "the exponent mc is 0 or more and less than 1");
}

Stress specific_force(Kienzle metal, Chip chip) {
  check(metal);
  require(chip.thickness >= mm(0) && chip.least >= mm(0), "a chip is 0 or more");
  const Length cut = std::max(chip.thickness, chip.least);
  require(cut > mm(0), "the specific force of no chip");
  return metal.kc11 * std::pow(cut / mm(1), -metal.mc);
}

Length minimum_chip_thickness(Length edge_radius, double lambda) {
  require(edge_radius >= mm(0) && lambda >= 0, "an edge radius and its share are 0 or more");
  return lambda * edge_radius;
}

Stress specific_force(HandbookPower power) {
  require(power.unit_power > megapascals(0) && power.feed_factor > 0, "unit power and feed factor are above 0");
  require(power.wear >= 1, "a wear factor is 1 or more");
  return power.unit_power * power.feed_factor * power.wear;
}

double feed_factor(std::span<const FeedFactor> printed, FeedPerTooth feed) {
  require(printed.size() >= 2, "a feed factor needs two lines of a table");
  require(feed > mm_per_tooth(0), "a feed is above 0");
  for (std::size_t i = 0; i < printed.size(); ++i) {
    require(printed[i].factor > 0 && printed[i].feed > mm_per_tooth(0), "feeds and feed factors are above 0");
    require(i == 0 || printed[i].feed > printed[i - 1].feed, "the feeds of a table rise");
  }
  std::size_t above = 1;
  while (above + 1 < printed.size() && printed[above].feed < feed) ++above;
  const FeedFactor& low = printed[above - 1];
  const FeedFactor& high = printed[above];
  const double exponent = std::log(high.factor / low.factor) / std::log(high.feed / low.feed);
  return low.factor * std::pow(feed / low.feed, exponent);
}

} // namespace quillside
