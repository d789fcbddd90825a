#pragma once
// What a drawing of a tool is made of: places along a direction, marks of angles and lengths with their figures, views
// drawn a round number of times their size.

#include <string>

#include <quillside/answer/answer.hpp>
#include <quillside/page/canvas.hpp>

namespace quillside::page {

/// \param direction against the clock, from the right
Spot from(Spot at, Length length, Angle direction);
struct Way {
  Length along{};
  Length left{}; // as one walks
};
Spot beside(Spot at, const Way& way, Angle direction);
/// From the one place to the other.
Angle direction_of(Spot one, Spot other);
/// Where two straight lines cross. Lines that run alike throw std::domain_error.
Spot crossing(Spot on_one, Angle one, Spot on_other, Angle other);

/// Pens of a drawing, as heavy as what they draw matters.
namespace pen {
inline constexpr Pen heavy{mm(0.55)};           // to be set by, or as measured
inline constexpr Pen wanted{mm(0.35), 0, true}; // as wanted
inline constexpr Pen outline{mm(0.2)};          // the tool or the work
inline constexpr Pen thin{mm(0.12)};            // dimensions and what is there to go by
inline constexpr Pen axis{mm(0.12), 0, true};
} // namespace pen

/// A head of a dimension's line, its tip on the place.
void draw_arrow(Canvas& canvas, Spot tip, Angle pointing);
/// A thin line with a head at both ends; where it is too short for them they point inward from without.
void draw_dimension(Canvas& canvas, Spot from, Spot to);
/// An arc with a head at both ends, against the clock from the one direction to the other.
void draw_angle(Canvas& canvas, Spot corner, Length radius, Angle from, Angle to);

struct Room {
  Length real{}; // how long a thing is
  Length free{}; // what there is for it on the paper
};
/// The greatest round number of times that it may be drawn: 1, 2, 5, 8, 12... 1 for what is too long: nothing is drawn
/// smaller than it is.
double times_drawn(const Room& room);
/// "drawn 8 times its size", or "true to size".
std::string how_large(double times);

/// A text that stands on lines: what lies under it is white. \param hold not turned
void on_white(Canvas& canvas, Spot at, const std::string& text, const Lettering& lettering, const Hold& hold);

/// Lines of text below one another. Gives where the next would have its foot.
Length write_lines(Canvas& canvas, Spot first_foot, const std::string& text, const Lettering& lettering, Length width,
                   double leading = 1.65);

// Members of an answer, each of which is there.

const std::vector<Member>& members_of(const Value& value);
Angle angle_in(const std::vector<Member>& members, const char* name);
Length length_in(const std::vector<Member>& members, const char* name);
/// The input's quantity; null when it was not given nor taken.
const Measure* input_measure(const Answer& answer, std::string_view name);

} // namespace quillside::page
