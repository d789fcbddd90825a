#include <quillside/model/photo_marks.hpp>

#include <cmath>
#include <stdexcept>

#include <quillside/quantity/angle.hpp>

namespace quillside {

namespace {

Mark operator-(Mark a, Mark b) { return {a.x - b.x, a.y - b.y}; }
Mark operator+(Mark a, Mark b) { return {a.x + b.x, a.y + b.y}; }
Mark operator*(double factor, Mark a) { return {factor * a.x, factor * a.y}; }
double dot(Mark a, Mark b) { return a.x * b.x + a.y * b.y; }
double length(Mark a) { return std::hypot(a.x, a.y); }
Mark square_to(Mark a) { return {-a.y, a.x}; }

Mark direction(Mark from, Mark to, const char* coincide) {
  const double far = length(to - from);
  if (!(far > 0)) throw std::domain_error{coincide};
  return (1 / far) * (to - from);
}

Mark middle_direction(Mark a, Mark b, const char* opposed) {
  if (!(dot(a, b) > 0)) throw std::domain_error{opposed};
  return direction({0, 0}, a + b, opposed);
}

void require_diameter(Length diameter) {
  if (!(diameter > mm(0))) throw std::domain_error{"a drill with no diameter"};
}

/// A lip in the drill's own directions, in pixels: outward from the axis, and toward the work.
struct Lip {
  double corner_out, corner_on, in, on; // in, on: from the outer corner to the inner end
};

/// Where the lip stands at a distance out from the axis, toward the work.
double height_at(const Lip& lip, double out) { return lip.corner_on + (lip.corner_out - out) * lip.on / lip.in; }

Angle half_angle(const Lip& lip) {
  if (!(lip.in > 0) || !(lip.on > 0))
    throw std::domain_error{"a lip runs from its outer corner inward and toward the tip"};
  return radians(std::atan2(lip.in, lip.on));
}

} // namespace

SideView side_view(const SideMarks& marks, Length diameter) {
  require_diameter(diameter);
  const Mark up_a = direction(marks.corner_a, marks.margin_a, "a mark up the margin lies on the outer corner");
  const Mark up_b = direction(marks.corner_b, marks.margin_b, "a mark up the margin lies on the outer corner");
  if (!(dot(up_a, up_b) > 0)) throw std::domain_error{"the marks up the margins point apart"};
  // An outer corner lies nearer the axis than its margin, so each line up a margin leans; halfway between the two
  // corners and halfway between the two margins lies the axis itself, however far up either margin is marked.
  const Mark axis = 0.5 * (marks.margin_a + marks.margin_b);
  const Mark up = direction(0.5 * (marks.corner_a + marks.corner_b), axis, "the marks up the margins point apart");
  const Mark across = dot(square_to(up), marks.margin_a - marks.margin_b) > 0 ? square_to(up) : -1.0 * square_to(up);
  const double wide = dot(across, marks.margin_a - marks.margin_b);
  if (!(wide > 0)) throw std::domain_error{"the marks up the margins lie on one line of the axis"};
  const auto lip = [&](Mark corner, Mark inner, double side) {
    return Lip{side * dot(across, corner - axis), -dot(up, corner - axis), -side * dot(across, inner - corner),
               -dot(up, inner - corner)};
  };
  const Lip a = lip(marks.corner_a, marks.inner_a, 1);
  const Lip b = lip(marks.corner_b, marks.inner_b, -1);
  const Angle half_a = half_angle(a);
  const Angle half_b = half_angle(b);
  const Length pixel = diameter / wide;
  const double half_radius = wide / 4;
  return {half_a, half_b, std::hypot(a.in, a.on) * pixel, std::hypot(b.in, b.on) * pixel,
          (height_at(a, half_radius) - height_at(b, half_radius)) * pixel};
}

EndView end_view(const EndMarks& marks, Length diameter) {
  require_diameter(diameter);
  const Mark out_a = direction(marks.inner_a, marks.corner_a, "both ends of a lip are marked on one point");
  const Mark out_b = direction(marks.corner_b, marks.inner_b, "both ends of a lip are marked on one point");
  const Mark along = middle_direction(out_a, out_b, "the two lips do not lie side by side: are A and B exchanged?");
  const double wide = length(marks.corner_a - marks.corner_b);
  const Mark chisel = marks.inner_a - marks.inner_b;
  if (!(wide > 0) || !(length(chisel) > 0)) throw std::domain_error{"two marks lie on one point"};
  const Mark apart = 0.5 * ((marks.corner_a + marks.inner_a) - (marks.corner_b + marks.inner_b));
  const double web = std::abs(dot(square_to(along), apart));
  const double forward = dot(along, chisel);
  if (!(forward > 0) || !(web > 0))
    throw std::domain_error{"the chisel edge leans the wrong way: are the inner ends exchanged?"};
  const Length pixel = diameter / wide;
  return {web * pixel, length(chisel) * pixel,
          turns(0.5) - radians(std::atan2(std::abs(dot(square_to(along), chisel)), forward))};
}

Angle foreshortened(TiltedLens seen) {
  if (!(seen.included > turns(0)) || !(seen.included < turns(0.5)))
    throw std::domain_error{"a point angle is above 0 and under 180 deg"};
  if (!(seen.tilt >= turns(0)) || !(seen.tilt < turns(0.25)))
    throw std::domain_error{"a lens is tilted by 0 to under 90 deg"};
  return 2.0 * radians(std::atan(tangent(seen.included / 2.0) / cosine(seen.tilt)));
}

} // namespace quillside
