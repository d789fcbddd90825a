#include <quillside/words/print.hpp>

#include "page_of_text.hpp"

namespace quillside {

namespace {

/// Fits are talked of in thousandths, or in thousandths of a millimetre.
std::string fine(double millimetres, UnitSystem units) {
  const Length length = mm(millimetres < 0 ? -millimetres : millimetres);
  return units == UnitSystem::inch ? print_thou(length) : print_length_with_unit(length, UnitSystem::metric);
}

/// "0.2 thou tight (0.2 thou loose to 0.5 thou tight)".
std::string fit_of(const Measure& measure, UnitSystem units, const char* above, const char* below) {
  return doubted(measure, [&](double value) { return fine(value, units) + " " + (value < 0 ? below : above); });
}

} // namespace

Page page_of_fit(const Answer& answer, const TextStyle& style) {
  Page page;
  const Measure* tight = find_measure(answer.findings, "interference");
  const Measure* heat = find_measure(answer.settings, "heat_to");
  const std::string name = [&] {
    const Input* fit = find_input(answer, "fit");
    const auto* word = fit == nullptr ? nullptr : std::get_if<std::string>(&fit->value.held);
    return word == nullptr ? std::string{} : "   " + *word;
  }();
  const std::string cold =
      tight == nullptr ? std::string{} : "cold " + fit_of(*tight, style.units, "tight", "loose") + name;
  if (heat != nullptr) {
    const Temperature hot = celsius(heat->value);
    page.number = fixed_decimal(style.units == UnitSystem::inch ? in_fahrenheit(hot) : in_celsius(hot), 0);
    page.first = "heat to " + print_temperature(hot);
    if (heat->high && *heat->high > heat->value)
      page.first += "   up to " + print_temperature(celsius(*heat->high)) + " will do";
    page.lines.push_back(cold);
  } else {
    page.first = cold;
    // A refusal takes the first line.
    if (answer.verdict == "do not") page.lines.push_back(cold);
  }
  if (const Measure* gain = find_measure(answer.findings, "gain"))
    page.lines.push_back("the slot gains " + doubted(*gain, [&](double value) { return fine(value, style.units); }));
  if (const Measure* left = find_measure(answer.findings, "clearance_hot"))
    page.lines.push_back("hot " + fit_of(*left, style.units, "loose", "tight"));
  if (const Measure* limit = find_measure(answer.findings, "heat_limit"))
    page.lines.push_back("ceiling " + print_temperature(celsius(limit->value)));
  return page;
}

} // namespace quillside
