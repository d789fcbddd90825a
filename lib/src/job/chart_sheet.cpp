#include <quillside/job/chart_sheet.hpp>

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>
#include <tuple>

#include <quillside/data/paper.hpp>
#include <quillside/words/print.hpp>
#include <quillside/words/text_width.hpp>

namespace quillside {

namespace {

using Members = std::vector<Member>;
using Values = std::vector<Value>;

const Members& members_of(const Value& value) { return std::get<Members>(value.held); }
const Values& list_of(const Answer& answer, const char* name) {
  return std::get<Values>(find(answer.findings, name)->held);
}

bool has_mark(const Members& cell, std::string_view mark) {
  const Value* marks = find(cell, "marks");
  if (marks == nullptr) return false;
  const auto& list = std::get<Values>(marks->held);
  return std::any_of(list.begin(), list.end(),
                     [&](const Value& one) { return std::get<std::string>(one.held) == mark; });
}

/// A limit is rounded down, everything else to the nearest.
std::string speed_text(const Members& cell, const Measure& speed) {
  const std::string by = find_word(cell, "limited_by");
  const bool limited = by == "mark" || by == "tool" || by == "whirl";
  return limited ? print_spindle_speed_limit(rev_per_min(speed.value)) : print_spindle_speed(rev_per_min(speed.value));
}

ChartSign sign_of(const Members& cell) {
  if (has_mark(cell, "none")) return ChartSign::dash;
  if (has_mark(cell, "no step") || has_mark(cell, "do not")) return ChartSign::cross;
  if (has_mark(cell, "lowest")) return has_mark(cell, "back off") ? ChartSign::too_fast : ChartSign::lowest;
  return has_mark(cell, "highest") ? ChartSign::highest : ChartSign::none;
}

ChartCell cell_of(const Members& cell) {
  ChartCell shown;
  shown.sign = sign_of(cell);
  if (shown.sign == ChartSign::dash) {
    shown.small = {"no figure"};
    return shown;
  }
  const Measure* set = find_measure(cell, key::spindle_speed.name);
  const Measure* wanted = find_measure(cell, key::wanted_spindle_speed.name);
  const std::string speed = set == nullptr ? "" : speed_text(cell, *set);
  const std::string step = find_word(cell, key::step.name);
  shown.lead = step.empty() ? speed : step;
  shown.is_step = !step.empty();
  if (!step.empty()) shown.small.push_back(speed);
  if (set == nullptr) shown.small.emplace_back("do not");
  if (wanted != nullptr) {
    const std::string aim = print_spindle_speed(rev_per_min(wanted->value));
    if (aim != speed) shown.small.push_back("wants " + aim);
  }
  if (has_mark(cell, "back off") && shown.sign != ChartSign::too_fast) shown.small.emplace_back("back off");
  for (const char* word : {"memory", "derived", "practice", "demo"})
    if (has_mark(cell, word)) shown.small.emplace_back(word);
  return shown;
}

/// A heading in as many lines as its dashes and blanks allow; a short one in one.
std::vector<std::string> heading_lines(const std::string& words) {
  constexpr std::size_t short_enough = 8;
  if (words.size() <= short_enough) return {words};
  std::vector<std::string> lines(1);
  for (const char c : words) {
    if (c != ' ') lines.back() += c;
    if (c == '-' || c == ' ') lines.emplace_back();
  }
  std::vector<std::string> joined;
  for (const auto& line : lines) {
    if (!joined.empty() && joined.back().size() + line.size() <= short_enough)
      joined.back() += line;
    else
      joined.push_back(line);
  }
  return joined;
}

ChartHeading column_heading(const Members& column) {
  ChartHeading heading{heading_lines(find_word(column, "material")), {}};
  for (const char* name : {"condition", "hardness"})
    if (const std::string word = find_word(column, name); !word.empty()) heading.small.push_back(word);
  return heading;
}

/// What the column is called besides its key, in lines as narrow as it is.
void add_names(ChartHeading& heading, const Members& column, LineRoom line) {
  const std::string key = find_word(column, "material");
  std::string name = find_word(column, "name");
  if (const auto at = name.find(key); at != std::string::npos) name.erase(at, key.size());
  if (const auto at = name.find(" ,"); at != std::string::npos) name.erase(at, 1);
  while (!name.empty() && (name.front() == ' ' || name.front() == ',')) name.erase(0, 1);
  auto lines = broken_to(name, line);
  if (lines.size() > 3) lines = {};
  heading.small.insert(heading.small.begin(), lines.begin(), lines.end());
}

UnitSystem units_of(const Answer& answer) {
  const Input* units = find_input(answer, "units");
  const auto* word = units == nullptr ? nullptr : std::get_if<std::string>(&units->value.held);
  return word != nullptr && *word == "metric" ? UnitSystem::metric : UnitSystem::inch;
}

ChartHeading row_heading(const Members& row, UnitSystem units) {
  const std::string name = find_word(row, "name");
  const Measure* size = find_measure(row, key::size.name);
  ChartHeading heading{{name}, {}};
  if (size != nullptr) heading.small.push_back(print_length_with_unit(mm(size->value), units));
  return heading;
}

std::string tool_name(const std::string& ask) { return ask == "drill" ? "DRILL" : ask == "mill" ? "MILL" : "BURR"; }

bool has_steps(const ChartPart& part) {
  return std::any_of(part.cells.begin(), part.cells.end(), [](const auto& row) {
    return std::any_of(row.begin(), row.end(), [](const ChartCell& cell) { return cell.is_step; });
  });
}

/// Rows of one tool with their cells, before anything is measured.
std::vector<ChartPart> parts_of(const Answer& answer) {
  std::vector<ChartPart> parts;
  std::string ask;
  const Values& rows = list_of(answer, key::rows.name);
  const Values& cells = list_of(answer, key::cells.name);
  const UnitSystem units = units_of(answer);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const Members& row = members_of(rows[i]);
    if (parts.empty() || find_word(row, "ask") != ask) {
      ask = find_word(row, "ask");
      ChartPart part;
      part.title = tool_name(ask);
      part.about.push_back(find_word(row, "cutter"));
      const std::string machine = find_word(row, "machine");
      part.about.push_back(machine.empty() ? "no machine named: the speed wanted, rev/min" : machine);
      parts.push_back(std::move(part));
    }
    parts.back().rows.push_back(row_heading(row, units));
    std::vector<ChartCell> line;
    for (const auto& cell : std::get<Values>(cells[i].held)) line.push_back(cell_of(members_of(cell)));
    parts.back().cells.push_back(std::move(line));
  }
  for (auto& part : parts)
    part.corner = has_steps(part) ? std::vector<std::string>{"step to set", "its rev/min", "rev/min wanted"}
                                  : std::vector<std::string>{"rev/min to set", "rev/min wanted"};
  return parts;
}

template <class Each> void each_cell(const ChartPart& part, Each each) {
  for (const auto& row : part.cells)
    for (const auto& cell : row) each(cell);
}

Length widest(const std::vector<std::string>& lines, Length height) {
  Length most{};
  for (const auto& line : lines) most = std::max(most, text_width(line, height));
  return most;
}

/// Height of so many lines, the first as high as its letters.
Length lines_high(std::size_t lines, Length letters) {
  return lines == 0 ? mm(0) : letters + line_pitch * static_cast<double>(lines - 1) * letters;
}

/// Letters of a chart, and whether small print stands beside the numbers or under them.
struct Letters {
  Length large;
  Length small;
  Length margin;
  bool beside;
};

Letters letters_of(Length large, bool beside) {
  return {large, std::max(small_print, 0.26 * large), std::max(least_cell_margin, cell_margin * large), beside};
}

Length lead_width(const ChartCell& cell, Length large) {
  const bool signed_ = cell.sign != ChartSign::none;
  if (cell.lead.empty()) return signed_ ? large : mm(0);
  return bold * text_width(cell.lead, large) + (signed_ ? (sign_gap + sign_width) * large : mm(0));
}

/// What a part needs, in those letters.
void measure_part(ChartPart& part, const std::vector<ChartHeading>& columns, const Letters& letters) {
  const Length margin = letters.margin;
  Length lead{};
  Length small{};
  std::size_t lines = 0;
  each_cell(part, [&](const ChartCell& cell) {
    lead = std::max(lead, lead_width(cell, letters.large));
    small = std::max(small, widest(cell.small, letters.small));
    lines = std::max(lines, cell.small.size());
  });
  Length heading{};
  std::size_t heading_large = 1;
  std::size_t heading_small = 0;
  for (const auto& column : columns) {
    heading = std::max({heading, widest(column.lines, letters.large), widest(column.small, letters.small)});
    heading_large = std::max(heading_large, column.lines.size());
    heading_small = std::max(heading_small, column.small.size());
  }
  const Length cell = letters.beside ? lead + margin + small : std::max(lead, small);
  part.column = 2.0 * margin + std::max(cell, heading);
  Length row_head{};
  Length row_small{};
  for (const auto& row : part.rows) {
    row_head = std::max({row_head, widest(row.lines, letters.large), widest(row.small, letters.small)});
    row_small = std::max(row_small, lines_high(row.small.size(), letters.small));
  }
  part.row_head = 2.0 * margin + std::max(row_head, widest(part.corner, letters.small));
  const Length block = lines_high(lines, letters.small);
  const Length gap = under_gap * letters.large;
  const Length stacked = letters.large + (lines == 0 ? mm(0) : gap + block);
  const Length head = letters.large + (row_small > mm(0) ? gap + row_small : mm(0));
  part.row = 2.0 * margin + std::max(letters.beside ? std::max(letters.large, block) : stacked, head);
  const Length named = 1.35 * static_cast<double>(heading_large - 1) * letters.large + letters.large +
                       (heading_small == 0 ? mm(0) : gap + lines_high(heading_small, letters.small));
  part.heading = 2.0 * margin + std::max(named, lines_high(part.corner.size(), letters.small));
}

/// The signs of a chart with what they mean, and the words of its small print.
std::vector<ChartLine> legend(const std::vector<ChartPart>& parts) {
  std::set<ChartSign> signs;
  std::set<std::string> words;
  for (const auto& part : parts)
    each_cell(part, [&](const ChartCell& cell) {
      signs.insert(cell.sign);
      for (const auto& word : cell.small) words.insert(word);
    });
  std::vector<ChartLine> lines;
  const auto tell = [&](ChartSign sign, const char* text) {
    if (signs.contains(sign)) lines.push_back({sign, text});
  };
  tell(ChartSign::highest, "the highest the machine gives: the metal would bear more");
  tell(ChartSign::lowest, "the lowest the machine gives");
  tell(ChartSign::too_fast,
       "the lowest the machine gives, and faster than wanted: feed lightly, stop when the edge glazes");
  tell(ChartSign::cross,
       "DO NOT: too fast even at the lowest step, or not on this machine, or too hard for this cutter");
  tell(ChartSign::dash, "no table has a figure");
  const auto define = [&](const char* word, const char* text) {
    if (words.contains(word)) lines.push_back({ChartSign::none, std::string(word) + ": " + text});
  };
  define("memory", "the figure is from memory, nobody read its page");
  define("derived", "the figure follows by a stated rule from another row");
  define("practice", "common practice, no source");
  define("demo", "the figure is invented for the demo");
  define("back off", "ask for this one alone: the ask says what to lighten");
  return lines;
}

/// Why a cell has nothing to set, each reason once with the first cell it holds for.
std::vector<std::string> reasons(const Answer& answer) {
  std::vector<std::string> lines;
  std::set<std::string> told;
  const Values& rows = list_of(answer, key::rows.name);
  const Values& columns = list_of(answer, key::columns.name);
  const Values& cells = list_of(answer, key::cells.name);
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const auto& line = std::get<Values>(cells[i].held);
    for (std::size_t k = 0; k < line.size(); ++k) {
      const Members& cell = members_of(line[k]);
      if (!has_mark(cell, "do not") && !has_mark(cell, "none")) continue;
      const std::string reason = find_word(cell, "reason");
      if (!told.insert(reason).second) continue;
      lines.push_back(find_word(members_of(rows[i]), "ask") + " " + find_word(members_of(rows[i]), "name") + " " +
                      find_word(members_of(columns[k]), "material") + ": " + reason);
    }
  }
  return lines;
}

