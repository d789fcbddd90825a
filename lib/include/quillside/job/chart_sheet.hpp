#pragma once
// How a chart comes on paper: what each cell reads, what has to find room, how many sheets it takes. The job counts its
// pages by this, the text and the page floor show it: the three cannot differ. Made from the Answer alone.
//
// The number to dial in (a step or a speed), the name of a tool, the headings of rows and columns are as high as
// --read-from asks. Small print is read from near by: the speed of a step, the speed wanted, what a figure rests on,
// the foot.
// Leaves out: which font it is (words/text_width takes a wide one).

#include <string>
#include <vector>

#include <quillside/answer/answer.hpp>
#include <quillside/model/chart_grid.hpp>

namespace quillside {

/// Height of the smallest letters on a sheet: those of the foot.
inline constexpr Length small_print = mm(2);
/// Height of the letters of sheets that hold nothing else.
inline constexpr Length notes_print = mm(2.6);
/// What a printer leaves blank along each edge.
inline constexpr Length paper_margin = mm(10);

/// Signs that are drawn, never letters of a font; each differs in shape, none in colour.
enum class ChartSign {
  none,
  highest,  // the fastest the machine gives
  lowest,   // the slowest it gives
  too_fast, // the slowest it gives, and still faster than wanted
  cross,    // nothing to set: do not
  dash      // nothing known
};

struct ChartCell {
  std::string lead; // the step or speed to set; empty where there is none
  bool is_step = false;
  ChartSign sign = ChartSign::none;
  std::vector<std::string> small; // beside or under it
};

struct ChartHeading {
  std::vector<std::string> lines; // as large as the numbers
  std::vector<std::string> small; // under them
};

/// The sheets of one tool.
struct ChartPart {
  std::string title;               // large
  std::vector<std::string> about;  // small, beside it
  std::vector<std::string> corner; // small, over the row headings: what a cell holds
  std::vector<ChartHeading> rows;
  std::vector<std::vector<ChartCell>> cells;
  TableGrid grid;
  Length row_head{}; // widths, with the room round them
  Length column{};
  Length row{};     // heights
  Length heading{}; // of the column headings
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
  Length margin{};     // round what stands in a cell
  bool beside = false; // small print beside the number; otherwise under it
  Length title{};      // height of the title
  std::vector<ChartHeading> columns;
  std::vector<ChartPart> parts;
  std::vector<ChartLine> foot;      // of every sheet that has cells; the page number stands under it
  std::vector<ChartLine> notes;     // on sheets of their own behind; empty where the foot holds all
  std::vector<std::string> reasons; // why cells have nothing to set, each once; they are among the notes as well
  int notes_a_sheet = 0;
  int pages = 0; // 0: it does not fit
};

/// Line pitch of the foot and of small print, in heights of their letters.
inline constexpr double line_pitch = 1.6;
/// Room round what stands in a cell, in heights of the large letters, and at the least.
inline constexpr double cell_margin = 0.22;
inline constexpr Length least_cell_margin = mm(1);
/// What a sign takes, in heights of the large letters.
inline constexpr double sign_width = 0.55;
inline constexpr double sign_gap = 0.15;
/// How much wider the numbers are drawn than plain letters: they are bold.
inline constexpr double bold = 1.12;
/// Room between large letters and small print under them, in heights of the large: what a letter reaches under its
/// foot.
inline constexpr double under_gap = 0.32;
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
