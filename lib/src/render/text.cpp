#include <quillside/render/lines.hpp>
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
  if (answer.ask == "chart") return page_of_chart(answer, style);
  if (answer.ask == "fit") return page_of_fit(answer, style);
  if (answer.ask == "gauge") return page_of_gauge(answer, style);
  if (answer.ask == "grind") return page_of_grind(answer, style);
  if (answer.ask == "hole") return page_of_hole(answer, style);
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
    if (input.name == "read_from") return name + " " + significant(measure->value / 1000, 2) + " m";
    if (unit == "mm") return name + " " + print_length(mm(measure->value), units);
    if (unit == "degC") return name + " " + print_temperature(celsius(measure->value));
    if (input.name == "engagement") return significant(100 * measure->value, 2) + " % of thread";
    if (unit == "deg") return name + " " + print_angle(degrees(measure->value));
    return name + " " + shortest_decimal(measure->value) + (unit == "1" ? "" : " " + std::string(unit));
  }
  if (const auto* list = std::get_if<std::vector<Value>>(&input.value.held))
    for (const auto& one : *list)
      if (const auto* word = std::get_if<std::string>(&one.held)) name += " " + *word;
  return name;
}

std::string taken_as(const Answer& answer, UnitSystem units) {
  std::string line;
  for (const auto& input : answer.inputs) {
    if (input.text) continue;
    std::string word = input.name == "leave_at"                           ? "left at the " + shown(input, units)
                       : input.name == "machine" || input.name == "paper" ? input.name + " " + shown(input, units)
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
  // A plan of several tools says whose: "9/64 drill: cutting speed".
  const auto leads = [](std::string_view step) {
    if (const auto colon = step.rfind(": "); colon != std::string_view::npos) step.remove_prefix(colon + 2);
    return step == "cutting speed" || step == "feed" || step == "chip load" || step == "percentage of thread" ||
           step == "normal hole";
  };
  for (const auto& why : answer.why) {
    if (!leads(why.step)) continue;
    for (const auto& source : answer.sources)
      if (source.id == why.source && line.find(source.cite) == std::string::npos)
        line += (line.empty() ? "From: " : "; ") + source.cite + " (" + source.standing + ")";
  }
  return line;
}

Part part_of(const CautionGiven& caution) {
  if (caution.severity == "danger") return Part::danger;
  return caution.severity == "warn" ? Part::care : Part::note;
}

/// A line, and what its rest is set in by where a terminal is too narrow for it; absent: it is not broken.
struct Printed {
  Line line;
  std::optional<std::size_t> indent;
};

constexpr std::size_t caution_indent = 8;

std::string headline_of(const Answer& answer, const Page& page) {
  if (answer.verdict == "do not") return "DO NOT  " + answer.reason.value_or("");
  return answer.verdict == "back off" ? page.first + "   BACK OFF" : page.first;
}

std::vector<Printed> printed_lines(const Answer& answer, const TextStyle& style) {
  const Page page = page_of(answer, style);
  std::vector<Printed> all;
  const auto add = [&](Part part, std::string text, std::size_t indent = 2) {
    if (!text.empty()) all.push_back({{part, std::move(text), {}, {}}, indent});
  };
  all.push_back({{Part::headline, headline_of(answer, page), {}, page.number}, std::nullopt});
  for (const auto& caution : answer.cautions)
    if (is_basis(caution)) add(Part::basis, caution.text);
  if (answer.reason && answer.verdict != "do not")
    add(Part::reason, (answer.verdict == "back off" ? "Back off: " : "Because: ") + *answer.reason);
  if (answer.instead) add(Part::reason, "Instead: " + *answer.instead);
  for (const auto& line : page.lines)
    all.push_back({{line.step ? Part::step : Part::line, line.text, line.cells, {}}, line.indent});
  for (const auto& caution : answer.cautions)
    if (!is_basis(caution)) add(part_of(caution), caution.text, caution_indent);
  add(Part::taken, taken_as(answer, style.units));
  add(Part::from, figures_from(answer));
  return all;
}

/// What a terminal writes before a line. \param step the last step that was numbered; 0 before the first
std::string lead_of(Part part, int& step) {
  switch (part) {
  case Part::danger: return "DANGER  ";
  case Part::care: return "Care    ";
  case Part::note: return "Note    ";
  case Part::step: return std::to_string(++step) + "  ";
  default: return {};
  }
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
  const std::size_t lead = std::min(line.find_first_not_of(' '), line.size());
  std::string out(lead, ' ');
  line.remove_prefix(lead);
  std::size_t column = lead;
  for (bool first = true; !line.empty(); first = false) {
    const std::size_t end = std::min(line.find(' '), line.size());
    if (column > indent && column + 1 + end > width) {
      out += "\n" + std::string(indent, ' ');
      column = indent;
    } else if (!first) {
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

const char* name_of(Part part) {
  switch (part) {
  case Part::headline: return "headline";
  case Part::basis: return "basis";
  case Part::reason: return "reason";
  case Part::line: return "line";
  case Part::step: return "step";
  case Part::danger: return "danger";
  case Part::care: return "care";
  case Part::note: return "note";
  case Part::taken: return "taken";
  case Part::from: return "from";
  }
  return "line";
}

PageLine in_columns(std::string text, std::vector<std::string> cells) {
  PageLine line(std::move(text));
  line.cells = std::move(cells);
  return line;
}

PageLine step_of_work(std::string text) {
  PageLine line(std::move(text));
  line.step = true;
  line.indent = 3;
  return line;
}

std::vector<Line> lines(const Answer& answer, UnitSystem units) {
  std::vector<Line> all;
  for (auto& printed : printed_lines(answer, {units})) all.push_back(std::move(printed.line));
  return all;
}

std::string text(const Answer& answer, const TextStyle& style) {
  std::string out;
  int step = 0;
  for (const auto& [line, indent] : printed_lines(answer, style)) {
    if (line.part == Part::headline) {
      if (style.large && !line.number.empty()) out += tall(line.number);
      if (!line.text.empty()) out += style.bold ? "\x1b[1m" + line.text + "\x1b[0m\n" : line.text + "\n";
      continue;
    }
    if (line.part == Part::from && style.why) continue;
    const std::string whole = lead_of(line.part, step) + line.text;
    out += indent ? wrapped(whole, *indent) : whole + "\n";
  }
  if (style.why) add_why(out, answer);
  return out;
}

std::string text(const Fault& fault, const std::string& ask) {
  return "quillside: " + (ask.empty() ? "" : ask + ": ") + fault.message;
}

} // namespace quillside
