#include "sketch.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

#include <quillside/quantity/angle.hpp>
#include <quillside/words/print.hpp>

namespace quillside::page {

namespace {

constexpr Length head_length = mm(1.5);
constexpr Angle head_half = degrees(12);

Length apart(Spot a, Spot b) { return mm(std::hypot(in_mm(b.right - a.right), in_mm(b.down - a.down))); }

} // namespace

Angle direction_of(Spot one, Spot other) {
  return radians(std::atan2(in_mm(one.down - other.down), in_mm(other.right - one.right)));
}

Spot from(Spot at, Length length, Angle direction) {
  return {at.right + length * cosine(direction), at.down - length * sine(direction)};
}

Spot beside(Spot at, const Way& way, Angle direction) {
  return from(from(at, way.along, direction), way.left, direction + turns(0.25));
}

Spot crossing(Spot on_one, Angle one, Spot on_other, Angle other) {
  const double sine_between = sine(other - one);
  if (std::abs(sine_between) < 1e-9) throw std::domain_error{"two lines that never cross"};
  const Length right = on_other.right - on_one.right;
  const Length up = on_one.down - on_other.down;
  return from(on_one, (right * sine(other) - up * cosine(other)) / sine_between, one);
}

void draw_arrow(Canvas& canvas, Spot tip, Angle pointing) {
  canvas.fill({tip, from(tip, head_length, pointing + turns(0.5) + head_half),
               from(tip, head_length, pointing + turns(0.5) - head_half)},
              0);
}

void draw_dimension(Canvas& canvas, Spot one, Spot other) {
  const Angle along = direction_of(one, other);
  const Angle back = along + turns(0.5);
  if (apart(one, other) > 3.0 * head_length) {
    canvas.line(one, other, pen::thin);
    draw_arrow(canvas, other, along);
    draw_arrow(canvas, one, back);
    return;
  }
  canvas.line(from(one, 2.5 * head_length, back), one, pen::thin);
  canvas.line(other, from(other, 2.5 * head_length, along), pen::thin);
  draw_arrow(canvas, one, along);
  draw_arrow(canvas, other, back);
}

void draw_angle(Canvas& canvas, Spot corner, Length radius, Angle start, Angle end) {
  canvas.arc(corner, radius, start, end, pen::thin);
  // Each head leans by half the arc that it covers.
  const Angle lean = radians(0.5 * (head_length / radius));
  if (in_radians(end - start) * (radius / head_length) < 2.5) return;
  draw_arrow(canvas, from(corner, radius, end), end + turns(0.25) - lean);
  draw_arrow(canvas, from(corner, radius, start), start - turns(0.25) + lean);
}

double times_drawn(const Room& room) {
  constexpr std::array<double, 18> round{80, 60, 50, 40, 30, 25, 20, 15, 12, 10, 8, 6, 5, 4, 3, 2.5, 2, 1.5};
  for (const double times : round)
    if (times * room.real <= room.free) return times;
  return 1;
}

std::string how_large(double times) {
  return times == 1 ? "true to size" : "drawn " + shortest_decimal(times) + " times its size";
}

void on_white(Canvas& canvas, Spot at, const std::string& text, const Lettering& lettering, const Hold& hold) {
  constexpr Length round = mm(0.6);
  const Length width = canvas.width_of(text, lettering);
  const double back = hold.across == Across::left ? 0 : hold.across == Across::centre ? 0.5 : 1;
  const double up = hold.along == Along::foot ? 1 : hold.along == Along::middle ? 0.5 : 0;
  canvas.fill({at.right - back * width - round, at.down - up * lettering.height - round, width + 2.0 * round,
               lettering.height + 2.0 * round},
              1);
  canvas.letters(at, text, lettering, hold);
}

Length write_lines(Canvas& canvas, Spot first_foot, const std::string& text, const Lettering& lettering, Length width,
                   double leading) {
  for (const auto& line : canvas.broken(text, lettering, width)) {
    canvas.letters(first_foot, line, lettering);
    first_foot.down = first_foot.down + leading * lettering.height;
  }
  return first_foot.down;
}

const std::vector<Member>& members_of(const Value& value) { return std::get<std::vector<Member>>(value.held); }

namespace {
const Measure& measure_in(const std::vector<Member>& members, const char* name) {
  const Measure* measure = find_measure(members, name);
  if (measure == nullptr) throw std::runtime_error{"an answer without its " + std::string(name)};
  return *measure;
}
} // namespace

Angle angle_in(const std::vector<Member>& members, const char* name) {
  return degrees(measure_in(members, name).value);
}
Length length_in(const std::vector<Member>& members, const char* name) { return mm(measure_in(members, name).value); }

const Measure* input_measure(const Answer& answer, std::string_view name) {
  const Input* input = find_input(answer, name);
  return input == nullptr ? nullptr : std::get_if<Measure>(&input->value.held);
}

} // namespace quillside::page
