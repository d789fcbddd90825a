#include <quillside/words/print.hpp>

#include "page_of_text.hpp"

namespace quillside {

namespace {

using Members = std::vector<Member>;
using Values = std::vector<Value>;

std::string angle_of(const Members& members, const char* name) {
  return print_angle(degrees(find_measure(members, name)->value));
}

PageLine gauge_line(const Members& gauge) {
  std::vector<std::string> cells{"V " + angle_of(gauge, "included_angle"), "half " + angle_of(gauge, "half_angle"),
                                 "fence " + angle_of(gauge, "fence_angle"),
                                 "mitre scale " + angle_of(gauge, "mitre_scale")};
  std::string line;
  for (const auto& cell : cells) {
    line += cell;
    line.resize(std::max(line.size() + 2, (line.size() / 14 + 1) * 14), ' ');
  }
  while (line.back() == ' ') line.pop_back();
  return in_columns(std::move(line), std::move(cells));
}

std::string wedge_line(const Members& wedge) {
  const double base = find_measure(wedge, "tilt_base")->value;
  const double rise = find_measure(wedge, "tilt_rise")->value;
  return "wedge for a table tilt of " + angle_of(wedge, "table_tilt") + ": rise " +
         print_length_with_unit(mm(rise), UnitSystem::metric) + " over " + shortest_decimal(base) + " mm, " +
         print_length_with_unit(inches(4 * rise / base), UnitSystem::inch) + " over 4 in";
}

std::string figure_of(long sides) {
  return sides == 6 ? "hexagon" : sides == 8 ? "octagon" : sides == 4 ? "square" : std::to_string(sides) + " sides";
}

std::string pair_line(const Members& pair) {
  const auto sides = [&](const char* name) { return figure_of(std::get<long>(find(pair, name)->held)); };
  return sides("sides") + " and " + sides("other_sides") + " flat to flat: " + angle_of(pair, "notch_angle");
}

} // namespace

Page page_of_gauge(const Answer& answer, const TextStyle&) {
  Page page;
  const auto members = [&](const Value& value) -> const Members& { return std::get<Members>(value.held); };
  const Values& gauges = std::get<Values>(find(answer.findings, "gauges")->held);
  const std::string file = find_word(answer.findings, "file");
  page.first = file.empty() ? "Gauges to print at 100 %: --out FILE draws them" : "Gauges to print at 100 %: " + file;
  page.lines.emplace_back("ruler " + shortest_decimal(find_measure(answer.findings, "ruler_length")->value) +
                          " mm across and down: measure both first");
  for (const auto& gauge : gauges) page.lines.push_back(gauge_line(members(gauge)));
  if (const Value* wedge = find(answer.findings, "wedge")) page.lines.emplace_back(wedge_line(members(*wedge)));
  for (const auto& pair : std::get<Values>(find(answer.findings, "pairs")->held))
    page.lines.emplace_back(pair_line(members(pair)));
  return page;
}

} // namespace quillside
