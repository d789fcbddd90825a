#pragma once
// A table on sheets of paper: how large its letters are, how many rows and columns a sheet takes, how many sheets.
// Assumes: every row as high as the highest, every column as wide as the widest; headings repeated on every sheet.
// Leaves out: light, contrast and eyesight, on which the distance depends as well.

#include <quillside/model/law.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

inline constexpr Law letter_height_law{"letter-height", "h = s d", "common practice, no source", "common practice"};

/// How high a capital is that is read from \p distance. \param share of the distance, above 0; both otherwise throw
/// std::domain_error
Length letter_height(Length distance, double share);

/// What may be printed on of a sheet, as it hangs.
struct Room {
  Length width;
  Length height;
};

/// What has to find room on it.
struct TableBlocks {
  Length row_head; // width of the column of row headings
  Length column;   // width of any other column
  Length row;      // height of a row
  Length above;    // height of what stands over the first row: title, column headings
  Length below;    // height of what stands under the last: the foot
};

struct TableCount {
  int rows = 0;
  int columns = 0;
};

/// What a sheet takes, evened out: eight rows on two sheets are four and four.
struct TableGrid {
  int rows = 0;    // a sheet, at most
  int columns = 0; // a sheet, at most
  int down = 0;    // sheets one below the other
  int across = 0;  // sheets side by side

  [[nodiscard]] bool fits() const { return rows > 0 && columns > 0; }
  [[nodiscard]] int sheets() const { return down * across; }
};

/// A grid that does not fit is all 0. A table without a row or a column, or a block of no size, throws
/// std::domain_error.
TableGrid table_grid(Room room, TableBlocks blocks, TableCount table);

} // namespace quillside
