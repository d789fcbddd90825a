#pragma once
// Text and boxes set below one another down a sheet, and on to the next sheet where one is full.

#include <string_view>

#include <quillside/page/canvas.hpp>

namespace quillside::page {

/// What a column leaves free of each sheet.
struct Margins {
  Length side{};
  Length top{};
  Length bottom{};
  Length gutter{}; // on the left, besides side
};

/// How a paragraph stands in its column.
struct Setting {
  Length indent{};            // of every line
  Length hanging{};           // of every line but the first, more
  double leading = 1.65;      // foot of a line to foot of the next, over the height of a capital
  std::string_view lead = {}; // bold words before the first line, which the rest is set in after
};

class Column {
public:
  Column(Canvas& canvas, const Margins& margins);

  [[nodiscard]] Length left() const { return margins_.side + margins_.gutter; }
  [[nodiscard]] Length width() const { return canvas_.sheet().width - 2.0 * margins_.side - margins_.gutter; }
  /// Where the next thing begins, from the top of the sheet.
  [[nodiscard]] Length down() const { return down_; }
  [[nodiscard]] Length room() const { return canvas_.sheet().height - margins_.bottom - down_; }
  [[nodiscard]] Length whole_room() const { return canvas_.sheet().height - margins_.bottom - margins_.top; }
  [[nodiscard]] bool at_top() const { return down_ == margins_.top; }

  /// Nothing at the top of a sheet.
  void gap(Length height);
  void next_sheet();
  /// Turns to the next sheet when this one has no room for so much and a whole one has.
  void keep_together(Length height);
  /// A box over the whole width; on the next sheet when this one has no room for it.
  Box take(Length height);
  void rule(const Pen& pen = {});
  /// On one sheet, unless it is higher than a whole one.
  void paragraph(std::string_view text, const Lettering& lettering, const Setting& setting = {});
  /// Rows of cells that stand under one another; where they are too wide, the widest are broken.
  void rows(const std::vector<std::vector<std::string>>& rows, const Lettering& lettering);
  /// How high that paragraph would be.
  [[nodiscard]] Length height_of(std::string_view text, const Lettering& lettering, const Setting& setting = {}) const;

private:
  [[nodiscard]] std::vector<std::string> lines_of(std::string_view text, const Lettering& lettering,
                                                  const Setting& setting) const;
  [[nodiscard]] std::vector<Length> widths_of(const std::vector<std::vector<std::string>>& rows,
                                              const Lettering& lettering, Length apart) const;
  [[nodiscard]] Length text_start(const Lettering& lettering, const Setting& setting) const;

  Canvas& canvas_;
  Margins margins_;
  Length down_;
};

} // namespace quillside::page
