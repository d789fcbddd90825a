#include "card_drawing.hpp"

#include <array>
#include <string_view>

#include "card_grind.hpp"
#include "card_point.hpp"
#include <algorithm>
#include "card_mill.hpp"
#include "card_slot.hpp"

namespace quillside::page {

namespace {

struct Drawing {
  std::string_view ask;
  std::optional<CardDrawing> (*of)(const Document& document);
};
constexpr std::array<Drawing, 2> drawings{{{"grind", drawing_of_grind}, {"point", drawing_of_point}}};
struct DrawingOf {
  CardDrawing (*drawing)(const Document&);
constexpr std::array<DrawingOf, 1> drawings{{{"slot", slot_drawing}}};
constexpr std::array<DrawingOf, 2> drawings{{{"mill", mill_drawing}, {"slot", slot_drawing}}};
constexpr std::array<Drawing, 2> drawings{{{"mill", drawing_of_mill}, {"slot", drawing_of_slot}}};

} // namespace

std::optional<CardDrawing> drawing_of(const Document& document) {
  for (const auto& drawing : drawings)
    if (drawing.ask == document.answer.ask) return drawing.of(document);
  return std::nullopt;
  const auto* found = std::find_if(drawings.begin(), drawings.end(),
                                   [&](const DrawingOf& one) { return one.ask == document.answer.ask; });
  return found == drawings.end() ? std::nullopt : std::optional(found->drawing(document));
}

} // namespace quillside::page
