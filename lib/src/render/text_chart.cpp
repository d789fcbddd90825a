#include <algorithm>
#include <array>
#include <set>

#include <quillside/job/chart_sheet.hpp>
#include <quillside/words/print.hpp>

#include "page_of_text.hpp"

namespace quillside {

namespace {

using Members = std::vector<Member>;
using Values = std::vector<Value>;

constexpr std::size_t widest_line = 80;
constexpr std::size_t between = 2; // blanks between columns

const Values& list_of(const Answer& answer, const char* name) {
  return std::get<Values>(find(answer.findings, name)->held);
}

const Members& members_of(const Value& value) { return std::get<Members>(value.held); }

constexpr std::array<ChartMark, 6> marks_of_machine{
    {{"highest", '^', "the highest the machine gives: the metal would bear more"},
     {"lowest", 'v', "the lowest the machine gives"},
     {"back off", back_off_letter,
      "BACK OFF: faster than wanted, or too much for drill or machine; the ask alone says which"},
     {"no step", 'x', "DO NOT: too fast even at the lowest the machine gives"},
     {"do not", 'X', "DO NOT"},
     {"none", '-', "no table has a figure"}}};

/// In the order in which they are explained.
constexpr auto marks = [] {
  std::array<ChartMark, standing_marks.size() + marks_of_machine.size()> all{};
  std::copy(marks_of_machine.begin(), marks_of_machine.end(),
            std::copy(standing_marks.begin(), standing_marks.end(), all.begin()));
  return all;
}();

std::string letters_of(const Members& cell, std::set<std::string_view>& used) {
  std::string letters;
  for (const auto& one : std::get<Values>(find(cell, "marks")->held)) {
    const auto& name = std::get<std::string>(one.held);
    const auto* mark =
        std::find_if(marks.begin(), marks.end(), [&](const ChartMark& known) { return known.name == name; });
    if (mark == marks.end()) continue;
    letters += mark->letter;
    used.insert(mark->name);
  }
  return letters;
}

/// "2 (1630)*": what to set, what was wanted, the marks.
std::string cell_text(const ChartCell& shown, const Members& cell, std::set<std::string_view>& used) {
  std::string text = shown.lead;
  if (!shown.wanted.empty()) text += (text.empty() ? "(" : " (") + shown.wanted + ")";
  return text + letters_of(cell, used);
}

void fill_to(std::string& line, std::size_t width) {
  if (line.size() < width) line.append(width - line.size(), ' ');
}

/// The table of one tool, in blocks of as many columns as a line holds.
class Block {
public:
  explicit Block(const Answer& answer) : answer_(answer) {}

  void add(const ChartPart& part, std::size_t first_row, std::vector<PageLine>& lines) {
    const Values& columns = list_of(answer_, "columns");
    std::vector<std::vector<std::string>> cells;
    std::size_t width = 0;
    std::size_t head = 0;
    for (std::size_t i = 0; i < part.rows.size(); ++i) {
      const auto& row = std::get<Values>(list_of(answer_, "cells")[first_row + i].held);
      std::vector<std::string> line;
      for (std::size_t k = 0; k < row.size(); ++k)
        line.push_back(cell_text(part.cells[i][k], members_of(row[k]), used_));
      for (const auto& cell : line) width = std::max(width, cell.size());
      cells.push_back(std::move(line));
      head = std::max(head, part.rows[i].lines.front().size());
    }
    for (const auto& column : columns) width = std::max(width, heading_of(members_of(column)).size());
    head += between + 1;
    const std::size_t a_block = std::max<std::size_t>(1, (widest_line - head) / (width + between));
    for (std::size_t from = 0; from < columns.size(); from += a_block) {
      const std::size_t to = std::min(from + a_block, columns.size());
      if (from > 0) lines.emplace_back("");
      lines.push_back(
          line_of(head, width, "", from, to, [&](std::size_t k) { return heading_of(members_of(columns[k])); }));
      for (std::size_t i = 0; i < cells.size(); ++i)
        lines.push_back(
            line_of(head, width, part.rows[i].lines.front(), from, to, [&](std::size_t k) { return cells[i][k]; }));
    }
    add_steps(part, lines);
  }

  void add_legend(std::vector<PageLine>& lines) const {
    for (const auto& mark : marks)
      if (used_.contains(mark.name)) lines.push_back(std::string(1, mark.letter) + "  " + std::string(mark.meaning));
  }

private:
  static std::string heading_of(const Members& column) {
    std::string heading = find_word(column, "material");
    for (const char* name : {"condition", "hardness"})
      if (const std::string word = find_word(column, name); !word.empty()) heading += "@" + word;
    return heading;
  }

  template <class Each>
  static PageLine line_of(std::size_t head, std::size_t width, const std::string& name, std::size_t from,
                          std::size_t to, Each each) {
    std::string line = name;
    std::vector<std::string> cells{name};
    for (std::size_t k = from; k < to; ++k) {
      fill_to(line, head + (k - from) * (width + between));
      line += each(k);
      cells.push_back(each(k));
    }
    while (!line.empty() && line.back() == ' ') line.pop_back();
    return in_columns(std::move(line), std::move(cells));
  }

  static void add_steps(const ChartPart& part, std::vector<PageLine>& lines) {
    std::string line;
    for (const auto& [name, speed] : part.steps) line += (line.empty() ? "step " : ", ") + name + " is " + speed;
    if (!line.empty()) lines.push_back(line + " rev/min");
  }

  const Answer& answer_;
  std::set<std::string_view> used_;
};

std::string title_of(const ChartPart& part) {
  const std::string machine = part.machine.empty() ? "no machine named: the speed wanted, rev/min"
                              : part.steps.empty() ? part.machine + ": rev/min to set (wanted)"
                                                   : part.machine + ": the step to set (rev/min wanted)";
  return part.title + "  " + part.cutter + "; " + machine;
}

std::string sheets_of(const Answer& answer, const ChartSheet& sheet) {
  const Input* paper = find_input(answer, "paper");
  const Input* distance = find_input(answer, "read_from");
  return "On paper: " + std::to_string(sheet.pages) + (sheet.pages == 1 ? " sheet of " : " sheets of ") +
         std::get<std::string>(paper->value.held) + (sheet.width > sheet.height ? " sideways" : "") + ", letters " +
         fixed_decimal(in_mm(sheet.letters), 1) + " mm high, to be read from " +
         metres_text(std::get<Measure>(distance->value.held)) + " m";
}

} // namespace

Page page_of_chart(const Answer& answer, const TextStyle&) {
  Page page;
  const ChartSheet sheet = chart_sheet(answer);
  Block block(answer);
  std::size_t row = 0;
  for (const auto& part : sheet.table.parts) {
    if (page.first.empty())
      page.first = title_of(part);
    else
      page.lines.insert(page.lines.end(), {PageLine(""), PageLine(title_of(part))});
    block.add(part, row, page.lines);
    row += part.rows.size();
  }
  page.lines.emplace_back("");
  block.add_legend(page.lines);
  for (const auto& reason : chart_reasons(answer)) page.lines.push_back(reason);
  page.lines.push_back(sheets_of(answer, sheet));
  return page;
}

} // namespace quillside
