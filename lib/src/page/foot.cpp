#include "foot.hpp"

namespace quillside::page {

void draw_feet(Canvas& canvas, const Document& document, const Margins& margins, const std::string& noun) {
  const Lettering small{foot_letters};
  const Length left = margins.side;
  const Length right = canvas.sheet().width - margins.side;
  const Length top = canvas.sheet().height - foot_height;
  const auto line_at = [&](int number) { return top + mm(3.4) + static_cast<double>(number) * mm(3.1); };
  for (int number = 0; number < canvas.sheets(); ++number) {
    canvas.turn_to(number);
    canvas.line({left, top}, {right, top}, {mm(0.2)});
    std::string day = document.page.date;
    if (canvas.sheets() > 1)
      day += "   " + noun + " " + std::to_string(number + 1) + " of " + std::to_string(canvas.sheets());
    canvas.letters({right, line_at(0)}, day, small, {Across::right});
    auto asked = canvas.broken(document.page.asked, small, right - left - canvas.width_of(day, small) - mm(4));
    if (asked.size() > 2) {
      asked.resize(2);
      asked[1] += " ...";
    }
    for (int line = 0; line < static_cast<int>(asked.size()); ++line)
      canvas.letters({left, line_at(line)}, asked[static_cast<std::size_t>(line)], small);
  }
}

} // namespace quillside::page
