#include "raw.hpp"

#include <cmath>
#include <numbers>
#include <stdexcept>

namespace raw {

double spindle_speed(double speed, double diameter) {
  if (!(diameter > 0)) throw std::domain_error{"cutting speed of a tool with no diameter"};
  return speed / (std::numbers::pi * diameter);
}

double cutting_speed(double speed, double diameter) {
  if (!(diameter > 0)) throw std::domain_error{"cutting speed of a tool with no diameter"};
  return std::numbers::pi * diameter * speed;
}

double feed_rate(double feed, double speed) { return feed * speed; }

double feed_rate(double feed, double teeth, double speed) { return feed * teeth * speed; }

double time_to_travel(double path, double rate) {
  if (!(rate > 0)) throw std::domain_error{"time of a cut that does not advance"};
  return path / rate;
}

double driven_speed(double driver, Pulleys pulleys) {
  if (!(pulleys.driving > 0) || !(pulleys.driven > 0)) throw std::domain_error{"a pulley with no diameter"};
  return driver * (pulleys.driving / pulleys.driven);
}

double point_allowance(DrillPoint point) {
  if (!(point.diameter > 0)) throw std::domain_error{"point of a drill with no diameter"};
  if (!(point.included > 0) || !(point.included < 0.5))
    throw std::domain_error{"a point angle is above 0 and under 180 deg"};
  return point.diameter / 2.0 / tangent(point.included / 2.0);
}

double largest_chip(double feed, Engagement engagement) {
  if (!(engagement.width > 0) || !(engagement.width <= engagement.diameter))
    throw std::domain_error{"a width of cut is above 0 and at most the diameter"};
  const double share = engagement.width / engagement.diameter;
  return (share >= 0.5 ? 1.0 : 2 * std::sqrt(share - share * share)) * feed;
}

} // namespace raw
