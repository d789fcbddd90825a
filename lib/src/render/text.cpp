#include <quillside/render/text.hpp>

#include <algorithm>
#include <array>

#include <quillside/words/print.hpp>

#include "page_of_text.hpp"

namespace quillside {

namespace {

Page page_of(const Answer& answer, const TextStyle& style) {
  if (answer.ask == "drill") return page_of_drill(answer, style);
  if (answer.ask == "mill") return page_of_mill(answer, style);
  if (answer.ask == "burr") return page_of_burr(answer, style);
  if (answer.ask == "grind") return page_of_grind(answer, style);
  if (answer.ask == "notch") return page_of_notch(answer, style);
  if (answer.ask == "point") return page_of_point(answer, style);
  if (answer.ask == "signs") return page_of_signs(answer, style);
  if (answer.ask == "size") return page_of_size(answer, style);
  if (answer.ask == "slot") return page_of_slot(answer, style);
  return page_of_tables(answer, style);
}

/// Digits five lines tall, readable from a step away.
std::string tall(const std::string& number) {
  constexpr std::size_t height = 5;
  constexpr std::array<std::array<std::string_view, height>, 10> digits{
      {{" ### ", "#   #", "#   #", "#   #", " ### "},
       {"  #  ", " ##  ", "  #  ", "  #  ", " ### "},
       {"#### ", "    #", " ### ", "#    ", "#####"},
       {"#### ", "    #", "  ## ", "    #", "#### "},
       {"#  # ", "#  # ", "#####", "   # ", "   # "},
       {"#####", "#    ", "#### ", "    #", "#### "},
       {" ### ", "#    ", "#### ", "#   #", " ### "},
       {"#####", "    #", "   # ", "  #  ", "  #  "},
       {" ### ", "#   #", " ### ", "#   #", " ### "},
       {" ### ", "#   #", " ####", "    #", " ### "}}};
  constexpr std::array<std::string_view, height> point{"  ", "  ", "  ", "##", "##"};
  std::string rows;
  for (std::size_t row = 0; row < height; ++row) {
    std::string line;
    for (const char c : number) {
      if (c >= '0' && c <= '9') line += std::string(digits[static_cast<std::size_t>(c - '0')][row]) + "  ";
      if (c == '.') line += std::string(point[row]) + "  ";
    }
    while (!line.empty() && line.back() == ' ') line.pop_back();
    rows += line + "\n";
  }
  return rows + "\n";
}

bool is_basis(const CautionGiven& caution) { return caution.id.starts_with("basis-"); }

std::string said(const CautionGiven& caution) {
  const std::string lead = caution.severity == "danger" ? "DANGER  "
                           : caution.severity == "warn" ? "Care    "
                                                        : "Note    ";
  return wrapped(lead + caution.text, lead.size());
}

std::string capital(std::string word) {
  if (word == "hss") return "HSS";
  return word;
}

std::string spaced(std::string words) {
  std::replace(words.begin(), words.end(), '_', ' ');
  return words;
}

std::string shown(const Input& input, UnitSystem units) {
  std::string name = spaced(input.name);
  if (const auto* word = std::get_if<std::string>(&input.value.held)) return capital(*word);
  if (const auto* count = std::get_if<long>(&input.value.held)) return std::to_string(*count) + " " + name;
  if (const auto* measure = std::get_if<Measure>(&input.value.held)) {
    const std::string_view unit = measure->unit;
    if (unit == "mm") return name + " " + print_length(mm(measure->value), units);
    if (unit == "deg") return name + " " + print_angle(degrees(measure->value));
    return name + " " + shortest_decimal(measure->value) + (unit == "1" ? "" : " " + std::string(unit));
  }
  return name;
}

std::string taken_as(const Answer& answer, UnitSystem units) {
  std::string line;
  for (const auto& input : answer.inputs) {
    if (input.text) continue;
    std::string word = input.name == "leave_at"  ? "left at the " + shown(input, units)
                       : input.name == "machine" ? "machine " + shown(input, units)
                                                 : shown(input, units);
    line += (line.empty() ? "Taken as: " : ", ") + word;
  }
  if (const std::string fluid = find_word(answer.settings, "fluid"); !fluid.empty() && fluid != "dry")
    line += (line.empty() ? "Taken as: " : ", ") + fluid;
  return line;
}

/// Where the figures that lead come from: speed and feed, not every step.
std::string figures_from(const Answer& answer) {
  std::string line;
  for (const auto& why : answer.why) {
    if (why.step != "cutting speed" && why.step != "feed" && why.step != "chip load") continue;
    for (const auto& source : answer.sources)
      if (source.id == why.source && line.find(source.cite) == std::string::npos)
        line += (line.empty() ? "From: " : "; ") + source.cite + " (" + source.standing + ")";
  }
  return line;
}

std::string measure_text(const Measure& measure) {
  const std::string unit = std::string_view(measure.unit) == "1" ? "" : " " + std::string(measure.unit);
  const auto number = [](double value) { return significant(value, 4); };
  if (measure.low && measure.high && *measure.low < *measure.high)
    return number(measure.value) + unit + " (" + number(*measure.low) + " to " + number(*measure.high) + ")";
  return number(measure.value) + unit;
}

void add_why(std::string& out, const Answer& answer) {
  if (!answer.why.empty()) out += "\nWhy\n";
  for (const auto& why : answer.why) {
    const auto* measure = std::get_if<Measure>(&why.value.held);
    out += "  " + why.step + ": " + why.formula + (measure == nullptr ? "" : " = " + measure_text(*measure)) + "  [" +
           why.source + "]\n";
  }
  if (!answer.sources.empty()) out += "\nSources\n";
  for (const auto& source : answer.sources)
    out += "  [" + source.id + "] " + source.cite + (source.page ? ", " + *source.page : "") + " (" + source.standing +
           ")\n";
}

} // namespace

std::string wrapped(std::string_view line, std::size_t indent) {
  constexpr std::size_t width = 100;
  std::string out;
  std::size_t column = 0;
  while (!line.empty()) {
    const std::size_t end = std::min(line.find(' '), line.size());
    if (column > indent && column + 1 + end > width) {
      out += "\n" + std::string(indent, ' ');
      column = indent;
    } else if (!out.empty()) {
      out += ' ';
      ++column;
    }
    out += line.substr(0, end);
    column += end;
    line.remove_prefix(std::min(end + 1, line.size()));
  }
  return out + "\n";
}

std::string spindle_speed_of(const Measure& measure) { return print_spindle_speed(rev_per_min(measure.value)); }

std::string band_of_speed(const Measure& measure) {
  if (!measure.low || !measure.high || *measure.low == *measure.high) return {};
  return print_spindle_speed(rev_per_min(*measure.low)) + " to " + print_spindle_speed(rev_per_min(*measure.high));
}

std::string about_speed(const Answer& answer) {
  const Measure* set = find_measure(answer.settings, "spindle_speed");
  const Measure* wanted = find_measure(answer.findings, "wanted_spindle_speed");
  std::string line;
  if (const std::string step = find_word(answer.settings, "step"); !step.empty()) line += "   step " + step;
  if (set == nullptr || wanted == nullptr) return line;
  std::string rest;
  if (spindle_speed_of(*set) != spindle_speed_of(*wanted)) rest += "wanted " + spindle_speed_of(*wanted);
  if (const std::string band = band_of_speed(*wanted); !band.empty())
    rest += (rest.empty() ? "" : ", ") + std::string("the table's band ") + band;
  return rest.empty() ? line : line + "   (" + rest + ")";
}

std::string length_of(const Measure& measure, UnitSystem units) { return print_length(mm(measure.value), units); }

std::string text(const Answer& answer, const TextStyle& style) {
  const Page page = page_of(answer, style);
  std::string out;
  if (style.large && !page.number.empty()) out += tall(page.number);
  const std::string first = answer.verdict == "do not"     ? "DO NOT  " + answer.reason.value_or("")
                            : answer.verdict == "back off" ? page.first + "   BACK OFF"
                                                           : page.first;
  if (!first.empty()) out += style.bold ? "\x1b[1m" + first + "\x1b[0m\n" : first + "\n";
  for (const auto& caution : answer.cautions)
    if (is_basis(caution)) out += wrapped(caution.text, 2);
  if (answer.reason && answer.verdict != "do not")
    out += wrapped((answer.verdict == "back off" ? "Back off: " : "Because: ") + *answer.reason, 2);
  if (answer.instead) out += wrapped("Instead: " + *answer.instead, 2);
  for (const auto& line : page.lines) out += line + "\n";
  for (const auto& caution : answer.cautions)
    if (!is_basis(caution)) out += said(caution);
  if (const std::string line = taken_as(answer, style.units); !line.empty()) out += wrapped(line, 2);
  if (const std::string line = figures_from(answer); !line.empty() && !style.why) out += wrapped(line, 2);
  if (style.why) add_why(out, answer);
  return out;
}

std::string text(const Fault& fault, const std::string& ask) {
  return "quillside: " + (ask.empty() ? "" : ask + ": ") + fault.message;
}

} // namespace quillside
