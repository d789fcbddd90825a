// Words to quantities. The expected lengths are arithmetic on the international inch of 25.4 mm, written out in the
// rows; nothing here is a figure from a page.

#include "catch.hpp"

#include <algorithm>
#include <functional>
#include <string>
#include <vector>

#include <quillside/words/fault.hpp>
#include <quillside/words/read.hpp>

using namespace quillside;
using quillside::test::WithinAbs;
using quillside::test::WithinRel;

namespace {

// Reading a decimal, and one multiplication and one division by whole numbers: four roundings at most, each 1.1e-16.
constexpr double four_roundings = 5e-16;

template <class ReadOne> Fault fault_of(ReadOne read_one) {
  try {
    read_one();
  } catch (const Fault& fault) {
    return fault;
  }
  FAIL("the word was accepted");
  return {};
}

/// A reader under the name of what it reads.
struct Reader {
  const char* name;
  std::function<void(const std::string&)> read;
};

const std::vector<Reader>& all_readers() {
  static const std::vector<Reader> readers{
      {"size", [](const std::string& text) { read_size(text, UnitSystem::inch); }},
      {"length", [](const std::string& text) { read_length(text, UnitSystem::inch); }},
      {"length reading", [](const std::string& text) { read_length_reading(text, UnitSystem::inch); }},
      {"angle", [](const std::string& text) { read_angle(text); }},
      {"angle reading", [](const std::string& text) { read_angle_reading(text); }},
      {"spindle speed", [](const std::string& text) { read_spindle_speed(text); }},
      {"cutting speed", [](const std::string& text) { read_cutting_speed(text); }},
      {"feed per turn", [](const std::string& text) { read_feed_per_rev(text, UnitSystem::inch); }},
      {"feed per tooth", [](const std::string& text) { read_feed_per_tooth(text, UnitSystem::inch); }},
      {"temperature", [](const std::string& text) { read_temperature(text); }},
      {"hardness", [](const std::string& text) { read_hardness(text); }},
      {"count", [](const std::string& text) { read_count(text, "number of flutes", 1, 8); }},
      {"length range", [](const std::string& text) { read_length_range(text); }},
      {"limits of size", [](const std::string& text) { read_limits_of_size(text); }},
      {"temperature range", [](const std::string& text) { read_temperature_range(text); }},
      {"expansion range", [](const std::string& text) { read_expansion_range(text); }},
      {"angle range", [](const std::string& text) { read_angle_range(text); }},
      {"spindle speed range", [](const std::string& text) { read_spindle_speed_range(text); }},
      {"cutting speed range", [](const std::string& text) { read_cutting_speed_range(text); }},
      {"feed per turn range", [](const std::string& text) { read_feed_per_rev_range(text); }},
      {"feed per tooth range", [](const std::string& text) { read_feed_per_tooth_range(text); }},
      {"power range", [](const std::string& text) { read_power_range(text); }},
      {"percent range", [](const std::string& text) { read_percent_range(text); }},
      {"ratio range", [](const std::string& text) { read_ratio_range(text); }},
      {"percent", [](const std::string& text) { read_percent(text, "percentage of thread"); }},
      {"hardness band", [](const std::string& text) { read_hardness_band(text); }},
  };
  return readers;
}

bool accepted(const Reader& reader, const std::string& text) {
  try {
    reader.read(text);
  } catch (const Fault&) {
    return false;
  }
  return true;
}

} // namespace

// --- what no reader accepts ---

TEST_CASE("no reader accepts what is no plain positive decimal number") {
  const std::string form = GENERATE(
      "", " ", ".", "-", "+5", "-5", "--5", "nan", "NaN", "inf", "Infinity", "-inf", "1.2.3", "1..2", "1e3", "1E3",
      "1e-3", "0x10", "1/0", "3/-16", "3//16", "3/16/2", "/16", "3/", "1--1/8", "1,5", "1,000",
      "\xe2\x88\x92"
      "5",
      "\xff", "5\xff", "5\xc3", "\xed\xa0\x80", "5\x1b[31m", "5\n", "5\t", "five", "1_000", "1 000", "5;", "$5");
  // Each with the units a reader might take, so that it is the number that is refused and not the want of a unit.
  std::vector<std::string> taken;
  for (const auto* unit :
       {"", "mm", " mm", "in", "deg", "rev/min", "ft/min", "mm/rev", "mm/tooth", "C", "HB", "W", "%"}) {
    const std::string text = form + unit;
    for (const auto& reader : all_readers()) {
      const std::string name = reader.name;
      // Below zero a temperature still means something; C and W alone are lettered drills.
      const bool letter =
          name == "size" && (form.empty() || form == " ") && (std::string(unit) == "C" || std::string(unit) == "W");
      if ((name == "temperature" && form == "-5") || letter) continue;
      if (accepted(reader, text)) taken.push_back(name + " from '" + text + "'");
    }
  }
  CHECK(taken == std::vector<std::string>{});
}

TEST_CASE("a dash in front of the stroke is no fraction") {
  for (const auto* text : {"3-/16", "3-/16in", "3- /16"}) {
    INFO(text);
    CHECK_THROWS_AS(read_size(text, UnitSystem::inch), Fault);
  }
}

