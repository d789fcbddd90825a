#include <quillside/model/drill_load.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

#include <quillside/quantity/angle.hpp>

namespace quillside {

namespace {

constexpr auto one_turn = Quantity<detail::turn>::from_value(1);
constexpr double widest_chisel = 0.4;
constexpr double dullest = 2;

bool above_nothing(double number) { return number > 0 && std::isfinite(number); }

void require_diameter(Length diameter) {
  if (!above_nothing(in_mm(diameter))) throw std::domain_error{"load of a drill with no diameter"};
}

void require_edges(DrillEdges drill) {
  require_diameter(drill.diameter);
  if (!(drill.chisel >= mm(0)) || !(drill.chisel <= widest_chisel * drill.diameter))
    throw std::domain_error{"a chisel edge is 0 to 0.4 of the diameter"};
  if (!(drill.pilot >= mm(0)) || !(drill.pilot < drill.diameter))
    throw std::domain_error{"a pilot hole is 0 or more and under the diameter"};
}

FeedPerRev largest_feed(Length diameter) { return diameter / 2.0 / one_turn; }

void require_feed(Length diameter, FeedPerRev feed) {
  require_diameter(diameter);
  if (!(feed > mm_per_rev(0)) || !(feed <= largest_feed(diameter)))
    throw std::domain_error{"a drill's feed is above 0 and at most half its diameter a turn"};
}

void require_work(DrillWork work) {
  if (!above_nothing(work.torque_factor) || !above_nothing(work.thrust_factor))
    throw std::domain_error{"a work-material factor is above 0"};
  if (!(work.wear >= 1) || !(work.wear <= dullest))
    throw std::domain_error{"a wear factor is 1 for a sharp drill and at most 2"};
}

void require_constant(double constant) {
  if (!above_nothing(constant)) throw std::domain_error{"the constant of a metal is above 0"};
}

/// The parts of A, B and J that the lips have, and those of the chisel edge.
struct EdgeShares {
  double lips_torque;
  double lips_thrust;
  double chisel_torque = 0;
  double chisel_thrust = 0;
  double chisel_extrusion = 0;
};

/// Lips from \p inner times the radius out to the corner.
EdgeShares lips_from(double inner) {
  const double rim = std::pow(1 + inner, 0.2);
  return {(1 - inner * inner) / rim, (1 - inner) / rim};
}

EdgeShares lips_and_chisel(double chisel_share) {
  EdgeShares shares = lips_from(chisel_share);
  shares.chisel_torque = 3.2 * std::pow(chisel_share, 1.8);
  shares.chisel_thrust = 2.2 * std::pow(chisel_share, 0.8);
  shares.chisel_extrusion = chisel_share * chisel_share;
  return shares;
}

bool relieved(DrillEdges drill) { return drill.pilot > drill.chisel; }

double inner_end_of_lips(DrillEdges drill) { return std::max(drill.chisel, drill.pilot) / drill.diameter; }

EdgeShares shares_of(DrillEdges drill) {
  return relieved(drill) ? lips_from(inner_end_of_lips(drill)) : lips_and_chisel(drill.chisel / drill.diameter);
}

/// The two terms of the handbook's thrust, less Kd and W [lb over Kd].
struct ThrustTerms {
  double growing; // with the feed: 2 Ff FT B
  double fixed;   // D^2 J
};

ThrustTerms thrust_terms(DrillEdges drill, FeedPerRev feed) {
  const EdgeShares shares = shares_of(drill);
  const double diameter = in_inches(drill.diameter);
  return {2 * feed_factor(feed) * thrust_diameter_factor(drill.diameter) * (shares.lips_thrust + shares.chisel_thrust),
          diameter * diameter * shares.chisel_extrusion};
}

constexpr Torque inch_pounds(double amount) { return pounds_force(amount) * inches(1.0); }

DrillEdges standard_edges(Length diameter) { return {.diameter = diameter, .chisel = standard_chisel * diameter}; }

/// Any metal does where only a ratio of two loads is wanted.
constexpr DrillWork some_metal{1, 1, 1};

template <class Load> struct ModelLoads {
  std::optional<Load> first;
  Load low{};
  Load high{};
  void add(Load load) {
    if (!first) {
      first = low = high = load;
      return;
    }
    low = std::min(low, load);
    high = std::max(high, load);
  }
  Spread<Load> spread(Scatter scatter) const {
    if (!(scatter.low > 0) || !(scatter.low <= 1) || !(scatter.high >= 1) || !std::isfinite(scatter.high))
      throw std::domain_error{"a scatter runs from a share of the value to a multiple of it"};
    if (!first) throw std::domain_error{"load of a drill in a metal that no model knows"};
    return {std::min(low, scatter.low * *first), *first, std::max(high, scatter.high * *first)};
  }
};

} // namespace

bool in_printed_range(DrillEdges drill, FeedPerRev feed) {
  require_edges(drill);
  require_feed(drill.diameter, feed);
  const double chisel = drill.chisel / drill.diameter;
  return drill.diameter >= inches(0.063) && drill.diameter <= inches(3.0) && feed >= in_per_rev(0.0005) &&
         feed <= in_per_rev(0.050) && (relieved(drill) || chisel >= split_chisel);
}

double feed_factor(FeedPerRev feed) {
  if (!above_nothing(in_mm_per_rev(feed))) throw std::domain_error{"a drill's feed is above 0"};
  return std::pow(in_inches_per_rev(feed), 0.8);
}

double thrust_diameter_factor(Length diameter) {
  require_diameter(diameter);
  return std::pow(in_inches(diameter), 0.8);
}

double torque_diameter_factor(Length diameter) {
  require_diameter(diameter);
  return std::pow(in_inches(diameter), 1.8);
}

ChiselFactors chisel_factors(double chisel_share) {
  if (!(chisel_share >= 0) || !(chisel_share <= widest_chisel))
    throw std::domain_error{"a chisel edge is 0 to 0.4 of the diameter"};
  const EdgeShares shares = lips_and_chisel(chisel_share);
  return {shares.lips_torque + shares.chisel_torque, shares.lips_thrust + shares.chisel_thrust,
          shares.chisel_extrusion};
}

Force handbook_thrust(DrillEdges drill, FeedPerRev feed, DrillWork work) {
  require_edges(drill);
  require_feed(drill.diameter, feed);
  require_work(work);
  const ThrustTerms terms = thrust_terms(drill, feed);
  return pounds_force(work.thrust_factor * work.wear * (terms.growing + terms.fixed));
}

Torque handbook_torque(DrillEdges drill, FeedPerRev feed, DrillWork work) {
  require_edges(drill);
  require_feed(drill.diameter, feed);
  require_work(work);
  const EdgeShares shares = shares_of(drill);
  return inch_pounds(work.torque_factor * work.wear * feed_factor(feed) * torque_diameter_factor(drill.diameter) *
                     (shares.lips_torque + shares.chisel_torque));
}

double chisel_thrust_share(DrillEdges drill, FeedPerRev feed) {
  require_edges(drill);
  require_feed(drill.diameter, feed);
  const EdgeShares shares = shares_of(drill);
  const ThrustTerms terms = thrust_terms(drill, feed);
  const double growing = terms.growing * shares.chisel_thrust / (shares.lips_thrust + shares.chisel_thrust);
  return (growing + terms.fixed) / (terms.growing + terms.fixed);
}

std::optional<FeedPerRev> feed_for_thrust(Force limit, DrillEdges drill, DrillWork work) {
  require_edges(drill);
  require_work(work);
  if (!above_nothing(in_newtons(limit))) throw std::domain_error{"a limit of thrust is above 0"};
  const FeedPerRev most = largest_feed(drill.diameter);
  const ThrustTerms terms = thrust_terms(drill, most);
  const double left = in_pounds_force(limit) / (work.thrust_factor * work.wear) - terms.fixed;
  if (!(left > 0)) return std::nullopt;
  return std::min(1.0, std::pow(left / terms.growing, 1 / 0.8)) * most;
}

Force catalogue_thrust(Length diameter, FeedPerRev feed, double constant) {
  require_feed(diameter, feed);
  require_constant(constant);
  return newtons(570 * constant * in_mm(diameter) * std::pow(in_mm_per_rev(feed), 0.85));
}

Torque catalogue_torque(Length diameter, FeedPerRev feed, double constant) {
  require_feed(diameter, feed);
  require_constant(constant);
  return newton_metres(constant * in_mm(diameter) * in_mm(diameter) * (0.630 + 16.84 * in_mm_per_rev(feed)) / 100);
}

Torque power_law_torque(Length diameter, FeedPerRev feed, double constant) {
  require_feed(diameter, feed);
  require_constant(constant);
  return newton_metres(constant * std::pow(in_mm_per_rev(feed), 0.75) * std::pow(in_mm(diameter), 1.8));
}

Spread<Force> drill_thrust(DrillEdges drill, FeedPerRev feed, DrillModels models, Scatter scatter) {
  require_edges(drill);
  require_feed(drill.diameter, feed);
  ModelLoads<Force> loads;
  if (models.handbook) loads.add(handbook_thrust(drill, feed, *models.handbook));
  const double against_standard =
      handbook_thrust(drill, feed, some_metal) / handbook_thrust(standard_edges(drill.diameter), feed, some_metal);
  if (models.catalogue) loads.add(against_standard * catalogue_thrust(drill.diameter, feed, *models.catalogue));
  return loads.spread(scatter);
}

Spread<Torque> drill_torque(DrillEdges drill, FeedPerRev feed, DrillModels models, Scatter scatter) {
  require_edges(drill);
  require_feed(drill.diameter, feed);
  ModelLoads<Torque> loads;
  if (models.handbook) loads.add(handbook_torque(drill, feed, *models.handbook));
  const double against_standard =
      handbook_torque(drill, feed, some_metal) / handbook_torque(standard_edges(drill.diameter), feed, some_metal);
  if (models.catalogue) loads.add(against_standard * catalogue_torque(drill.diameter, feed, *models.catalogue));
  if (models.power_law) loads.add(against_standard * power_law_torque(drill.diameter, feed, *models.power_law));
  return loads.spread(scatter);
}

Power spindle_power(Torque torque, SpindleSpeed speed) {
  if (!(torque >= newton_metres(0)) || !(speed >= rev_per_min(0)))
    throw std::domain_error{"torque and speed of a spindle are 0 or more"};
  return torque * angular_velocity(speed);
}

Torque stall_torque(Power rated, SpindleSpeed speed, double efficiency) {
  if (!above_nothing(in_watts(rated))) throw std::domain_error{"a motor of no power"};
  if (!above_nothing(in_rev_per_min(speed))) throw std::domain_error{"a spindle that stands still has no stall torque"};
  if (!(efficiency > 0) || !(efficiency <= 1)) throw std::domain_error{"an efficiency is above 0 and at most 1"};
  return efficiency * rated / angular_velocity(speed);
}

Force lever_force(Force thrust, QuillLever quill) {
  if (!(thrust >= newtons(0))) throw std::domain_error{"a thrust is 0 or more"};
  if (!above_nothing(in_mm(quill.pinion_radius)) || !above_nothing(in_mm(quill.lever)))
    throw std::domain_error{"a quill has a pinion and a lever"};
  return thrust * (quill.pinion_radius / quill.lever);
}

Force buckling_load(DrillColumn drill, Stress modulus, DrillTip tip) {
  require_diameter(drill.diameter);
  if (!above_nothing(in_mm(drill.overhang))) throw std::domain_error{"a drill that does not stand out cannot buckle"};
  if (!above_nothing(in_megapascals(modulus))) throw std::domain_error{"a modulus of elasticity is above 0"};
  const Length bar = fluted_bending_diameter * drill.diameter;
  const auto area_moment = bar * bar * bar * bar * (std::numbers::pi / 64);
  const double column = tip == DrillTip::located ? located_tip_column : free_tip_column;
  return column * (modulus * area_moment / (drill.overhang * drill.overhang));
}

Stress torsion_stress(Torque torque, Length diameter) {
  require_diameter(diameter);
  if (!(torque >= newton_metres(0))) throw std::domain_error{"a torque is 0 or more"};
  return torque / (fluted_torsion_modulus * (diameter * diameter * diameter));
}

Spread<Torque> grab_torque(DrillEdges drill, FeedPerRev feed, DrillWork work) {
  const Force push = handbook_thrust(drill, feed, work);
  // Lips alone, from x out: M / T = (1 + x) D / 2 whatever the feed, by the factors of the handbook.
  const Torque at_corner = work.torque_factor / work.thrust_factor * (push * drill.diameter);
  const Torque chisel_through = (1 + inner_end_of_lips(drill)) / 2 * at_corner;
  const Torque packed = packed_flute_factor * handbook_torque(drill, feed, work);
  return {chisel_through, at_corner, std::max(packed, at_corner)};
}

Force holding_force(Torque torque, Length arm) {
  if (!(torque >= newton_metres(0))) throw std::domain_error{"a torque is 0 or more"};
  if (!above_nothing(in_mm(arm))) throw std::domain_error{"a part is held at some arm from the spindle"};
  return torque / arm;
}

} // namespace quillside
