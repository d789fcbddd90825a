#include <quillside/words/print.hpp>

#include "page_of_text.hpp"

namespace quillside {

namespace {

std::string tool_text(const Value* tool, UnitSystem units) {
  const auto* members = tool == nullptr ? nullptr : std::get_if<std::vector<Member>>(&tool->held);
  if (members == nullptr) return {};
  const std::string name = find_word(*members, "name");
  const Measure* size = find_measure(*members, "size");
  const std::string_view unit = units == UnitSystem::inch ? "in" : "mm";
  const bool says_it = size == nullptr || name.ends_with(unit);
  return says_it ? name : name + " (" + print_length_with_unit(mm(size->value), units) + ")";
}

std::string feed_text(const Measure* feed, UnitSystem units) {
  if (feed == nullptr) return {};
  std::string text = "feed " + print_feed_per_rev(mm_per_rev(feed->value), units) + " a turn";
  if (feed->high && *feed->high > feed->value)
    text += " (up to " + print_feed_per_rev(mm_per_rev(*feed->high), units) + ")";
  return text;
}

std::string reamer_line(const Answer& answer, UnitSystem units) {
  const Value* reamer = find(answer.settings, "reamer");
  const std::string tool = tool_text(reamer, units);
  if (tool.empty()) return {};
  const auto& members = std::get<std::vector<Member>>(reamer->held);
  std::string line = "ream " + tool;
  if (const Measure* speed = find_measure(members, "spindle_speed")) {
    line += "   " + spindle_speed_of(*speed) + " rev/min";
    if (const std::string band = band_of_speed(*speed); !band.empty()) line += " (" + band + ")";
  }
  const std::string feed = feed_text(find_measure(members, "feed_per_rev"), units);
  return feed.empty() ? line : line + ", " + feed;
}

std::string percent(double share) { return significant(100 * share, 2) + " %"; }

/// "tight 0.0004 in", "loose 0.0002 in": which way, in words. Under a micrometre there is no telling.
std::string tightness(double value, UnitSystem units) {
  if (value > -0.001 && value < 0.001) return "line to line";
  return (value < 0 ? "loose " : "tight ") + print_length_with_unit(mm(value < 0 ? -value : value), units);
}

std::string interference_line(const Measure& measure, UnitSystem units) {
  std::string line = tightness(measure.value, units);
  if (measure.low && measure.high && *measure.low < *measure.high)
    line += " (" + tightness(*measure.low, units) + " to " + tightness(*measure.high, units) + ")";
  return line;
}

std::string found_line(const Answer& answer, UnitSystem units) {
  if (const Measure* share = find_measure(answer.findings, "engagement")) {
    std::string line = "thread " + percent(share->value);
    if (share->low && *share->low < share->value)
      line += " (down to " + percent(*share->low) + " where the drill cuts over its size)";
    return line;
  }
  if (const Measure* room = find_measure(answer.findings, "clearance"))
    return "room " + doubted(*room, [&](double value) { return print_length_with_unit(mm(value), units); });
  if (const Measure* depth = find_measure(answer.findings, "countersink_depth"))
    return "COUNTERSINK " + print_length_with_unit(mm(depth->value), units) +
           " down from where it touches all round the hole";
  if (const Measure* held = find_measure(answer.findings, "interference")) return interference_line(*held, units);
  return {};
}

} // namespace

Page page_of_hole(const Answer& answer, const TextStyle& style) {
  Page page;
  const std::string drill = tool_text(find(answer.settings, "drill"), style.units);
  const Measure* speed = find_measure(answer.settings, "spindle_speed");
  if (!drill.empty()) page.first = "drill " + drill;
  if (speed != nullptr) {
    page.number = spindle_speed_of(*speed);
    page.first += "   " + page.number + " rev/min" + about_speed(answer);
  }
  const auto add = [&](std::string line) {
    if (!line.empty()) page.lines.push_back(std::move(line));
  };
  add(feed_text(find_measure(answer.settings, "feed_per_rev"), style.units));
  if (const Measure* depth = find_measure(answer.settings, "depth"))
    add("STOP  tip " + length_of(*depth, style.units) + " down from the face");
  add(reamer_line(answer, style.units));
  add(found_line(answer, style.units));
  return page;
}

} // namespace quillside
