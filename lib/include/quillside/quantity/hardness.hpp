#pragma once
// A hardness reading is a number on a named scale. The scales are not units of one quantity: only a table of
// comparisons, for one kind of metal, leads from one to another (data/convert_hardness).

namespace quillside {

enum class HardnessScale {
  brinell,    // HB
  rockwell_c, // HRC
  rockwell_b, // HRB
  vickers     // HV
};

struct Hardness {
  double number;
  HardnessScale scale;
};

constexpr Hardness brinell(double number) { return {number, HardnessScale::brinell}; }

} // namespace quillside
