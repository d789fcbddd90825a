#include <quillside/model/countersink.hpp>

#include <stdexcept>

#include <quillside/quantity/angle.hpp>

namespace quillside {

namespace {

double tangent_of_half(Angle cone) {
  if (!(cone > turns(0)) || !(cone < turns(0.5)))
    throw std::domain_error{"the cone of a countersink is above 0 and under 180 deg"};
  return tangent(cone / 2.0);
}

} // namespace

Length countersink_depth(Countersink countersink) {
  if (!(countersink.hole > mm(0))) throw std::domain_error{"a countersink round no hole"};
  if (!(countersink.head > countersink.hole)) throw std::domain_error{"a head no wider than its hole"};
  return (countersink.head - countersink.hole) / (2.0 * tangent_of_half(countersink.cone));
}

Length sharp_head(FlatHead head) {
  if (!(head.screw > mm(0)) || !(head.height >= mm(0))) throw std::domain_error{"a head with no screw under it"};
  return head.screw + 2.0 * tangent_of_half(head.cone) * head.height;
}

} // namespace quillside
