#include "point_ways.hpp"

#include <algorithm>
#include <stdexcept>

#include <quillside/words/fault.hpp>

#include "grinding_way.hpp"
#include "point_solve.hpp"
#include "point_wanted.hpp"

namespace quillside {

namespace {

/// The drill, for a fault that no single reading is to blame for.
std::string readings_in_words(const PointQuestion& ask) { return ask.size.text.value_or(""); }

} // namespace

std::vector<JudgedPoint> judge_ways(const Tables& tables, const PointQuestion& ask, const Ground& ground,
                                    const PointReadings& readings) {
  std::vector<JudgedPoint> judged;
  std::optional<Fault> refused;
  for (const GrindingWay way : all_ways) {
    if (ask.way && ask.way->value != way) continue;
    const auto targets = targets_of(tables, ground, readings.diameter, way);
    try {
      judged.push_back(
          judge_point(tables, solve_point(way, readings, defaults_of(tables, ground, readings.diameter, way, targets)),
                      targets, ground.land, readings));
    } catch (const Fault& fault) {
      refused = fault;
    } catch (const std::domain_error& error) {
      refused =
          contradiction(readings_in_words(ask), "these readings make no drill's point: " + std::string(error.what()));
    }
  }
  if (!judged.empty()) return judged;
  const auto names = [&](const char* flag) { return refused->message.find(flag) != std::string::npos; };
  const bool by_web = names("--lip-depth") || names("--lip-lengths") || names("--point-length") ||
                      names("--light-gap") || names("--chisel") || names("--drop");
  if (by_web && !readings.web) refused->message += " (the web was taken from the tables: a --web may settle it)";
  throw Fault(*refused);
}

} // namespace quillside
