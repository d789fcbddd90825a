#include <quillside/page/card.hpp>

#include <algorithm>
#include <array>

#include <quillside/page/column.hpp>

#include "card_drawing.hpp"
#include "foot.hpp"

namespace quillside::page {

namespace {

constexpr Margins margins{mm(9), mm(9), foot_height + mm(2.5)};

/// Pieces of a line that stand apart by two blanks or more.
std::vector<std::string> pieces_of(const std::string& text) {
  std::vector<std::string> all;
  for (std::size_t from = 0; from < text.size();) {
    const std::size_t to = std::min(text.find("  ", from), text.size());
    if (to > from) all.push_back(text.substr(from, to - from));
    from = std::min(text.find_first_not_of(' ', to), text.size());
  }
  return all;
}

std::string joined(const std::vector<std::string>& pieces, std::size_t from) {
  std::string line;
  for (std::size_t i = from; i < pieces.size(); ++i) line += (line.empty() ? "" : "   ") + pieces[i];
  return line;
}

/// Whether a line begins with a word in capitals, as STOP or DEPTH: what is set before anything else.
bool is_loud(const std::string& text) {
  const std::size_t end = text.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZ");
  return end != std::string::npos && end >= 3 && text[end] == ' ';
}

class Card {
public:
  /// \param scale of every letter
  Card(const Document& document, double scale)
      : document_(document), scale_(scale), canvas_(find_paper(document.page.paper).half), column_(canvas_, margins) {}

  Canvas draw() {
    title();
    const auto drawing = drawing_of(document_);
    bool drawn = !drawing || drawing->own_sheet;
    for (const auto& line : document_.text) {
      // A drawing stands between what heads the card and what follows.
      const bool heads = line.part == Part::headline || line.part == Part::basis || line.part == Part::reason;
      if (!drawn && !heads) {
        picture(*drawing);
        drawn = true;
      }
      tell(line);
    }
    table();
    if (!drawn) picture(*drawing);
    text_sheets_ = canvas_.sheets();
    if (drawing && drawing->own_sheet) {
      column_.next_sheet();
      drawing->draw(canvas_, column_.take(column_.whole_room()), document_);
    }
    draw_feet(canvas_, document_, margins, "card");
    return std::move(canvas_);
  }

  /// How many of its sheets bear text; those of a drawing that stands alone come behind them.
  [[nodiscard]] int text_sheets() const { return text_sheets_; }

private:
  [[nodiscard]] Lettering letter(Length height, Weight weight = Weight::plain) const {
    return {std::max(least_letters, scale_ * height), weight};
  }
  [[nodiscard]] Length space(double amount) const { return mm(scale_ * amount); }

  void title() {
    column_.paragraph(document_.page.title, letter(mm(2.8), Weight::bold));
    column_.gap(space(0.6));
    column_.rule({mm(0.35)});
    column_.gap(space(2));
  }

  void tell(const Line& line) {
    if (line.text.empty()) return;
    if (!line.cells.empty()) {
      if (rows_.empty()) column_.gap(space(1.2));
      rows_.push_back(line.cells);
      last_ = line.part;
      return;
    }
    table();
    if (line.part == Part::line && last_ == Part::step && line.text.starts_with(' ')) {
      under_step(line.text);
      return;
    }
    if (line.part != last_) column_.gap(space(line.part == Part::basis ? 0.8 : 1.6));
    switch (line.part) {
    case Part::headline: headline(line); break;
    case Part::basis: column_.paragraph(line.text, letter(mm(2.3), Weight::bold)); break;
    case Part::reason: column_.paragraph(line.text, letter(mm(2.7), Weight::bold)); break;
    case Part::line: plain(line); break;
    case Part::step: step(line.text); break;
    case Part::danger: danger(line.text); break;
    case Part::care: caution("Care", line.text, mm(2.2)); break;
    case Part::note: caution("Note", line.text, mm(2)); break;
    case Part::taken:
    case Part::from: column_.paragraph(line.text, letter(mm(1.9)), {.hanging = space(3)}); break;
    }
    last_ = line.part;
  }

