#include <quillside/data/convert_hardness.hpp>

#include <algorithm>
#include <string>

#include <quillside/words/print.hpp>

namespace quillside {

namespace {

double on_scale(const HardnessRow& row, HardnessScale scale) {
  switch (scale) {
  case HardnessScale::brinell: return row.hb;
  case HardnessScale::rockwell_c: return row.hrc;
  case HardnessScale::rockwell_b: return row.hrb;
  case HardnessScale::vickers: return row.hv;
  }
  return 0;
}

} // namespace

bool may_convert_hardness(std::string_view metal) {
  constexpr std::array<std::string_view, 5> convertible{"carbon-steel", "alloy-steel", "tool-steel",
                                                        "martensitic-stainless", "precipitation-hardening-stainless"};
  return std::find(convertible.begin(), convertible.end(), metal) != convertible.end();
}

std::optional<double> to_brinell(std::span<const HardnessRow> table, Hardness hardness) {
  if (hardness.scale == HardnessScale::brinell) return hardness.number;
  const HardnessRow* below = nullptr;
  for (const auto& row : table) {
    const double reads = on_scale(row, hardness.scale);
    if (reads == 0) continue;
    if (reads == hardness.number) return row.hb;
    if (reads < hardness.number) {
      below = &row;
    } else if (below != nullptr) {
      const double from = on_scale(*below, hardness.scale);
      return below->hb + (row.hb - below->hb) * (hardness.number - from) / (reads - from);
    } else {
      return std::nullopt;
    }
  }
  return std::nullopt;
}

std::string print_hardness(Hardness hardness) {
  return shortest_decimal(hardness.number) + " " + std::string(name_of(hardness.scale));
}

std::string_view name_of(HardnessScale scale) {
  switch (scale) {
  case HardnessScale::brinell: return "HB";
  case HardnessScale::rockwell_c: return "HRC";
  case HardnessScale::rockwell_b: return "HRB";
  case HardnessScale::vickers: break;
  }
  return "HV";
}

} // namespace quillside
