#include <quillside/model/four_facet.hpp>

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <quillside/quantity/angle.hpp>

#include "least_drop.hpp"

namespace quillside {

namespace {

double cotangent(Angle angle) { return cosine(angle) / sine(angle); }
Angle half(PointShape point) { return point.included / 2.0; }
Facet second_facet(FourFacet point) { return {point.point.included, point.second_slope}; }
Length half_web(FourFacet point) { return point.point.web / 2.0; }
Length radius_of(FourFacet point) { return point.point.diameter / 2.0; }

void require(FourFacet point) {
  corner_reach(point.point); // refuses what is no point
  flank_tilt({point.point.included, point.first_slope});
  flank_tilt(second_facet(point));
  if (!(point.point.web > mm(0))) throw std::domain_error{"a four-facet point needs a web"};
  if (!(point.second_slope > point.first_slope)) throw std::domain_error{"a second facet is steeper than the first"};
  if (!(point.boundary < half_web(point))) throw std::domain_error{"the second facet reaches the lip"};
  if (!(point.boundary > -radius_of(point))) throw std::domain_error{"the second facet begins behind the drill"};
}

/// The boundary where it still shapes the chisel edge: behind the other lip it does not.
Length within_web(FourFacet point) { return std::max(point.boundary, -half_web(point)); }

/// What a length along y is square to the disk, between the planes of the two facets.
double square_to_disk(FourFacet point) {
  return (point.second_slope - point.first_slope) * sine(half(point.point)) * cosine(flank_tilt(second_facet(point)));
}

Angle corner_offset(FourFacet point) { return lip_offset(point.point, radius_of(point)); }

} // namespace

double second_slope(PointShape point, Angle relief, Length boundary) {
  corner_reach(point); // refuses what is no point
  if (!(relief > turns(0)) || !(relief < turns(0.25))) throw std::domain_error{"a relief is above 0 and under 90 deg"};
  const double offset = boundary / (point.diameter / 2.0);
  if (!(offset > -1) || !(offset < 1)) throw std::domain_error{"the boundary of the facets lies beside the drill"};
  const double slope = (tangent(relief) - cotangent(half(point)) * offset) / std::sqrt(1 - offset * offset);
  if (!(slope > 0)) throw std::domain_error{"a flank that does not fall away from its lip"};
  return slope;
}

Angle second_relief(FourFacet point) {
  require(point);
  const double offset = point.boundary / radius_of(point);
  return radians(
      std::atan(point.second_slope * std::sqrt(1 - offset * offset) + cotangent(half(point.point)) * offset));
}

double second_slope_of_chisel(Facet first, Angle chisel_edge) {
  flank_tilt(first); // refuses what is no facet
  if (!(chisel_edge > turns(0)) || !(chisel_edge < turns(0.5)))
    throw std::domain_error{"a chisel edge angle is above 0 and under 180 deg"};
  const double slope = 2 * std::abs(cotangent(chisel_edge)) / tangent(first.included / 2.0) - first.slope;
  if (!(slope > first.slope)) throw std::domain_error{"the first facets alone turn the chisel edge so far"};
  return slope;
}

Length chisel_corner(FourFacet point) {
  require(point);
  const Length by_slopes = (point.first_slope + point.second_slope) * half_web(point) +
                           (point.second_slope - point.first_slope) * within_web(point);
  const Length corner = tangent(half(point.point)) / 2.0 * by_slopes;
  if (!(corner < corner_reach(point.point))) throw std::domain_error{"a chisel edge that leaves no lip"};
  return corner;
}

Angle chisel_edge_of_four(FourFacet point) {
  return turns(0.25) + radians(std::atan(chisel_corner(point) / half_web(point)));
}

Angle chisel_ridge_fall(FourFacet point) {
  require(point);
  if (!(point.boundary > -half_web(point))) return turns(0);
  const double cot = (point.first_slope + point.second_slope) / 2 * tangent(half(point.point));
  return radians(std::atan((point.second_slope - point.first_slope) / 2 / std::hypot(1, cot)));
}

Length chisel_flat(FourFacet point) {
  require(point);
  const bool past_axis = point.boundary > mm(0);
  const Length reach = past_axis ? point.boundary : -within_web(point);
  return 2 * std::hypot(1, tangent(half(point.point)) * (past_axis ? point.second_slope : point.first_slope)) * reach;
}

Length point_length(FourFacet point) {
  require(point);
  const Length past_axis = std::max(point.boundary, mm(0));
  const Length tip_below_lips = point.first_slope * (half_web(point) - past_axis) + point.second_slope * past_axis;
  return cotangent(half(point.point)) * corner_reach(point.point) - tip_below_lips;
}

Length clearance_left(FourFacet point) {
  require(point);
  return square_to_disk(point) * (half_web(point) - point.boundary);
}

Length second_infeed(FourFacet point, Angle land) {
  require(point);
  if (!(land > turns(0)) || !(land < turns(0.5))) throw std::domain_error{"a land angle is above 0 and under 180 deg"};
  // A land of more than a quarter turn behind the axis reaches furthest back before its heel.
  const Angle heel = std::max(corner_offset(point) - land, turns(-0.25));
  const Length ground = point.boundary - sine(heel) * radius_of(point);
  if (!(ground > mm(0))) throw std::domain_error{"the land ends before the second facet begins"};
  return square_to_disk(point) * ground;
}

Length four_facet_drop(FourFacet point, Angle turn) {
  require(point);
  const Length on_first = flat_drop({point.point, point.first_slope}, turn);
  const Length behind_boundary = point.boundary - sine(corner_offset(point) - turn) * radius_of(point);
  return on_first + (point.second_slope - point.first_slope) * std::max(behind_boundary, mm(0));
}

Angle heel_clear_angle(FourFacet point) {
  require(point);
  const Angle corner = corner_offset(point);
  const Angle on_first = heel_clear_angle(FlatFlank{point.point, point.first_slope});
  const double boundary = point.boundary / radius_of(point);
  if (on_first <= corner - radians(std::asin(boundary))) return on_first;
  const double cot = cotangent(half(point.point));
  const double level =
      cot * cosine(corner) - point.first_slope * (sine(corner) - boundary) - point.second_slope * boundary;
  return corner + flank_roll(second_facet(point)) + angle_of_cosine(level / std::hypot(cot, point.second_slope));
}

FeedPerRev greatest_feed(FourFacet point, Angle land) {
  require(point);
  const FeedPerRev at_lip = tangent(relief_of_slope(point.point, point.first_slope)) * radius_of(point) / radians(1);
  return detail::least_drop_per_turn(land, at_lip, [&](Angle behind) { return four_facet_drop(point, behind); });
}

} // namespace quillside
