#pragma once
// From one hardness scale to another, by a table of comparisons for non-austenitic steel.
// Between two lines of the table: straight interpolation. Outside it: refused. Scatter of any such comparison: about 5
// % in HB.

#include <optional>

#include <quillside/data/material.hpp>
#include <quillside/data/row.hpp>
#include <quillside/quantity/hardness.hpp>

namespace quillside {

/// One line: what the same steel reads on each scale; 0 where the scale does not reach.
struct HardnessRow {
  double hb = 0;
  double hv = 0;
  double hrc = 0;
  double hrb = 0;
  std::string_view source;
  RowPlace place;
};

/// Whether the comparison holds for this metal: carbon, alloy, tool and hardenable stainless steel.
bool may_convert_hardness(std::string_view metal);

/// The number on the Brinell scale; nothing when it lies outside the table. Does not ask what metal it is.
std::optional<double> to_brinell(std::span<const HardnessRow> table, Hardness hardness);

/// "28 HRC", as people write it.
std::string print_hardness(Hardness hardness);
std::string_view name_of(HardnessScale scale);

} // namespace quillside
