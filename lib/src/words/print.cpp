#include <quillside/words/print.hpp>

#include <array>
#include <charconv>
#include <cmath>

namespace quillside {

namespace {

std::string to_text(double number, std::chars_format format, std::optional<int> precision) {
  std::array<char, 400> room{};
  const auto result = precision ? std::to_chars(room.data(), room.data() + room.size(), number, format, *precision)
                                : std::to_chars(room.data(), room.data() + room.size(), number, format);
  return {room.data(), result.ptr};
}

} // namespace

std::string shortest_decimal(double number) {
  const double size = std::abs(number);
  const bool plain = size == 0 || (size >= 1e-7 && size < 1e15);
  return to_text(number == 0 ? 0.0 : number, plain ? std::chars_format::fixed : std::chars_format::scientific,
                 std::nullopt);
}

std::string fixed_decimal(double number, int decimals) {
  const std::string text = to_text(number, std::chars_format::fixed, decimals);
  const bool only_zeros = text.find_first_of("123456789") == std::string::npos;
  return only_zeros && text.front() == '-' ? text.substr(1) : text;
}

std::string significant(double number, int figures) {
  if (number == 0) return "0";
  // Rounded first, then measured: 999.6 to three figures is 1000, with four digits and no decimals.
  const double step = std::pow(10.0, std::floor(std::log10(std::abs(number))) - figures + 1);
  const double rounded = std::round(number / step) * step;
  const int leading = static_cast<int>(std::floor(std::log10(std::abs(rounded)) + 1e-12));
  return fixed_decimal(rounded, std::max(0, figures - 1 - leading));
}

std::string print_length(Length length, UnitSystem units) {
  return units == UnitSystem::inch ? fixed_decimal(in_inches(length), 4) : fixed_decimal(in_mm(length), 3) + " mm";
}

std::string print_length_with_unit(Length length, UnitSystem units) {
  return units == UnitSystem::inch ? print_length(length, units) + " in" : print_length(length, units);
}

std::string print_thou(Length length) { return fixed_decimal(in_thou(length), 1) + " thou"; }

std::optional<std::string> print_fraction(Length length) {
  constexpr int parts = 64;
  constexpr double exact_to = 1e-6; // in; far below what a drill or a caliper can tell
  const double sixty_fourths = in_inches(length) * parts;
  const double nearest = std::round(sixty_fourths);
  if (nearest < 1 || std::abs(sixty_fourths - nearest) > exact_to * parts) return std::nullopt;
  int top = static_cast<int>(nearest);
  int bottom = parts;
  while (top % 2 == 0 && bottom > 1) {
    top /= 2;
    bottom /= 2;
  }
  const int wholes = top / bottom;
  top %= bottom;
  if (top == 0) return std::to_string(wholes);
  const std::string fraction = std::to_string(top) + "/" + std::to_string(bottom);
  return wholes > 0 ? std::to_string(wholes) + "-" + fraction : fraction;
}

std::string print_angle(Angle angle) {
  const std::string text = fixed_decimal(in_degrees(angle), 1);
  return text.ends_with(".0") ? text.substr(0, text.size() - 2) : text;
}

std::string print_spindle_speed(SpindleSpeed speed) {
  const double number = in_rev_per_min(speed);
  return number == std::floor(number) && number < 1e7 ? fixed_decimal(number, 0) : significant(number, 3);
}

std::string print_spindle_speed_limit(SpindleSpeed speed) {
  return fixed_decimal(std::floor(in_rev_per_min(speed)), 0);
}

std::string print_cutting_speed(CuttingSpeed speed, UnitSystem units) {
  return units == UnitSystem::inch ? significant(in_ft_per_min(speed), 3) + " ft/min"
                                   : significant(in_m_per_min(speed), 3) + " m/min";
}

std::string print_feed_per_rev(FeedPerRev feed, UnitSystem units) {
  return units == UnitSystem::inch ? significant(in_inches_per_rev(feed), 2)
                                   : significant(in_mm_per_rev(feed), 2) + " mm";
}

std::string print_feed_per_tooth(FeedPerTooth feed, UnitSystem units) {
  return units == UnitSystem::inch ? significant(in_inches_per_tooth(feed), 2)
                                   : significant(in_mm_per_tooth(feed), 2) + " mm";
}

std::string print_feed_rate(FeedRate rate, UnitSystem units) {
  return units == UnitSystem::inch ? significant(in_inches_per_min(rate), 3) + " in/min"
                                   : significant(in_mm_per_min(rate), 3) + " mm/min";
}

std::string print_force(Force force, UnitSystem units) {
  return units == UnitSystem::inch ? significant(in_pounds_force(force), 2) + " lb"
                                   : significant(in_newtons(force), 2) + " N";
}

std::string print_torque(Torque torque, UnitSystem units) {
  if (units == UnitSystem::metric) return significant(in_newton_metres(torque), 2) + " N m";
  return significant(torque / (pounds_force(1) * inches(1.0)), 2) + " in-lb";
}

std::string print_power(Power power) { return significant(in_watts(power), 2) + " W"; }

std::string print_stress(Stress stress) { return significant(in_megapascals(stress), 2) + " MPa"; }

std::string print_temperature(Temperature temperature) {
  return fixed_decimal(in_celsius(temperature), 0) + " C (" + fixed_decimal(in_fahrenheit(temperature), 0) + " F)";
}

std::string print_time(Time time) {
  return time < seconds(90) ? significant(in_seconds(time), 2) + " s" : significant(in_minutes(time), 2) + " min";
}

} // namespace quillside
