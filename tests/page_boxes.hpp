#pragma once
// What holds of every page, asked of the drawing's own boxes: no text runs over the edge or over another, none is
// smaller than it may be.

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include <quillside/page/canvas.hpp>

#include "catch.hpp"

namespace quillside::test {

inline std::string shown(const page::TextDrawn& text) {
  return "'" + text.text + "' on sheet " + std::to_string(text.sheet) + " at " + std::to_string(in_mm(text.ink.left)) +
         "," + std::to_string(in_mm(text.ink.top)) + " size " + std::to_string(in_mm(text.ink.width)) + " x " +
         std::to_string(in_mm(text.ink.height));
}

/// How far the ink of one text reaches into that of another: the least way by which the one would have to be moved to
/// stand beside the other, along any of their edges; 0 or less where they are apart. Turned texts as they are turned.
inline Length overlap(const page::TextDrawn& a, const page::TextDrawn& b) {
  Length least = mm(1e9);
  for (const auto* box : {&a, &b})
    for (std::size_t edge = 0; edge < 2; ++edge) {
      const page::Spot& from = box->corners[edge];
      const page::Spot& to = box->corners[edge + 1];
      const double right = in_mm(to.right - from.right);
      const double down = in_mm(to.down - from.down);
      const double length = std::hypot(right, down);
      if (length == 0) return mm(0); // no ink
      const auto reach = [&](const page::TextDrawn& text) {
        std::pair<Length, Length> ends{mm(1e9), mm(-1e9)};
        for (const auto& corner : text.corners) {
          const Length along = corner.right * (right / length) + corner.down * (down / length);
          ends = {std::min(ends.first, along), std::max(ends.second, along)};
        }
        return ends;
      };
      const auto one = reach(a);
      const auto other = reach(b);
      least = std::min(least, std::min(one.second, other.second) - std::max(one.first, other.first));
    }
  return least;
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
      if (texts[k].sheet == texts[i].sheet && overlap(texts[k], texts[i]) > mm(0.02))
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
