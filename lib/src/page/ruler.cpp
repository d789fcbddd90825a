#include "ruler.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "geometry.hpp"

namespace quillside::page {

namespace {

constexpr Pen tick{mm(0.12)};
constexpr Lettering figures{mm(1.8)};

Length millimetre_tick(int number) { return number % 10 == 0 ? mm(4.5) : number % 5 == 0 ? mm(3.2) : mm(2); }
Length sixteenth_tick(int number) {
  return number % 16 == 0  ? mm(5)
         : number % 8 == 0 ? mm(3.8)
         : number % 4 == 0 ? mm(3)
         : number % 2 == 0 ? mm(2.3)
                           : mm(1.6);
}

} // namespace

void draw_ruler(Canvas& canvas, Spot start, Angle direction, Length length) {
  const auto on = [&](Length along, Length left) { return beside(start, {along, left}, direction); };
  const Hold above{Across::centre, Along::foot, direction};
  const Hold below{Across::centre, Along::top, direction};
  const int last_mm = static_cast<int>(std::floor(in_mm(length) + 1e-6));
  const int last_inch = static_cast<int>(std::floor(in_inches(length) + 0.1));
  canvas.line(on(mm(0), mm(0)), on(std::max(length, inches(last_inch, 1)), mm(0)), tick);
  const auto figure = [&](Length at, Length left, const std::string& number, const Hold& hold, const char* unit) {
    canvas.letters(on(at, left), number, figures, hold);
    if (*unit != '\0')
      canvas.letters(on(at + 0.5 * canvas.width_of(number, figures) + mm(0.8), left), unit, figures,
                     {Across::left, hold.along, hold.turned});
  };
  for (int i = 0; i <= last_mm; ++i) {
    canvas.line(on(mm(i), mm(0)), on(mm(i), millimetre_tick(i)), tick);
    if (i % 10 == 0) figure(mm(i), mm(5.3), std::to_string(i), above, i == last_mm ? "mm" : "");
  }
  for (int i = 0; i <= 16 * last_inch; ++i) {
    canvas.line(on(inches(i, 16), mm(0)), on(inches(i, 16), -1.0 * sixteenth_tick(i)), tick);
    if (i % 16 == 0) figure(inches(i, 16), mm(-5.8), std::to_string(i / 16), below, i == 16 * last_inch ? "in" : "");
  }
}

} // namespace quillside::page
