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
    for (const auto& part : sheet_.parts) draw_part(part);
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

  void draw_part(const ChartPart& part) {
    const auto rows = static_cast<std::size_t>(part.grid.rows);
    const auto columns = static_cast<std::size_t>(part.grid.columns);
    for (std::size_t row = 0; row < part.rows.size(); row += rows)
      for (std::size_t column = 0; column < sheet_.columns.size(); column += columns)
        draw_sheet(part, {row, std::min(row + rows, part.rows.size()), column,
                          std::min(column + columns, sheet_.columns.size())});
  }

  void draw_sheet(const ChartPart& part, const Piece& piece) {
    next_sheet();
    title(part);
    const Length room = table_width() - part.row_head;
    column_ = std::min(room / part.grid.columns, widest_stretch * part.column);
    const Length top = paper_margin + sheet_.title;
    const Length rows_at = top + part.heading;
    const Length foot_at = sheet_.height - paper_margin - foot_height(sheet_.foot.size());
    row_ = std::min((foot_at - rows_at) / part.grid.rows, highest_stretch * part.row);
    headings(part, piece, top);
    for (std::size_t i = piece.first_row; i < piece.end_row; ++i) {
      const Length at = rows_at + static_cast<double>(i - piece.first_row) * row_;
      row_heading(part.rows[i], at);
      for (std::size_t k = piece.first_column; k < piece.end_column; ++k)
        cell(part, part.cells[i][k], {column_left(part, piece, k) + margin(), at, column_, row_});
    }
    foot(sheet_.foot);
    // Behind the letters, so that those go to the drawing library together.
    for (const auto& [which, at, letters] : signs_) sign(which, at, letters);
    signs_.clear();
    rules(part, piece, top, rows_at);
  }

  [[nodiscard]] Length column_left(const ChartPart& part, const Piece& piece, std::size_t column) const {
    return left() + part.row_head + static_cast<double>(column - piece.first_column) * column_;
  }
  [[nodiscard]] Length table_right(const ChartPart& part, const Piece& piece) const {
    return column_left(part, piece, piece.end_column);
  }

  /// The tool's name, and what it is and runs on in small print behind it.
  void title(const ChartPart& part) {
    const Length foot = paper_margin + sheet_.letters;
    const Box name = canvas_.letters({left(), foot}, part.title, large(Weight::bold));
    const Length at = name.right() + 0.6 * sheet_.letters;
    Lettering about = small();
    for (const auto& line : part.about) {
      const Length width = canvas_.width_of(line, about);
      if (width > right() - at) about.height = std::max(small_print, about.height * ((right() - at) / width));
    }
    Length down = foot - sheet_.letters + about.height;
    for (const auto& line : part.about)
      for (const auto& piece : canvas_.broken(line, about, right() - at)) {
        canvas_.letters({at, down}, piece, about);
        down = down + line_pitch * about.height;
      }
  }

  void headings(const ChartPart& part, const Piece& piece, Length top) {
    for (std::size_t k = piece.first_column; k < piece.end_column; ++k) {
      const ChartHeading& heading = sheet_.columns[k];
      const Length at = column_left(part, piece, k) + margin();
      Length down = top + margin() + sheet_.letters;
      for (const auto& line : heading.lines) {
        canvas_.letters({at, down}, line, large());
        down = down + 1.35 * sheet_.letters;
      }
      stacked(heading.small, at, down - 1.35 * sheet_.letters + foot_under());
    }
    stacked(part.corner, left() + margin(),
            top + part.heading - margin() - height_of(part.corner.size()) + sheet_.small);
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

  void cell(const ChartPart& part, const ChartCell& cell, const Box& box) {
    // As high for every cell, so that the numbers of a row stand on one line.
    const Length under = sheet_.beside ? mm(0) : height_under(drawn_of(part).lines);
    const Length foot = box.top + 0.5 * (box.height - sheet_.letters - under) + sheet_.letters;
    Length at = box.left;
    if (!cell.lead.empty()) {
      canvas_.letters({at, foot}, cell.lead, large(Weight::bold));
      at = at + canvas_.width_of(cell.lead, large(Weight::bold)) + sign_gap * sheet_.letters;
    }
    signs_.push_back({cell.sign, {at, foot}, sheet_.letters});
    if (sheet_.beside)
      stacked(cell.small, box.left + drawn_of(part).lead + margin(),
              box.top + 0.5 * (box.height - height_of(cell.small.size())) + sheet_.small);
    else
      stacked(cell.small, box.left, foot + foot_under());
  }

  /// What the cells of a part come to as they are drawn.
  struct Drawn {
    Length lead;       // the widest number with its sign
    std::size_t lines; // most lines of small print
  };

  const Drawn& drawn_of(const ChartPart& part) {
    if (measured_ == &part) return drawn_;
    measured_ = &part;
    drawn_ = {};
    for (const auto& row : part.cells)
      for (const auto& cell : row) {
        drawn_.lead = std::max(drawn_.lead, lead_of(cell));
        drawn_.lines = std::max(drawn_.lines, cell.small.size());
      }
    return drawn_;
  }

  [[nodiscard]] Length lead_of(const ChartCell& cell) const {
    const bool signed_ = cell.sign != ChartSign::none;
    if (cell.lead.empty()) return signed_ ? sheet_.letters : mm(0);
    return canvas_.width_of(cell.lead, large(Weight::bold)) +
           (signed_ ? (sign_gap + sign_width) * sheet_.letters : mm(0));
  }

  /// A sign on the foot of letters of that height.
  void sign(ChartSign sign, Spot at, Length letters) {
    const Length width = sign_width * letters;
    const Length low = at.down - 0.2 * letters;
    const Length high = low - 0.52 * letters;
    const Pen pen{0.07 * letters};
    const Spot middle{at.right + 0.5 * width, high};
    switch (sign) {
    case ChartSign::none: break;
    case ChartSign::highest: canvas_.outline({{at.right, low}, {at.right + width, low}, middle}, pen); break;
    case ChartSign::lowest:
      canvas_.outline({{at.right, high}, {at.right + width, high}, {middle.right, low}}, pen);
      break;
    case ChartSign::too_fast: canvas_.fill({{at.right, high}, {at.right + width, high}, {middle.right, low}}, 0); break;
    case ChartSign::cross: {
      const Pen heavy{0.12 * letters};
      const Length top = at.down - 0.85 * letters;
      const Length foot = at.down - 0.1 * letters;
      canvas_.line({at.right, top}, {at.right + 0.75 * letters, foot}, heavy);
      canvas_.line({at.right, foot}, {at.right + 0.75 * letters, top}, heavy);
      break;
    }
    case ChartSign::dash: {
      const Length down = at.down - 0.45 * letters;
      canvas_.line({at.right, down}, {at.right + 0.75 * letters, down}, {0.1 * letters});
      break;
    }
    }
  }

  void rules(const ChartPart& part, const Piece& piece, Length top, Length rows_at) {
    const Length end = rows_at + static_cast<double>(piece.end_row - piece.first_row) * row_;
    for (std::size_t i = piece.first_row; i < piece.end_row; ++i) {
      const Length foot = rows_at + static_cast<double>(i - piece.first_row + 1) * row_;
      canvas_.line({left(), foot}, {table_right(part, piece), foot}, hairline);
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
      if (signed_) signs_.push_back({lines[i].sign, {left(), down}, 1.3 * letters});
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
    const int cells = sheet_.pages - notes_sheets();
    std::string left_words = document_.page.date + "   " + document_.page.maker;
    if (notes_sheets() > 0 && number_ <= cells)
      left_words += "   more cautions, and the sources: page " + std::to_string(cells + 1);
    canvas_.letters({left(), down}, left_words, {small_print});
    canvas_.letters({right(), down}, "page " + std::to_string(number_) + " of " + std::to_string(sheet_.pages),
                    {small_print, Weight::bold}, {Across::right});
  }

  [[nodiscard]] int notes_sheets() const {
    const auto lines = static_cast<int>(sheet_.notes.size());
    return lines == 0 ? 0 : (lines + sheet_.notes_a_sheet - 1) / sheet_.notes_a_sheet;
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
  struct SignAt {
    ChartSign sign;
    Spot at;
    Length letters;
  };
  std::vector<SignAt> signs_; // yet to be drawn on this sheet
  Length column_{};
  Length row_{};
  const ChartPart* measured_ = nullptr;
  Drawn drawn_{};
};

} // namespace

Canvas draw_chart(const Document& document) { return Chart(document).draw(); }

} // namespace quillside::page
