#include <quillside/model/slot_walls.hpp>

#include <cmath>
#include <stdexcept>

namespace quillside {

Length slot_opening(PartToSit sit) {
  if (!(sit.part > mm(0))) throw std::domain_error{"a slot for a part of no size"};
  if (!(sit.interference < sit.part)) throw std::domain_error{"an interference as large as the part"};
  return sit.part - sit.interference;
}

Length side_offset(SlotWidths widths) {
  if (!(widths.first_cut > mm(0))) throw std::domain_error{"a first cut of no width"};
  if (!(widths.slot >= widths.first_cut)) throw std::domain_error{"a first cut wider than the slot"};
  return (widths.slot - widths.first_cut) / 2.0;
}

Length left_after_spring_passes(SidePass pass, int passes) {
  if (!(pass.width_of_cut > mm(0))) throw std::domain_error{"a side pass of no width"};
  if (!(pass.left >= mm(0)) || !(pass.left < pass.width_of_cut))
    throw std::domain_error{"a side pass leaves less than its width of cut"};
  if (passes < 0) throw std::domain_error{"less than no spring pass"};
  return pass.width_of_cut * std::pow(pass.left / pass.width_of_cut, passes + 1);
}

} // namespace quillside