  void headline(const Line& line) {
    if (line.text.find('\n') != std::string::npos) {
      as_typed(line.text);
    } else if (document_.answer.verdict == "do not") {
      refusal(line.text);
    } else if (!line.number.empty() && line.text.starts_with(line.number)) {
      number(line);
    } else {
      column_.paragraph(joined(pieces_of(line.text), 0), letter(mm(4.6), Weight::bold));
    }
  }

  /// Lines of a file, in letters of one width.
  void as_typed(const std::string& text) {
    Lettering even = letter(mm(1.9));
    even.face = Face::columns;
    for (std::size_t from = 0; from < text.size();) {
      const std::size_t to = std::min(text.find('\n', from), text.size());
      column_.paragraph(text.substr(from, to - from), even, {.hanging = space(6)});
      from = to + 1;
    }
  }

  /// White on black, so that no look is needed twice.
  void refusal(const std::string& text) {
    const auto words = pieces_of(text);
    const Box box = column_.take(space(19));
    canvas_.fill(box, 0);
    Lettering white = letter(mm(10), Weight::bold);
    white.grey = 1;
    canvas_.letters({box.left + 0.5 * box.width, box.top + 0.5 * box.height}, words.front(), white,
                    {Across::centre, Along::middle});
    column_.gap(space(2.5));
    if (words.size() > 1) column_.paragraph(joined(words, 1), letter(mm(3.2), Weight::bold));
  }

  /// The number as large as the card bears, its unit behind it, a short word such as the step at the other edge.
  void number(const Line& line) {
    auto rest = pieces_of(line.text.substr(line.number.size()));
    const std::string unit = rest.empty() ? "" : rest.front();
    Lettering large = letter(mm(15), Weight::bold);
    const Lettering beside = letter(mm(4.2));
    const Lettering word = letter(mm(6), Weight::bold);
    const std::string step = rest.size() > 1 && rest[1].size() <= 10 ? rest[1] : "";
    const Length taken = canvas_.width_of(unit, beside) + (step.empty() ? mm(0) : canvas_.width_of(step, word) + mm(6));
    const Length free = column_.width() - taken - mm(3);
    if (const Length width = canvas_.width_of(line.number, large); width > free)
      large.height = std::max(least_letters, large.height * (free / width));
    const Box box = column_.take(1.25 * large.height);
    const Length foot = box.top + 1.12 * large.height;
    canvas_.letters({box.left, foot}, line.number, large);
    canvas_.letters({box.left + canvas_.width_of(line.number, large) + mm(2), foot}, unit, beside);
    if (!step.empty()) canvas_.letters({box.right(), foot}, step, word, {Across::right});
    const std::string more = joined(rest, step.empty() ? 1 : 2);
    column_.gap(space(2));
    if (!more.empty()) column_.paragraph(more, letter(mm(2.9)));
  }

  void plain(const Line& line) {
    if (last_ == Part::line) column_.gap(space(0.5));
    const bool loud = is_loud(line.text);
    column_.paragraph(joined(pieces_of(line.text), 0),
                      letter(loud ? mm(3.2) : mm(2.6), loud ? Weight::bold : Weight::plain), {.hanging = space(3)});
  }

  /// Lines of columns that follow one another are one table.
  void table() {
    if (rows_.empty()) return;
    Lettering words = letter(mm(2.5));
    if (const Length width = natural_width(words); width > column_.width())
      words.height = std::max(std::min(words.height, mm(2)), words.height * (column_.width() / width));
    column_.rows(rows_, words);
    rows_.clear();
  }

  [[nodiscard]] Length natural_width(const Lettering& lettering) const {
    Length widest{};
    for (const auto& row : rows_) {
      Length width{};
      for (const auto& cell : row) width = width + canvas_.width_of(cell, lettering) + 1.5 * lettering.height;
      widest = std::max(widest, width);
    }
    return widest;
  }

