#include <quillside/job/gauge.hpp>
#include <quillside/words/print.hpp>

#include "page_of_text.hpp"

namespace quillside {

namespace {

PageLine gauge_line(const VGauge& gauge) {
  std::vector<std::string> cells{"V " + print_angle(gauge.included), "half " + print_angle(gauge.half),
                                 "fence " + print_angle(gauge.half), "mitre scale " + print_angle(gauge.mitre)};
  std::string line;
  for (const auto& cell : cells) {
    line += cell;
    line.resize(std::max(line.size() + 2, (line.size() / 14 + 1) * 14), ' ');
  }
  while (line.back() == ' ') line.pop_back();
  return in_columns(std::move(line), std::move(cells));
}

std::string wedge_line(const Wedge& wedge) {
  return "wedge for a table tilt of " + print_angle(wedge.tilt) + ": rise " +
         print_length_with_unit(wedge.rise, UnitSystem::metric) + " over " + shortest_decimal(in_mm(wedge.base)) +
         " mm, " + print_length_with_unit(inches(4 * (wedge.rise / wedge.base)), UnitSystem::inch) + " over 4 in";
}

std::string figure_of(int sides) {
  return sides == 6 ? "hexagon" : sides == 8 ? "octagon" : sides == 4 ? "square" : std::to_string(sides) + " sides";
}

std::string pair_line(const FigurePair& pair) {
  return figure_of(pair.sides) + " and " + figure_of(pair.other_sides) + " flat to flat: " + print_angle(pair.notch);
}

} // namespace

Page page_of_gauge(const Answer& answer, const TextStyle&) {
  Page page;
  const GaugeShapes shapes = gauge_shapes(answer);
  const std::string file = find_word(answer.findings, "file");
  page.first = file.empty() ? "Gauges to print at 100 %: --out FILE draws them" : "Gauges to print at 100 %: " + file;
  page.lines.emplace_back("ruler " + shortest_decimal(find_measure(answer.findings, "ruler_length")->value) +
                          " mm across and down: measure both first");
  for (const auto& gauge : shapes.gauges) page.lines.push_back(gauge_line(gauge));
  if (shapes.wedge) page.lines.emplace_back(wedge_line(*shapes.wedge));
  for (const auto& pair : shapes.pairs) page.lines.emplace_back(pair_line(pair));
  return page;
}

} // namespace quillside
