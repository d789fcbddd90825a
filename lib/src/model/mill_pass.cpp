#include <quillside/model/mill_pass.hpp>

#include <cmath>
#include <numbers>

#include <quillside/quantity/angle.hpp>

#include "checked.hpp"
#include "one_tooth.hpp"

namespace quillside {

using detail::checked;
using detail::one_tooth;
using detail::require;

namespace {

bool full_slot(const MillPass& pass) { return pass.engagement.width == pass.engagement.diameter; }

} // namespace

const MillPass& detail::checked(const MillPass& pass) {
  arc_of_engagement(pass.engagement); // throws where the width is none
  require(pass.depth > mm(0) && std::isfinite(in_mm(pass.depth)), "a pass has a depth above 0");
  require(pass.feed > mm_per_tooth(0) && std::isfinite(in_mm_per_tooth(pass.feed)), "a feed per tooth is above 0");
  require(pass.teeth >= flutes(1) && pass.teeth <= flutes(12), "an end mill has 1 to 12 flutes");
  require(pass.helix >= degrees(0) && pass.helix <= degrees(60), "a helix angle is 0 to 60 deg");
  return pass;
}

bool forms_wall(const MillPass& pass, MillSide side) { return full_slot(pass) || pass.side == side; }

RemovalRate removal_rate(const MillPass& pass, SpindleSpeed speed) {
  checked(pass);
  require(speed >= rev_per_min(0), "a spindle speed is 0 or more");
  return pass.engagement.width * pass.depth * (pass.feed * pass.teeth * speed);
}

Power cutting_power(Stress specific, RemovalRate rate) { return specific * rate; }

Force mean_tangential_force(const MillPass& pass, Stress specific) {
  checked(pass);
  const double share = pass.engagement.width / pass.engagement.diameter / std::numbers::pi;
  return specific * pass.depth * (pass.feed * one_tooth) * (share * in_flutes(pass.teeth));
}

} // namespace quillside
