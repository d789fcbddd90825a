#pragma once
// The unit words of each quantity, and reading one value or a range of it.

#include <array>
#include <cmath>
#include <concepts>
#include <span>

#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>
#include <quillside/words/read.hpp>

#include "written.hpp"

namespace quillside {

/// A unit word and the function that makes a quantity of a number in it.
template <class Quantity> struct UnitWord {
  std::string_view word;
  Quantity (*make)(double);
};

// The inch mark and the word; a foot has no mark here, since ' is eaten by every shell.
inline constexpr std::array length_units{UnitWord<Length>{"in", inches},      UnitWord<Length>{"\"", inches},
                                         UnitWord<Length>{"mm", mm},          UnitWord<Length>{"thou", thou},
                                         UnitWord<Length>{"um", micrometres}, UnitWord<Length>{"m", metres},
                                         UnitWord<Length>{"ft", feet}};
inline constexpr std::array angle_units{UnitWord<Angle>{"deg", degrees}, UnitWord<Angle>{"\u00b0", degrees}};
inline constexpr std::array spindle_speed_units{UnitWord<SpindleSpeed>{"rev/min", rev_per_min},
                                                UnitWord<SpindleSpeed>{"rpm", rev_per_min}};
inline constexpr std::array cutting_speed_units{UnitWord<CuttingSpeed>{"ft/min", ft_per_min},
                                                UnitWord<CuttingSpeed>{"m/min", m_per_min}};
inline constexpr std::array feed_per_rev_units{UnitWord<FeedPerRev>{"in/rev", in_per_rev},
                                               UnitWord<FeedPerRev>{"mm/rev", mm_per_rev}};
inline constexpr std::array feed_per_tooth_units{UnitWord<FeedPerTooth>{"in/tooth", in_per_tooth},
                                                 UnitWord<FeedPerTooth>{"mm/tooth", mm_per_tooth}};
constexpr Power kilowatts(double amount) { return watts(factor::kilowatt_in_watt.into(amount)); }
inline constexpr std::array power_units{UnitWord<Power>{"W", watts}, UnitWord<Power>{"kW", kilowatts},
                                        UnitWord<Power>{"hp", horsepower}};
// An energy in a volume is a stress: what a metal takes to be cut is printed as either.
inline constexpr std::array stress_units{
    UnitWord<Stress>{"MPa", megapascals}, UnitWord<Stress>{"N/mm2", megapascals}, UnitWord<Stress>{"GPa", gigapascals},
    UnitWord<Stress>{"J/mm3", joules_per_mm3}, UnitWord<Stress>{"hp/(in3/min)", hp_per_in3_per_min}};
constexpr Stiffness pounds_per_inch(double amount) { return pounds_force(amount) / inches(1.0); }
inline constexpr std::array stiffness_units{UnitWord<Stiffness>{"N/mm", newtons_per_mm},
                                            UnitWord<Stiffness>{"lb/in", pounds_per_inch}};
inline constexpr std::array temperature_units{UnitWord<Temperature>{"degC", celsius},
                                              UnitWord<Temperature>{"degF", fahrenheit}};
inline constexpr std::array expansion_units{UnitWord<Expansion>{"um/(m degC)", um_per_m_celsius},
                                            UnitWord<Expansion>{"uin/(in degF)", uin_per_in_fahrenheit}};
constexpr Hardness rockwell_c(double number) { return {number, HardnessScale::rockwell_c}; }
constexpr Hardness rockwell_b(double number) { return {number, HardnessScale::rockwell_b}; }
constexpr Hardness vickers(double number) { return {number, HardnessScale::vickers}; }
inline constexpr std::array hardness_units{UnitWord<Hardness>{"HB", brinell}, UnitWord<Hardness>{"HRC", rockwell_c},
                                           UnitWord<Hardness>{"HRB", rockwell_b}, UnitWord<Hardness>{"HV", vickers}};
constexpr double plain(double number) { return number; }
constexpr double hundredth(double number) { return number / 100; }
inline constexpr std::array percent_units{UnitWord<double>{"%", hundredth}};
inline constexpr std::array ratio_units{UnitWord<double>{"", plain}};

template <class Quantity> std::vector<std::string> words_of(std::span<const UnitWord<Quantity>> units) {
  std::vector<std::string> words;
  for (const auto& unit : units) {
    if (!unit.word.empty() && unit.word != "\"" && static_cast<unsigned char>(unit.word.front()) < 0x80)
      words.emplace_back(unit.word);
  }
  return words;
}

template <class Quantity>
const UnitWord<Quantity>* find_unit(std::span<const UnitWord<Quantity>> units, std::string_view word) {
  for (const auto& unit : units) {
    if (unit.word == word) return &unit;
  }
  for (const auto& unit : units) {
    if (same_ignoring_case(unit.word, word)) return &unit;
  }
  return nullptr;
}

struct Wanted {
  std::string_view what;             // the noun for messages
  std::vector<std::string> examples; // forms that would do
};

template <class Quantity> struct Read {
  Quantity value{};
  Written written;
  const UnitWord<Quantity>* unit = nullptr;
};

/// A fraction of a length is inch always, whatever --units says; a motor may be of 1/2 hp; of anything else there is
/// none.
template <class Quantity>
Read<Quantity> read_fraction(std::string_view word, const Wanted& wanted, std::span<const UnitWord<Quantity>> units,
                             const Written& written) {
  if constexpr (std::same_as<Quantity, Length>) {
    const UnitWord<Length>* inch = units.data();
    const auto* unit = written.unit.empty() ? inch : find_unit(units, written.unit);
    if (unit != nullptr && (unit->word == "in" || unit->word == "\"")) return {inches(written.number), written, inch};
    const std::string number(word.substr(0, word.size() - written.unit.size()));
    const std::string as_mm = shortest_decimal(std::round(in_mm(inches(written.number)) * 10) / 10) + "mm";
    throw wrong_word(std::string(word),
                     article(wanted.what) + ": a fraction is in inches; write " + std::string(trimmed(number)) +
                         "in or " + as_mm,
                     {std::string(trimmed(number)) + "in", as_mm}, as_mm);
  }
  if constexpr (std::same_as<Quantity, Power>) {
    if (const auto* unit = find_unit(units, written.unit)) return {unit->make(written.number), written, unit};
  }
  throw wrong_word(std::string(word),
                   article(wanted.what) + ": it takes no fraction; write it as " + list_of(wanted.examples),
                   wanted.examples);
}

/// \p bare is the unit of a bare number; null where a unit is required.
template <class Quantity>
Read<Quantity> read_quantity(std::string_view text, const Wanted& wanted, std::span<const UnitWord<Quantity>> units,
                             const UnitWord<Quantity>* bare) {
  const std::string_view word = plain_word(text, wanted.what, wanted.examples);
  const auto written = take_apart(word);
  if (!written)
    throw wrong_word(std::string(word), article(wanted.what) + ": write it as " + list_of(wanted.examples),
                     wanted.examples);
  if (written->fraction) return read_fraction<Quantity>(word, wanted, units, *written);
  const UnitWord<Quantity>* unit = written->unit.empty() ? bare : find_unit(units, written->unit);
  if (unit == nullptr) {
    auto allowed = words_of(units);
    if (allowed.empty()) allowed = wanted.examples;
    const std::string reason =
        written->unit.empty() ? ": it needs a unit, " + list_of(allowed)
                              : ": '" + std::string(written->unit) + "' is no unit of it; allowed: " + list_of(allowed);
    throw wrong_word(std::string(word), article(wanted.what) + reason, allowed);
  }
  return {unit->make(written->number), *written, unit};
}

template <class Quantity>
Range<Quantity> read_range(std::string_view text, const Wanted& wanted, std::span<const UnitWord<Quantity>> units,
                           const UnitWord<Quantity>* bare = nullptr) {
  const std::string_view word = plain_word(text, wanted.what, wanted.examples);
  const auto to = word.find(" to ");
  if (to == std::string_view::npos) {
    const auto value = read_quantity(word, wanted, units, bare).value;
    return {value, value};
  }
  const auto high = read_quantity(word.substr(to + 4), wanted, units, bare);
  const auto low = read_quantity(word.substr(0, to), wanted, units, high.unit);
  if (!(low.value <= high.value)) throw wrong_word(std::string(word), "is no range: its low end is above its high end");
  return {low.value, high.value};
}

} // namespace quillside
