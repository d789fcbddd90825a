#include <quillside/page/chart.hpp>

#include <algorithm>

#include <quillside/job/chart_sheet.hpp>

namespace quillside::page {

namespace {

/// Columns and rows may be so much wider than they need to be, to fill their sheet.
constexpr double widest_stretch = 1.5;
constexpr double highest_stretch = 1.7;

constexpr Pen hairline{mm(0.2), 0.45};
constexpr Pen rule{mm(0.7)};
/// Where a sheet has many rows, every fifth rule is drawn so: an eye keeps its row.
constexpr std::size_t rows_together = 5;
constexpr Pen among_many{mm(0.35)};

/// A part of the table, and how it lies on its sheets.
struct Part {
  const ChartPart& says;
  const ChartLayout& lies;
};

/// Some of the cells of a part: those of one sheet.
struct Piece {
  std::size_t first_row;
  std::size_t end_row;
  std::size_t first_column;
  std::size_t end_column;
};

class Chart {
public:
  explicit Chart(const Document& document)
      : document_(document), sheet_(chart_sheet(document.answer)), canvas_({sheet_.width, sheet_.height}) {}

  Canvas draw() {
    for (std::size_t i = 0; i < sheet_.layouts.size(); ++i) draw_part({sheet_.table.parts[i], sheet_.layouts[i]});
    draw_notes();
    return std::move(canvas_);
  }

private:
  [[nodiscard]] Lettering large(Weight weight = Weight::plain) const { return {sheet_.letters, weight}; }
  [[nodiscard]] Lettering small() const { return {sheet_.small}; }
  [[nodiscard]] Length left() const { return paper_margin; }
  [[nodiscard]] Length right() const { return sheet_.width - paper_margin; }
  [[nodiscard]] Length margin() const { return sheet_.margin; }
  [[nodiscard]] Length table_width() const { return right() - left(); }

  void next_sheet() {
    if (number_ > 0) canvas_.add_sheet();
    ++number_;
  }

  void draw_part(const Part& part) {
    const auto rows = static_cast<std::size_t>(part.lies.grid.rows);
    const auto columns = static_cast<std::size_t>(part.lies.grid.columns);
    for (std::size_t row = 0; row < part.says.rows.size(); row += rows)
      for (std::size_t column = 0; column < sheet_.table.columns.size(); column += columns)
        draw_sheet(part, {row, std::min(row + rows, part.says.rows.size()), column,
                          std::min(column + columns, sheet_.table.columns.size())});
  }

  void draw_sheet(const Part& part, const Piece& piece) {
    next_sheet();
    title(part);
    const ChartLayout& lies = part.lies;
    column_ = std::min((table_width() - lies.row_head) / lies.grid.columns, widest_stretch * lies.column);
    const Length top = paper_margin + lies.title;
    const Length rows_at = top + lies.heading;
    const Length foot_at = sheet_.height - paper_margin - foot_height(sheet_.foot.size());
    row_ = std::min((foot_at - rows_at) / lies.grid.rows, highest_stretch * lies.row);
    headings(part, piece, top);
    for (std::size_t i = piece.first_row; i < piece.end_row; ++i) {
      const Length at = rows_at + static_cast<double>(i - piece.first_row) * row_;
      row_heading(part.says.rows[i], at);
      for (std::size_t k = piece.first_column; k < piece.end_column; ++k)
        cell(part.lies, part.says.cells[i][k], {column_left(part, piece, k) + margin(), at, column_, row_});
    }
    foot(sheet_.foot);
    rules(part, piece, top, rows_at);
  }

  [[nodiscard]] Length column_left(const Part& part, const Piece& piece, std::size_t column) const {
    return left() + part.lies.row_head + static_cast<double>(column - piece.first_column) * column_;
  }
  [[nodiscard]] Length table_right(const Part& part, const Piece& piece) const {
    return column_left(part, piece, piece.end_column);
  }

  /// The tool's name, and what it is and runs on in small print behind it.
  void title(const Part& part) {
    const Length foot = paper_margin + sheet_.letters;
    const Box name = canvas_.letters({left(), foot}, part.says.title, large(Weight::bold));
    const ChartAbout& about = part.lies.about;
    Length down = foot - sheet_.letters + about.letters;
    for (const auto& line : about.lines) {
      canvas_.letters({name.right() + about_gap * sheet_.letters, down}, line, {about.letters});
      down = down + line_pitch * about.letters;
    }
  }

  void headings(const Part& part, const Piece& piece, Length top) {
    for (std::size_t k = piece.first_column; k < piece.end_column; ++k) {
      const ChartHeading& heading = sheet_.table.columns[k];
      const Length at = column_left(part, piece, k) + margin();
      Length down = top + margin() + sheet_.letters;
      for (const auto& line : heading.lines) {
        canvas_.letters({at, down}, line, large());
        down = down + 1.35 * sheet_.letters;
      }
      stacked(heading.small, at, down - 1.35 * sheet_.letters + foot_under());
    }
    const auto& corner = part.lies.corner;
    stacked(corner, left() + margin(), top + part.lies.heading - margin() - height_of(corner.size()) + sheet_.small);
  }

  /// Lines of small print, the foot of the first at \p down.
  void stacked(const std::vector<std::string>& lines, Length at, Length down) {
    for (const auto& line : lines) {
      canvas_.letters({at, down}, line, small());
      down = down + line_pitch * sheet_.small;
    }
  }

