#include <quillside/words/read.hpp>

#include <array>
#include <charconv>
#include <cmath>
#include <concepts>
#include <span>
#include <utility>
#include <vector>

#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>
#include <quillside/words/utf8.hpp>

namespace quillside {

namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

bool same_ignoring_case(std::string_view a, std::string_view b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    const auto lower = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; };
    if (lower(a[i]) != lower(b[i])) return false;
  }
  return true;
}

/// A number and the unit word behind it, before anybody asks what they mean.
struct Written {
  double number = 0;
  double last_digit = 0; // what one step of the last digit typed is worth; 0 for a fraction
  bool fraction = false;
  std::string_view unit;
};

/// Eats decimal digits with at most one point; nothing eaten leaves \p text alone.
std::optional<Written> take_decimal(std::string_view& text) {
  std::size_t end = 0;
  std::size_t digits = 0;
  std::size_t decimals = 0;
  bool point = false;
  for (; end < text.size(); ++end) {
    if (is_digit(text[end])) {
      ++digits;
      if (point) ++decimals;
    } else if (text[end] == '.' && !point) {
      point = true;
    } else {
      break;
    }
  }
  if (digits == 0 || digits > 30) return std::nullopt;
  Written written;
  const auto result = std::from_chars(text.data(), text.data() + end, written.number);
  if (result.ec != std::errc{} || result.ptr != text.data() + end) return std::nullopt;
  written.last_digit = std::pow(10.0, -static_cast<double>(decimals));
  text.remove_prefix(end);
  return written;
}

std::optional<double> take_whole(std::string_view& text) {
  std::size_t end = 0;
  while (end < text.size() && is_digit(text[end])) ++end;
  if (end == 0 || end > 6) return std::nullopt;
  double whole = 0;
  std::from_chars(text.data(), text.data() + end, whole);
  text.remove_prefix(end);
  return whole;
}

/// `3/16`, `1-1/8`, `1 1/8`, `0.1875`, each with a unit word or none.
std::optional<Written> take_apart(std::string_view text) {
  text = trimmed(text);
  std::string_view rest = text;
  double wholes = 0;
  if (const auto first = take_whole(rest)) {
    std::string_view after = rest;
    double top = *first;
    if (!after.empty() && (after.front() == '-' || after.front() == ' ')) {
      std::string_view behind = after.substr(1);
      if (const auto next = take_whole(behind); next && !behind.empty() && behind.front() == '/') {
        wholes = *first;
        top = *next;
        after = behind;
      }
    }
    if (!after.empty() && after.front() == '/') {
      after.remove_prefix(1);
      const auto bottom = take_whole(after);
      if (!bottom || *bottom == 0) return std::nullopt;
      return Written{wholes + top / *bottom, 0, true, trimmed(after)};
    }
  }
  rest = text;
  auto written = take_decimal(rest);
  if (written) written->unit = trimmed(rest);
  return written;
}

/// A unit word and the function that makes a quantity of a number in it.
template <class Quantity> struct UnitWord {
  std::string_view word;
  Quantity (*make)(double);
};

// The inch mark and the word; a foot has no mark here, since ' is eaten by every shell.
constexpr std::array length_units{UnitWord<Length>{"in", inches},      UnitWord<Length>{"\"", inches},
                                  UnitWord<Length>{"mm", mm},          UnitWord<Length>{"thou", thou},
                                  UnitWord<Length>{"um", micrometres}, UnitWord<Length>{"m", metres},
                                  UnitWord<Length>{"ft", feet}};
constexpr std::array angle_units{UnitWord<Angle>{"deg", degrees}, UnitWord<Angle>{"\u00b0", degrees}};
constexpr std::array spindle_speed_units{UnitWord<SpindleSpeed>{"rev/min", rev_per_min},
                                         UnitWord<SpindleSpeed>{"rpm", rev_per_min}};
constexpr std::array cutting_speed_units{UnitWord<CuttingSpeed>{"ft/min", ft_per_min},
                                         UnitWord<CuttingSpeed>{"m/min", m_per_min}};
constexpr std::array feed_per_rev_units{UnitWord<FeedPerRev>{"in/rev", in_per_rev},
                                        UnitWord<FeedPerRev>{"mm/rev", mm_per_rev}};
constexpr std::array feed_per_tooth_units{UnitWord<FeedPerTooth>{"in/tooth", in_per_tooth},
                                          UnitWord<FeedPerTooth>{"mm/tooth", mm_per_tooth}};
