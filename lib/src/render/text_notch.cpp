#include <quillside/words/print.hpp>

#include "page_of_text.hpp"

namespace quillside {

Page page_of_notch(const Answer& answer, const TextStyle& style) {
  Page page;
  const Measure* angle = find_measure(answer.findings, "notch_angle");
  if (angle == nullptr) return page;
  page.number = print_angle(degrees(angle->value));
  page.first = page.number + " deg";
  const Value* light = find(answer.findings, "light_gap");
  const auto* rows = light == nullptr ? nullptr : std::get_if<std::vector<Value>>(&light->held);
  if (rows == nullptr) return page;
  for (const auto& row : *rows) {
    const auto& members = std::get<std::vector<Member>>(row.held);
    const std::string point = print_angle(degrees(find_measure(members, "included_angle")->value));
    const std::string where = find_word(members, "where");
    const std::string gap = length_of(*find_measure(members, "gap"), style.units);
    page.lines.push_back("a " + point + " point " +
                         (where == "none"     ? "lies along both sides: no light"
                          : where == "corner" ? "touches at the centre: light at the corners, " + gap
                                              : "touches at the corners: light under the tip, " + gap));
  }
  return page;
}

} // namespace quillside
