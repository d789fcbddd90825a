#include <quillside/model/wear.hpp>

#include <algorithm>
#include <stdexcept>

#include <quillside/quantity/angle.hpp>

namespace quillside {

Length length_for_land(FlankWear wear) {
  if (!(wear.land >= mm(0))) throw std::domain_error{"a wear land is 0 or more"};
  if (!(wear.relief > turns(0)) || !(wear.helix >= turns(0)) || !(wear.relief + wear.helix < turns(0.25)))
    throw std::domain_error{"relief and helix leave no lip between flank and flute"};
  return wear.land / (cosine(wear.relief) / sine(wear.relief) - tangent(wear.helix));
}

Length length_to_grind_off(PointWear wear) {
  if (!(wear.margin >= mm(0)) || !(wear.clean_up >= mm(0)))
    throw std::domain_error{"a worn margin and a clean-up are 0 or more"};
  return std::max(length_for_land(wear.flank), wear.margin) + wear.clean_up;
}

Length web_after(WebGrowth growth) {
  if (!(growth.web >= mm(0)) || !(growth.taper >= 0) || !(growth.lost >= mm(0)))
    throw std::domain_error{"a web, its taper and the length lost are 0 or more"};
  return growth.web + growth.taper * growth.lost;
}

} // namespace quillside
