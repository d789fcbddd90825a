#include "writing.hpp"

namespace quillside::page {

Length write_lines(Canvas& canvas, Spot first_foot, const std::string& text, const Lettering& lettering, Length width,
                   double leading) {
  for (const auto& line : canvas.broken(text, lettering, width)) {
    canvas.letters(first_foot, line, lettering);
    first_foot.down = first_foot.down + leading * lettering.height;
  }
  return first_foot.down;
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

} // namespace quillside::page
