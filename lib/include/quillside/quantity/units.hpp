#pragma once
// The units of the project: one system whose base dimensions are the trade's own.
//
//   length [mm]   time [min]   force [N]   temperature [K]   turn   tooth   rim
//
// Turn and tooth are dimensions, so mm/tooth x tooth/turn x turn/min is mm/min by the compiler's algebra, and a
// feed per tooth cannot stand where a feed per turn is wanted. Rim marks a length travelled round the edge of a tool:
// a cutting speed [rim mm/min] is no feed rate [mm/min], though both are lengths in a time. The one door between
// rim lengths and plain ones is model/surface_speed.
//
// A number enters through the named functions below and leaves through those that begin with `in_`; both name its unit.

#include <concepts>

#include <quillside/quantity/factor.hpp>
#include <quillside/quantity/quantity.hpp>

namespace quillside {

namespace detail {

struct length_dimension : boost::units::base_dimension<length_dimension, 7101> {};
struct time_dimension : boost::units::base_dimension<time_dimension, 7102> {};
struct force_dimension : boost::units::base_dimension<force_dimension, 7103> {};
struct temperature_dimension : boost::units::base_dimension<temperature_dimension, 7104> {};
struct turn_dimension : boost::units::base_dimension<turn_dimension, 7105> {};
struct tooth_dimension : boost::units::base_dimension<tooth_dimension, 7106> {};
struct rim_dimension : boost::units::base_dimension<rim_dimension, 7107> {};

struct millimetre_base : boost::units::base_unit<millimetre_base, length_dimension::dimension_type, 7201> {};
struct minute_base : boost::units::base_unit<minute_base, time_dimension::dimension_type, 7202> {};
struct newton_base : boost::units::base_unit<newton_base, force_dimension::dimension_type, 7203> {};
struct kelvin_base : boost::units::base_unit<kelvin_base, temperature_dimension::dimension_type, 7204> {};
struct turn_base : boost::units::base_unit<turn_base, turn_dimension::dimension_type, 7205> {};
struct tooth_base : boost::units::base_unit<tooth_base, tooth_dimension::dimension_type, 7206> {};
struct rim_base : boost::units::base_unit<rim_base, rim_dimension::dimension_type, 7207> {};

using bench_system = boost::units::make_system<millimetre_base, minute_base, newton_base, kelvin_base, turn_base,
                                               tooth_base, rim_base>::type;

template <class Dimension> using base = boost::units::unit<typename Dimension::dimension_type, bench_system>;

using millimetre = base<length_dimension>;
using minute = base<time_dimension>;
using newton = base<force_dimension>;
using kelvin = base<temperature_dimension>;
using turn = base<turn_dimension>;
using tooth = base<tooth_dimension>;
using rim = base<rim_dimension>;
using square_millimetre = times<millimetre, millimetre>;
using cubic_millimetre = times<square_millimetre, millimetre>;
using per_minute = per<turn, times<turn, minute>>;
using per_kelvin = per<turn, times<turn, kelvin>>;
using newton_millimetre = times<newton, millimetre>;
/// What a force of 1 N brings to 1 mm/min in a minute: mass is no base of this system.
using inertia = per<times<newton, times<minute, minute>>, millimetre>;

} // namespace detail

/// One alias for each quantity of the trade. A bare double is only a pure ratio or a count.
using Length = Quantity<detail::millimetre>;
using Time = Quantity<detail::minute>;
using Force = Quantity<detail::newton>;
using Temperature = ScalePoint<detail::kelvin>;
using TemperatureDifference = Quantity<detail::kelvin>;
/// Share of a length by which it grows for a degree.
using Expansion = Quantity<detail::per_kelvin>;
using Angle = Quantity<detail::turn>;
using SpindleSpeed = Quantity<detail::per<detail::turn, detail::minute>>;
/// Angle in radians gone through in a time: what dynamics wants, and no spindle speed [rad/min].
using AngularVelocity = Quantity<detail::per_minute>;
using CuttingSpeed = Quantity<detail::per<detail::times<detail::millimetre, detail::rim>, detail::minute>>;
using FeedPerRev = Quantity<detail::per<detail::millimetre, detail::turn>>;
using FeedPerTooth = Quantity<detail::per<detail::millimetre, detail::tooth>>;
/// Teeth that pass in one turn: the number of flutes.
using TeethPerTurn = Quantity<detail::per<detail::tooth, detail::turn>>;
using FeedRate = Quantity<detail::per<detail::millimetre, detail::minute>>;
using Torque = Quantity<detail::times<detail::newton, detail::millimetre>>;
using Power = Quantity<detail::per<detail::times<detail::newton, detail::millimetre>, detail::minute>>;
using Stress = Quantity<detail::per<detail::newton, detail::square_millimetre>>;
/// Metal turned to chips in a time.
using RemovalRate = Quantity<detail::per<detail::cubic_millimetre, detail::minute>>;
/// Force that bends a tool by a length, and the bend by a force.
using Stiffness = Quantity<detail::per<detail::newton, detail::millimetre>>;
using Compliance = Quantity<detail::per<detail::millimetre, detail::newton>>;
/// Torque over the angle by which it tilts what holds a tool; by radians in angle.hpp, by degrees here.
using RotationalStiffness = Quantity<detail::per<detail::newton_millimetre, detail::turn>>;
/// Force over acceleration.
using Mass = Quantity<detail::inertia>;
using Density = Quantity<detail::per<detail::inertia, detail::times<detail::square_millimetre, detail::millimetre>>>;
/// Mass times the square of its distance from an axis.
using MassMoment = Quantity<detail::times<detail::inertia, detail::square_millimetre>>;
/// Work: a force times the length gone along, which the rim marks; so a work is no torque, though both are N mm.
using Energy = Quantity<detail::times<detail::newton_millimetre, detail::rim>>;
/// Second moment of area of a section.
using SecondMoment = Quantity<detail::times<detail::square_millimetre, detail::square_millimetre>>;

// Lengths.
constexpr Length mm(double amount) { return Length::from_value(amount); }
constexpr Length inches(double amount) { return mm(factor::inch_in_mm.into(amount)); }
/// No whole number: inches(3/16) would be none at all. Write inches(3, 16), or inches(2.0).
Length inches(std::integral auto amount) = delete;
/// A fraction of an inch, as 3/16.
constexpr Length inches(int numerator, int denominator) {
  return mm(factor::inch_in_mm.into(static_cast<double>(numerator)) / denominator);
}
constexpr Length thou(double amount) { return mm(factor::thou_in_mm.into(amount)); }
constexpr Length feet(double amount) { return mm(factor::foot_in_mm.into(amount)); }
constexpr Length metres(double amount) { return mm(factor::metre_in_mm.into(amount)); }
constexpr Length micrometres(double amount) { return mm(factor::micrometre_in_mm.into(amount)); }
constexpr double in_mm(Length length) { return length.value(); }
constexpr double in_inches(Length length) { return factor::inch_in_mm.out_of(length.value()); }
constexpr double in_thou(Length length) { return factor::thou_in_mm.out_of(length.value()); }

// Times.
constexpr Time minutes(double amount) { return Time::from_value(amount); }
constexpr Time seconds(double amount) { return minutes(factor::second_in_min.into(amount)); }
constexpr double in_minutes(Time time) { return time.value(); }
constexpr double in_seconds(Time time) { return factor::second_in_min.out_of(time.value()); }

// Angles: the base unit is the turn, and a degree is exactly 1/360 of it.
constexpr Angle turns(double amount) { return Angle::from_value(amount); }
constexpr Angle degrees(double amount) { return turns(factor::degree_in_turn.into(amount)); }
constexpr double in_turns(Angle angle) { return angle.value(); }
constexpr double in_degrees(Angle angle) { return factor::degree_in_turn.out_of(angle.value()); }

// Spindle speeds, cutting speeds.
constexpr SpindleSpeed rev_per_min(double amount) { return SpindleSpeed::from_value(amount); }
constexpr double in_rev_per_min(SpindleSpeed speed) { return speed.value(); }
/// Turns in a second: what a frequency in Hz is to a shaft that whirls.
constexpr SpindleSpeed rev_per_s(double amount) { return rev_per_min(factor::second_in_min.out_of(amount)); }
constexpr double in_rev_per_s(SpindleSpeed speed) { return factor::second_in_min.into(speed.value()); }
constexpr CuttingSpeed m_per_min(double amount) { return CuttingSpeed::from_value(factor::metre_in_mm.into(amount)); }
constexpr CuttingSpeed ft_per_min(double amount) { return CuttingSpeed::from_value(factor::foot_in_mm.into(amount)); }
constexpr double in_m_per_min(CuttingSpeed speed) { return factor::metre_in_mm.out_of(speed.value()); }
constexpr double in_ft_per_min(CuttingSpeed speed) { return factor::foot_in_mm.out_of(speed.value()); }
constexpr AngularVelocity rad_per_s(double amount) {
  return AngularVelocity::from_value(factor::second_in_min.out_of(amount));
}
constexpr double in_rad_per_s(AngularVelocity speed) { return factor::second_in_min.into(speed.value()); }

// Feeds.
constexpr FeedPerRev mm_per_rev(double amount) { return FeedPerRev::from_value(amount); }
constexpr FeedPerRev in_per_rev(double amount) { return mm_per_rev(factor::inch_in_mm.into(amount)); }
constexpr double in_mm_per_rev(FeedPerRev feed) { return feed.value(); }
constexpr double in_inches_per_rev(FeedPerRev feed) { return factor::inch_in_mm.out_of(feed.value()); }
constexpr FeedPerTooth mm_per_tooth(double amount) { return FeedPerTooth::from_value(amount); }
constexpr FeedPerTooth in_per_tooth(double amount) { return mm_per_tooth(factor::inch_in_mm.into(amount)); }
constexpr double in_mm_per_tooth(FeedPerTooth feed) { return feed.value(); }
constexpr double in_inches_per_tooth(FeedPerTooth feed) { return factor::inch_in_mm.out_of(feed.value()); }
constexpr TeethPerTurn flutes(int count) { return TeethPerTurn::from_value(count); }
TeethPerTurn flutes(std::floating_point auto count) = delete;
constexpr int in_flutes(TeethPerTurn teeth) { return static_cast<int>(teeth.value()); }
constexpr FeedRate mm_per_min(double amount) { return FeedRate::from_value(amount); }
constexpr FeedRate in_per_min(double amount) { return mm_per_min(factor::inch_in_mm.into(amount)); }
constexpr double in_mm_per_min(FeedRate rate) { return rate.value(); }
constexpr double in_inches_per_min(FeedRate rate) { return factor::inch_in_mm.out_of(rate.value()); }

// Temperatures: a point on the scale is one type, a difference another.
constexpr Temperature celsius(double amount) {
  return Temperature::from_value(amount + factor::celsius_zero_in_kelvin);
}
constexpr Temperature fahrenheit(double amount) {
  return celsius(factor::degree_fahrenheit_in_kelvin.into(amount - factor::celsius_zero_in_fahrenheit));
}
constexpr double in_celsius(Temperature temperature) { return temperature.value() - factor::celsius_zero_in_kelvin; }
constexpr double in_fahrenheit(Temperature temperature) {
  return factor::degree_fahrenheit_in_kelvin.out_of(in_celsius(temperature)) + factor::celsius_zero_in_fahrenheit;
}
constexpr TemperatureDifference kelvins(double amount) { return TemperatureDifference::from_value(amount); }
constexpr double in_kelvins(TemperatureDifference difference) { return difference.value(); }

constexpr Expansion per_kelvin(double amount) { return Expansion::from_value(amount); }
constexpr double in_per_kelvin(Expansion expansion) { return expansion.value(); }
/// Micrometres a metre for a degree Celsius, and microinches an inch for a degree Fahrenheit.
constexpr Expansion um_per_m_celsius(double amount) { return per_kelvin(amount / 1e6); }
constexpr Expansion uin_per_in_fahrenheit(double amount) {
  return per_kelvin(factor::degree_fahrenheit_in_kelvin.out_of(amount / 1e6));
}
constexpr double in_um_per_m_celsius(Expansion expansion) { return 1e6 * expansion.value(); }

// Forces and what follows from them.
constexpr Force newtons(double amount) { return Force::from_value(amount); }
constexpr Force pounds_force(double amount) { return newtons(factor::pound_force_in_newton.into(amount)); }
constexpr double in_newtons(Force force) { return force.value(); }
constexpr double in_pounds_force(Force force) { return factor::pound_force_in_newton.out_of(force.value()); }
constexpr Torque newton_metres(double amount) {
  return Torque::from_value(factor::newton_metre_in_newton_mm.into(amount));
}
constexpr double in_newton_metres(Torque torque) { return factor::newton_metre_in_newton_mm.out_of(torque.value()); }
constexpr Power watts(double amount) { return Power::from_value(factor::watt_in_newton_mm_per_min.into(amount)); }
constexpr Power horsepower(double amount) { return watts(factor::horsepower_in_watt.into(amount)); }
constexpr double in_watts(Power power) { return factor::watt_in_newton_mm_per_min.out_of(power.value()); }
constexpr Stress megapascals(double amount) { return Stress::from_value(amount); }
constexpr double in_megapascals(Stress stress) { return stress.value(); }
constexpr Stress gigapascals(double amount) { return megapascals(1000 * amount); }
constexpr Energy joules(double amount) { return Energy::from_value(factor::newton_metre_in_newton_mm.into(amount)); }
constexpr double in_joules(Energy energy) { return factor::newton_metre_in_newton_mm.out_of(energy.value()); }

// Masses: 1 kg is 1 N s^2/m.
constexpr Mass kilograms(double amount) {
  return Mass::from_value(factor::metre_in_mm.out_of(factor::second_in_min.into(factor::second_in_min.into(amount))));
}
constexpr Mass grams(double amount) { return kilograms(amount / 1000); }
constexpr double in_kilograms(Mass mass) {
  return factor::metre_in_mm.into(factor::second_in_min.out_of(factor::second_in_min.out_of(mass.value())));
}
constexpr double in_grams(Mass mass) { return 1000 * in_kilograms(mass); }
constexpr Density kg_per_m3(double amount) { return kilograms(amount) / (metres(1) * metres(1) * metres(1)); }
constexpr double in_kg_per_m3(Density density) { return in_kilograms(density * (metres(1) * metres(1) * metres(1))); }
constexpr MassMoment gram_mm2(double amount) { return grams(amount) * (mm(1) * mm(1)); }
constexpr double in_gram_mm2(MassMoment moment) { return in_grams(moment / (mm(1) * mm(1))); }
constexpr RotationalStiffness newton_metres_per_degree(double amount) { return newton_metres(amount) / degrees(1); }
constexpr Stiffness newtons_per_mm(double amount) { return Stiffness::from_value(amount); }
constexpr double in_newtons_per_mm(Stiffness stiffness) { return stiffness.value(); }
constexpr Compliance mm_per_newton(double amount) { return Compliance::from_value(amount); }
constexpr double in_mm_per_newton(Compliance compliance) { return compliance.value(); }
constexpr SecondMoment mm4(double amount) { return SecondMoment::from_value(amount); }
constexpr double in_mm4(SecondMoment moment) { return moment.value(); }

// Metal removed, and the energy it takes: an energy in a volume is a stress, J/mm3 = 1000 N/mm2.
constexpr RemovalRate mm3_per_min(double amount) { return RemovalRate::from_value(amount); }
constexpr RemovalRate in3_per_min(double amount) {
  return inches(1.0) * inches(1.0) * inches(1.0) / minutes(1) * amount;
}
constexpr double in_mm3_per_min(RemovalRate rate) { return rate.value(); }
constexpr Stress joules_per_mm3(double amount) { return newton_metres(amount) / (mm(1) * mm(1) * mm(1)); }
/// The handbooks' unit power: power at the cutter for a rate of metal removed, hp/(in3/min).
constexpr Stress hp_per_in3_per_min(double amount) { return horsepower(amount) / in3_per_min(1); }

} // namespace quillside