std::string list_words(const Answer& answer, const char* name) {
  const Input* input = find_input(answer, name);
  std::string words;
  if (input == nullptr) return words;
  for (const auto& word : std::get<Values>(input->value.held))
    words += (words.empty() ? "" : ", ") + std::get<std::string>(word.held);
  return words;
}

/// What stands in small print under the table, whole: cautions, what the letters are made for, sources.
struct Print {
  std::vector<ChartLine> legend;
  std::vector<ChartLine> dangers;
  std::vector<ChartLine> rest;
};

Print print_of(const Answer& answer, const std::vector<ChartPart>& parts) {
  Print print;
  print.legend = legend(parts);
  for (const auto& caution : answer.cautions) {
    const bool danger = caution.severity == "danger";
    const std::string lead = danger ? "DANGER  " : caution.severity == "warn" ? "Care  " : "Note  ";
    (danger ? print.dangers : print.rest).push_back({ChartSign::none, lead + caution.text, danger});
  }
  for (auto& line : reasons(answer)) print.rest.push_back({ChartSign::none, std::move(line)});
  const Measure* height = find_measure(answer.findings, key::letter_height.name);
  const Input* distance = find_input(answer, "read_from");
  const auto* far = distance == nullptr ? nullptr : std::get_if<Measure>(&distance->value.held);
  if (height != nullptr && far != nullptr)
    print.rest.push_back(
        {ChartSign::none, "Numbers to dial in and headings are " + fixed_decimal(height->value, 1) +
                              " mm high, to be read from " + metres_text(*far) +
                              " m; the rest is small print, for near by. Tables: " + list_words(answer, "tables")});
  for (const auto& source : answer.sources) {
    const bool law = source.id == letter_height_law.id;
    if (!law)
      print.rest.push_back({ChartSign::none, "From: " + source.cite + (source.page ? ", " + *source.page : "") + " (" +
                                                 source.standing + ")"});
  }
  return print;
}

