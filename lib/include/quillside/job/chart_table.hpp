#pragma once
// What a chart says in its cells and headings, before anything is laid on paper. Made from the Answer alone; the text
// and the sheets share it.

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include <quillside/answer/answer.hpp>
#include <quillside/words/text_width.hpp>

namespace quillside {

/// Signs of a cell; each differs in shape, none in colour.
enum class ChartSign {
  none,
  highest,  // the fastest the machine gives
  lowest,   // the slowest it gives
  too_fast, // the slowest it gives, and still faster than wanted
  cross,    // nothing to set: do not
  dash      // nothing known
};
/// The letter that is drawn for it; empty for none.
const char* sign_letter(ChartSign sign);

/// What a figure rests on where nobody saw a page of it: a mark of a cell, and the letter that stands for it behind the
/// number where there is no room for the word.
struct ChartMark {
  std::string_view name;
  char letter;
  std::string_view meaning;
};
inline constexpr std::array<ChartMark, 4> standing_marks{
    {{"memory", '*', "the figure is from memory, nobody read its page"},
     {"derived", 'd', "the figure follows by a stated rule from another row"},
     {"practice", 'p', "common practice, no source"},
     {"demo", 'i', "the figure is invented for the demo"}}};
/// The letter of `back off`.
inline constexpr char back_off_letter = '!';

struct ChartCell {
  std::string lead; // the step or speed to set; empty where there is none
  bool is_step = false;
  ChartSign sign = ChartSign::none;
  std::string wanted;             // rev/min; empty where it is what is set
  std::vector<std::string> small; // small print in words
  std::vector<std::string> brief; // the same in one short line: the speed wanted, and letters for the words
};

struct ChartHeading {
  std::vector<std::string> lines; // as large as the numbers
  std::vector<std::string> small; // under them
};

/// A step of the machine and its speed, as both are printed.
struct ChartStep {
  std::string name;
  std::string speed; // rev/min
};

/// The rows of one tool.
struct ChartPart {
  std::string title;            // of the tool
  std::string cutter;           // what it is made of
  std::string machine;          // empty: none was named
  std::vector<ChartStep> steps; // those that stand in cells, the slowest first; empty for a machine without
  std::vector<ChartHeading> rows;
  std::vector<std::vector<ChartCell>> cells;
};

struct ChartTable {
  std::vector<ChartHeading> columns; // without the names of the metals: add_name, once the width is known
  std::vector<ChartPart> parts;
};

/// \param answer of `chart`, with its rows, columns and cells
ChartTable chart_table(const Answer& answer);

/// Puts under a column's heading what the metal is called besides its key, in lines of that room; a name that takes
/// more than three is left away.
void add_name(ChartHeading& heading, const std::vector<Member>& column, LineRoom line);

/// Why cells have nothing to set: each reason once, with the first cell that it holds for.
std::vector<std::string> chart_reasons(const Answer& answer);

template <class Each> void each_cell(const ChartPart& part, Each each) {
  for (const auto& row : part.cells)
    for (const auto& cell : row) each(cell);
}

} // namespace quillside