TEST_CASE("every refusal is a fault of a word that quotes it, on one line") {
  const std::string text = GENERATE("gibberish", "5 parsecs", "-5", "1,5", "1.2.3", "--5C", "-", "-1 to 3 mm");
  for (const auto& reader : all_readers()) {
    if (accepted(reader, text)) continue;
    const Fault fault = fault_of([&] { reader.read(text); });
    INFO(reader.name << ": " << fault.message);
    CHECK(fault.kind == FaultKind::word);
    CHECK(fault.word == text);
    CHECK(fault.message.rfind("'" + text + "' ", 0) == 0);
    CHECK(fault.message.find('\n') == std::string::npos);
    CHECK(fault.what() == fault.message);
    CHECK_FALSE(fault.place.has_value());
  }
}

TEST_CASE("a refusal says what would do, whatever the word was") {
  const std::string text = GENERATE("gibberish", "5 parsecs", "-5", "1,5", "1.2.3", "\xff");
  std::vector<std::string> silent;
  for (const auto& reader : all_readers()) {
    if (accepted(reader, text)) continue;
    if (fault_of([&] { reader.read(text); }).allowed.empty()) silent.emplace_back(reader.name);
  }
  CHECK(silent == std::vector<std::string>{});
}

TEST_CASE("bytes that cannot be shown are never in a message") {
  const std::string text = GENERATE("\xff", "5\xff", "5\x1b[31m", "5\n", "5\xc3");
  for (const auto& reader : all_readers()) {
    const Fault fault = fault_of([&] { reader.read(text); });
    INFO(reader.name);
    for (const char byte : fault.message) {
      const auto code = static_cast<unsigned char>(byte);
      CHECK((code >= 0x20 && code < 0x7f)); // these words have no printable letter beyond ASCII
    }
  }
}

TEST_CASE("what a refusal suggests can itself be typed") {
  struct Row {
    std::string reader;
    std::string text;
  };
  const auto row = GENERATE(Row{"size", "1,5"}, Row{"size", "0,118in"}, Row{"size", "3/16mm"}, Row{"size", "1-1/8mm"},
                            Row{"size", "3/16um"}, Row{"size", "5/64ft"}, Row{"size", "1/64mm"}, Row{"size", "#"},
                            Row{"length", "3/16 mm"}, Row{"length reading", "0,118"}, Row{"angle", "118,5"},
                            Row{"cutting speed", "27,5m/min"}, Row{"feed per turn", "0,05mm/rev"},
                            Row{"feed per tooth", "0,013mm/tooth"}, Row{"temperature", "20,5C"},
                            Row{"hardness", "28,5HRC"}, Row{"percent range", "2,5 %"}, Row{"ratio range", "2,5"});
  INFO(row.reader << " from '" << row.text << "'");
  const auto reader = std::find_if(all_readers().begin(), all_readers().end(),
                                   [&](const Reader& candidate) { return row.reader == candidate.name; });
  REQUIRE(reader != all_readers().end());
  const Fault fault = fault_of([&] { reader->read(row.text); });
  REQUIRE(fault.suggestion.has_value());
  CHECK(accepted(*reader, *fault.suggestion));
}

TEST_CASE("an empty error, or one that is no number, is refused in words about the reading") {
  const std::string text = GENERATE("0.118+-", "0.118+-abc", "0.118+--0.001", "+-0.001", "0.1+-0.2+-0.3", "0.118+-nan",
                                    "0.118+-inf", "0.118+-1e-3", "0.118-+0.001");
  const Fault fault = fault_of([&] { read_length_reading(text, UnitSystem::inch); });
  INFO(fault.message);
  CHECK(fault.kind == FaultKind::word);
  CHECK_FALSE(fault.word.empty());
  CHECK(text.find(fault.word) != std::string::npos);
  CHECK_THROWS_AS(read_angle_reading(text), Fault);
}

// --- sizes ---

TEST_CASE("a length stands for a size in every form the bench writes it") {
  struct Form {
    std::string text;
    UnitSystem units;
    double millimetres;
    bool bare;
  };
  const auto inch = UnitSystem::inch;
  const auto metric = UnitSystem::metric;
  const auto form = GENERATE_COPY(
      Form{"3/16", inch, 4.7625, false}, Form{"3/16", metric, 4.7625, false}, // a fraction is inch always
      Form{"1-1/8", inch, 28.575, false}, Form{"1-1/8", metric, 28.575, false}, Form{"1 1/8", inch, 28.575, false},
      Form{"3/16in", metric, 4.7625, false}, Form{"3/16 in", inch, 4.7625, false},
      Form{"3/16\"", metric, 4.7625, false}, Form{"1-1/8in", metric, 28.575, false},
      Form{"1/64", inch, 0.396875, false}, Form{"9/8", inch, 28.575, false}, Form{"0.1875in", metric, 4.7625, false},
      Form{"0.1875 in", inch, 4.7625, false}, Form{"0.1875IN", inch, 4.7625, false}, Form{"4.8mm", inch, 4.8, false},
      Form{"4.8 mm", inch, 4.8, false}, Form{"4.8MM", metric, 4.8, false}, Form{"55thou", metric, 1.397, false},
      Form{"55 thou", inch, 1.397, false}, Form{"800um", inch, 0.8, false}, Form{"0.005m", inch, 5, false},
      Form{"1ft", inch, 304.8, false}, Form{"0.1875", inch, 4.7625, true}, Form{"4.8", metric, 4.8, true},
      Form{".1875", inch, 4.7625, true}, Form{"5.", metric, 5, true}, Form{"05", metric, 5, true},
      Form{"  4.8mm  ", inch, 4.8, false});
  INFO(form.text);
  const SizeWord size = read_size(form.text, form.units);
  CHECK(size.form == SizeWord::Form::length);
  CHECK_THAT(in_mm(size.length), WithinRel(form.millimetres, four_roundings));
  CHECK(size.bare == form.bare);
  // A length of the same words is the same length.
  CHECK(read_length(form.text, form.units) == size.length);
}