void add_broken(std::vector<ChartLine>& lines, const std::vector<ChartLine>& texts, Length width, Length letters) {
  for (const auto& text : texts) {
    const Length before = text.sign == ChartSign::none ? mm(0) : 2.0 * letters;
    bool first = true;
    const Length room = (width - before) / (text.heavy ? bold : 1);
    for (auto& line : broken_to(text.text, {room, letters})) {
      lines.push_back({first ? text.sign : ChartSign::none, std::move(line), text.heavy});
      first = false;
    }
  }
}

/// Legend lines side by side would save little: each sign has its own line, where the eye finds it.
Sheet turned(Sheet sheet, bool sideways) { return sideways ? Sheet{sheet.height, sheet.width} : sheet; }

/// One way to put the chart on paper.
struct Way {
  bool apart;    // notes on sheets of their own
  bool sideways; // the paper on its long side
  bool beside;   // small print beside the numbers
};

/// What all ways have in common.
struct Content {
  std::vector<ChartHeading> columns;
  std::vector<ChartPart> parts;
  Print print;
  std::vector<std::string> reasons;
};

Content content_of(const Answer& answer) {
  Content content;
  for (const auto& column : list_of(answer, key::columns.name))
    content.columns.push_back(column_heading(members_of(column)));
  content.parts = parts_of(answer);
  content.print = print_of(answer, content.parts);
  content.reasons = reasons(answer);
  return content;
}

