#include <quillside/model/cutting_force.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <stdexcept>

#include <boost/math/quadrature/gauss.hpp>
#include <boost/math/tools/minima.hpp>

#include <quillside/quantity/angle.hpp>

namespace quillside {

namespace {

constexpr auto one_tooth = Quantity<detail::tooth>::from_value(1);
constexpr double half_turn = std::numbers::pi;
constexpr double quarter_turn = half_turn / 2;
constexpr double full_turn = 2 * half_turn;
/// Angles nearer than this count as one: a tooth that stands just at the edge of the cut is in it.
constexpr double hair = 1e-9;
constexpr double least_lag = 1e-4;

void require(bool holds, const char* why) {
  if (!holds) throw std::domain_error{why};
}

void check(Kienzle metal) {
  require(metal.kc11 > megapascals(0), "a specific force is above 0");
  require(metal.mc >= 0 && metal.mc < 1, "the exponent mc is 0 or more and less than 1");
}

const MillPass& checked(const MillPass& pass) {
  arc_of_engagement(pass.engagement); // throws where the width is none
  require(pass.depth > mm(0) && std::isfinite(in_mm(pass.depth)), "a pass has a depth above 0");
  require(pass.feed > mm_per_tooth(0) && std::isfinite(in_mm_per_tooth(pass.feed)), "a feed per tooth is above 0");
  require(pass.teeth >= flutes(1) && pass.teeth <= flutes(12), "an end mill has 1 to 12 flutes");
  require(pass.helix >= degrees(0) && pass.helix <= degrees(60), "a helix angle is 0 to 60 deg");
  return pass;
}

const ToothForce& checked(const ToothForce& tooth) {
  check(tooth.metal);
  require(tooth.radial_ratio >= 0 && std::isfinite(tooth.radial_ratio), "a radial force is 0 or more");
  require(tooth.least_chip >= mm(0) && std::isfinite(in_mm(tooth.least_chip)), "a least chip is 0 or more");
  return tooth;
}

bool full_slot(const MillPass& pass) { return pass.engagement.width == pass.engagement.diameter; }

detail::ArcIntegrals operator-(const detail::ArcIntegrals& a, const detail::ArcIntegrals& b) {
  return {a.along - b.along, a.sine - b.sine, a.cosine - b.cosine, a.sine_moment - b.sine_moment,
          a.cosine_moment - b.cosine_moment};
}

detail::ArcIntegrals operator+(const detail::ArcIntegrals& a, const detail::ArcIntegrals& b) {
  return {a.along + b.along, a.sine + b.sine, a.cosine + b.cosine, a.sine_moment + b.sine_moment,
          a.cosine_moment + b.cosine_moment};
}

/// The integrals of f = slope sin.
detail::ArcIntegrals of_sine(double angle, double slope) {
  const double sine = std::sin(angle);
  const double cosine = std::cos(angle);
  const double half_sine = std::sin(angle / 2);
  const double square = (angle - sine * cosine) / 2; // integral of sin^2
  return {.along = slope * 2 * half_sine * half_sine,
          .sine = slope * square,
          .cosine = slope * sine * sine / 2,
          .sine_moment = slope * (angle * angle - 2 * angle * sine * cosine + sine * sine) / 4,
          .cosine_moment = slope * (angle * sine * sine - square) / 2};
}

double power_series(const std::array<double, 16>& coefficients, double square) {
  double sum = 0;
  for (auto it = coefficients.rbegin(); it != coefficients.rend(); ++it) sum = sum * square + *it;
  return sum;
}

} // namespace

namespace detail {

SinePower::SinePower(double exponent) : exponent_(exponent), integral_{}, moment_{} {
  // sin x / x = sum of s_k x^2k; its power by comparing coefficients of y' s = e s' y (Euler's recurrence).
  std::array<double, terms> s{1};
  std::array<double, terms> power{1};
  for (std::size_t n = 1; n < terms; ++n) {
    const auto count = static_cast<double>(n);
    s[n] = -s[n - 1] / (2 * count * (2 * count + 1));
    for (std::size_t k = 1; k <= n; ++k)
      power[n] += (static_cast<double>(k) * (exponent + 1) - count) * s[k] * power[n - k] / count;
  }
  for (std::size_t n = 0; n < terms; ++n) {
    const double degree = exponent + 2 * static_cast<double>(n);
    integral_[n] = power[n] / (degree + 1);
    moment_[n] = power[n] / (degree + 2);
  }
}

double SinePower::integral(double angle, double power) const { return power * power_series(integral_, angle * angle); }
double SinePower::moment(double angle, double power) const {
  return power * angle * power_series(moment_, angle * angle);
}

ToothArc::ToothArc(double exponent, double least)
    : tangential_(exponent), lateral_(exponent + 1), least_angle_(least < 1 ? std::asin(least) : quarter_turn),
      least_slope_(least > 0 ? std::pow(least, exponent - 1) : 1) {
  if (least > 0) shift_ = of_sine(least_angle_, least_slope_) - of_power(least_angle_);
  quarter_ = in_first_quarter(quarter_turn);
}

double ToothArc::force(double angle, double sine) const {
  if (sine <= 0) return 0;
  return std::min(angle, half_turn - angle) < least_angle_ ? least_slope_ * sine
                                                           : std::pow(sine, tangential_.exponent());
}

ArcIntegrals ToothArc::of_power(double angle) const {
  const double power = std::pow(angle, lateral_.exponent());
  const double cosine = std::pow(std::sin(angle), lateral_.exponent()) / lateral_.exponent();
  const double sine = lateral_.integral(angle, power * angle);
  return {.along = tangential_.integral(angle, power),
          .sine = sine,
          .cosine = cosine,
          .sine_moment = lateral_.moment(angle, power * angle),
          .cosine_moment = angle * cosine - sine / lateral_.exponent()};
}

ArcIntegrals ToothArc::in_first_quarter(double angle) const {
  return angle < least_angle_ ? of_sine(angle, least_slope_) : of_power(angle) + shift_;
}

ArcIntegrals ToothArc::up_to(double angle) const {
  if (angle <= quarter_turn) return in_first_quarter(angle);
  // The second quarter is the first in a mirror: sine and f alike, cosine with its sign turned.
  const ArcIntegrals left = in_first_quarter(std::max(0.0, half_turn - angle));
  const ArcIntegrals mirrored = quarter_ - left;
  return {.along = quarter_.along + mirrored.along,
          .sine = quarter_.sine + mirrored.sine,
          .cosine = left.cosine,
          .sine_moment = left.sine_moment + half_turn * mirrored.sine,
          .cosine_moment = quarter_.cosine_moment + mirrored.cosine_moment - half_turn * mirrored.cosine};
}

} // namespace detail

// --- the metal ---

Stress specific_force(Kienzle metal, Chip chip) {
  check(metal);
  require(chip.thickness >= mm(0) && chip.least >= mm(0), "a chip is 0 or more");
  const Length cut = std::max(chip.thickness, chip.least);
  require(cut > mm(0), "the specific force of no chip");
  return metal.kc11 * std::pow(cut / mm(1), -metal.mc);
}

Length minimum_chip_thickness(Length edge_radius, double lambda) {
  require(edge_radius >= mm(0) && lambda >= 0, "an edge radius and its share are 0 or more");
  return lambda * edge_radius;
}

double size_effect_doubt(Length chip) {
  require(chip > mm(0), "a chip is above 0");
  if (chip < mm(0.005)) return 2;
  if (chip < mm(0.02)) return 1.5;
  return 1;
}

Stress specific_force(HandbookPower power) {
  require(power.unit_power > megapascals(0) && power.feed_factor > 0, "unit power and feed factor are above 0");
  require(power.wear >= 1, "a wear factor is 1 or more");
  return power.unit_power * power.feed_factor * power.wear;
}

double feed_factor(std::span<const FeedFactor> printed, FeedPerTooth feed) {
  require(printed.size() >= 2, "a feed factor needs two lines of a table");
  require(feed > mm_per_tooth(0), "a feed is above 0");
  for (std::size_t i = 0; i < printed.size(); ++i) {
    require(printed[i].factor > 0 && printed[i].feed > mm_per_tooth(0), "feeds and feed factors are above 0");
    require(i == 0 || printed[i].feed > printed[i - 1].feed, "the feeds of a table rise");
  }
  std::size_t above = 1;
  while (above + 1 < printed.size() && printed[above].feed < feed) ++above;
  const FeedFactor& low = printed[above - 1];
  const FeedFactor& high = printed[above];
  const double exponent = std::log(high.factor / low.factor) / std::log(high.feed / low.feed);
  return low.factor * std::pow(feed / low.feed, exponent);
}

// --- the pass ---

bool forms_wall(const MillPass& pass, MillSide side) { return full_slot(pass) || pass.side == side; }

RemovalRate removal_rate(const MillPass& pass, SpindleSpeed speed) {
  checked(pass);
  require(speed >= rev_per_min(0), "a spindle speed is 0 or more");
  return pass.engagement.width * pass.depth * (pass.feed * pass.teeth * speed);
}

Power cutting_power(Stress specific, RemovalRate rate) { return specific * rate; }

Force mean_tangential_force(const MillPass& pass, Stress specific) {
  checked(pass);
  const double share = pass.engagement.width / pass.engagement.diameter / half_turn;
  return specific * pass.depth * (pass.feed * one_tooth) * (share * in_flutes(pass.teeth));
}

Force resultant(const CutterLoad& load) { return newtons(std::hypot(in_newtons(load.feed), in_newtons(load.across))); }

MillingLoad::MillingLoad(const MillPass& pass, const ToothForce& tooth)
    : pass_(checked(pass)), tooth_(checked(tooth)),
      arc_(1 - tooth.metal.mc, tooth.least_chip / (pass.feed * one_tooth)), force_per_mm_(0), entry_(0),
      exit_(in_radians(arc_of_engagement(pass.engagement))), pitch_(full_turn / in_flutes(pass.teeth)),
      lag_(in_radians(lag_at(pass.depth))) {
  const Length full = pass.feed * one_tooth;
  force_per_mm_ = in_megapascals(tooth.metal.kc11) * std::pow(in_mm(full), 1 - tooth.metal.mc);
  if (!full_slot(pass) && pass.side == MillSide::climb) {
    entry_ = half_turn - exit_;
    exit_ = half_turn;
  }
  if (lag_ < least_lag) lag_ = 0;
  at_entry_ = arc_.up_to(entry_);
  at_exit_ = arc_.up_to(exit_);
}

Angle MillingLoad::lag_at(Length height) const {
  const Length radius = pass_.engagement.diameter / 2.0;
  return radians(height / radius * tangent(pass_.helix));
}

/// Every tooth comes round again after a whole turn, so teeth and turns are one row of tips, a pitch apart.
template <class Visit> void MillingLoad::each_engaged(double turn, Visit visit) const {
  const double first = std::ceil((entry_ - turn) / pitch_ - hair);
  const double last = std::floor((exit_ + lag_ - turn) / pitch_ + hair);
  for (double k = first; k <= last; ++k) {
    const double tip = turn + k * pitch_;
    const Arc arc{tip, std::max(tip - lag_, entry_), std::min(tip, exit_)};
    if (straight() || arc.upper > arc.lower) visit(arc);
  }
}

CutterLoad MillingLoad::at(Angle turn) const {
  const double kr = tooth_.radial_ratio;
  const double depth = in_mm(pass_.depth);
  double feed = 0;
  double across = 0;
  double tangential = 0;
  double feed_moment = 0;
  double across_moment = 0;
  each_engaged(in_radians(turn), [&](Arc arc) {
    if (straight()) {
      const double sine = std::sin(arc.tip);
      const double cosine = std::cos(arc.tip);
      const double f = arc_.force(arc.tip, sine) * depth;
      feed -= f * (cosine + kr * sine);
      across += f * (sine - kr * cosine);
      tangential += f;
      return;
    }
    const auto upper = arc.upper == exit_ ? at_exit_ : arc_.up_to(arc.upper);
    const auto lower = arc.lower == entry_ ? at_entry_ : arc_.up_to(arc.lower);
    const auto swept = upper - lower;
    const double mm_per_rad = depth / lag_;
    const double feed_part = -(swept.cosine + kr * swept.sine) * mm_per_rad;
    const double across_part = (swept.sine - kr * swept.cosine) * mm_per_rad;
    feed += feed_part;
    across += across_part;
    tangential += swept.along * mm_per_rad;
    // A place on the edge that stands at phi is (tip - phi) of lag above the tip.
    const double square = mm_per_rad * mm_per_rad;
    feed_moment += arc.tip * mm_per_rad * feed_part + (swept.cosine_moment + kr * swept.sine_moment) * square;
    across_moment += arc.tip * mm_per_rad * across_part - (swept.sine_moment - kr * swept.cosine_moment) * square;
  });
  if (straight()) {
    feed_moment = feed * depth / 2;
    across_moment = across * depth / 2;
  }
  const double radius = in_mm(pass_.engagement.diameter) / 2;
  return {.feed = newtons(force_per_mm_ * feed),
          .across = newtons(force_per_mm_ * across),
          .torque = newtons(force_per_mm_ * tangential) * mm(radius),
          .feed_moment = newtons(force_per_mm_ * feed_moment) * mm(1),
          .across_moment = newtons(force_per_mm_ * across_moment) * mm(1)};
}

std::vector<PointLoad> MillingLoad::along(Angle turn) const {
  using Rule = boost::math::quadrature::gauss<double, 7>;
  const double kr = tooth_.radial_ratio;
  const double depth = in_mm(pass_.depth);
  std::vector<PointLoad> loads;
  const double most_teeth = (exit_ - entry_ + lag_) / pitch_ + 2;
  loads.reserve(static_cast<std::size_t>(7 * most_teeth));

  const auto add = [&](double height, double angle, double length) {
    const double sine = std::sin(angle);
    const double cosine = std::cos(angle);
    const double f = force_per_mm_ * arc_.force(angle, sine) * length;
    loads.push_back({mm(height), newtons(-f * (cosine + kr * sine)), newtons(f * (sine - kr * cosine))});
  };
  each_engaged(in_radians(turn), [&](Arc arc) {
    const double low = straight() ? 0 : (arc.tip - arc.upper) / lag_ * depth;
    const double high = straight() ? depth : (arc.tip - arc.lower) / lag_ * depth;
    const double middle = (low + high) / 2;
    const double half = (high - low) / 2;
    const auto place = [&](double height, double weight) {
      add(height, arc.tip - height / depth * lag_, half * weight);
    };
    for (std::size_t i = 0; i < Rule::abscissa().size(); ++i) {
      const double off = Rule::abscissa()[i] * half;
      place(middle + off, Rule::weights()[i]);
      if (off > 0) place(middle - off, Rule::weights()[i]);
    }
  });
  return loads;
}

std::vector<Angle> MillingLoad::smooth_stretches() const {
  std::vector<double> edges{0, pitch_};
  for (const double event : {entry_, exit_, entry_ + lag_, exit_ + lag_}) edges.push_back(std::fmod(event, pitch_));
  std::ranges::sort(edges);
  std::vector<Angle> stretches{turns(0)};
  for (const double edge : edges)
    if (radians(edge) - stretches.back() > radians(1e-6)) stretches.push_back(radians(edge));
  stretches.back() = radians(pitch_);
  return stretches;
}

CutterLoad MillingLoad::mean() const {
  const auto swept = at_exit_ - at_entry_;
  const double kr = tooth_.radial_ratio;
  const Force unit = newtons(force_per_mm_ * in_mm(pass_.depth) / pitch_);
  const Force feed = unit * -(swept.cosine + kr * swept.sine);
  const Force across = unit * (swept.sine - kr * swept.cosine);
  return {.feed = feed,
          .across = across,
          .torque = unit * swept.along * (pass_.engagement.diameter / 2.0),
          .feed_moment = feed * (pass_.depth / 2.0),
          .across_moment = across * (pass_.depth / 2.0)};
}

Angle turn_of_largest(const MillingLoad& load, const std::function<double(const CutterLoad&)>& rank) {
  constexpr int steps = 8;
  constexpr double inside = 1e-7; // a straight tooth's load jumps at the ends of a stretch
  const auto stretches = load.smooth_stretches();
  const auto at = [&](double turn) { return rank(load.at(turns(turn))); };
  double best = -std::numeric_limits<double>::infinity();
  double best_turn = 0;
  double low = 0;
  double high = 0;
  for (std::size_t i = 1; i < stretches.size(); ++i) {
    const double length = in_turns(stretches[i] - stretches[i - 1]);
    const double from = in_turns(stretches[i - 1]) + inside * length;
    const double to = in_turns(stretches[i]) - inside * length;
    for (int step = 0; step <= steps; ++step) {
      const double turn = from + (to - from) * step / steps;
      const double value = at(turn);
      if (value <= best) continue;
      best = value;
      best_turn = turn;
      low = std::max(from, turn - (to - from) / steps);
      high = std::min(to, turn + (to - from) / steps);
    }
  }
  constexpr int bits = 20;
  const auto [turn, negative] =
      boost::math::tools::brent_find_minima([&](double t) { return -at(t); }, low, high, bits);
  return turns(-negative > best ? turn : best_turn);
}

MillingForces milling_forces(const MillingLoad& load) {
  const Angle strongest = turn_of_largest(load, [](const CutterLoad& at) { return in_newtons(resultant(at)); });
  const Angle tightest = turn_of_largest(load, [](const CutterLoad& at) { return in_newton_metres(at.torque); });
  const auto stretches = load.smooth_stretches();
  const auto at = [&](double turn) { return in_newtons(resultant(load.at(turns(turn)))); };
  double summed = 0;
  for (std::size_t i = 1; i < stretches.size(); ++i)
    summed +=
        boost::math::quadrature::gauss<double, 10>::integrate(at, in_turns(stretches[i - 1]), in_turns(stretches[i]));
  const CutterLoad mean = load.mean();
  const Length radius = load.pass().engagement.diameter / 2.0;
  return {.peak_resultant = resultant(load.at(strongest)),
          .peak_turn = strongest,
          .mean_resultant = newtons(summed / in_turns(stretches.back())),
          .mean_feed = mean.feed,
          .mean_across = mean.across,
          .mean_tangential = mean.torque / radius,
          .peak_torque = load.at(tightest).torque,
          .mean_torque = mean.torque};
}

Power mean_power(const MillingLoad& load, SpindleSpeed speed) {
  require(speed >= rev_per_min(0), "a spindle speed is 0 or more");
  return load.mean().torque * angular_velocity(speed);
}

Angle turn_at_wall(const MillingLoad& load, WallPoint point) {
  require(forms_wall(load.pass(), point.side), "a wall that this pass does not form");
  require(point.height >= mm(0) && point.height <= load.pass().depth, "a height above the pass");
  const Angle wall = point.side == MillSide::conventional ? turns(0) : turns(0.5);
  return wall + load.lag_at(point.height);
}

Force force_at_wall(const MillingLoad& load, WallPoint point) { return load.at(turn_at_wall(load, point)).across; }

// --- run-out ---

Length largest_tooth_chip(FeedPerTooth feed, TeethPerTurn teeth, Length offset) {
  require(feed > mm_per_tooth(0), "a feed per tooth is above 0");
  require(teeth >= flutes(1) && teeth <= flutes(12), "an end mill has 1 to 12 flutes");
  require(offset >= mm(0) && std::isfinite(in_mm(offset)), "a run-out is 0 or more");
  const int z = in_flutes(teeth);
  const double e = offset / (feed * one_tooth);
  const auto chip_at = [&](double phase) {
    double least = z;
    for (int k = 1; k < z; ++k) {
      const double half = half_turn * k / z;
      least = std::min(least, k + 2 * e * std::sin(half) * std::sin(half - phase));
    }
    return least;
  };
  // The tooth before has left the most at half a pitch short of a quarter turn back; teeth further ahead move the worst
  // phase from there toward 0.
  const double from = half_turn / z - quarter_turn;
  constexpr int steps = 16;
  double best = chip_at(from);
  double low = from;
  double high = from / steps * (steps - 1);
  for (int step = 1; step <= steps; ++step) {
    const double phase = from * (steps - step) / steps;
    const double chip = chip_at(phase);
    if (chip <= best) continue;
    best = chip;
    low = from * (steps - step + 1) / steps;
    high = from * std::max(0, steps - step - 1) / steps;
  }
  constexpr int bits = 24;
  if (low < high)
    best = std::max(
        best,
        -boost::math::tools::brent_find_minima([&](double phase) { return -chip_at(phase); }, low, high, bits).second);
  return best * (feed * one_tooth);
}

// --- doubt ---

Spread<Force> joined_force(TwoForces forces, ForceScatter doubt) {
  require(forces.kienzle > newtons(0) && forces.handbook > newtons(0), "a force to be doubted is above 0");
  require(doubt.scatter >= 0 && doubt.scatter < 1, "a scatter is 0 or more and less than 1");
  require(doubt.size_effect >= 1, "a size effect is 1 or more");
  return {.low = (1 - doubt.scatter) * std::min(forces.kienzle, forces.handbook),
          .value = forces.kienzle,
          .high = (1 + doubt.scatter) * doubt.size_effect * std::max(forces.kienzle, forces.handbook)};
}

} // namespace quillside