TEST_CASE("a size keeps the text it was typed as, without the space round it") {
  CHECK(read_size(" 3/16in ", UnitSystem::inch).text == "3/16in");
  CHECK(read_size("#30", UnitSystem::inch).text == "#30");
  CHECK(read_size("f", UnitSystem::inch).text == "f");
}

TEST_CASE("a numbered drill is written no30 or #30") {
  struct Form {
    std::string text;
    int number;
  };
  const auto form = GENERATE(Form{"no30", 30}, Form{"No30", 30}, Form{"NO30", 30}, Form{"no.30", 30}, Form{"#30", 30},
                             Form{"no1", 1}, Form{"#97", 97}, Form{"no80", 80});
  INFO(form.text);
  for (const auto units : {UnitSystem::inch, UnitSystem::metric}) {
    const SizeWord size = read_size(form.text, units);
    CHECK(size.form == SizeWord::Form::number);
    CHECK(size.number == form.number);
    CHECK_FALSE(size.bare);
  }
}

TEST_CASE("a lettered drill is written in either case") {
  for (char upper = 'A'; upper <= 'Z'; ++upper) {
    const char lower = static_cast<char>(upper - 'A' + 'a');
    for (const char typed : {upper, lower}) {
      const SizeWord size = read_size(std::string(1, typed), UnitSystem::inch);
      INFO(typed);
      CHECK(size.form == SizeWord::Form::letter);
      CHECK(size.letter == upper);
    }
  }
}

TEST_CASE("a number that no drill carries is refused, and the numbers that do are named") {
  const std::string text = GENERATE("no0", "no98", "#0", "#98", "#107", "no-5", "#-5", "no1.5", "#3/16", "no", "no.",
                                    "#x", "no30mm", "no99999999999999999999");
  const Fault fault = fault_of([&] { read_size(text, UnitSystem::inch); });
  INFO(fault.message);
  CHECK(fault.word == text);
  CHECK(fault.allowed == std::vector<std::string>{"no1 to no97"});
}

TEST_CASE("a number sign alone is what the shell leaves of #30, and the answer says to quote it") {
  const Fault fault = fault_of([] { read_size("#", UnitSystem::inch); });
  CHECK(fault.message.find("quote '#30' or write no30") != std::string::npos);
  CHECK(fault.suggestion == "no30");
}

TEST_CASE("a size is more than nothing") {
  const std::string text = GENERATE("0", "0mm", "0in", "0/16", "0.000", "0-0/8");
  const Fault fault = fault_of([&] { read_size(text, UnitSystem::inch); });
  INFO(fault.message);
  CHECK(fault.word == text);
  // A length may be nothing: a depth of 0, an offset of 0.
  CHECK(in_mm(read_length(text, UnitSystem::inch)) == 0);
}

TEST_CASE("the refusal of a size names a numbered and a lettered drill among what would do") {
  const Fault fault = fault_of([] { read_size("AA", UnitSystem::inch); });
  INFO(fault.message);
  CHECK(std::count(fault.allowed.begin(), fault.allowed.end(), "no30") == 1);
  CHECK(std::count(fault.allowed.begin(), fault.allowed.end(), "F") == 1);
}

// --- fractions are inch ---

TEST_CASE("a fraction of a millimetre is refused with both ways to write it") {
  struct Word {
    std::string text;
    std::string message;
    std::string suggestion;
  };
  const auto word =
      GENERATE(Word{"3/16mm", "'3/16mm' is no size: a fraction is in inches; write 3/16in or 4.8mm", "4.8mm"},
               // 1.125 x 25.4 = 28.575 mm, to the nearest tenth.
               Word{"1-1/8mm", "'1-1/8mm' is no size: a fraction is in inches; write 1-1/8in or 28.6mm", "28.6mm"},
               Word{"3/16 mm", "'3/16 mm' is no size: a fraction is in inches; write 3/16in or 4.8mm", "4.8mm"});
  for (const auto units : {UnitSystem::inch, UnitSystem::metric}) {
    const Fault fault = fault_of([&] { read_size(word.text, units); });
    CHECK(fault.message == word.message);
    CHECK(fault.word == word.text);
    CHECK(fault.suggestion == word.suggestion);
    CHECK(std::count(fault.allowed.begin(), fault.allowed.end(), word.suggestion) == 1);
  }
}

