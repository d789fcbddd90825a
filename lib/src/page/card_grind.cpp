#include "card_grind.hpp"

#include "card_grind_fixture.hpp"
#include "card_grind_holds.hpp"
#include "card_grind_rest.hpp"
#include "read_answer.hpp"

namespace quillside::page {

namespace {

void draw_rest_sheets(Canvas& canvas, const Box& box, const Document& document) {
  bool first = true;
  for (const auto& sheet : card_grind::rest_sheets(document.answer, document.page.units)) {
    if (!first) canvas.add_sheet();
    first = false;
    card_grind::draw_rest_sheet(canvas, box, sheet, document.answer);
  }
}

} // namespace

std::optional<CardDrawing> drawing_of_grind(const Document& document) {
  if (document.answer.settings.empty()) return std::nullopt;
  const bool swings = std::holds_alternative<Members>(find(document.answer.settings, "cone")->held);
  return CardDrawing{mm(0), true, swings ? card_grind::draw_fixture : draw_rest_sheets};
}

} // namespace quillside::page
