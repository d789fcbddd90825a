#include <quillside/words/print.hpp>

#include "page_of_text.hpp"

namespace quillside {

namespace {

const std::vector<Member>& members(const Value& value) { return std::get<std::vector<Member>>(value.held); }

const std::vector<Value>* list_of(const std::vector<Member>& from, std::string_view name) {
  const Value* value = find(from, name);
  return value == nullptr ? nullptr : std::get_if<std::vector<Value>>(&value->held);
}

long count_of(const std::vector<Member>& from, std::string_view name) {
  const Value* value = find(from, name);
  const long* count = value == nullptr ? nullptr : std::get_if<long>(&value->held);
  return count == nullptr ? 0 : *count;
}

std::string how_wide(const Answer& answer, UnitSystem units) {
  const Measure* width = find_measure(answer.settings, "slot_width");
  if (width == nullptr) return {};
  std::string line = "SLOT " + doubted(*width, [&](double value) { return print_length(mm(value), units); }) + " wide";
  if (const Measure* length = find_measure(answer.settings, "slot_length"))
    line += ", " + length_of(*length, units) + " long over the ends";
  return line;
}

std::string how_it_sits(const Answer& answer, UnitSystem units) {
  const Measure* sits = find_measure(answer.findings, "interference");
  const Measure* doubt = find_measure(answer.findings, "width_doubt");
  if (sits == nullptr || doubt == nullptr) return {};
  const auto side = [&](double value) {
    if (value == 0) return std::string("size for size");
    return print_length(mm(value < 0 ? -value : value), units) + (value < 0 ? " clear" : " tight");
  };
  std::string line = "sits " + side(sits->value);
  if (sits->low && sits->high) line += " (" + side(*sits->low) + " to " + side(*sits->high) + ")";
  return line + "; the slot comes out to +-" + length_of(*doubt, units);
}

std::string corner_and_time(const Answer& answer, UnitSystem units) {
  std::string line;
  if (const Measure* corner = find_measure(answer.findings, "corner_left"); corner != nullptr && corner->value > 0)
    line = "each corner keeps " + length_of(*corner, units) + " along its diagonal";
  if (const Measure* time = find_measure(answer.findings, "time"))
    line += (line.empty() ? "" : "; ") + print_time(seconds(time->value)) + " in the cut";
  return line;
}

/// Figures of a step: what it is run at, how deep, how far off the middle, from where to where.
std::vector<std::string> figures_of(const std::vector<Member>& step, UnitSystem units) {
  std::vector<std::string> figures;
  if (const Measure* speed = find_measure(step, "spindle_speed")) {
    std::string run = spindle_speed_of(*speed) + " rev/min";
    if (const std::string on = find_word(step, "step"); !on.empty()) run += ", step " + on;
    if (const Measure* rate = find_measure(step, "feed_rate"))
      run += ", " + print_feed_rate(mm_per_min(rate->value), units);
    if (const Measure* turn = find_measure(step, "turn_time")) run += ", a turn in " + print_time(seconds(turn->value));
    figures.push_back(run);
  }
  if (const Measure* offset = find_measure(step, "offset"); offset != nullptr && offset->value > 0)
    figures.push_back("OFFSET " + length_of(*offset, units) + " each side, " +
                      print_length(mm(2 * offset->value), units) + " wall to wall");
  if (const Measure* depth = find_measure(step, "depth")) {
    std::string deep = "to " + length_of(*depth, units) + " deep";
    const long passes = count_of(step, "passes");
    if (const Measure* each = find_measure(step, "depth_of_cut"); each != nullptr && passes > 1)
      deep += " in " + std::to_string(passes) + " passes of " + length_of(*each, units);
    figures.push_back(deep);
  }
  if (const auto* places = list_of(step, "positions"); places != nullptr) {
    const long count = count_of(step, "count");
    std::string at = count > 0 ? std::to_string(count) + (count == 1 ? " hole at X" : " holes at X") : "X";
    for (const auto& place : *places) {
      at += (count == 0 && &place != &places->front() ? " to " : " ") + length_of(std::get<Measure>(place.held), units);
    }
    figures.push_back(at);
  }
  if (const Measure* left = find_measure(step, "wall_left"))
    figures.push_back("the walls keep " + doubted(*left, [&](double value) { return print_length(mm(value), units); }));
  const auto shank = [&](const char* name, const char* what) {
    const auto* value = find(step, name);
    if (value == nullptr) return;
    const auto& gauge = members(*value);
    if (const Measure* size = find_measure(gauge, "size"))
      figures.push_back(find_word(gauge, "name") + " (" + length_of(*size, units) + ") " + what);
  };
  shank("goes", "goes in");
  shank("stays_out", "does not");
  return figures;
}

void add_step(Page& page, const std::vector<Member>& step, UnitSystem units) {
  std::string line = find_word(step, "side") + ": " + find_word(step, "do");
  if (const std::string cutter = find_word(step, "cutter"); !cutter.empty()) line += "; " + cutter;
  page.lines.push_back(step_of_work(line));
  for (const auto& figure : figures_of(step, units)) {
    PageLine under("   " + figure);
    under.indent = 5;
    page.lines.push_back(std::move(under));
  }
}

} // namespace

Page page_of_slot(const Answer& answer, const TextStyle& style) {
  Page page;
  const Measure* offset = find_measure(answer.settings, "side_offset");
  if (offset == nullptr) return page;
  page.number = length_of(*offset, style.units);
  page.first = page.number + " each side   " + print_length(mm(2 * offset->value), style.units) + " wall to wall";
  for (auto& line :
       {how_wide(answer, style.units), how_it_sits(answer, style.units), corner_and_time(answer, style.units)})
    if (!line.empty()) page.lines.push_back(line);
  if (const Measure* stop = find_measure(answer.settings, "depth_stop"))
    page.lines.push_back("STOP  tip " + length_of(*stop, style.units) + " down from the back");
  if (const auto* steps = list_of(answer.settings, "steps"))
    for (const auto& step : *steps) add_step(page, members(step), style.units);
  return page;
}

} // namespace quillside