TEST_CASE("a length is refused under the noun it was asked for by") {
  const Fault fault = fault_of([] { read_length("3/16mm", UnitSystem::inch, "overhang"); });
  CHECK(fault.message == "'3/16mm' is no overhang: a fraction is in inches; write 3/16in or 4.8mm");
}

TEST_CASE("a fraction is never read in another unit than the inch") {
  const std::string unit = GENERATE("mm", "um", "m", "ft", "thou");
  CHECK_THROWS_AS(read_size("3/16" + unit, UnitSystem::inch), Fault);
  CHECK_THROWS_AS(read_length("3/16" + unit, UnitSystem::metric), Fault);
  CHECK_THROWS_AS(read_length_reading("3/16" + unit, UnitSystem::inch), Fault);
  // A table is a page to read as well: the same rule holds in it.
  CHECK_THROWS_AS(read_length_range("3/16 " + unit), Fault);
  CHECK_THROWS_AS(read_length_range("1/16 to 3/16 " + unit), Fault);
}

TEST_CASE("a fraction takes no unit from the other end of a range, nor from the value of its reading") {
  // Either is refused or read as inches; what it may not be is a sixteenth of a millimetre.
  const double sixteenth = 25.4 / 16;
  try {
    CHECK_THAT(in_mm(read_length_range("1/16 to 3 mm").low), WithinRel(sixteenth, four_roundings));
  } catch (const Fault& fault) {
    CHECK(fault.kind == FaultKind::word);
  }
  try {
    CHECK_THAT(in_mm(read_length_reading("30mm+-1/16", UnitSystem::inch).half_width),
               WithinRel(sixteenth, four_roundings));
  } catch (const Fault& fault) {
    CHECK(fault.kind == FaultKind::word);
  }
}

// --- lengths ---

TEST_CASE("a decimal comma is refused with the point in its place") {
  struct Word {
    std::string text;
    std::string suggestion;
  };
  const auto word = GENERATE(Word{"4,8mm", "4.8mm"}, Word{"0,1875", "0.1875"}, Word{"4,8 mm", "4.8 mm"});
  const Fault fault = fault_of([&] { read_size(word.text, UnitSystem::metric); });
  CHECK(fault.message == "'" + word.text + "' is no size: a decimal is written with a point; write " + word.suggestion);
  CHECK(fault.suggestion == word.suggestion);
}

TEST_CASE("both commas of a range are mended at once") {
  const Fault fault = fault_of([] { read_length_range("1,5 to 2,5 mm"); });
  CHECK(fault.suggestion == "1.5 to 2.5 mm");
}

TEST_CASE("a comma between thousands is not turned into a point") {
  // Whoever takes the suggestion 25.000 for 25,000 has a burr at 25 rev/min.
  const Fault fault = fault_of([] { read_spindle_speed("25,000"); });
  CHECK(fault.suggestion.value_or("") != "25.000");
  CHECK_THROWS_AS(read_count("1,000", "number of flutes", 1, 2000), Fault);
}

TEST_CASE("a length that no bench holds asks whether a unit or a point was forgotten") {
  const std::string text = GENERATE("400in", "10001mm", "11m", "33ft", "999999999", "999999/1",
                                    "999999999999999999999999999999mm",   // 30 digits
                                    "9999999999999999999999999999999mm"); // one more than is taken as a number
  CHECK_THROWS_AS(read_size(text, UnitSystem::inch), Fault);
  CHECK_THROWS_AS(read_length(text, UnitSystem::inch), Fault);
  CHECK_THROWS_AS(read_length_reading(text, UnitSystem::inch), Fault);
}

TEST_CASE("ten metres is the longest length") { CHECK(in_mm(read_length("10000mm", UnitSystem::inch)) == 10000); }

TEST_CASE("a length in the unit of another quantity is refused, and the units of a length are named") {
  const std::string unit = GENERATE("deg", "rev/min", "mm/rev", "C", "HB", "inches", "m m", "cm");
  const Fault fault = fault_of([&] { read_length("5" + unit, UnitSystem::inch); });
  INFO(fault.message);
  CHECK(std::count(fault.allowed.begin(), fault.allowed.end(), "in") == 1);
  CHECK(std::count(fault.allowed.begin(), fault.allowed.end(), "mm") == 1);
}

// --- readings ---

