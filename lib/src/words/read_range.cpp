// The quantities of table files: a unit is required, and each may be a range.

#include <quillside/words/read.hpp>

#include "unit_words.hpp"

namespace quillside {

Range<Length> read_length_range(std::string_view text) {
  return read_range<Length>(text, {"length", {"0.125 in", "1/8 in", "3 mm"}}, length_units);
}

namespace {

constexpr const char* signed_limits = "+6 to +12 um";

/// One limit: nothing but 0 goes without a sign, so that no clearance is ever read as a tightness.
Read<Length> read_limit(std::string_view whole, std::string_view text, const UnitWord<Length>* bare) {
  const Wanted wanted{"limit of size", {signed_limits, "-16 to -6 um", "0 to +0.4 thou"}};
  const std::string_view word = trimmed(text);
  const bool minus = !word.empty() && word.front() == '-';
  const bool plus = !word.empty() && word.front() == '+';
  auto read = read_quantity<Length>(minus || plus ? word.substr(1) : word, wanted, length_units, bare);
  if (!minus && !plus && read.value != mm(0))
    throw wrong_word(std::string(whole),
                     "is no limit of size: '" + std::string(word) + "' wants its sign, as in " + signed_limits,
                     {signed_limits});
  if (minus) read.value = -read.value;
  return read;
}

} // namespace

Range<Length> read_limits_of_size(std::string_view text) {
  const std::string_view word = trimmed(text);
  const auto to = word.find(" to ");
  if (to == std::string_view::npos)
    throw wrong_word(std::string(word), "gives no two limits of size: write them as " + std::string(signed_limits),
                     {signed_limits});
  const auto high = read_limit(word, word.substr(to + 4), nullptr);
  const auto low = read_limit(word, word.substr(0, to), high.unit);
  if (!(low.value <= high.value)) throw wrong_word(std::string(word), "is no range: its low end is above its high end");
  return {low.value, high.value};
}

Range<Angle> read_angle_range(std::string_view text) {
  return read_range<Angle>(text, {"angle", {"118 deg"}}, angle_units);
}
Range<SpindleSpeed> read_spindle_speed_range(std::string_view text) {
  return read_range<SpindleSpeed>(text, {"spindle speed", {"620 rev/min"}}, spindle_speed_units);
}
Range<CuttingSpeed> read_cutting_speed_range(std::string_view text) {
  return read_range<CuttingSpeed>(text, {"cutting speed", {"90 ft/min", "27 m/min"}}, cutting_speed_units);
}
Range<FeedPerRev> read_feed_per_rev_range(std::string_view text) {
  return read_range<FeedPerRev>(text, {"feed per turn", {"0.002 in/rev", "0.05 mm/rev"}}, feed_per_rev_units);
}
Range<FeedPerTooth> read_feed_per_tooth_range(std::string_view text) {
  return read_range<FeedPerTooth>(text, {"feed per tooth", {"0.0005 in/tooth", "0.013 mm/tooth"}},
                                  feed_per_tooth_units);
}
Range<Stress> read_stress_range(std::string_view text) {
  return read_range<Stress>(text, {"stress", {"700 MPa", "207 GPa", "0.69 hp/(in3/min)"}}, stress_units);
}
Range<Stiffness> read_stiffness_range(std::string_view text) {
  return read_range<Stiffness>(text, {"stiffness", {"2000 N/mm", "10000 lb/in"}}, stiffness_units);
}
Range<Temperature> read_temperature_range(std::string_view text) {
  return read_range<Temperature>(text, {"temperature", {"250 degC", "0 to 100 degC", "450 degF"}}, temperature_units);
}
Range<Expansion> read_expansion_range(std::string_view text) {
  return read_range<Expansion>(text, {"expansion", {"17.2 um/(m degC)", "9.6 uin/(in degF)"}}, expansion_units);
}
Range<Power> read_power_range(std::string_view text) {
  return read_range<Power>(text, {"power", {"250 W"}}, power_units);
}
Range<double> read_percent_range(std::string_view text) {
  return read_range<double>(text, {"share", {"10 %"}}, percent_units);
}
Range<double> read_ratio_range(std::string_view text) {
  return read_range<double>(text, {"ratio", {"2", "2 to 3"}}, ratio_units, ratio_units.data());
}

HardnessBand read_hardness_band(std::string_view text) {
  const Wanted wanted{"hardness", {"135 to 185 HB", "28 HRC"}};
  const std::string_view word = plain_word(text, wanted.what, wanted.examples);
  const auto to = word.find(" to ");
  const std::span<const UnitWord<Hardness>> units = hardness_units;
  const auto high =
      read_quantity<Hardness>(to == std::string_view::npos ? word : word.substr(to + 4), wanted, units, nullptr);
  const auto low =
      to == std::string_view::npos ? high : read_quantity<Hardness>(word.substr(0, to), wanted, units, high.unit);
  if (low.value.scale != high.value.scale || low.value.number > high.value.number)
    throw wrong_word(std::string(word), "is no range of hardness: its low end is above its high end");
  return {low.value.number, high.value.number, high.value.scale};
}

} // namespace quillside
