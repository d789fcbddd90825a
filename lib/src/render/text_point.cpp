#include <algorithm>

#include <quillside/words/print.hpp>

#include "page_of_text.hpp"

namespace quillside {

namespace {

using Members = std::vector<Member>;
using Values = std::vector<Value>;

std::string padded(std::string text, std::size_t width) {
  text.resize(std::max(text.size() + 1, width), ' ');
  return text;
}

std::string spaced(std::string words) {
  std::replace(words.begin(), words.end(), '_', ' ');
  return words;
}

std::string number_of(double value, std::string_view unit, UnitSystem units) {
  return unit == "deg" ? print_angle(degrees(value)) : print_length(mm(value), units);
}

/// "119.0 (117.6 to 120.4)": the value, and where the truth may lie.
std::string with_doubt(const Measure& measure, UnitSystem units) {
  std::string text = number_of(measure.value, measure.unit, units);
  if (measure.low && measure.high && *measure.low < *measure.high)
    text += " (" + number_of(*measure.low, measure.unit, units) + " to " +
            number_of(*measure.high, measure.unit, units) + ")";
  return text;
}

std::string wanted(const Members& check, UnitSystem units) {
  const Measure* low = find_measure(check, "want_low");
  const Measure* high = find_measure(check, "want_high");
  if (low != nullptr && high != nullptr && low->value > 0)
    return number_of(low->value, low->unit, units) + " to " + number_of(high->value, high->unit, units);
  if (high != nullptr) return "at most " + number_of(high->value, high->unit, units);
  if (low != nullptr) return "at least " + number_of(low->value, low->unit, units);
  return "";
}

PageLine check_line(const Members& check, UnitSystem units) {
  const Measure* value = find_measure(check, "value");
  const std::string lip = find_word(check, "lip");
  const std::string want = wanted(check, units);
  std::vector<std::string> cells{find_word(check, "verdict"), spaced(find_word(check, "item")),
                                 value == nullptr ? "" : with_doubt(*value, units), want.empty() ? "" : "want " + want,
                                 lip == "both" ? "" : "lip " + lip};
  std::string line = padded(cells[0], 15) + padded(cells[1], 24);
  if (value != nullptr) line += padded(cells[2], 26);
  line += cells[3];
  if (!cells[4].empty()) line += "   " + cells[4];
  while (line.back() == ' ') line.pop_back();
  return in_columns(std::move(line), std::move(cells));
}

/// Findings that no check shows.
void add_findings(Page& page, const Answer& answer, UnitSystem units) {
  const auto* list = find(answer.findings, "half_angles");
  if (const auto* halves = list == nullptr ? nullptr : std::get_if<Values>(&list->held))
    page.lines.push_back("half angles: lip A " + with_doubt(std::get<Measure>((*halves)[0].held), units) + ", lip B " +
                         with_doubt(std::get<Measure>((*halves)[1].held), units));
  if (const Measure* edge = find_measure(answer.findings, "chisel_edge_angle"))
    page.lines.push_back("chisel edge " + number_of(edge->value, edge->unit, units) + " (acute " +
                         number_of(180 - edge->value, edge->unit, units) + ")");
  if (const Measure* oversize = find_measure(answer.findings, "oversize")) {
    const bool measured = find_input(answer, "trial_hole") != nullptr;
    page.lines.push_back(measured && oversize->value < 0 ? "the hole is smaller than the drill"
                         : measured                      ? "hole over the drill by " + with_doubt(*oversize, units)
                                                         : "hole over size by up to " +
                                          number_of(oversize->high.value_or(oversize->value), oversize->unit, units));
  }
  if (const Measure* off = find_measure(answer.findings, "grind_off"))
    page.lines.push_back("grind off " + with_doubt(*off, units) + " along the axis, each lip alike");
}

std::string targets(const Answer& answer, UnitSystem units) {
  const Measure* included = find_measure(answer.settings, "included_angle");
  const Measure* relief = find_measure(answer.settings, "lip_relief");
  const Measure* chisel = find_measure(answer.settings, "chisel_edge_angle");
  if (included == nullptr || relief == nullptr || chisel == nullptr) return "";
  return "grind for: included angle " + with_doubt(*included, units) + ", lip relief " + with_doubt(*relief, units) +
         ", chisel edge " + number_of(chisel->value, chisel->unit, units);
}

std::string capitals(std::string word) {
  std::transform(word.begin(), word.end(), word.begin(),
                 [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; });
  return word;
}

} // namespace

Page page_of_point(const Answer& answer, const TextStyle& style) {
  Page page;
  page.first = capitals(answer.verdict.value_or(""));
  if (const Measure* included = find_measure(answer.findings, "included_angle"))
    page.number = print_angle(degrees(included->value));
  const Value* checks = find(answer.findings, "checks");
  if (checks != nullptr)
    for (const auto& check : std::get<Values>(checks->held))
      page.lines.push_back(check_line(std::get<Members>(check.held), style.units));
  add_findings(page, answer, style.units);
  if (const std::string line = targets(answer, style.units); !line.empty()) page.lines.push_back(line);
  return page;
}

} // namespace quillside