TEST_CASE("a reading is off by half of the last digit typed, when nothing else is said") {
  struct Row {
    std::string text;
    UnitSystem units;
    double value;      // mm
    double half_width; // mm
  };
  const auto inch = UnitSystem::inch;
  const auto metric = UnitSystem::metric;
  const auto row = GENERATE_COPY(Row{"0.118", inch, 2.9972, 0.0127},   // half of 0.001 in
                                 Row{"0.1180", inch, 2.9972, 0.00127}, // a zero at the end was read too
                                 Row{"3", metric, 3, 0.5}, Row{"3.0", metric, 3, 0.05}, Row{"3.00mm", inch, 3, 0.005},
                                 Row{"118thou", metric, 2.9972, 0.0127}, // half of a thou
                                 Row{"5.", metric, 5, 0.5}, Row{".125", inch, 3.175, 0.0127},
                                 Row{"1/8", inch, 3.175, 0}); // a fraction has no last digit
  INFO(row.text);
  const auto reading = read_length_reading(row.text, row.units);
  CHECK_THAT(in_mm(reading.value), WithinRel(row.value, four_roundings));
  // The digit's worth is a power of ten below 1, and carries a rounding of its own.
  CHECK_THAT(in_mm(reading.half_width), WithinRel(row.half_width, 1e-15));
  CHECK_FALSE(reading.half_width_typed);
}

TEST_CASE("a reading carries the error typed with it, in its own unit or in another") {
  struct Row {
    std::string text;
    UnitSystem units;
    double value;      // mm
    double half_width; // mm
  };
  const auto inch = UnitSystem::inch;
  const auto metric = UnitSystem::metric;
  const auto row = GENERATE_COPY(Row{"0.118+-0.001", inch, 2.9972, 0.0254}, Row{"3mm+-0.02mm", inch, 3, 0.02},
                                 Row{"3mm+-0.02", inch, 3, 0.02}, // a bare error has the unit of its value
                                 Row{"0.118in+-0.02mm", metric, 2.9972, 0.02}, Row{"3+-1thou", metric, 3, 0.0254},
                                 Row{"1/8+-0.001", metric, 3.175, 0.0254}, // a fraction is inch, so is its error
                                 Row{"0.125+-1/64", inch, 3.175, 0.396875}, Row{"3.0+-0", metric, 3, 0},
                                 Row{"3 mm +- 0.02 mm", inch, 3, 0.02},
                                 Row{"3mm\xc2\xb1"
                                     "0.02mm",
                                     inch, 3, 0.02});
  INFO(row.text);
  const auto reading = read_length_reading(row.text, row.units);
  CHECK_THAT(in_mm(reading.value), WithinRel(row.value, four_roundings));
  CHECK_THAT(in_mm(reading.half_width), WithinAbs(row.half_width, four_roundings));
  CHECK(reading.half_width_typed);
}

TEST_CASE("a reading of an angle has its half digit and its error in degrees") {
  struct Row {
    std::string text;
    double value;
    double half_width;
    bool typed;
  };
  const auto row =
      GENERATE(Row{"118", 118, 0.5, false}, Row{"118.0", 118, 0.05, false}, Row{"121+-1.5", 121, 1.5, true},
               Row{"121deg+-1.5deg", 121, 1.5, true}, Row{"0+-0.25", 0, 0.25, true});
  INFO(row.text);
  const auto reading = read_angle_reading(row.text);
  CHECK_THAT(in_degrees(reading.value), WithinAbs(row.value, 1e-13)); // a few roundings of 118
  CHECK_THAT(in_degrees(reading.half_width), WithinAbs(row.half_width, 1e-15));
  CHECK(reading.half_width_typed == row.typed);
}

TEST_CASE("an error has the limits of what it belongs to, with a unit or bare") {
  // 30 digits, more than the 10 m a length may have, more than the whole turn an angle may have.
  CHECK_THROWS_AS(read_length_reading("0.118+-999999in", UnitSystem::inch), Fault);
  CHECK_THROWS_AS(read_length_reading("0.118+-999999", UnitSystem::inch), Fault);
  CHECK_THROWS_AS(read_angle_reading("118+-720deg"), Fault);
  CHECK_THROWS_AS(read_angle_reading("118+-720"), Fault);
}

// --- angles, speeds, feeds ---

TEST_CASE("an angle is bare or in degrees, from nothing to less than a turn") {
  struct Form {
    std::string text;
    double degrees;
  };
  const auto form = GENERATE(Form{"118", 118}, Form{"118deg", 118}, Form{"118 deg", 118}, Form{"118\xc2\xb0", 118},
                             Form{"0", 0}, Form{"0.5", 0.5}, Form{"359.9", 359.9});
  INFO(form.text);
  CHECK_THAT(in_degrees(read_angle(form.text)), WithinAbs(form.degrees, 1e-13)); // a few roundings of 359.9
}

TEST_CASE("a whole turn, another unit or a sign is no angle of a tool") {
  const std::string text = GENERATE("360", "360deg", "1000", "118rad", "118mm", "118in", "-118", "118'", "1turn");
  CHECK_THROWS_AS(read_angle(text), Fault);
}

TEST_CASE("a spindle speed is bare or in turns a minute, 1 to a million") {
  struct Form {
    std::string text;
    double rev_per_min;
  };
  const auto form = GENERATE(Form{"25000", 25000}, Form{"25000rev/min", 25000}, Form{"25000 rev/min", 25000},
                             Form{"1720rpm", 1720}, Form{"1", 1}, Form{"1000000", 1e6});
  INFO(form.text);
  CHECK(in_rev_per_min(read_spindle_speed(form.text)) == form.rev_per_min); // a whole number of halves: no rounding
}

