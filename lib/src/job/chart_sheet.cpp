#include <quillside/job/chart_sheet.hpp>

#include <algorithm>
#include <cmath>
#include <tuple>

#include <quillside/data/paper.hpp>
#include <quillside/words/print.hpp>
#include <quillside/words/text_width.hpp>

namespace quillside {

namespace {

using Values = std::vector<Value>;

/// Room beside what stands in a cell, in heights of the large letters, and at the least.
constexpr double cell_margin = 0.22;
constexpr Length least_cell_margin = mm(1);
/// Over and under it, where much has to go on a sheet.
constexpr Length least_row_margin = mm(0.4);

Length widest(const std::vector<std::string>& lines, Length height) {
  Length most{};
  for (const auto& line : lines) most = std::max(most, text_width(line, height));
  return most;
}

/// Height of so many lines, the first as high as its letters.
Length lines_high(std::size_t lines, Length letters) {
  return lines == 0 ? mm(0) : letters + line_pitch * static_cast<double>(lines - 1) * letters;
}

/// One way to put the chart on paper.
struct Way {
  bool apart;    // notes on sheets of their own
  bool sideways; // the paper on its long side
  bool beside;   // small print beside the numbers
  bool brief;    // small print in one short line
};

/// Letters of a chart and the room round them.
struct Letters {
  Length large;
  Length small;
  Length margin;
  Length row_margin;
};

Letters letters_of(Length large, const Way& way) {
  const Length margin = std::max(least_cell_margin, cell_margin * large);
  return {large, std::max(small_print, 0.26 * large), margin,
          way.brief ? std::max(least_row_margin, cell_margin * large) : margin};
}

/// Texts that stand below one another: how many lines, and how wide a millimetre of their height makes them.
struct Lines {
  std::size_t most = 0;
  double wide = 0;