constexpr Power kilowatts(double amount) { return watts(factor::kilowatt_in_watt.into(amount)); }
constexpr std::array power_units{UnitWord<Power>{"W", watts}, UnitWord<Power>{"kW", kilowatts},
                                 UnitWord<Power>{"hp", horsepower}};
constexpr Hardness rockwell_c(double number) { return {number, HardnessScale::rockwell_c}; }
constexpr Hardness rockwell_b(double number) { return {number, HardnessScale::rockwell_b}; }
constexpr Hardness vickers(double number) { return {number, HardnessScale::vickers}; }
constexpr std::array hardness_units{UnitWord<Hardness>{"HB", brinell}, UnitWord<Hardness>{"HRC", rockwell_c},
                                    UnitWord<Hardness>{"HRB", rockwell_b}, UnitWord<Hardness>{"HV", vickers}};
constexpr double plain(double number) { return number; }
constexpr double hundredth(double number) { return number / 100; }
constexpr std::array percent_units{UnitWord<double>{"%", hundredth}};
constexpr std::array ratio_units{UnitWord<double>{"", plain}};

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

std::string article(std::string_view what) { return "is no " + std::string(what); }

/// What is meant by a word with commas: decimal points; nothing where they may part thousands, as in 25,000.
std::optional<std::string> without_commas(std::string_view word) {
  std::string meant(word);
  for (std::size_t at = meant.find(','); at != std::string::npos; at = meant.find(',', at)) {
    std::size_t digits = at + 1;
    while (digits < meant.size() && is_digit(meant[digits])) ++digits;
    const bool after_zero = at == 0 || meant[at - 1] == '0';
    if (digits - at - 1 == 3 && !after_zero) return std::nullopt;
    meant[at] = '.';
  }
  return meant;
}

/// Refuses what no reader accepts, before the form is looked at. Gives the word without white space round it.
std::string_view plain_word(std::string_view text, std::string_view what, const std::vector<std::string>& allowed) {
  if (!is_plain_utf8(text))
    throw wrong_word(std::string(text), article(what) + ": it is not plain UTF-8 text", allowed);
  const std::string_view word = trimmed(text);
  if (word.empty())
    throw wrong_word("", article(what) + ": the word is empty" + (what == "size" ? "; quote '#30' or write no30" : ""),
                     allowed);
  if (word.find(',') != std::string_view::npos) {
    const auto meant = without_commas(word);
    throw wrong_word(std::string(word),
                     article(what) + (meant ? ": a decimal is written with a point; write " + *meant
                                            : ": a decimal is written with a point, and thousands are not parted"),
                     allowed, meant);
  }
  if (word.front() == '-' || word.substr(0, 3) == "\u2212")
    throw wrong_word(std::string(word), article(what) + ": it is negative; give 0 or more", allowed);
  return word;
}

std::string list_of(const std::vector<std::string>& words) {
  std::string list;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) list += i + 1 == words.size() ? " or " : ", ";
    list += words[i];
  }
  return list;
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

const UnitWord<Length>& unit_of_bare_length(UnitSystem units) {
  return units == UnitSystem::inch ? length_units[0] : length_units[2];
}

Wanted wanted_length(std::string_view what, UnitSystem units) {
  return {what, units == UnitSystem::inch ? std::vector<std::string>{"3/16", "0.1875in", "4.8mm"}
                                          : std::vector<std::string>{"4.8mm", "3/16", "0.1875in"}};
}

/// Longest length anybody types at a bench, 10 m: beyond it a unit or a point was forgotten.
constexpr Length longest = metres(10);

Read<Length> read_plain_length(std::string_view text, UnitSystem units, std::string_view what) {
  const Wanted wanted = wanted_length(what, units);
  auto read = read_quantity<Length>(text, wanted, length_units, &unit_of_bare_length(units));
  if (read.value > longest)
    throw wrong_word(std::string(trimmed(text)),
                     article(what) + ": it is over " + shortest_decimal(in_mm(longest) / 1000) +
                         " m; was a unit or a point forgotten?",
                     wanted.examples);
  return read;
}