TEST_CASE("no spindle turns at these") {
  const std::string text =
      GENERATE("0", "0rpm", "-100", "1000001", "999999999999", "100ft/min", "100m/min", "100rev", "100mm/rev", "100/s");
  const Fault fault = fault_of([&] { read_spindle_speed(text); });
  INFO(fault.message);
  CHECK(fault.word == text);
}

TEST_CASE("a cutting speed says its unit") {
  CHECK_THAT(in_m_per_min(read_cutting_speed("27m/min")), WithinRel(27.0, four_roundings));
  CHECK_THAT(in_m_per_min(read_cutting_speed("90ft/min")), WithinRel(27.432, four_roundings)); // 90 x 0.3048
  CHECK_THAT(in_m_per_min(read_cutting_speed("90 ft/min")), WithinRel(27.432, four_roundings));
  for (const auto* text : {"90", "90 rev/min", "90 mm/min", "90 in/min", "90 ft", "-90 ft/min", "90 m/s"}) {
    INFO(text);
    CHECK_THROWS_AS(read_cutting_speed(text), Fault);
  }
  const Fault fault = fault_of([] { read_cutting_speed("90"); });
  CHECK(fault.allowed == std::vector<std::string>{"ft/min", "m/min"});
}

TEST_CASE("a feed per turn is no feed per tooth, and a bare one is in the unit of the system") {
  CHECK_THAT(in_mm_per_rev(read_feed_per_rev("0.002in/rev", UnitSystem::metric)), WithinRel(0.0508, four_roundings));
  CHECK_THAT(in_mm_per_rev(read_feed_per_rev("0.05mm/rev", UnitSystem::inch)), WithinRel(0.05, four_roundings));
  CHECK_THAT(in_mm_per_rev(read_feed_per_rev("0.002", UnitSystem::inch)), WithinRel(0.0508, four_roundings));
  CHECK_THAT(in_mm_per_rev(read_feed_per_rev("0.05", UnitSystem::metric)), WithinRel(0.05, four_roundings));
  CHECK_THAT(in_mm_per_tooth(read_feed_per_tooth("0.0005in/tooth", UnitSystem::metric)),
             WithinRel(0.0127, four_roundings));
  CHECK_THAT(in_mm_per_tooth(read_feed_per_tooth("0.013mm/tooth", UnitSystem::inch)), WithinRel(0.013, four_roundings));
  CHECK_THAT(in_mm_per_tooth(read_feed_per_tooth("0.0005", UnitSystem::inch)), WithinRel(0.0127, four_roundings));
  CHECK_THAT(in_mm_per_tooth(read_feed_per_tooth("0.013", UnitSystem::metric)), WithinRel(0.013, four_roundings));
  CHECK_THROWS_AS(read_feed_per_rev("0.002in/tooth", UnitSystem::inch), Fault);
  CHECK_THROWS_AS(read_feed_per_rev("0.002in", UnitSystem::inch), Fault);
  CHECK_THROWS_AS(read_feed_per_rev("0.002in/min", UnitSystem::inch), Fault);
  CHECK_THROWS_AS(read_feed_per_tooth("0.002in/rev", UnitSystem::inch), Fault);
  CHECK_THROWS_AS(read_feed_per_tooth("-0.002in/tooth", UnitSystem::inch), Fault);
}

// --- temperatures, hardness, counts ---

TEST_CASE("a temperature says its scale and may lie below zero of it") {
  struct Form {
    std::string text;
    double celsius;
  };
  // Fahrenheit to Celsius: (F - 32) x 5/9, by hand.
  const auto form =
      GENERATE(Form{"150C", 150}, Form{"150c", 150}, Form{"150degC", 150},
               Form{"150 \xc2\xb0"
                    "C",
                    150},
               Form{"300F", 148.88888888888889}, Form{"212F", 100}, Form{"-40F", -40}, Form{"-40C", -40}, Form{"0C", 0},
               Form{"32\xc2\xb0"
                    "F",
                    0},
               Form{"-273.15C", -273.15}, Form{"20.5C", 20.5});
  INFO(form.text);
  CHECK_THAT(in_celsius(read_temperature(form.text)), WithinAbs(form.celsius, 2e-13)); // roundings of some 420 K
}

TEST_CASE("a temperature without a scale, below absolute zero or of no workshop is refused") {
  const std::string text = GENERATE("150", "150K", "150mm", "-274C", "-460F", "5000C", "99999999F", "1/2C", "hot", "- ",
                                    "150 C C", "150C+-1");
  CHECK_THROWS_AS(read_temperature(text), Fault);
}

TEST_CASE("a hardness is a number on a named scale") {
  struct Form {
    std::string text;
    double number;
    HardnessScale scale;
  };
  const auto form =
      GENERATE(Form{"28HRC", 28, HardnessScale::rockwell_c}, Form{"28 hrc", 28, HardnessScale::rockwell_c},
               Form{"200HB", 200, HardnessScale::brinell}, Form{"95HRB", 95, HardnessScale::rockwell_b},
               Form{"210HV", 210, HardnessScale::vickers}, Form{"28.5HRC", 28.5, HardnessScale::rockwell_c});
  INFO(form.text);
  const Hardness hardness = read_hardness(form.text);
  CHECK(hardness.number == form.number);
  CHECK(hardness.scale == form.scale);
}

