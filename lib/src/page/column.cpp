#include <quillside/page/column.hpp>

#include <algorithm>

namespace quillside::page {

Column::Column(Canvas& canvas, const Margins& margins) : canvas_(canvas), margins_(margins), down_(margins.top) {}

void Column::gap(Length height) {
  if (!at_top()) down_ = down_ + height;
}

void Column::next_sheet() {
  canvas_.add_sheet();
  down_ = margins_.top;
}

void Column::keep_together(Length height) {
  if (height > room() && height <= whole_room()) next_sheet();
}

Box Column::take(Length height) {
  if (height > room() && !at_top()) next_sheet();
  const Box box{left(), down_, width(), height};
  down_ = down_ + height;
  return box;
}

void Column::rule(const Pen& pen) {
  const Box box = take(pen.width);
  canvas_.line({box.left, box.top + 0.5 * pen.width}, {box.right(), box.top + 0.5 * pen.width}, pen);
}

Length Column::text_start(const Lettering& lettering, const Setting& setting) const {
  if (setting.lead.empty()) return setting.indent + setting.hanging;
  Lettering bold = lettering;
  bold.weight = Weight::bold;
  return setting.indent + canvas_.width_of(setting.lead, bold) + 0.8 * lettering.height;
}

std::vector<std::string> Column::lines_of(std::string_view text, const Lettering& lettering,
                                          const Setting& setting) const {
  return canvas_.broken(text, lettering, width() - text_start(lettering, setting));
}

Length Column::height_of(std::string_view text, const Lettering& lettering, const Setting& setting) const {
  return static_cast<double>(lines_of(text, lettering, setting).size()) * setting.leading * lettering.height;
}

void Column::paragraph(std::string_view text, const Lettering& lettering, const Setting& setting) {
  const Length start = text_start(lettering, setting);
  const auto lines = lines_of(text, lettering, setting);
  keep_together(static_cast<double>(lines.size()) * setting.leading * lettering.height);
  bool first = true;
  for (const auto& line : lines) {
    const Box box = take(setting.leading * lettering.height);
    // The capitals stand in the middle of their line.
    const Length foot = box.top + 0.5 * (box.height + lettering.height);
    if (first && !setting.lead.empty()) {
      Lettering bold = lettering;
      bold.weight = Weight::bold;
      canvas_.letters({left() + setting.indent, foot}, setting.lead, bold);
    }
    canvas_.letters({left() + (first && setting.lead.empty() ? setting.indent : start), foot}, line, lettering);
    first = false;
  }
}

void Column::rows(const std::vector<std::vector<std::string>>& rows, const Lettering& lettering) {
  const Length apart = 1.2 * lettering.height;
  const std::vector<Length> widths = widths_of(rows, lettering, apart);
  for (const auto& row : rows) {
    std::vector<std::vector<std::string>> cells;
    std::size_t high = 1;
    for (std::size_t i = 0; i < row.size(); ++i) {
      cells.push_back(canvas_.broken(row[i], lettering, widths[i] + mm(0.1)));
      high = std::max(high, cells.back().size());
    }
    constexpr double leading = 1.65;
    const Box box = take(static_cast<double>(high) * leading * lettering.height);
    Length at = box.left;
    for (std::size_t i = 0; i < cells.size(); ++i) {
      for (std::size_t k = 0; k < cells[i].size(); ++k)
        canvas_.letters({at, box.top + (static_cast<double>(k) * leading + 0.5 * (leading + 1)) * lettering.height},
                        cells[i][k], lettering);
      at = at + widths[i] + (widths[i] > mm(0) ? apart : mm(0));
    }
  }
}

std::vector<Length> Column::widths_of(const std::vector<std::vector<std::string>>& rows, const Lettering& lettering,
                                      Length apart) const {
  std::vector<Length> widths;
  for (const auto& row : rows) {
    if (row.size() > widths.size()) widths.resize(row.size());
    for (std::size_t i = 0; i < row.size(); ++i)
      if (!row[i].empty()) widths[i] = std::max(widths[i], canvas_.width_of(row[i], lettering));
  }
  const auto gaps = std::count_if(widths.begin(), widths.end(), [](Length one) { return one > mm(0); }) - 1;
  const Length free = width() - static_cast<double>(gaps) * apart;
  // No column is wider than the widest that lets all of them in.
  Length most = free;
  const auto taken = [&] {
    Length all{};
    for (const auto one : widths) all = all + std::min(one, most);
    return all;
  };
  while (taken() > free && most > lettering.height) most = most - 0.5 * lettering.height;
  for (auto& one : widths) one = std::min(one, most);
  return widths;
}

} // namespace quillside::page
