#include "point_depth.hpp"

#include <quillside/model/lip.hpp>

namespace quillside {

namespace {

Spread<Angle> flat_depth_as_angle(PointWork& work, const std::string& from, const Spread<Length>& depth) {
  const auto relation = [&](Length web, Angle relief, Length read) {
    return included_from_flat_lip_depth({work.readings.diameter, web, relief, read});
  };
  const auto spread = work.through(from, relation, work.point.web.spread, work.point.relief->spread, depth);
  work.because("included angle from " + from.substr(2), flat_lip_depth_law, spread);
  return spread;
}

} // namespace

Spread<Angle> depth_as_angle(PointWork& work, const std::string& from, const Spread<Length>& depth) {
  if (!work.point.chisel_read && work.two_facet() && work.point.relief) return flat_depth_as_angle(work, from, depth);
  const auto relation = [&](Length web, Angle chisel, Length read) {
    return included_from_lip_depth({work.readings.diameter, web, chisel, read});
  };
  const auto spread = work.through(from, relation, work.point.web.spread, work.point.chisel.spread, depth);
  work.because("included angle from " + from.substr(2), lip_depth_law, spread);
  return spread;
}

Spread<Angle> length_as_angle(PointWork& work, const std::string& from, const Spread<Length>& length) {
  const auto& point = work.point;
  if (work.two_facet()) return depth_as_angle(work, from, length);
  if (!work.cone() && point.relief && !point.relief_is_most) return flat_depth_as_angle(work, from, length);
  const auto bound = [&](Angle IncludedBounds::*end) {
    const auto relation = [&, end](Length web, Angle chisel, Length read) {
      return included_from_point_length({work.readings.diameter, web, chisel, read}, 0).*end;
    };
    return work.through(from, relation, point.web.spread, point.chisel.spread, length);
  };
  const auto least = bound(&IncludedBounds::least);
  const auto most = bound(&IncludedBounds::most);
  const Spread<Angle> spread{least.low, (least.value + most.value) / 2.0, most.high};
  work.because("included angle from " + from.substr(2) + ", between", point_length_law, spread);
  return spread;
}

} // namespace quillside
