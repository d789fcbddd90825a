#include <quillside/words/print.hpp>

#include "page_of_text.hpp"

namespace quillside {

namespace {

std::string feed_line(const Answer& answer, UnitSystem units) {
  const Measure* rate = find_measure(answer.settings, "feed_rate");
  const Measure* tooth = find_measure(answer.settings, "feed_per_tooth");
  if (rate == nullptr || tooth == nullptr) return {};
  std::string line = "feed " + print_feed_rate(mm_per_min(rate->value), units);
  if (const Measure* turn = find_measure(answer.settings, "turn_time"))
    line += ": one handwheel turn in " + print_time(seconds(turn->value));
  line += "   (" + print_feed_per_tooth(mm_per_tooth(tooth->value), units) + " a tooth";
  if (tooth->low && *tooth->low < *tooth->high)
    line += ", up to " + print_feed_per_tooth(mm_per_tooth(*tooth->high), units);
  return line + ")";
}

std::string chip_line(const Answer& answer, UnitSystem units) {
  const Measure* width = find_measure(answer.settings, "width_of_cut");
  const Measure* chip = find_measure(answer.findings, "chip_thickness");
  if (width == nullptr || chip == nullptr) return {};
  const auto figure = [&](const Measure& length) {
    return units == UnitSystem::inch ? significant(in_inches(mm(length.value)), 2)
                                     : significant(length.value, 2) + " mm";
  };
  return "width of cut " + length_of(*width, units) + ", thickest chip " + figure(*chip);
}

} // namespace

Page page_of_mill(const Answer& answer, const TextStyle& style) {
  Page page;
  if (const Measure* speed = find_measure(answer.settings, "spindle_speed")) {
    page.number = spindle_speed_of(*speed);
    page.first = page.number + " rev/min" + about_speed(answer);
  }
  for (auto& line : {feed_line(answer, style.units), chip_line(answer, style.units)})
    if (!line.empty()) page.lines.push_back(line);
  return page;
}

} // namespace quillside
