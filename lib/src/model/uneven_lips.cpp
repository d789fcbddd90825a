#include <quillside/model/uneven_lips.hpp>

#include <algorithm>
#include <stdexcept>

#include <quillside/quantity/angle.hpp>

namespace quillside {

namespace {

double cotangent(Angle half) {
  if (!(half > turns(0)) || !(half < turns(0.25)))
    throw std::domain_error{"half a point angle is above 0 and under 90 deg"};
  return cosine(half) / sine(half);
}

} // namespace

Length apex_offset(UnevenLips lips) {
  if (!(lips.diameter > mm(0))) throw std::domain_error{"lips of a drill with no diameter"};
  const double cot_a = cotangent(lips.half_a);
  const double cot_b = cotangent(lips.half_b);
  if (!(lips.at_radius >= mm(0)) || !(lips.at_radius <= lips.diameter / 2.0))
    throw std::domain_error{"a height is read between axis and outer corner"};
  const Length apex_a = lips.height_a + cot_a * lips.at_radius;
  const Length apex_b = lips.height_b + cot_b * lips.at_radius;
  return (apex_a - apex_b) / (cot_a + cot_b);
}

Length free_point_oversize(UnevenLips lips) {
  const Length offset = apex_offset(lips);
  return 2.0 * std::max(offset, -offset);
}

Length apex_offset_of_lengths(LipLengths lips) {
  if (!(lips.a > mm(0)) || !(lips.b > mm(0))) throw std::domain_error{"a lip has a length"};
  for (const Angle half : {lips.half_a, lips.half_b})
    if (!(half > turns(0)) || !(half < turns(0.25)))
      throw std::domain_error{"half a point angle is above 0 and under 90 deg"};
  return (sine(lips.half_b) * lips.b - sine(lips.half_a) * lips.a) / 2.0;
}

Length height_difference(ApexOffset apex) {
  if (!(apex.at_radius >= mm(0))) throw std::domain_error{"a height is read at some distance from the axis"};
  const double cot_a = cotangent(apex.half_a);
  const double cot_b = cotangent(apex.half_b);
  return (cot_a + cot_b) * apex.offset - (cot_a - cot_b) * apex.at_radius;
}

Length least_height_difference(Length oversize, Angle half) {
  if (!(oversize >= mm(0))) throw std::domain_error{"an oversize is 0 or more"};
  return cotangent(half) * oversize;
}

ChipShare chip_share(FeedPerRev feed, Length difference) {
  if (!(feed >= mm_per_rev(0)) || !(difference >= mm(0)))
    throw std::domain_error{"a feed and a height difference are 0 or more"};
  constexpr auto one_turn = Quantity<detail::turn>::from_value(1);
  const Length whole = feed * one_turn;
  const Length higher = std::min(whole, whole / 2.0 + difference);
  return {higher, whole - higher};
}

} // namespace quillside
