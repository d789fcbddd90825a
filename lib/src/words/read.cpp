#include <quillside/words/read.hpp>

#include <charconv>
#include <utility>

#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>

#include "unit_words.hpp"
#include "written.hpp"

namespace quillside {

namespace {

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

double read_percent(std::string_view text, std::string_view what) {
  return read_quantity<double>(text, {what, {"75", "75%"}}, percent_units, percent_units.data()).value;
}

Hardness read_hardness(std::string_view text) {
  const auto read = read_quantity<Hardness>(text, {"hardness", {"28HRC", "200HB"}}, hardness_units, nullptr);
  if (!(read.value.number > 0) || read.value.number > 2000)
    throw wrong_word(std::string(trimmed(text)), "is no hardness: give a number above 0", {"28HRC", "200HB"});
  return read.value;
}

std::vector<std::string> words_of_list(std::string_view list) {
  std::vector<std::string> words;
  for (;;) {
    const auto comma = list.find(',');
    const std::string_view word = trimmed(list.substr(0, comma));
    if (!word.empty()) words.emplace_back(word);
    if (comma == std::string_view::npos) return words;
    list.remove_prefix(comma + 1);
  }
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

} // namespace quillside
