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

std::string depth_line(const Answer& answer, UnitSystem units) {
  const Measure* depth = find_measure(answer.settings, "depth_of_cut");
  if (depth == nullptr) return {};
  std::string line = "DEPTH " + length_of(*depth, units) + " a pass";
  if (depth->high && *depth->high > depth->value)
    line += ", to " + print_length(mm(*depth->high), units) + " if the metal is no harder than the tables say";
  const std::string by = find_word(answer.findings, "limited_by");
  const std::string what = by == "wall"     ? "the walls stay true to what is allowed"
                           : by == "stress" ? "the cutter's strength binds"
                           : by == "power"  ? "the machine's power binds"
                           : by == "flute"  ? "the flutes end"
                                            : "as asked";
  return line + "   (" + what + ")";
}

std::string bend_line(const Answer& answer, UnitSystem units) {
  const Measure* wall = find_measure(answer.findings, "wall_error");
  const Measure* stress = find_measure(answer.findings, "root_stress");
  const Measure* force = find_measure(answer.findings, "bending_force");
  const Measure* power = find_measure(answer.findings, "power");
  if (wall == nullptr || stress == nullptr || force == nullptr || power == nullptr) return {};
  return "walls off by " + doubted(*wall, [&](double value) { return print_length(mm(value), units); }) +
         "; pushed aside by " + doubted(*force, [&](double value) { return print_force(newtons(value), units); }) +
         "; stressed to " + doubted(*stress, [](double value) { return print_stress(megapascals(value)); }) + "; " +
         print_power(watts(power->value));
}

} // namespace

Page page_of_mill(const Answer& answer, const TextStyle& style) {
  Page page;
  if (const Measure* speed = find_measure(answer.settings, "spindle_speed")) {
    page.number = spindle_speed_of(*speed);
    page.first = page.number + " rev/min" + about_speed(answer);
  }
  for (auto& line : {depth_line(answer, style.units), feed_line(answer, style.units), chip_line(answer, style.units),
                     bend_line(answer, style.units)})
    if (!line.empty()) page.lines.push_back(line);
  return page;
}

} // namespace quillside