  void take(const std::vector<std::string>& lines) {
    most = std::max(most, lines.size());
    wide = std::max(wide, widest(lines, mm(1)) / mm(1));
  }
};

/// What the cells and row headings of a part need, in heights of their letters: measured once for all ways.
struct PartNeeds {
  double lead = 0;        // large
  double signed_lead = 0; // those with a sign beside them
  bool sign_alone = false;
  Lines small;
  Lines brief;
  Lines row_name; // large
  Lines row_small;
};

PartNeeds needs_of(const ChartPart& part) {
  PartNeeds needs;
  each_cell(part, [&](const ChartCell& cell) {
    double& lead = cell.sign == ChartSign::none ? needs.lead : needs.signed_lead;
    if (!cell.lead.empty()) lead = std::max(lead, bold * (text_width(cell.lead, mm(1)) / mm(1)));
    needs.sign_alone = needs.sign_alone || (cell.lead.empty() && cell.sign != ChartSign::none);
    needs.small.take(cell.small);
    needs.brief.take(cell.brief);
  });
  for (const auto& row : part.rows) {
    needs.row_name.take(row.lines);
    needs.row_small.take(row.small);
  }
  return needs;
}

/// What the column headings need.
struct HeadingNeeds {
  Lines large;
  Lines small;
};

HeadingNeeds needs_of(const std::vector<ChartHeading>& columns) {
  HeadingNeeds needs;
  for (const auto& column : columns) {
    needs.large.take(column.lines);
    needs.small.take(column.small);
  }
  return needs;
}

/// The widest number or sign, in letters so large.
Length lead_width(const PartNeeds& part, Length large) {
  Length most = part.lead * large;
  if (part.sign_alone) most = std::max(most, sign_width * large);
  if (part.signed_lead > 0)
    most = std::max(most, (part.signed_lead + sign_gap) * large + sign_width * sign_height(large));
  return most;
}

/// Lays out the cells of a part, in those letters.
void measure(ChartLayout& layout, const PartNeeds& part, const HeadingNeeds& headings, const Letters& letters,
             const Way& way) {
  const Lines& small = way.brief ? part.brief : part.small;
  const Length gap = under_gap * letters.large;
  const auto under = [&](std::size_t lines) { return lines == 0 ? mm(0) : gap + lines_high(lines, letters.small); };
  layout.lead = lead_width(part, letters.large);
  layout.lines = small.most;

  const Length small_wide = small.wide * letters.small;
  const Length cell = way.beside ? layout.lead + letters.margin + small_wide : std::max(layout.lead, small_wide);
  layout.column =
      2.0 * letters.margin + std::max({cell, headings.large.wide * letters.large, headings.small.wide * letters.small});
  layout.row_head =
      2.0 * letters.margin + std::max({part.row_name.wide * letters.large, part.row_small.wide * letters.small,
                                       widest(layout.corner, letters.small)});

  const Length stands =
      way.beside ? std::max(letters.large, lines_high(small.most, letters.small)) : letters.large + under(small.most);
  layout.row = 2.0 * letters.row_margin + std::max(stands, letters.large + under(part.row_small.most));
  const Length named = 1.35 * static_cast<double>(std::max<std::size_t>(headings.large.most, 1) - 1) * letters.large +
                       letters.large + under(headings.small.most);
  layout.heading = 2.0 * letters.margin + std::max(named, lines_high(layout.corner.size(), letters.small));
}

bool any_cell(const ChartTable& table, auto is) {
  return std::any_of(table.parts.begin(), table.parts.end(), [&](const ChartPart& part) {
    return std::any_of(part.cells.begin(), part.cells.end(),
                       [&](const auto& row) { return std::any_of(row.begin(), row.end(), is); });
  });
}

/// The signs of a chart with what they mean, and the words of its small print or the letters for them.
std::vector<ChartLine> legend(const ChartTable& table, bool brief) {
  std::vector<ChartLine> lines;
  const auto tell = [&](ChartSign sign, const char* text) {
    if (any_cell(table, [&](const ChartCell& cell) { return cell.sign == sign; })) lines.push_back({sign, text});
  };
  tell(ChartSign::highest, "the highest the machine gives: the metal would bear more");
  tell(ChartSign::lowest, "the lowest the machine gives");
  tell(ChartSign::too_fast,
       "the lowest the machine gives, and faster than wanted: feed lightly, stop when the edge glazes");
  tell(ChartSign::cross,
       "DO NOT: too fast even at the lowest step, or not on this machine, or too hard for this cutter");
  tell(ChartSign::dash, "no table has a figure");
  const auto define = [&](std::string_view word, char letter, std::string_view text) {
    const auto has_word = [&](const ChartCell& cell) {
      return std::find(cell.small.begin(), cell.small.end(), word) != cell.small.end();
    };
    if (any_cell(table, has_word))
      lines.push_back(
          {ChartSign::none, (brief ? std::string(1, letter) : std::string(word) + ":") + " " + std::string(text)});
  };
  for (const auto& mark : standing_marks) define(mark.name, mark.letter, mark.meaning);
  define("back off", back_off_letter, "ask for this one alone: the ask says what to lighten");
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

/// What stands in small print under the table besides its legend: cautions, what the letters are made for, sources.
struct Print {
  std::vector<ChartLine> dangers;
  std::vector<ChartLine> rest;
};

Print print_of(const Answer& answer) {
  Print print;
  for (const auto& caution : answer.cautions) {
    const bool danger = caution.severity == "danger";
    const std::string lead = danger ? "DANGER  " : caution.severity == "warn" ? "Care  " : "Note  ";
    (danger ? print.dangers : print.rest).push_back({ChartSign::none, lead + caution.text, danger});
  }
  for (auto& line : chart_reasons(answer)) print.rest.push_back({ChartSign::none, std::move(line)});
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
    // Each sign has its own line, where the eye finds it.
    const Length before = text.sign == ChartSign::none ? mm(0) : 2.0 * letters;
    bool first = true;
    const Length room = (width - before) / (text.heavy ? bold : 1);
    for (auto& line : broken_to(text.text, {room, letters})) {
      lines.push_back({first ? text.sign : ChartSign::none, std::move(line), text.heavy});
      first = false;
    }
  }
}

Sheet turned(Sheet sheet, bool sideways) { return sideways ? Sheet{sheet.height, sheet.width} : sheet; }

Room room_of(Sheet paper) { return {paper.width - 2.0 * paper_margin, paper.height - 2.0 * paper_margin}; }

/// The small print broken into lines as wide as a paper.
struct PrintLines {
  std::vector<ChartLine> in_words; // legend and dangers: under every table
  std::vector<ChartLine> in_letters;
  std::vector<ChartLine> rest;       // in the foot as well
  std::vector<ChartLine> rest_apart; // or on sheets of their own

