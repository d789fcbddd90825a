#pragma once
// From words to quantities. Reads the form of a word (number 30, letter F, 0.1285 in) and knows no table: whether there
// is a number 30 drill, and how large it is, the size ladder says (data/size_ladder).
//
// Every function throws a Fault of the kind `word` that quotes the word, says what is allowed and suggests.
// Nothing negative (but a limit of size, which has its sign), nothing that is not finite, no decimal comma and no
// exponent is accepted anywhere.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <quillside/quantity/hardness.hpp>
#include <quillside/quantity/units.hpp>

namespace quillside {

/// What a bare number means, and how answers are printed.
enum class UnitSystem { inch, metric };

/// The size of a tool as typed: a numbered or lettered drill, or a length.
struct SizeWord {
  enum class Form { number, letter, length };
  Form form = Form::length;
  int number = 0;     // form number: 1 to 97
  char letter = '\0'; // form letter: 'A' to 'Z'
  Length length{};    // form length: above zero
  bool bare = false;  // form length: typed without a unit, and no fraction
  std::string text;
};

/// `3/16` `1-1/8` `3/16in` `0.1875in` `4.8mm` `55thou` `no30` `#30` `F`; a bare decimal takes the unit of \p units.
SizeWord read_size(std::string_view text, UnitSystem units);

/// A reading: the value, and how far it may be off either way nine times in ten.
template <class Quantity> struct Reading {
  Quantity value{};
  Quantity
      half_width{}; // as typed after +-, else half of the last digit typed (0 for a fraction: it has no last digit)
  bool half_width_typed = false;
};

/// A length of 0 or more: the forms of read_size without the names. \p what is the noun for messages, as "length".
Length read_length(std::string_view text, UnitSystem units, std::string_view what = "length");
/// A length with its error, as `0.118+-0.001` or `3mm+-0.02mm`.
Reading<Length> read_length_reading(std::string_view text, UnitSystem units, std::string_view what = "length");
/// `118` `118deg`; 0 to under 360 deg.
Angle read_angle(std::string_view text);
/// `118` `121+-1.5`.
Reading<Angle> read_angle_reading(std::string_view text);
/// `25000` `25000rev/min`; 1 to 1 000 000 rev/min.
SpindleSpeed read_spindle_speed(std::string_view text);
/// `90ft/min` `27m/min`; the unit is required.
CuttingSpeed read_cutting_speed(std::string_view text);
/// `0.002in/rev` `0.05mm/rev`; a bare number takes the unit of \p units.
FeedPerRev read_feed_per_rev(std::string_view text, UnitSystem units);
/// `0.0005in/tooth` `0.013mm/tooth`; a bare number takes the unit of \p units.
FeedPerTooth read_feed_per_tooth(std::string_view text, UnitSystem units);
/// `150C` `300F`; the unit is required. A temperature may be below zero of its scale, but not below absolute zero.
Temperature read_temperature(std::string_view text);
/// `28HRC` `200HB` `95HRB` `210HV`; the scale is required.
Hardness read_hardness(std::string_view text);
/// `75` `75%`, as a share: 0.75. \p what is the noun for messages
double read_percent(std::string_view text, std::string_view what);
/// The words of a list parted by commas, without blanks round them; an empty one is left out.
std::vector<std::string> words_of_list(std::string_view list);

/// A whole number from \p least to \p most.
int read_count(std::string_view text, std::string_view what, int least, int most);

/// A quantity of a table: one value, or a range `LOW to HIGH UNIT`; the unit is required, and is one of its own kind.
template <class Quantity> struct Range {
  Quantity low{};
  Quantity high{};
};
Range<Length> read_length_range(std::string_view text);
/// Limits of size off the basic size, each with its sign or a plain 0: `+6 to +12 um`, `-16 to -6 um`, `0 to +0.4
/// thou`.
Range<Length> read_limits_of_size(std::string_view text);
Range<Angle> read_angle_range(std::string_view text);
Range<SpindleSpeed> read_spindle_speed_range(std::string_view text);
Range<CuttingSpeed> read_cutting_speed_range(std::string_view text);
Range<FeedPerRev> read_feed_per_rev_range(std::string_view text);
Range<FeedPerTooth> read_feed_per_tooth_range(std::string_view text);
/// `700 MPa`, `207 GPa`, or an energy in a volume: `0.69 hp/(in3/min)`, `4 J/mm3`.
Range<Stress> read_stress_range(std::string_view text);
/// `2000 N/mm`: what bends by 1 mm under so much.
Range<Stiffness> read_stiffness_range(std::string_view text);
/// `20 to 300 degC`, `450 degF`; 0 of its scale or more.
Range<Temperature> read_temperature_range(std::string_view text);
/// `17.2 um/(m degC)`, `9 to 9.5 uin/(in degF)`.
Range<Expansion> read_expansion_range(std::string_view text);
Range<Power> read_power_range(std::string_view text);
/// `10 %` or `35 to 40 %`, as pure numbers 0.10, 0.35 to 0.40.
Range<double> read_percent_range(std::string_view text);
/// `2` or `2 to 3`: pure ratios.
Range<double> read_ratio_range(std::string_view text);

/// Numbers on one hardness scale: low <= high.
struct HardnessBand {
  double low = 0;
  double high = 0;
  HardnessScale scale = HardnessScale::brinell;
};
HardnessBand read_hardness_band(std::string_view text);

} // namespace quillside
