#include <quillside/model/force_doubt.hpp>

#include <algorithm>

#include "checked.hpp"

namespace quillside {

using detail::require;

double size_effect_doubt(Length chip) {
  require(chip > mm(0), "a chip is above 0");
  if (chip < mm(0.005)) return 2;
  if (chip < mm(0.02)) return 1.5;
  return 1;
}

Spread<Force> joined_force(TwoForces forces, ForceScatter doubt) {
  require(forces.kienzle > newtons(0) && forces.handbook > newtons(0), "a force to be doubted is above 0");
  require(doubt.scatter >= 0 && doubt.scatter < 1, "a scatter is 0 or more and less than 1");
  require(doubt.size_effect >= 1, "a size effect is 1 or more");
  return {.low = (1 - doubt.scatter) * std::min(forces.kienzle, forces.handbook),
          .value = forces.kienzle,
          .high = (1 + doubt.scatter) * doubt.size_effect * std::max(forces.kienzle, forces.handbook)};
}

} // namespace quillside
