#include <quillside/model/chart_grid.hpp>

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace quillside {

namespace {

/// How many of that size go into the room, of those there are. A thousandth of a millimetre is given way to: a row that
/// was made to fit fits.
int how_many(Length room, Length each, int there) {
  const double fit = std::floor((room + mm(0.001)) / each);
  return std::clamp(static_cast<int>(std::min(fit, 1e6)), 0, there);
}

int parts(int all, int most) { return (all + most - 1) / most; }

} // namespace

Length letter_height(Length distance, double share) {
  if (!(distance > mm(0)) || !(share > 0)) throw std::domain_error{"letters read from no distance"};
  return share * distance;
}

TableGrid table_grid(Room room, TableBlocks blocks, TableCount table) {
  if (table.rows < 1 || table.columns < 1) throw std::domain_error{"a table without a cell"};
  if (!(blocks.row > mm(0)) || !(blocks.column > mm(0))) throw std::domain_error{"a cell of no size"};
  const int rows = how_many(room.height - blocks.above - blocks.below, blocks.row, table.rows);
  const int columns = how_many(room.width - blocks.row_head, blocks.column, table.columns);
  if (rows == 0 || columns == 0) return {};
  TableGrid grid{0, 0, parts(table.rows, rows), parts(table.columns, columns)};
  grid.rows = parts(table.rows, grid.down);
  grid.columns = parts(table.columns, grid.across);
  return grid;
}

} // namespace quillside