  [[nodiscard]] Length height_of(std::size_t lines) const {
    return lines == 0 ? mm(0) : (1 + line_pitch * static_cast<double>(lines - 1)) * sheet_.small;
  }

  /// What stands under the large letters, with the room above it.
  [[nodiscard]] Length height_under(std::size_t lines) const {
    return lines == 0 ? mm(0) : under_gap * sheet_.letters + height_of(lines);
  }
  /// From the foot of large letters to that of the first small print under them.
  [[nodiscard]] Length foot_under() const { return under_gap * sheet_.letters + sheet_.small; }

  void row_heading(const ChartHeading& heading, Length top) {
    const Length high = sheet_.letters + height_under(heading.small.size());
    const Length foot = top + 0.5 * (row_ - high) + sheet_.letters;
    canvas_.letters({left() + margin(), foot}, heading.lines.front(), large());
    stacked(heading.small, left() + margin(), foot + foot_under());
  }

  void cell(const ChartLayout& lies, const ChartCell& cell, const Box& box) {
    // As high for every cell, so that the numbers of a row stand on one line.
    const Length under = sheet_.beside ? mm(0) : height_under(lies.lines);
    const Length foot = box.top + 0.5 * (box.height - sheet_.letters - under) + sheet_.letters;
    if (cell.lead.empty()) {
      canvas_.letters({box.left, foot}, sign_letter(cell.sign), large(Weight::bold));
    } else {
      canvas_.letters({box.left, foot}, cell.lead, large(Weight::bold));
      const Length beside = canvas_.width_of(cell.lead, large(Weight::bold)) + sign_gap * sheet_.letters;
      if (cell.sign != ChartSign::none)
        canvas_.letters({box.left + beside, foot}, sign_letter(cell.sign), {sign_height(sheet_.letters), Weight::bold});
    }
    const auto& small = sheet_.small_of(cell);
    if (sheet_.beside)
      stacked(small, box.left + lies.lead + margin(),
              box.top + 0.5 * (box.height - height_of(small.size())) + sheet_.small);
    else
      stacked(small, box.left, foot + foot_under());
  }

  void rules(const Part& part, const Piece& piece, Length top, Length rows_at) {
    const Length end = rows_at + static_cast<double>(piece.end_row - piece.first_row) * row_;
    const bool many = piece.end_row - piece.first_row > 2 * rows_together;
    for (std::size_t row = 1; row <= piece.end_row - piece.first_row; ++row) {
      const Length foot = rows_at + static_cast<double>(row) * row_;
      canvas_.line({left(), foot}, {table_right(part, piece), foot},
                   many && row % rows_together == 0 ? among_many : hairline);
    }
    canvas_.line({left(), top}, {table_right(part, piece), top}, rule);
    canvas_.line({left(), rows_at}, {table_right(part, piece), rows_at}, rule);
    for (std::size_t k = piece.first_column; k < piece.end_column; ++k) {
      const Length at = column_left(part, piece, k);
      canvas_.line({at, top}, {at, end}, hairline);
    }
  }

  /// Lines of small print from there on; a sign before its line, and the line set in behind it.
  void print(const std::vector<ChartLine>& lines, std::size_t from, std::size_t to, Length down, Length letters) {
    for (std::size_t i = from; i < to; ++i) {
      const bool signed_ = lines[i].sign != ChartSign::none;
      if (signed_) canvas_.letters({left(), down}, sign_letter(lines[i].sign), {letters, Weight::bold});
      canvas_.letters({left() + (signed_ ? 2.0 * letters : mm(0)), down}, lines[i].text,
                      {letters, lines[i].heavy ? Weight::bold : Weight::plain});
      down = down + line_pitch * letters;
    }
  }

  /// What stands under every sheet, and the day and the number of the sheet on the last line.
  void foot(const std::vector<ChartLine>& lines) {
    const Length top = sheet_.height - paper_margin - foot_height(lines.size()) + small_print;
    print(lines, 0, lines.size(), top + line_pitch * small_print, small_print);
    const Length down = top + line_pitch * static_cast<double>(lines.size() + 1) * small_print;
    std::string left_words = document_.page.date + "   " + document_.page.maker;
    if (!sheet_.notes.empty() && number_ <= sheet_.table_sheets)
      left_words += "   more cautions, and the sources: page " + std::to_string(sheet_.table_sheets + 1);
    canvas_.letters({left(), down}, left_words, {small_print});
    canvas_.letters({right(), down}, "page " + std::to_string(number_) + " of " + std::to_string(sheet_.pages),
                    {small_print, Weight::bold}, {Across::right});
  }

  void draw_notes() {
    const auto most = static_cast<std::size_t>(sheet_.notes_a_sheet);
    for (std::size_t from = 0; from < sheet_.notes.size(); from += most) {
      next_sheet();
      canvas_.letters({left(), paper_margin + mm(4)}, "Cautions and sources", {mm(4), Weight::bold});
      print(sheet_.notes, from, std::min(from + most, sheet_.notes.size()), paper_margin + notes_head, notes_print);
      foot({});
    }
  }

  const Document& document_;
  ChartSheet sheet_;
  Canvas canvas_;
  int number_ = 0; // of the sheet being drawn, from 1
  Length column_{};
  Length row_{};
};

} // namespace

Canvas draw_chart(const Document& document) { return Chart(document).draw(); }

} // namespace quillside::page