TEST_CASE("a hardness without a scale, of nothing or beyond any metal is refused") {
  const std::string text = GENERATE("28", "0HB", "-28HRC", "2001HV", "28HRA", "28H", "28 mm", "hard");
  CHECK_THROWS_AS(read_hardness(text), Fault);
}

TEST_CASE("a percentage is a share, with its mark or without") {
  CHECK(read_percent("75", "percentage of thread") == 0.75);
  CHECK(read_percent("75%", "percentage of thread") == 0.75);
  CHECK(read_percent("62.5 %", "percentage of thread") == 0.625);
  const std::string text = GENERATE("", "-75", "75 mm", "3/4", "0,75", "all");
  CHECK_THROWS_AS(read_percent(text, "percentage of thread"), Fault);
}

TEST_CASE("a count is a whole number between its ends") {
  CHECK(read_count("2", "number of flutes", 1, 8) == 2);
  CHECK(read_count("1", "number of flutes", 1, 8) == 1);
  CHECK(read_count("8", "number of flutes", 1, 8) == 8);
  CHECK(read_count(" 4 ", "number of flutes", 1, 8) == 4);
  for (const auto* text :
       {"0", "9", "-1", "2.0", "2.5", "+2", "2in", "two", "0x2", "99999999999", "4294967298", "1/2"}) {
    INFO(text);
    const Fault fault = fault_of([&] { read_count(text, "number of flutes", 1, 8); });
    CHECK(fault.allowed == std::vector<std::string>{"1 to 8"});
    CHECK(fault.message.find("is no number of flutes") != std::string::npos);
  }
}

// --- ranges of the tables ---

TEST_CASE("a range has one unit for both ends, or one each") {
  const auto length = read_length_range("1/16 to 1/8 in");
  CHECK_THAT(in_mm(length.low), WithinRel(1.5875, four_roundings));
  CHECK_THAT(in_mm(length.high), WithinRel(3.175, four_roundings));
  const auto mixed = read_length_range("3 mm to 1/4 in");
  CHECK_THAT(in_mm(mixed.low), WithinRel(3.0, four_roundings));
  CHECK_THAT(in_mm(mixed.high), WithinRel(6.35, four_roundings));
  const auto angle = read_angle_range("118 to 135 deg");
  CHECK_THAT(in_degrees(angle.low), WithinRel(118.0, four_roundings));
  CHECK_THAT(in_degrees(angle.high), WithinRel(135.0, four_roundings));
  const auto turning = read_spindle_speed_range("620 to 3100 rev/min");
  CHECK(in_rev_per_min(turning.low) == 620);
  CHECK(in_rev_per_min(turning.high) == 3100);
  const auto speed = read_cutting_speed_range("30 to 40 ft/min");
  CHECK_THAT(in_m_per_min(speed.low), WithinRel(9.144, four_roundings));
  CHECK_THAT(in_m_per_min(speed.high), WithinRel(12.192, four_roundings));
  const auto feed = read_feed_per_rev_range("0.001 to 0.003 in/rev");
  CHECK_THAT(in_mm_per_rev(feed.low), WithinRel(0.0254, four_roundings));
  CHECK_THAT(in_mm_per_rev(feed.high), WithinRel(0.0762, four_roundings));
  const auto chip = read_feed_per_tooth_range("0.01 to 0.02 mm/tooth");
  CHECK_THAT(in_mm_per_tooth(chip.low), WithinRel(0.01, four_roundings));
  CHECK_THAT(in_mm_per_tooth(chip.high), WithinRel(0.02, four_roundings));
  const auto share = read_percent_range("35 to 40 %");
  CHECK_THAT(share.low, WithinRel(0.35, four_roundings));
  CHECK_THAT(share.high, WithinRel(0.40, four_roundings));
  const auto ratio = read_ratio_range("2 to 3");
  CHECK(ratio.low == 2);
  CHECK(ratio.high == 3);
}

TEST_CASE("a range of one value has two equal ends") {
  const auto speed = read_cutting_speed_range("90 ft/min");
  CHECK_THAT(in_ft_per_min(speed.low), WithinRel(90.0, four_roundings));
  CHECK(speed.low == speed.high);
  CHECK(read_ratio_range("2").low == 2);
  CHECK_THAT(read_percent_range("10 %").high, WithinRel(0.10, four_roundings));
  const auto same = read_length_range("3 to 3 mm");
  CHECK(same.low == same.high);
  CHECK(in_mm(read_length_range("0 to 3 mm").low) == 0);
}

