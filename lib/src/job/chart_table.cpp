#include <quillside/job/chart_table.hpp>

#include <algorithm>
#include <map>
#include <set>

#include <quillside/words/print.hpp>

namespace quillside {

namespace {

using Members = std::vector<Member>;
using Values = std::vector<Value>;

const Members& members_of(const Value& value) { return std::get<Members>(value.held); }
const Values& list_of(const Answer& answer, const char* name) {
  return std::get<Values>(find(answer.findings, name)->held);
}

/// The marks of a cell.
class Marks {
public:
  explicit Marks(const Members& cell) : marks_(std::get<Values>(find(cell, "marks")->held)) {}

  [[nodiscard]] bool has(std::string_view mark) const {
    return std::any_of(marks_.begin(), marks_.end(),
                       [&](const Value& one) { return std::get<std::string>(one.held) == mark; });
  }

private:
  const Values& marks_;
};

/// A limit is rounded down, everything else to the nearest.
std::string speed_text(const Members& cell, const Measure& speed) {
  const std::string by = find_word(cell, "limited_by");
  const bool limited = by == "mark" || by == "tool" || by == "whirl";
  return limited ? print_spindle_speed_limit(rev_per_min(speed.value)) : print_spindle_speed(rev_per_min(speed.value));
}

ChartSign sign_of(const Marks& marks) {
  if (marks.has("none")) return ChartSign::dash;
  if (marks.has("no step") || marks.has("do not")) return ChartSign::cross;
  if (marks.has("lowest")) return marks.has("back off") ? ChartSign::too_fast : ChartSign::lowest;
  return marks.has("highest") ? ChartSign::highest : ChartSign::none;
}

/// \param set the speed to set as it is printed; empty where there is none
void add_small_print(ChartCell& cell, const Marks& marks, const std::string& set) {
  if (cell.is_step) cell.small.push_back(set);
  if (set.empty()) cell.small.emplace_back("do not");
  if (!cell.wanted.empty()) cell.small.push_back("wants " + cell.wanted);
  std::string letters;
  if (marks.has("back off") && cell.sign != ChartSign::too_fast) {
    cell.small.emplace_back("back off");
    letters += back_off_letter;
  }
  for (const auto& mark : standing_marks)
    if (marks.has(mark.name)) {
      cell.small.emplace_back(mark.name);
      letters += mark.letter;
    }
  if (const std::string line = (cell.wanted.empty() && cell.is_step ? set : cell.wanted) + letters; !line.empty())
    cell.brief.push_back(line);
}

ChartCell cell_of(const Members& cell) {
  const Marks marks(cell);
  ChartCell shown;
  shown.sign = sign_of(marks);
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
  if (wanted != nullptr) {
    std::string aim = print_spindle_speed(rev_per_min(wanted->value));
    if (aim != speed) shown.wanted = std::move(aim);
  }
  add_small_print(shown, marks, speed);
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

/// The steps that stand in the rows of a part, by their speed.
class Steps {
public:
  void take(const Members& cell, const ChartCell& shown) {
    if (!shown.is_step) return;
    const double speed = find_measure(cell, key::spindle_speed.name)->value;
    if (!steps_.contains(speed)) steps_[speed] = {shown.lead, shown.small.front()};
  }
  /// Those taken since the last time.
  std::vector<ChartStep> all() {
    std::vector<ChartStep> list;
    for (auto& [speed, step] : steps_) list.push_back(std::move(step));
    steps_.clear();
    return list;
  }

private:
  std::map<double, ChartStep> steps_;
};

} // namespace

const char* sign_letter(ChartSign sign) {
  switch (sign) {
  case ChartSign::none: return "";
  case ChartSign::highest: return "\u25b3";  // a triangle, empty
  case ChartSign::lowest: return "\u25bd";   // the same on its tip
  case ChartSign::too_fast: return "\u25bc"; // on its tip, full
  case ChartSign::cross: return "\u2716";    // two heavy strokes
  case ChartSign::dash: return "\u2013";
  }
  return "";
}

ChartTable chart_table(const Answer& answer) {
  ChartTable table;
  for (const auto& column : list_of(answer, key::columns.name))
    table.columns.push_back(column_heading(members_of(column)));
  const Values& rows = list_of(answer, key::rows.name);
  const Values& cells = list_of(answer, key::cells.name);
  const UnitSystem units = units_of(answer);
  std::string ask;
  Steps steps;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const Members& row = members_of(rows[i]);
    if (table.parts.empty() || find_word(row, "ask") != ask) {
      if (!table.parts.empty()) table.parts.back().steps = steps.all();
      ask = find_word(row, "ask");
      table.parts.push_back({tool_name(ask), find_word(row, "cutter"), find_word(row, "machine"), {}, {}, {}});
    }
    ChartPart& part = table.parts.back();
    part.rows.push_back(row_heading(row, units));
    std::vector<ChartCell> line;
    for (const auto& cell : std::get<Values>(cells[i].held)) {
      line.push_back(cell_of(members_of(cell)));
      steps.take(members_of(cell), line.back());
    }
    part.cells.push_back(std::move(line));
  }
  if (!table.parts.empty()) table.parts.back().steps = steps.all();
  return table;
}

void add_name(ChartHeading& heading, const std::vector<Member>& column, LineRoom line) {
  const std::string key = find_word(column, "material");
  std::string name = find_word(column, "name");
  if (const auto at = name.find(key); at != std::string::npos) name.erase(at, key.size());
  if (const auto at = name.find(" ,"); at != std::string::npos) name.erase(at, 1);
  while (!name.empty() && (name.front() == ' ' || name.front() == ',')) name.erase(0, 1);
  auto lines = broken_to(name, line);
  if (lines.size() > 3) lines = {};
  heading.small.insert(heading.small.begin(), lines.begin(), lines.end());
}

std::vector<std::string> chart_reasons(const Answer& answer) {
  std::vector<std::string> lines;
  std::set<std::string> told;
  const Values& rows = list_of(answer, key::rows.name);
  const Values& columns = list_of(answer, key::columns.name);
  const Values& cells = list_of(answer, key::cells.name);
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const auto& line = std::get<Values>(cells[i].held);
    for (std::size_t k = 0; k < line.size(); ++k) {
      const Members& cell = members_of(line[k]);
      const Marks marks(cell);
      if (!marks.has("do not") && !marks.has("none")) continue;
      const std::string reason = find_word(cell, "reason");
      if (!told.insert(reason).second) continue;
      lines.push_back(find_word(members_of(rows[i]), "ask") + " " + find_word(members_of(rows[i]), "name") + " " +
                      find_word(members_of(columns[k]), "material") + ": " + reason);
    }
  }
  return lines;
}

} // namespace quillside