/// Splits `V+-E` (or `V±E`); without an error the second part is absent.
std::pair<std::string_view, std::optional<std::string_view>> split_reading(std::string_view text) {
  for (const std::string_view mark : {std::string_view("+-"), std::string_view("\u00b1")}) {
    if (const auto at = text.find(mark); at != std::string_view::npos)
      return {text.substr(0, at), text.substr(at + mark.size())};
  }
  return {text, std::nullopt};
}

template <class Quantity, class ReadOne> Reading<Quantity> read_reading(std::string_view text, ReadOne read_one) {
  const auto [value_text, error_text] = split_reading(text);
  if (error_text && (trimmed(value_text).empty() || trimmed(*error_text).empty()))
    throw wrong_word(std::string(text), "is no reading: write the value, +- and how far it may be off, as 121+-1.5");
  const Read<Quantity> value = read_one(value_text);
  Reading<Quantity> reading;
  reading.value = value.value;
  if (!error_text) {
    reading.half_width = value.unit->make(value.written.last_digit / 2);
    return reading;
  }
  // A bare error is in the unit of its value: 3mm+-0.02 is 3 mm give or take 0.02 mm.
  const auto error = take_apart(*error_text);
  const bool bare = error && error->unit.empty() && !error->fraction;
  reading.half_width =
      read_one(bare ? std::string(trimmed(*error_text)) + std::string(value.unit->word) : std::string(*error_text))
          .value;
  reading.half_width_typed = true;
  return reading;
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

Read<Angle> read_plain_angle(std::string_view text) {
  const Wanted wanted{"angle", {"118", "118deg"}};
  auto read = read_quantity<Angle>(text, wanted, angle_units, angle_units.data());
  if (read.value >= turns(1))
    throw wrong_word(std::string(trimmed(text)), "is no angle of a tool: give less than 360 deg", wanted.examples);
  return read;
}

bool looks_like_number_name(std::string_view word) {
  return word.front() == '#' || same_ignoring_case(word.substr(0, 2), "no");
}

SizeWord read_number_name(std::string_view word) {
  std::string_view digits = word.substr(word.front() == '#' ? 1 : 2);
  if (!digits.empty() && digits.front() == '.') digits.remove_prefix(1);
  if (digits.empty() && word.front() == '#')
    throw wrong_word(std::string(word), "is no size: the number is missing; quote '#30' or write no30", {"no1 to no97"},
                     "no30");
  int number = 0;
  const auto result = std::from_chars(digits.data(), digits.data() + digits.size(), number);
  if (result.ec != std::errc{} || result.ptr != digits.data() + digits.size() || number < 1 || number > 97)
    throw wrong_word(std::string(word), "is no number size: they run from no1 to no97", {"no1 to no97"});
  SizeWord size;
  size.form = SizeWord::Form::number;
  size.number = number;
  return size;
}

} // namespace

SizeWord read_size(std::string_view text, UnitSystem units) {
  const std::string_view word = plain_word(text, "size", {"3/16", "4.8mm", "no30", "F"});
  SizeWord size;
  if (word.size() == 1 && ((word[0] >= 'a' && word[0] <= 'z') || (word[0] >= 'A' && word[0] <= 'Z'))) {
    size.form = SizeWord::Form::letter;
    size.letter = word[0] >= 'a' ? static_cast<char>(word[0] - 'a' + 'A') : word[0];
  } else if (looks_like_number_name(word)) {
    size = read_number_name(word);
  } else {
    Read<Length> read;
    try {
      read = read_plain_length(word, units, "size");
    } catch (Fault& fault) {
      // A size may also be a name: say so where the length reader listed only lengths.
      if (!fault.suggestion && fault.allowed.size() == 3 && fault.allowed.front().find_first_of("0123456789") == 0) {
        fault.allowed.insert(fault.allowed.end(), {"no30", "F"});
      }
      throw;
    }
    if (!(read.value > mm(0)))
      throw wrong_word(std::string(word), "is no size: a tool is larger than 0", {"3/16", "4.8mm", "no30", "F"});
    size.length = read.value;
    size.bare = read.written.unit.empty() && !read.written.fraction;
  }
  size.text = std::string(word);
  return size;
}

Length read_length(std::string_view text, UnitSystem units, std::string_view what) {
  return read_plain_length(text, units, what).value;
}

Reading<Length> read_length_reading(std::string_view text, UnitSystem units, std::string_view what) {
  return read_reading<Length>(text, [&](std::string_view part) { return read_plain_length(part, units, what); });
}

Angle read_angle(std::string_view text) { return read_plain_angle(text).value; }