TEST_CASE("limits of size carry their signs, and only 0 goes without one") {
  const auto tight = read_limits_of_size("+6 to +12 um");
  CHECK(tight.low == micrometres(6));
  CHECK(tight.high == micrometres(12));
  const auto loose = read_limits_of_size("-0.016 to -0.006 mm");
  CHECK(loose.low == mm(-0.016));
  CHECK(loose.high == mm(-0.006));
  CHECK(read_limits_of_size("0 to +0.4 thou").high == thou(0.4));
  CHECK(read_limits_of_size("-6 to 0 um").high == mm(0));
  CHECK(read_limits_of_size("-3 to +3 um").low == -read_limits_of_size("-3 to +3 um").high);
  for (const char* text : {"6 to 12 um", "+6 to 12 um", "+6 um", "0", "0 to +12", "+12 to +6 um", "-6 to -16 um",
                           "--6 to +6 um", "+-6 to +6 um", "+6 to +12 deg", " to ", "+ to + um"}) {
    INFO(text);
    const Fault fault = fault_of([&] { read_limits_of_size(text); });
    CHECK(fault.kind == FaultKind::word);
    CHECK_FALSE(fault.message.empty());
  }
}

TEST_CASE("heat and expansion of a table are in degrees of either scale") {
  CHECK(read_temperature_range("0 to 100 degC").high == celsius(100));
  CHECK(read_temperature_range("430 degF").low == fahrenheit(430));
  CHECK_THAT(in_um_per_m_celsius(read_expansion_range("17.2 um/(m degC)").low), WithinRel(17.2, four_roundings));
  // A microinch an inch for a degree F is 9/5 um/(m degC).
  CHECK_THAT(in_um_per_m_celsius(read_expansion_range("9 to 9.5 uin/(in degF)").high), WithinRel(17.1, four_roundings));
  for (const char* text : {"100", "100 C", "100 to 50 degC", "100 mm"})
    CHECK_THROWS_AS(read_temperature_range(text), Fault);
  for (const char* text : {"17.2", "17.2 um", "17.2 um/m", "-1 um/(m degC)"})
    CHECK_THROWS_AS(read_expansion_range(text), Fault);
}

TEST_CASE("a power is in watts, kilowatts or horsepower") {
  CHECK_THAT(in_watts(read_power_range("250 W").low), WithinRel(250.0, four_roundings));
  CHECK_THAT(in_watts(read_power_range("0.37 kW").low), WithinRel(370.0, four_roundings));
  // 550 ft lbf/s = 550 x 0.3048 x 0.45359237 x 9.80665 W = 745.6998715822702 W (arithmetic on the exact definitions).
  CHECK_THAT(in_watts(read_power_range("1/2 hp").low), WithinRel(372.8499357911351, 2 * four_roundings));
  CHECK_THROWS_AS(read_power_range("250"), Fault);
  CHECK_THROWS_AS(read_power_range("250 N"), Fault);
}

TEST_CASE("a band of hardness is on one scale") {
  const auto band = read_hardness_band("135 to 185 HB");
  CHECK(band.low == 135);
  CHECK(band.high == 185);
  CHECK(band.scale == HardnessScale::brinell);
  const auto one = read_hardness_band("28 HRC");
  CHECK(one.low == 28);
  CHECK(one.high == 28);
  CHECK(one.scale == HardnessScale::rockwell_c);
  for (const auto* text : {"185 to 135 HB", "20 HRC to 300 HB", "135 to 185", "135 HB to 185", "135 - 185 HB"}) {
    INFO(text);
    CHECK_THROWS_AS(read_hardness_band(text), Fault);
  }
}

TEST_CASE("a range that is turned round, torn or without a unit is refused") {
  for (const auto* text : {"3 to 1 mm", "1 in to 3 mm", "1 to 3", "1 to", "to 3 mm", "1 to 2 to 3 mm", "1 to mm",
                           "1 mm to 3", "-1 to 3 mm", "1 to -3 mm", "1-3 mm", "1..3 mm", "1 to 3 deg", "1 deg to 3 mm",
                           "1to3 mm", "nan to 3 mm", "1 to inf mm"}) {
    INFO(text);
    CHECK_THROWS_AS(read_length_range(text), Fault);
  }
  const Fault turned = fault_of([] { read_length_range("3 to 1 mm"); });
  CHECK(turned.message == "'3 to 1 mm' is no range: its low end is above its high end");
}

TEST_CASE("a table needs the unit of its own kind of quantity") {
  CHECK_THROWS_AS(read_length_range("0.125"), Fault);
  CHECK_THROWS_AS(read_angle_range("118"), Fault);
  CHECK_THROWS_AS(read_spindle_speed_range("620"), Fault);
  CHECK_THROWS_AS(read_spindle_speed_range("90 ft/min"), Fault);
  CHECK_THROWS_AS(read_cutting_speed_range("90"), Fault);
  CHECK_THROWS_AS(read_cutting_speed_range("620 rev/min"), Fault);
  CHECK_THROWS_AS(read_feed_per_rev_range("0.002 in"), Fault);
  CHECK_THROWS_AS(read_feed_per_rev_range("0.002 in/tooth"), Fault);
  CHECK_THROWS_AS(read_feed_per_tooth_range("0.002 in/rev"), Fault);
  CHECK_THROWS_AS(read_percent_range("10"), Fault);
  CHECK_THROWS_AS(read_ratio_range("2 mm"), Fault);
}
