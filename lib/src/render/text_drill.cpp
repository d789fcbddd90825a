#include <quillside/words/print.hpp>

#include "page_of_text.hpp"

namespace quillside {

namespace {

std::string stop_line(const Answer& answer, UnitSystem units) {
  const Measure* stop = find_measure(answer.settings, "depth_stop");
  if (stop == nullptr) return {};
  std::string line = "STOP  tip " + length_of(*stop, units) + " down from the face";
  if (const Value* shim = find(answer.settings, "stop_shim")) {
    if (const auto* members = std::get_if<std::vector<Member>>(&shim->held)) {
      const Measure* size = find_measure(*members, "size");
      line += "   shim: a " + find_word(*members, "name") + " shank (" + length_of(*size, units) +
              ") on the face the part lies on";
    }
  }
  return line;
}

std::string pecks_line(const Answer& answer, UnitSystem units) {
  const Value* pecks = find(answer.settings, "pecks");
  const auto* list = pecks == nullptr ? nullptr : std::get_if<std::vector<Value>>(&pecks->held);
  if (list == nullptr || list->empty()) return {};
  std::string depths;
  for (const auto& peck : *list) {
    const Measure* depth = find_measure(std::get<std::vector<Member>>(peck.held), "to_depth");
    depths += (depths.empty() ? "" : ", ") + length_of(*depth, units);
  }
  return "peck to " + depths;
}

std::string feed_line(const Answer& answer, UnitSystem units) {
  const Measure* feed = find_measure(answer.settings, "feed_per_rev");
  const Measure* rate = find_measure(answer.settings, "feed_rate");
  if (feed == nullptr || rate == nullptr) return {};
  std::string line = "feed " + print_feed_per_rev(mm_per_rev(feed->value), units) + " a turn";
  if (feed->low && *feed->low < *feed->high)
    line += " (up to " + print_feed_per_rev(mm_per_rev(*feed->high), units) + ")";
  line += ", " + print_feed_rate(mm_per_min(rate->value), units);
  if (const Measure* time = find_measure(answer.findings, "cut_time"))
    line += ", " + print_time(seconds(time->value)) + " of cutting";
  const Value* pecks = find(answer.settings, "pecks");
  const auto* list = pecks == nullptr ? nullptr : std::get_if<std::vector<Value>>(&pecks->held);
  return list != nullptr && list->empty() ? line + ", no peck" : line;
}

std::string left_line(const Answer& answer, UnitSystem units) {
  std::string line;
  if (const Measure* corner = find_measure(answer.findings, "left_under_corner"))
    line += "full width ends " + length_of(*corner, units) + " above the back; ";
  if (const Measure* spot = find_measure(answer.findings, "spot_diameter"))
    line += "the spot is " + length_of(*spot, units) + " across; ";
  if (const Measure* cone = find_measure(answer.findings, "point_allowance"))
    line += (line.empty() ? "the cone of its point is " : "its cone is ") + length_of(*cone, units) + " long";
  return line;
}

std::string force_line(const Answer& answer, UnitSystem units) {
  const auto force = [&](double value) { return print_force(newtons(value), units); };
  const Measure* thrust = find_measure(answer.findings, "thrust");
  const Measure* torque = find_measure(answer.findings, "torque");
  if (thrust == nullptr || torque == nullptr) return {};
  std::string line = "push " + doubted(*thrust, force);
  if (const Measure* lever = find_measure(answer.findings, "lever_force"))
    line += ", at the lever " + doubted(*lever, force);
  line += "; turn " + doubted(*torque, [&](double value) { return print_torque(newton_metres(value), units); });
  if (const Measure* power = find_measure(answer.findings, "power")) line += ", " + print_power(watts(power->value));
  return line;
}

std::string bounds_line(const Answer& answer, UnitSystem units) {
  const Measure* buckles = find_measure(answer.findings, "buckling_load");
  const Measure* stall = find_measure(answer.findings, "stall_torque");
  const std::string by = find_word(answer.findings, "limited_by");
  std::string line;
  if (buckles != nullptr) line = "buckles at " + print_force(newtons(buckles->value), units);
  if (stall != nullptr)
    line += (line.empty() ? "" : "; ") + std::string("the motor holds ") +
            print_torque(newton_metres(stall->value), units) + " at this speed";
  if (by == "buckling") line += "; the feed is cut to what the drill bears";
  if (by == "stall") line += "; the feed is cut to what the motor turns";
  return line;
}

std::string point_line(const Answer& answer) {
  const Measure* point = find_measure(answer.findings, "wanted_point");
  if (point == nullptr) return {};
  std::string line = "wants a point of " + print_angle(degrees(point->value)) + " deg";
  if (const Measure* relief = find_measure(answer.findings, "wanted_relief"))
    line += ", lip relief " + print_angle(degrees(relief->value)) + " deg";
  return line;
}

void add(std::vector<PageLine>& lines, std::string line) {
  if (!line.empty()) lines.emplace_back(std::move(line));
}

} // namespace

Page page_of_drill(const Answer& answer, const TextStyle& style) {
  Page page;
  if (const Measure* speed = find_measure(answer.settings, "spindle_speed")) {
    page.number = spindle_speed_of(*speed);
    page.first = page.number + " rev/min" + about_speed(answer);
  }
  add(page.lines, stop_line(answer, style.units));
  add(page.lines, feed_line(answer, style.units));
  if (find_measure(answer.settings, "feed_rate") != nullptr) add(page.lines, pecks_line(answer, style.units));
  if (find_measure(answer.settings, "depth_stop") != nullptr) add(page.lines, left_line(answer, style.units));
  add(page.lines, force_line(answer, style.units));
  add(page.lines, bounds_line(answer, style.units));
  add(page.lines, point_line(answer));
  return page;
}

} // namespace quillside
