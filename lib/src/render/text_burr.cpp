#include <quillside/words/print.hpp>

#include "page_of_text.hpp"

namespace quillside {

Page page_of_burr(const Answer& answer, const TextStyle& style) {
  Page page;
  if (const Measure* speed = find_measure(answer.settings, "spindle_speed")) {
    const bool at_limit = find_word(answer.findings, "limited_by") != "metal";
    page.number = at_limit ? print_spindle_speed_limit(rev_per_min(speed->value)) : spindle_speed_of(*speed);
    const std::string band = band_of_speed(*speed);
    page.first = page.number + " rev/min" + (band.empty() ? "" : "   band " + band);
  }
  const std::string limit = find_word(answer.findings, "limited_by");
  const Measure* wanted = find_measure(answer.findings, "wanted_spindle_speed");
  if (wanted != nullptr && limit != "metal" && !limit.empty()) {
    const std::string who = limit == "mark"    ? "the mark on the burr"
                            : limit == "whirl" ? "the whirl of its shank"
                                               : "the tool";
    page.lines.push_back("limited by " + who + ": the metal wants " + spindle_speed_of(*wanted) + " (" +
                         band_of_speed(*wanted) + ")");
  }
  if (const Measure* top = find_measure(answer.findings, "limit_speed"))
    page.lines.push_back("never over " + print_spindle_speed_limit(rev_per_min(top->value)) + " rev/min");
  if (const Measure* whirl = find_measure(answer.findings, "whirl_speed"))
    page.lines.push_back("its shank whirls at " + spindle_speed_of(*whirl) + " rev/min (" + band_of_speed(*whirl) +
                         " by the grip); half of it is kept to");
  if (const Measure* speed = find_measure(answer.findings, "cutting_speed"))
    page.lines.push_back("the rim runs at " + print_cutting_speed(m_per_min(speed->value), style.units));
  return page;
}

} // namespace quillside
