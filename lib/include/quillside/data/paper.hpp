#pragma once
// Sizes of paper, trimmed. ISO 216:2007 for a3, a4 and a5 (a half is rounded down to a whole millimetre); ASME Y14.1,
// sizes A and B, for letter and tabloid. Both from memory, no page seen; the sizes are also in any printer's list.
// Leaves out: what a printer cannot reach at the edges, which page/ keeps away from by its margins.

#include <array>
#include <string_view>

#include <quillside/quantity/units.hpp>

namespace quillside {

/// A sheet that stands upright: height is not less than width.
struct Sheet {
  Length width{};
  Length height{};
};

struct Paper {
  std::string_view name;
  Sheet whole;
  Sheet half; // cut across its longer side
};

inline constexpr std::array<Paper, 4> papers{{{"a4", {mm(210), mm(297)}, {mm(148), mm(210)}},
                                              {"letter", {inches(8.5), inches(11.0)}, {inches(5.5), inches(8.5)}},
                                              {"a3", {mm(297), mm(420)}, {mm(210), mm(297)}},
                                              {"tabloid", {inches(11.0), inches(17.0)}, {inches(8.5), inches(11.0)}}}};

/// Throws a Fault of the kind `word` that lists the papers there are.
const Paper& find_paper(std::string_view name);

} // namespace quillside