Reading<Angle> read_angle_reading(std::string_view text) { return read_reading<Angle>(text, read_plain_angle); }

SpindleSpeed read_spindle_speed(std::string_view text) {
  const Wanted wanted{"spindle speed", {"25000", "25000rev/min"}};
  const auto read = read_quantity<SpindleSpeed>(text, wanted, spindle_speed_units, spindle_speed_units.data());
  if (!(read.value >= rev_per_min(1)) || read.value > rev_per_min(1e6))
    throw wrong_word(std::string(trimmed(text)), "is no spindle speed: give 1 to 1000000 rev/min", wanted.examples);
  return read.value;
}

CuttingSpeed read_cutting_speed(std::string_view text) {
  return read_quantity<CuttingSpeed>(text, {"cutting speed", {"90ft/min", "27m/min"}}, cutting_speed_units, nullptr)
      .value;
}

FeedPerRev read_feed_per_rev(std::string_view text, UnitSystem units) {
  return read_quantity<FeedPerRev>(text, {"feed per turn", {"0.002in/rev", "0.05mm/rev"}}, feed_per_rev_units,
                                   &feed_per_rev_units[units == UnitSystem::inch ? 0 : 1])
      .value;
}

FeedPerTooth read_feed_per_tooth(std::string_view text, UnitSystem units) {
  return read_quantity<FeedPerTooth>(text, {"feed per tooth", {"0.0005in/tooth", "0.013mm/tooth"}},
                                     feed_per_tooth_units, &feed_per_tooth_units[units == UnitSystem::inch ? 0 : 1])
      .value;
}

Temperature read_temperature(std::string_view text) {
  const Wanted wanted{"temperature", {"150C", "300F"}};
  // The one quantity with a zero in the middle of its scale.
  std::string_view word = trimmed(text);
  const bool below = !word.empty() && word.front() == '-';
  if (below) word.remove_prefix(1);
  const std::string_view number_part = trimmed(word);
  const bool twice = number_part.empty() || number_part.front() == '-';
  if (below && twice)
    throw wrong_word(std::string(trimmed(text)), article(wanted.what) + ": write it as " + list_of(wanted.examples),
                     wanted.examples);
  word = plain_word(word, wanted.what, wanted.examples);
  const auto written = take_apart(word);
  if (!written || written->fraction)
    throw wrong_word(std::string(trimmed(text)), article(wanted.what) + ": write it as " + list_of(wanted.examples),
                     wanted.examples);
  const double degrees_typed = below ? -written->number : written->number;
  const auto is = [&](std::initializer_list<std::string_view> words) {
    for (const auto unit : words)
      if (same_ignoring_case(unit, written->unit)) return true;
    return false;
  };
  if (!is({"C", "degC", "F", "degF", "\u00b0C", "\u00b0F"}))
    throw wrong_word(std::string(trimmed(text)), article(wanted.what) + ": it needs a unit, C or F", {"C", "F"});
  const Temperature temperature = is({"C", "degC", "\u00b0C"}) ? celsius(degrees_typed) : fahrenheit(degrees_typed);
  if (temperature.value() < 0 || temperature > celsius(4000))
    throw wrong_word(std::string(trimmed(text)), article(wanted.what) + " of a workshop", wanted.examples);
  return temperature;
}

Hardness read_hardness(std::string_view text) {
  const auto read = read_quantity<Hardness>(text, {"hardness", {"28HRC", "200HB"}}, hardness_units, nullptr);
  if (!(read.value.number > 0) || read.value.number > 2000)
    throw wrong_word(std::string(trimmed(text)), "is no hardness: give a number above 0", {"28HRC", "200HB"});
  return read.value;
}

int read_count(std::string_view text, std::string_view what, int least, int most) {
  const std::vector<std::string> allowed{std::to_string(least) + " to " + std::to_string(most)};
  const std::string_view word = plain_word(text, what, allowed);
  int count = 0;
  const auto result = std::from_chars(word.data(), word.data() + word.size(), count);
  if (result.ec != std::errc{} || result.ptr != word.data() + word.size() || count < least || count > most)
    throw wrong_word(std::string(word), article(what) + ": give a whole number, " + allowed.front(), allowed);
  return count;
}

Range<Length> read_length_range(std::string_view text) {
  return read_range<Length>(text, {"length", {"0.125 in", "1/8 in", "3 mm"}}, length_units);
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
