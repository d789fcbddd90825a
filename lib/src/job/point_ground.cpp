#include "point_ground.hpp"

#include <quillside/words/fault.hpp>

namespace quillside {

std::string relief_row_words(const LipReliefRow& row) {
  std::string named;
  for (const auto metal : row.metal) named += (named.empty() ? "" : ", ") + std::string(metal);
  return "drills of " + std::string(row.diameter.text) + ", for " + (named.empty() ? "any other metal" : named) + ": " +
         std::string(row.relief.text);
}

Angle degrees_of(const Tables& tables, std::string_view key) { return degrees(limit(tables.limits, key).ratio); }

Ground ground_of(const Tables& tables, Length diameter, const Work* work) {
  const auto web = choose_drill_web(tables, diameter);
  if (!web) {
    Fault fault;
    fault.kind = FaultKind::data;
    fault.message = "no table has a drill_web";
    throw fault;
  }
  const std::string_view metal = work != nullptr ? work->material->metal : std::string_view{};
  return {work != nullptr ? &choose_drill_point(tables, *work) : &choose_drill_point(tables),
          choose_lip_relief(tables, metal, diameter), *web, degrees_of(tables, "land_angle")};
}

} // namespace quillside
