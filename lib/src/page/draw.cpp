#include <quillside/page/draw.hpp>

#include <algorithm>
#include <array>
#include <stdexcept>

#include <quillside/page/card.hpp>
#include <quillside/page/chart.hpp>
#include <quillside/page/gauge.hpp>

namespace quillside::page {

namespace {

struct Kind {
  std::string_view name;
  Canvas (*draw)(const Document&);
};
constexpr std::array<Kind, 3> kinds{{{"card", draw_card}, {"chart", draw_chart}, {"gauge", draw_gauge}}};

} // namespace

Canvas draw(const Document& document) {
  const auto* kind =
      std::find_if(kinds.begin(), kinds.end(), [&](const Kind& one) { return one.name == document.page.kind; });
  if (kind == kinds.end()) throw std::runtime_error{"'" + document.page.kind + "' is no kind of page"};
  return kind->draw(document);
}

std::string picture_of(const Document& document) {
  return draw(document).picture(document.page.as, {document.page.title, document.page.date});
}

} // namespace quillside::page
