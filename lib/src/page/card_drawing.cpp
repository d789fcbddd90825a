#include "card_drawing.hpp"

#include <array>
#include <string_view>

#include "card_grind.hpp"
#include "card_mill.hpp"
#include "card_point.hpp"
#include "card_slot.hpp"

namespace quillside::page {

namespace {

struct Drawing {
  std::string_view ask;
  std::optional<CardDrawing> (*of)(const Document& document);
};
constexpr auto drawings = std::to_array<Drawing>(
    {{"grind", drawing_of_grind}, {"mill", drawing_of_mill}, {"point", drawing_of_point}, {"slot", drawing_of_slot}});

} // namespace

std::optional<CardDrawing> drawing_of(const Document& document) {
  for (const auto& drawing : drawings)
    if (drawing.ask == document.answer.ask) return drawing.of(document);
  return std::nullopt;
}

} // namespace quillside::page
