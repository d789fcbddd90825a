// Rows and columns on sheets: sums that can be done on a ruler.

#include "catch.hpp"

#include <quillside/model/chart_grid.hpp>

using namespace quillside;
using test::WithinAbs;

namespace {

// 190 x 277 mm to print on (a4 less 10 mm all round); a column of headings of 30, columns of 40; 25 over the rows, 52
// under.
constexpr Room room{mm(190), mm(277)};
constexpr TableBlocks blocks{mm(30), mm(40), mm(20), mm(25), mm(52)};

} // namespace

TEST_CASE("letters are a share of the distance they are read from") {
  CHECK_THAT(in_mm(letter_height(mm(2000), 0.005)), WithinAbs(10, 1e-12));
  CHECK_THAT(in_mm(letter_height(mm(450), 0.005)), WithinAbs(2.25, 1e-12));
  CHECK_THROWS_AS(letter_height(mm(0), 0.005), std::domain_error);
  CHECK_THROWS_AS(letter_height(mm(2000), 0), std::domain_error);
}

TEST_CASE("as many rows and columns as the room has: 160 over 40 is four columns, 200 over 20 is ten rows") {
  const TableGrid whole = table_grid(room, blocks, {10, 4});
  CHECK(whole.sheets() == 1);
  CHECK(whole.rows == 10);
  CHECK(whole.columns == 4);
  // One more of either takes a second sheet, and the two are evened out.
  const TableGrid longer = table_grid(room, blocks, {11, 4});
  CHECK(longer.down == 2);
  CHECK(longer.rows == 6);
  const TableGrid wider = table_grid(room, blocks, {10, 5});
  CHECK(wider.across == 2);
  CHECK(wider.columns == 3);
  const TableGrid both = table_grid(room, blocks, {21, 9});
  CHECK(both.down == 3);
  CHECK(both.across == 3);
  CHECK(both.rows == 7);
  CHECK(both.columns == 3);
  CHECK(both.sheets() == 9);
}

TEST_CASE("every cell has a place, and no sheet holds more than there is room for") {
  for (int rows = 1; rows <= 60; ++rows) {
    for (int columns = 1; columns <= 20; ++columns) {
      const TableGrid grid = table_grid(room, blocks, {rows, columns});
      const bool right = grid.fits() && grid.rows * grid.down >= rows && grid.columns * grid.across >= columns &&
                         grid.rows <= 10 && grid.columns <= 4 && (grid.down - 1) * grid.rows < rows &&
                         (grid.across - 1) * grid.columns < columns;
      INFO(rows << " x " << columns);
      CHECK(right);
    }
  }
}

TEST_CASE("what does not fit is nothing, and a row that was made to fit fits") {
  CHECK_FALSE(table_grid({mm(69), mm(277)}, blocks, {1, 1}).fits());
  CHECK_FALSE(table_grid({mm(190), mm(96)}, blocks, {1, 1}).fits());
  CHECK(table_grid({mm(70), mm(97)}, blocks, {1, 1}).fits());
  // 3 x 0.1 is a little more than 0.3 in binary: still three rows.
  CHECK(table_grid({mm(10), mm(0.3)}, {mm(1), mm(1), mm(0.1), mm(0), mm(0)}, {3, 1}).rows == 3);
  CHECK_THROWS_AS(table_grid(room, blocks, {0, 3}), std::domain_error);
  CHECK_THROWS_AS(table_grid(room, blocks, {3, 0}), std::domain_error);
  CHECK_THROWS_AS(table_grid(room, {mm(30), mm(0), mm(20), mm(0), mm(0)}, {3, 3}), std::domain_error);
}