/// \return a sheet with 0 pages where it does not fit
ChartSheet laid_out(const Answer& answer, const Content& content, Sheet paper, Length large, Way way) {
  const Sheet hung = turned(paper, way.sideways);
  const Room room{hung.width - 2.0 * paper_margin, hung.height - 2.0 * paper_margin};
  const Letters letters = letters_of(large, way.beside);
  ChartSheet sheet;
  sheet.width = hung.width;
  sheet.height = hung.height;
  sheet.letters = letters.large;
  sheet.small = letters.small;
  sheet.margin = letters.margin;
  sheet.beside = way.beside;
  sheet.title = 0.5 * large + std::max(large, lines_high(2, letters.small));
  sheet.columns = content.columns;
  sheet.parts = content.parts;
  sheet.reasons = content.reasons;

  add_broken(sheet.foot, content.print.legend, room.width, small_print);
  add_broken(sheet.foot, content.print.dangers, room.width, small_print);
  if (way.apart)
    add_broken(sheet.notes, content.print.rest, room.width, notes_print);
  else
    add_broken(sheet.foot, content.print.rest, room.width, small_print);

  const Values& columns = list_of(answer, key::columns.name);
  for (auto& part : sheet.parts) {
    measure_part(part, content.columns, letters);
    const Length inside = part.column - 2.0 * letters.margin;
    for (std::size_t k = 0; k < sheet.columns.size(); ++k)
      if (&part == &sheet.parts.front()) add_names(sheet.columns[k], members_of(columns[k]), {inside, letters.small});
  }
  for (auto& part : sheet.parts) {
    measure_part(part, sheet.columns, letters);
    part.grid = table_grid(
        room, {part.row_head, part.column, part.row, sheet.title + part.heading, foot_height(sheet.foot.size())},
        {static_cast<int>(part.rows.size()), static_cast<int>(sheet.columns.size())});
    if (!part.grid.fits()) return {};
    sheet.pages += part.grid.sheets();
  }
  if (!sheet.notes.empty()) {
    sheet.notes_a_sheet = static_cast<int>((room.height - notes_head - foot_height(0)) / (line_pitch * notes_print));
    sheet.pages += (static_cast<int>(sheet.notes.size()) + sheet.notes_a_sheet - 1) / sheet.notes_a_sheet;
  }
  return sheet;
}

