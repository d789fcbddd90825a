#include "card_drawing.hpp"

#include <array>
#include <string_view>

#include "card_grind.hpp"
#include "card_point.hpp"

namespace quillside::page {

namespace {

struct Drawing {
  std::string_view ask;
  std::optional<CardDrawing> (*of)(const Document& document);
};
constexpr std::array<Drawing, 2> drawings{{{"grind", drawing_of_grind}, {"point", drawing_of_point}}};

} // namespace

std::optional<CardDrawing> drawing_of(const Document& document) {
  for (const auto& drawing : drawings)
    if (drawing.ask == document.answer.ask) return drawing.of(document);
  return std::nullopt;
}

} // namespace quillside::page
