#include <quillside/model/flat_facet.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <stdexcept>

#include <boost/math/tools/toms748_solve.hpp>

#include <quillside/quantity/angle.hpp>

namespace quillside {

namespace {

double cotangent(Angle angle) { return cosine(angle) / sine(angle); }

/// Cotangent of half the point angle, of a facet that is one.
double cot_half(Facet facet) {
  flank_tilt(facet); // refuses what is no facet
  return cotangent(facet.included / 2.0);
}

Facet facet_of(FlatFlank flank) { return {flank.point.included, flank.slope}; }

void require_acute(Angle angle, const char* refusal) {
  if (!(angle > turns(0)) || !(angle < turns(0.25))) throw std::domain_error{refusal};
}

void require_under_quarter(Angle angle, const char* refusal) {
  if (!(angle > turns(-0.25)) || !(angle < turns(0.25))) throw std::domain_error{refusal};
}

void require_land(Angle land) {
  if (!(land > turns(0)) || !(land < turns(0.5))) throw std::domain_error{"a land angle is above 0 and under 180 deg"};
}

void require_feed(FeedPerRev feed) {
  if (!(feed >= mm_per_rev(0))) throw std::domain_error{"a feed is 0 or more"};
}

Angle corner_offset(PointShape point) { return lip_offset(point, point.diameter / 2.0); }

/// The flank at the margin is a cosine: its height R times this, from the crest at turn_of_greatest_drop.
double steepness(FlatFlank flank) { return std::hypot(cot_half(facet_of(flank)), flank.slope); }

} // namespace

Facet facet_ground(FenceSetup setup) {
  require_acute(setup.fence, "a fence stands above 0 and under 90 deg to the disk");
  require_acute(setup.table_tilt, "a table slopes above 0 and under 90 deg");
  return {2.0 * setup.fence, tangent(setup.table_tilt) / sine(setup.fence)};
}

Facet facet_ground(WedgeSetup setup) {
  require_acute(setup.swing, "a drill swings above 0 and under 90 deg to the disk");
  require_under_quarter(setup.tilt, "a wedge tilts less than 90 deg");
  require_under_quarter(setup.roll, "a drill is rolled less than 90 deg");
  const double level = cotangent(setup.swing) / cosine(setup.tilt);
  const double raised = tangent(setup.tilt);
  const double cot_point = cosine(setup.roll) * level - sine(setup.roll) * raised;
  const double slope = sine(setup.roll) * level + cosine(setup.roll) * raised;
  if (!(cot_point > 0)) throw std::domain_error{"held so, the disk grinds no point"};
  if (!(slope > 0)) throw std::domain_error{"held so, the flank does not fall away from its lip"};
  return {2.0 * radians(std::atan2(1, cot_point)), slope};
}

FenceSetup fence_setup(Facet facet) { return {.fence = facet.included / 2.0, .table_tilt = flank_tilt(facet)}; }

WedgeSetup level_lip_setup(Facet facet) {
  const Angle tilt = flank_tilt(facet);
  const Angle half = facet.included / 2.0;
  return {.swing = radians(std::atan(tangent(half) * cosine(tilt))),
          .tilt = radians(std::asin(sine(half) * sine(tilt))),
          .roll = radians(std::atan(cosine(half) * tangent(tilt)))};
}

WedgeSetup level_table_setup(Facet facet) { return setup_on_wedge(facet, turns(0)); }

WedgeSetup level_end_view_setup(Facet facet) {
  const double cot_point = cot_half(facet);
  const Angle tilt = radians(std::atan(facet.slope));
  return {.swing = radians(std::atan2(1, cot_point * cosine(tilt))), .tilt = tilt, .roll = turns(0)};
}

WedgeSetup setup_on_wedge(Facet facet, Angle tilt) {
  const double cot_point = cot_half(facet);
  require_under_quarter(tilt, "a wedge tilts less than 90 deg");
  // The flank's steepest fall is the same in any hold; what the wedge does not give of it the swing must.
  const double raised = tangent(tilt);
  const double left = cot_point * cot_point + facet.slope * facet.slope - raised * raised;
  if (!(left > 0)) throw std::domain_error{"a wedge as steep as the flank itself"};
  const double level = std::sqrt(left);
  const Angle roll = radians(std::atan2(facet.slope, cot_point) - std::atan2(raised, level));
  require_under_quarter(roll, "on this wedge the lip would have to face down");
  return {.swing = radians(std::atan2(1, level * cosine(tilt))), .tilt = tilt, .roll = roll};
}

Length flat_drop(FlatFlank flank, Angle turn) { return flat_drop(flank, {flank.point.diameter / 2.0, turn}); }

Length flat_drop(FlatFlank flank, FlankPlace place) {
  const double cot_point = cot_half(facet_of(flank));
  const Angle lip = lip_offset(flank.point, place.radius);
  if (!(place.turn >= turns(0)) || !(place.turn < turns(0.5)))
    throw std::domain_error{"a flank is followed from its lip on, less than half a turn"};
  const Angle here = lip - place.turn;
  return (cot_point * (cosine(here) - cosine(lip)) + flank.slope * (sine(lip) - sine(here))) * place.radius;
}

double slope_of_flat_drop(PointShape point, FlankPlace place, Length drop) {
  const Angle lip = lip_offset(point, place.radius);
  require_land(place.turn);
  const Angle here = lip - place.turn;
  const double without = cotangent(point.included / 2.0) * (cosine(here) - cosine(lip));
  const double slope = (drop / place.radius - without) / (sine(lip) - sine(here));
  if (!(slope > 0) || !std::isfinite(slope)) throw std::domain_error{"no flat flank that falls drops by so little"};
  return slope;
}

Angle turn_of_greatest_drop(FlatFlank flank) { return corner_offset(flank.point) + flank_roll(facet_of(flank)); }

Angle heel_clear_angle(FlatFlank flank, FeedPerRev feed) {
  const Angle greatest = turn_of_greatest_drop(flank);
  require_feed(feed);
  if (feed == mm_per_rev(0)) return 2.0 * greatest;
  const double rise = feed * radians(1) / (flank.point.diameter / 2.0); // of the path, as the drop's own share of R
  const double slope_at_lip = steepness(flank) * sine(greatest);        // tan(relief)
  if (!(rise < slope_at_lip)) throw std::domain_error{"a feed steeper than the relief: the lip itself rubs"};
  const double crest = in_radians(greatest);
  const auto room = [&](double turn) {
    return steepness(flank) * (std::cos(turn - crest) - std::cos(crest)) - rise * turn;
  };
  // Room grows from nothing at the lip to its greatest, then shrinks; without feed it ends at twice the crest.
  const double widest = crest - std::asin(rise / steepness(flank));
  std::uintmax_t steps = 200;
  const auto bracket =
      boost::math::tools::toms748_solve(room, widest, 2 * crest, boost::math::tools::eps_tolerance<double>(52), steps);
  return radians((bracket.first + bracket.second) / 2);
}

double least_slope(PointShape point, Angle land, FeedPerRev feed) {
  const Angle corner = corner_offset(point);
  require_land(land);
  require_feed(feed);
  const Angle here = corner - land;
  const double without = cotangent(point.included / 2.0) * (cosine(here) - cosine(corner));
  const double wanted = feed * land / (point.diameter / 2.0);
  return std::max(0.0, (wanted - without) / (sine(corner) - sine(here)));
}

Angle least_relief(PointShape point, Angle land, FeedPerRev feed) {
  return relief_of_slope(point, least_slope(point, land, feed));
}

FeedPerRev greatest_feed(FlatFlank flank, Angle land) {
  require_land(land);
  const Length at_heel = flat_drop(flank, land);
  if (!(at_heel > mm(0))) throw std::domain_error{"the heel stands above the lip"};
  // The drop bends one way over the turn, so drop / turn is least at the heel or at the lip.
  const Length at_lip = tangent(relief_of_slope(flank.point, flank.slope)) * (flank.point.diameter / 2.0);
  return std::min(at_heel / land, at_lip / radians(1));
}

RimHollow rim_hollow(RimFacet facet) {
  if (!(facet.width > mm(0)) || !(facet.width < 2.0 * facet.wheel_radius))
    throw std::domain_error{"a facet is narrower than the wheel it is ground on"};
  const double half_arc = std::asin(facet.width / 2.0 / facet.wheel_radius);
  // 1 - cos a, written so that a narrow facet loses no digits.
  const double sagitta = 2 * std::pow(std::sin(half_arc / 2), 2);
  return {.depth = sagitta * facet.wheel_radius, .relief_gain = radians(half_arc)};
}

Length height_of_index_error(Length diameter, IndexError index) {
  if (!(diameter > mm(0))) throw std::domain_error{"lips of a drill with no diameter"};
  require_acute(index.relief, "a relief is above 0 and under 90 deg");
  if (!(index.helix >= turns(0)) || !(index.helix + index.relief < turns(0.25)))
    throw std::domain_error{"a helix is 0 or more, and under 90 deg together with the relief"};
  if (!(index.error >= degrees(-5)) || !(index.error <= degrees(5)))
    throw std::domain_error{"an index error of more than 5 deg is no small one"};
  const double relief = tangent(index.relief);
  return relief * in_radians(index.error) / (1 - relief * tangent(index.helix)) * (diameter / 2.0);
}

} // namespace quillside
