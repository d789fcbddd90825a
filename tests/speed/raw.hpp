#pragma once
// The sums of the library's models in plain double, checked as the models check and cut into files as they are: what
// is left between the two is what units cost.
// Lengths [mm], times [min], angles [turn].

namespace raw {

double tangent(double angle);

double spindle_speed(double speed, double diameter);
double cutting_speed(double speed, double diameter);
double feed_rate(double feed, double speed);
double feed_rate(double feed, double teeth, double speed);
double time_to_travel(double path, double rate);

struct Pulleys {
  double driving;
  double driven;
};
double driven_speed(double driver, Pulleys pulleys);

struct DrillPoint {
  double diameter;
  double included;
};
double point_allowance(DrillPoint point);

struct Engagement {
  double width;
  double diameter;
};
double largest_chip(double feed, Engagement engagement);

} // namespace raw
