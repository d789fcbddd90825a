#include <quillside/model/slot_ends.hpp>

#include <cmath>
#include <numbers>
#include <stdexcept>

namespace quillside {

Length corner_left(Length cutter) {
  if (!(cutter >= mm(0))) throw std::domain_error{"a cutter of less than no diameter"};
  return (std::numbers::sqrt2 - 1) / 2 * cutter;
}

Length cleared_length(SquareInRound in) {
  if (!(in.part_width > mm(0)) || !(in.cutter > mm(0))) throw std::domain_error{"a part or a cutter of no width"};
  return in.part_width + in.cutter;
}

Length pocket_length(PocketBehind behind) {
  if (!(behind.slot_length > mm(0)) || !(behind.slot_width > mm(0))) throw std::domain_error{"a slot of no size"};
  if (!(behind.pocket_width >= behind.slot_width)) throw std::domain_error{"a pocket narrower than its slot"};
  const double narrow = behind.slot_width / behind.pocket_width;
  return behind.slot_length + behind.pocket_width * (1 - std::sqrt(1 - narrow * narrow));
}

} // namespace quillside