  [[nodiscard]] const std::vector<ChartLine>& under_table(const Way& way) const {
    return way.brief ? in_letters : in_words;
  }
};

PrintLines lines_of(const ChartTable& table, const Print& print, Length width) {
  PrintLines lines;
  add_broken(lines.in_words, legend(table, false), width, small_print);
  add_broken(lines.in_letters, legend(table, true), width, small_print);
  for (auto* under : {&lines.in_words, &lines.in_letters}) add_broken(*under, print.dangers, width, small_print);
  add_broken(lines.rest, print.rest, width, small_print);
  add_broken(lines.rest_apart, print.rest, width, notes_print);
  return lines;
}

/// What all ways have in common.
struct Content {
  ChartTable table;
  std::vector<PartNeeds> needs; // one a part
  Sheet paper;
  PrintLines upright;
  PrintLines sideways;
  const Values* columns; // of the answer

  [[nodiscard]] const PrintLines& print(const Way& way) const { return way.sideways ? sideways : upright; }
};

const Paper& paper_of(const Answer& answer) {
  const Input* paper = find_input(answer, "paper");
  return find_paper(std::get<std::string>(paper->value.held));
}

Content content_of(const Answer& answer) {
  Content content;
  content.table = chart_table(answer);
  content.paper = paper_of(answer).whole;
  const Print print = print_of(answer);
  content.upright = lines_of(content.table, print, room_of(content.paper).width);
  content.sideways = lines_of(content.table, print, room_of(turned(content.paper, true)).width);
  content.columns = &std::get<Values>(find(answer.findings, key::columns.name)->held);
  for (const auto& part : content.table.parts) content.needs.push_back(needs_of(part));
  return content;
}

std::string steps_text(const std::vector<ChartStep>& steps) {
  std::string text;
  for (const auto& step : steps)
    text += (text.empty() ? ": step " : ", ") + step.name + (text.empty() ? " is " : " ") + step.speed;
  return text.empty() ? text : text + " rev/min";
}

/// Beside the title, in small print; smaller where a line is too long, and broken where it still is.
ChartAbout about_of(const ChartPart& part, Length width, const Letters& letters, bool brief) {
  const std::vector<std::string> whole{part.cutter, part.machine.empty()
                                                        ? "no machine named: the speed wanted, rev/min"
                                                        : part.machine + (brief ? steps_text(part.steps) : "")};
  const Length room = width - bold * text_width(part.title, letters.large) - about_gap * letters.large;
  ChartAbout about{{}, letters.small};
  if (const Length wide = widest(whole, letters.small); wide > room)
    about.letters = std::max(small_print, (room / wide) * letters.small);
  for (const auto& line : whole)
    for (auto& piece : broken_to(line, {room, about.letters})) about.lines.push_back(std::move(piece));
  return about;
}

std::vector<std::string> corner_of(const ChartPart& part, bool brief) {
  if (part.steps.empty()) return {"rev/min to set", "rev/min wanted"};
  if (brief) return {"step to set", "rev/min", "wanted"};
  return {"step to set", "its rev/min", "rev/min wanted"};
}

ChartLayout layout_before_cells(const ChartPart& part, Length width, const Letters& letters, bool brief) {
  ChartLayout layout;
  layout.about = about_of(part, width, letters, brief);
  layout.corner = corner_of(part, brief);
  layout.title =
      0.5 * letters.large + std::max(letters.large, lines_high(layout.about.lines.size(), layout.about.letters));
  return layout;
}

/// The column headings with the names of the metals, in columns as wide as they have to be without them. Where space is
/// short a name that would widen its column, or takes more than two lines, is left away.
std::vector<ChartHeading> named_columns(const Content& content, LineRoom line, bool brief) {
  auto columns = content.table.columns;
  for (std::size_t k = 0; k < columns.size(); ++k) {
    ChartHeading named = columns[k];
    add_name(named, std::get<std::vector<Member>>((*content.columns)[k].held), line);
    const bool is_small = named.small.size() <= 2 && widest(named.small, line.height) <= line.width;
    if (!brief || is_small) columns[k] = std::move(named);
  }
  return columns;
}

/// Fills in how the parts lie; false where one does not fit.
bool lay_out_parts(ChartSheet& sheet, const Content& content, const Way& way, std::size_t foot_lines) {
  const Room room = room_of({sheet.width, sheet.height});
  const Letters letters{sheet.letters, sheet.small, sheet.margin, sheet.row_margin};
  const auto& parts = content.table.parts;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    sheet.layouts.push_back(layout_before_cells(parts[i], room.width, letters, way.brief));
    measure(sheet.layouts[i], content.needs[i], needs_of(content.table.columns), letters, way);
  }
  sheet.table.columns =
      named_columns(content, {sheet.layouts.front().column - 2.0 * letters.margin, letters.small}, way.brief);
  const HeadingNeeds headings = needs_of(sheet.table.columns);
  for (std::size_t i = 0; i < parts.size(); ++i) {
    ChartLayout& layout = sheet.layouts[i];
    measure(layout, content.needs[i], headings, letters, way);
    layout.grid = table_grid(
        room, {layout.row_head, layout.column, layout.row, layout.title + layout.heading, foot_height(foot_lines)},
        {static_cast<int>(parts[i].rows.size()), static_cast<int>(sheet.table.columns.size())});
    if (!layout.grid.fits()) return false;
    sheet.table_sheets += layout.grid.sheets();
  }
  return true;
}

/// The chart before its small print is written in; with 0 pages where it does not fit.
struct Draft {
  ChartSheet sheet; // its table has its columns alone
  Way way{};
};

Draft laid_out(const Content& content, Length large, const Way& way) {
  const Sheet hung = turned(content.paper, way.sideways);
  const Letters letters = letters_of(large, way);
  const PrintLines& print = content.print(way);
  Draft draft{{}, way};
  ChartSheet& sheet = draft.sheet;
  sheet.width = hung.width;
  sheet.height = hung.height;
  sheet.letters = letters.large;
  sheet.small = letters.small;
  sheet.margin = letters.margin;
  sheet.row_margin = letters.row_margin;
  sheet.beside = way.beside;
  sheet.brief = way.brief;
  if (!lay_out_parts(sheet, content, way, print.under_table(way).size() + (way.apart ? 0 : print.rest.size())))
    return {};
  int notes_sheets = 0;
  if (way.apart) {
    const double a_sheet = (room_of(hung).height - notes_head - foot_height(0)) / (line_pitch * notes_print);
    sheet.notes_a_sheet = static_cast<int>(a_sheet);
    const auto lines = static_cast<int>(print.rest_apart.size());
    notes_sheets = (lines + sheet.notes_a_sheet - 1) / sheet.notes_a_sheet;
  }
  sheet.pages = sheet.table_sheets + notes_sheets;
  return draft;
}

/// The way that takes the fewest sheets; among those rather in words, with the table on the fewest, with its notes on
/// each, upright.
Draft best(const Content& content, Length large) {
  Draft found;
  const auto better = [&](const ChartSheet& sheet) {
    if (found.sheet.pages == 0) return true;
    return std::tuple(sheet.pages, sheet.brief, sheet.table_sheets) <
           std::tuple(found.sheet.pages, found.sheet.brief, found.sheet.table_sheets);
  };
  for (const bool brief : {false, true})
    for (const bool apart : {false, true})
      for (const bool sideways : {false, true})
        for (const bool beside : {true, false}) {
          Draft draft = laid_out(content, large, {apart, sideways, beside, brief});
          if (draft.sheet.pages != 0 && better(draft.sheet)) found = std::move(draft);
        }
  return found;
}

} // namespace