const Paper& paper_of(const Answer& answer) {
  const Input* paper = find_input(answer, "paper");
  return find_paper(std::get<std::string>(paper->value.held));
}

/// The way that takes the fewest sheets; among those rather with its notes on each, rather upright.
ChartSheet best(const Answer& answer, const Content& content, Length large) {
  const Sheet paper = paper_of(answer).whole;
  ChartSheet found;
  for (const bool apart : {false, true})
    for (const bool sideways : {false, true})
      for (const bool beside : {true, false}) {
        ChartSheet sheet = laid_out(answer, content, paper, large, {apart, sideways, beside});
        if (sheet.pages != 0 && (found.pages == 0 || sheet.pages < found.pages)) found = std::move(sheet);
      }
  return found;
}

} // namespace

std::string metres_text(const Measure& distance) { return shortest_decimal(std::round(distance.value / 10) / 100); }

Length foot_height(std::size_t lines) {
  return line_pitch * static_cast<double>(lines + 1) * small_print + 2.0 * small_print;
}

ChartSheet chart_sheet(const Answer& answer) {
  const Measure* height = find_measure(answer.findings, key::letter_height.name);
  return best(answer, content_of(answer), mm(height->value));
}

Length largest_letters(const Answer& answer) {
  const Content content = content_of(answer);
  int most = 0;
  // In tenths of a millimetre: from what surely fits to what surely does not.
  int too_large = 1000;
  while (too_large - most > 1) {
    const int middle = (most + too_large) / 2;
    (best(answer, content, mm(0.1 * middle)).pages != 0 ? most : too_large) = middle;
  }
  return mm(0.1 * most);
}

} // namespace quillside
