#include <quillside/page/column.hpp>

namespace quillside::page {

Column::Column(Canvas& canvas, const Margins& margins) : canvas_(canvas), margins_(margins), down_(margins.top) {}

void Column::gap(Length height) {
  if (!at_top()) down_ = down_ + height;
}

void Column::next_sheet() {
  canvas_.add_sheet();
  down_ = margins_.top;
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
  bool first = true;
  for (const auto& line : lines_of(text, lettering, setting)) {
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

} // namespace quillside::page
