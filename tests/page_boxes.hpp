#pragma once
// What holds of every page, asked of the drawing's own boxes: no text runs over the edge or over another, none is
// smaller than it may be.

#include <algorithm>
#include <string>
#include <vector>

#include <quillside/page/canvas.hpp>

#include "catch.hpp"

namespace quillside::test {

inline std::string shown(const page::TextDrawn& text) {
  return "'" + text.text + "' on sheet " + std::to_string(text.sheet) + " at " + std::to_string(in_mm(text.ink.left)) +
         "," + std::to_string(in_mm(text.ink.top)) + " size " + std::to_string(in_mm(text.ink.width)) + " x " +
         std::to_string(in_mm(text.ink.height));
}

/// How far one box reaches into another, the smaller of across and down; 0 or less where they are apart.
inline Length overlap(const page::Box& a, const page::Box& b) {
  const Length across = std::min(a.right(), b.right()) - std::max(a.left, b.left);
  const Length down = std::min(a.bottom(), b.bottom()) - std::max(a.top, b.top);
  return std::min(across, down);
}

struct BoxFaults {
  std::vector<std::string> outside;
  std::vector<std::string> over_another;
  std::vector<std::string> too_small;
};

/// \param edge what a printer cannot reach: no ink of a text lies nearer to the edge of the sheet
inline BoxFaults box_faults(const page::Canvas& canvas, Length least, Length edge = mm(5)) {
  BoxFaults faults;
  const auto& texts = canvas.texts();
  const Sheet sheet = canvas.sheet();
  for (std::size_t i = 0; i < texts.size(); ++i) {
    const page::Box& ink = texts[i].ink;
    if (ink.left < edge || ink.top < edge || ink.right() > sheet.width - edge || ink.bottom() > sheet.height - edge)
      faults.outside.push_back(shown(texts[i]));
    if (texts[i].height < least - mm(1e-6)) faults.too_small.push_back(shown(texts[i]));
    for (std::size_t k = 0; k < i; ++k)
      // A comma's tail may come as near as a hair to the line below.
      if (texts[k].sheet == texts[i].sheet && overlap(texts[k].ink, ink) > mm(0.02))
        faults.over_another.push_back(shown(texts[k]) + " and " + shown(texts[i]));
  }
  return faults;
}

inline void hold_boxes(const page::Canvas& canvas, Length least) {
  REQUIRE_FALSE(canvas.texts().empty());
  const BoxFaults faults = box_faults(canvas, least);
  CHECK(faults.outside == std::vector<std::string>{});
  CHECK(faults.over_another == std::vector<std::string>{});
  CHECK(faults.too_small == std::vector<std::string>{});
}

} // namespace quillside::test