  void step(const std::string& text) {
    const Lettering words = letter(mm(2.6));
    const Length side = 1.5 * words.height;
    const Setting setting{
        .indent = side + space(2.5), .hanging = mm(0), .lead = numbers_[std::min(steps_, numbers_.size() - 1)]};
    ++steps_;
    column_.keep_together(column_.height_of(text, words, setting));
    canvas_.frame({column_.left(), column_.down() + 0.08 * words.height, side, side}, {mm(0.35)});
    column_.paragraph(text, words, setting);
    column_.gap(space(0.9));
  }

  /// What belongs to the step above it, set in under its words.
  void under_step(const std::string& text) {
    const Length side = 1.5 * letter(mm(2.6)).height;
    column_.paragraph(joined(pieces_of(text), 0), letter(mm(2.3)), {.indent = side + space(6), .hanging = space(3)});
    column_.gap(space(0.4));
  }

  /// In a heavy frame with its word: it is seen without colour.
  void danger(const std::string& text) {
    const Lettering words = letter(mm(2.4), Weight::bold);
    const Length inside = space(2);
    const Setting setting{.indent = inside, .hanging = mm(0), .leading = 1.6, .lead = "DANGER"};
    // The frame narrows the text on the right as the indent does on the left.
    const Length height = framed_height(text, words, setting) + 1.2 * inside;
    if (height > column_.whole_room()) {
      column_.paragraph(text, words, setting);
      return;
    }
    const Box box = column_.take(height);
    canvas_.frame({box.left + mm(0.4), box.top + mm(0.4), box.width - mm(0.8), box.height - mm(0.8)}, {mm(0.8)});
    Column within(canvas_, {margins.side + inside, box.top + 0.6 * inside, mm(0)});
    within.paragraph(text, words, {.indent = mm(0), .hanging = mm(0), .leading = 1.6, .lead = "DANGER"});
    column_.gap(space(1));
  }

  [[nodiscard]] Length framed_height(const std::string& text, const Lettering& words, const Setting& setting) {
    const Column within(canvas_, {margins.side + setting.indent, mm(0), mm(0)});
    return within.height_of(text, words,
                            {.indent = mm(0), .hanging = mm(0), .leading = setting.leading, .lead = setting.lead});
  }

  void caution(std::string_view lead, const std::string& text, Length height) {
    column_.paragraph(text, letter(height), {.indent = mm(0), .hanging = mm(0), .leading = 1.55, .lead = lead});
    column_.gap(space(0.5));
  }

  void picture(const CardDrawing& drawing) {
    column_.gap(space(1.5));
    drawing.draw(canvas_, column_.take(std::min(drawing.height, column_.whole_room())), document_);
  }

  static constexpr std::array<std::string_view, 13> numbers_{"1", "2", "3",  "4",  "5",  "6", "7",
                                                             "8", "9", "10", "11", "12", ""};
  const Document& document_;
  double scale_;
  Canvas canvas_;
  Column column_;
  Part last_ = Part::headline;
  std::vector<std::vector<std::string>> rows_; // lines of columns that are not drawn yet
  std::size_t steps_ = 0;
  int text_sheets_ = 0;
};

} // namespace

Canvas draw_card(const Document& document) {
  // As large as one card bears, since it is read at arm's length; smaller where that spares a second one. Each try
  // costs as much as the card, so the tries halve what is left to choose from.
  struct Try {
    Canvas canvas;
    bool on_one; // its text: sheets that a drawing has to itself come behind it
  };
  const auto at = [&](double scale) {
    Card card(document, scale);
    Canvas canvas = card.draw();
    return Try{std::move(canvas), card.text_sheets() == 1};
  };
  const auto first_on_one = [&](Canvas otherwise, std::initializer_list<double> scales) {
    for (const double scale : scales)
      if (Try card = at(scale); card.on_one) return std::move(card.canvas);
    return otherwise;
  };
  Try usual = at(1);
  if (!usual.on_one) return first_on_one(std::move(usual.canvas), {0.85});
  Try large = at(1.2);
  if (!large.on_one) return first_on_one(std::move(usual.canvas), {1.1});
  return first_on_one(std::move(large.canvas), {1.35});
}

} // namespace quillside::page