std::string metres_text(const Measure& distance) { return shortest_decimal(std::round(distance.value / 10) / 100); }

Length sign_height(Length letters) { return std::max(small_print, 0.6 * letters); }

Length foot_height(std::size_t lines) {
  return line_pitch * static_cast<double>(lines + 1) * small_print + 2.0 * small_print;
}

ChartSheet chart_sheet(const Answer& answer) {
  const Measure* height = find_measure(answer.findings, key::letter_height.name);
  Content content = content_of(answer);
  auto [sheet, way] = best(content, mm(height->value));
  const PrintLines& print = content.print(way);
  sheet.foot = print.under_table(way);
  if (way.apart)
    sheet.notes = print.rest_apart;
  else
    sheet.foot.insert(sheet.foot.end(), print.rest.begin(), print.rest.end());
  sheet.table.parts = std::move(content.table.parts);
  return sheet;
}

Length largest_letters(const Answer& answer) {
  const Content content = content_of(answer);
  int most = 0;
  // In tenths of a millimetre: from what surely fits to what surely does not.
  int too_large = 1000;
  while (too_large - most > 1) {
    const int middle = (most + too_large) / 2;
    (best(content, mm(0.1 * middle)).sheet.pages != 0 ? most : too_large) = middle;
  }
  return mm(0.1 * most);
}

} // namespace quillside
