#pragma once
// Places on the sheet: along a direction, beside it, where lines cross. Directions run against the clock, from the
// right.

#include <vector>

#include <quillside/page/canvas.hpp>

namespace quillside::page {

Spot from(Spot at, Length length, Angle direction);
struct Way {
  Length along{};
  Length left{}; // as one walks
};
Spot beside(Spot at, const Way& way, Angle direction);

Length distance(Spot one, Spot other);
/// From the one place to the other; to the right where they are one place.
Angle direction_of(Spot one, Spot other);
/// Where two straight lines cross. Lines that run alike throw std::domain_error.
Spot crossing(Spot on_one, Angle one, Spot on_other, Angle other);

/// A box with round corners, as a cutter leaves them. \param radius no more than half of the shorter side is taken
std::vector<Spot> rounded(const Box& box, Length radius);

} // namespace quillside::page
