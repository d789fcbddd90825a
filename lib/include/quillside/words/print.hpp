#pragma once
// From quantities to words, for a person to read; JSON is unrounded and does not come through here.
//
// Rounding: inch lengths to 0.0001 in, metric lengths to 0.001 mm; speeds, feed rates and times to three figures; feeds
// to two significant figures; angles to 0.1 deg. A spindle speed that is a whole number is printed as it is, a limit is
// rounded down.

#include <optional>
#include <string>

#include <quillside/quantity/units.hpp>
#include <quillside/words/read.hpp>

namespace quillside {

/// The shortest decimal that reads back as the same number; no exponent between 1e-7 and 1e15.
std::string shortest_decimal(double number);
/// \p number with \p decimals digits after the point.
std::string fixed_decimal(double number, int decimals);
/// \p number rounded to so many significant figures, without an exponent: 2528 to three is 2530, 0.00204 to two is
/// 0.0020.
std::string significant(double number, int figures);

/// 0.1285 or 3.264 mm: the inch is the language of the shop when units are inch, and is not written.
std::string print_length(Length length, UnitSystem units);
/// The same with its unit always written: 0.1285 in, 3.264 mm.
std::string print_length_with_unit(Length length, UnitSystem units);
/// In thousandths of an inch, one decimal: 128.5 thou.
std::string print_thou(Length length);
/// 9/64 when the length is a whole number of 64ths of an inch (to a millionth of an inch); nothing otherwise.
std::optional<std::string> print_fraction(Length length);
std::string print_angle(Angle angle);
/// Three figures, 2530; a whole number as it is, so that a step or a mark reads as it stands on the machine.
std::string print_spindle_speed(SpindleSpeed speed);
/// A speed that must not be exceeded: rounded down to a whole number.
std::string print_spindle_speed_limit(SpindleSpeed speed);
/// 90.0 ft/min or 27.4 m/min, three figures.
std::string print_cutting_speed(CuttingSpeed speed, UnitSystem units);
/// 0.0020 or 0.051 mm, two figures.
std::string print_feed_per_rev(FeedPerRev feed, UnitSystem units);
std::string print_feed_per_tooth(FeedPerTooth feed, UnitSystem units);
/// 4.40 in/min or 112 mm/min, three figures.
std::string print_feed_rate(FeedRate rate, UnitSystem units);
/// 12 lb or 53 N, two figures.
std::string print_force(Force force, UnitSystem units);
/// 19 in-lb or 2.1 N m, two figures.
std::string print_torque(Torque torque, UnitSystem units);
/// 35 W, two figures.
std::string print_power(Power power);
/// 380 MPa, two figures.
std::string print_stress(Stress stress);
/// 260 C (500 F), whole degrees of both scales.
std::string print_temperature(Temperature temperature);
/// 4.0 s under a minute and a half, else 2.3 min.
std::string print_time(Time time);

} // namespace quillside
