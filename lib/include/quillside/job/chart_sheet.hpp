#pragma once
// How a chart comes on paper: what has to find room, how many sheets it takes. The job counts its pages by this, the
// text and the page floor show it: the three cannot differ. Made from the Answer alone.
//
// The number to dial in (a step or a speed), the name of a tool, the headings of rows and columns are as high as
// --read-from asks. Small print is read from near by: the speed of a step, the speed wanted, what a figure rests on,
// the foot. Where it saves a sheet, the small print of a cell is one short line, and the foot and the title say the
// rest. Leaves out: which font it is (words/text_width takes a wide one).

#include <string>
#include <vector>

#include <quillside/job/chart_table.hpp>
#include <quillside/model/chart_grid.hpp>

namespace quillside {

/// Height of the smallest letters on a sheet: those of the foot.
inline constexpr Length small_print = mm(2);
/// Height of the letters of sheets that hold nothing else.
inline constexpr Length notes_print = mm(2.6);
/// What a printer leaves blank along each edge.
inline constexpr Length paper_margin = mm(10);

/// Small print beside the title of a part: what the tool is, and what it runs on.
struct ChartAbout {
  std::vector<std::string> lines;
  Length letters{};
};

/// How a part of the table lies on its sheets.
struct ChartLayout {
  ChartAbout about;
  std::vector<std::string> corner; // small, over the row headings: what a cell holds
  TableGrid grid;
  Length title{};    // heights
  Length heading{};  // of the column headings
  Length row{};      // with the room round it, as the widths below
  Length row_head{}; // widths
  Length column{};
  Length lead{};         // of the widest number with its sign
  std::size_t lines = 0; // of small print, the most in a cell
};

/// A line of the foot, in small print.
struct ChartLine {
  ChartSign sign = ChartSign::none; // explained by the line; it stands before it
  std::string text;
  bool heavy = false; // in bold: a danger
};

struct ChartSheet {
  Length width{}; // of the paper, as it hangs
  Length height{};
  Length letters{};    // height of a capital
  Length small{};      // of small print in a cell
  Length margin{};     // beside what stands in a cell
  Length row_margin{}; // over and under it
  bool beside = false; // small print beside the number; otherwise under it
  bool brief = false;  // small print in one short line
  ChartTable table;
  std::vector<ChartLayout> layouts; // one a part of the table
  std::vector<ChartLine> foot;      // of every sheet that has cells; the page number stands under it
  std::vector<ChartLine> notes;     // on sheets of their own behind; empty where the foot holds all
  int notes_a_sheet = 0;
  int table_sheets = 0; // those with cells
  int pages = 0;        // those and the sheets of notes; 0: it does not fit

  [[nodiscard]] const std::vector<std::string>& small_of(const ChartCell& cell) const {
    return brief ? cell.brief : cell.small;
  }
};

/// Line pitch of the foot and of small print, in heights of their letters.
inline constexpr double line_pitch = 1.6;
/// Letters of a sign beside a number that is so large, and the room between them in heights of the number.
Length sign_height(Length letters);
inline constexpr double sign_gap = 0.15;
/// How wide a sign is at most, in heights of a capital of its letters.
inline constexpr double sign_width = 1.2;
/// How much wider the numbers are drawn than plain letters: they are bold.
inline constexpr double bold = 1.12;
/// Room between large letters and small print under them, in heights of the large: what a letter reaches under its
/// foot.
inline constexpr double under_gap = 0.32;
/// Room between a title and what stands beside it, in heights of the title.
inline constexpr double about_gap = 0.6;
/// What heads a sheet of notes takes.
inline constexpr Length notes_head = mm(12);
/// The foot takes a line for the page number, and some room over its first line.
Length foot_height(std::size_t lines);

/// A distance in metres, to the centimetre: 2, 1.5, 0.45.
std::string metres_text(const Measure& distance);

/// \param answer of `chart`, with its rows, columns and cells, its inputs, cautions and sources
ChartSheet chart_sheet(const Answer& answer);

/// The largest letters, to a tenth of a millimetre, with which one row and one column of the chart still go on its
/// paper.
Length largest_letters(const Answer& answer);

} // namespace quillside
