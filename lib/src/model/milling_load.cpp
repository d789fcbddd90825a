#include <quillside/model/milling_load.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

#include <boost/math/quadrature/gauss.hpp>

#include <quillside/quantity/angle.hpp>

#include "checked.hpp"
#include "one_tooth.hpp"

namespace quillside {

using detail::check;
using detail::checked;
using detail::one_tooth;
using detail::require;

namespace {

constexpr double half_turn = std::numbers::pi;
constexpr double full_turn = 2 * half_turn;
/// Angles nearer than this count as one: a tooth that stands just at the edge of the cut is in it.
constexpr double hair = 1e-9;
constexpr double least_lag = 1e-4;

const ToothForce& checked(const ToothForce& tooth) {
  check(tooth.metal);
  require(tooth.radial_ratio >= 0 && std::isfinite(tooth.radial_ratio), "a radial force is 0 or more");
  require(tooth.least_chip >= mm(0) && std::isfinite(in_mm(tooth.least_chip)), "a least chip is 0 or more");
  return tooth;
}

} // namespace

Force resultant(const CutterLoad& load) { return newtons(std::hypot(in_newtons(load.feed), in_newtons(load.across))); }

MillingLoad::MillingLoad(const MillPass& pass, const ToothForce& tooth)
    : pass_(checked(pass)), tooth_(checked(tooth)),
      arc_(1 - tooth.metal.mc, tooth.least_chip / (pass.feed * one_tooth)), force_per_mm_(0), entry_(0),
      exit_(in_radians(arc_of_engagement(pass.engagement))), pitch_(full_turn / in_flutes(pass.teeth)),
      lag_(in_radians(lag_at(pass.depth))) {
  const Length full = pass.feed * one_tooth;
  force_per_mm_ = in_megapascals(tooth.metal.kc11) * std::pow(in_mm(full), 1 - tooth.metal.mc);
  if (!forms_wall(pass, MillSide::conventional)) {
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

} // namespace quillside
