#include <algorithm>
#include <array>
#include <cmath>

#include <quillside/words/print.hpp>

#include "page_of_text.hpp"

namespace quillside {

namespace {

using Members = std::vector<Member>;
using Values = std::vector<Value>;

double number_of(const Members& members, const char* name) {
  const Measure* measure = find_measure(members, name);
  return measure == nullptr ? 0 : measure->value;
}
std::string angle_of(const Members& members, const char* name) {
  return print_angle(degrees(number_of(members, name)));
}
std::string long_of(const Members& members, const char* name, UnitSystem units) {
  return print_length(mm(number_of(members, name)), units);
}

const Members& object_of(const Members& members, const char* name) {
  static const Members none;
  const Value* value = find(members, name);
  const auto* object = value == nullptr ? nullptr : std::get_if<Members>(&value->held);
  return object == nullptr ? none : *object;
}

std::vector<Members> facets_of(const Answer& answer) {
  std::vector<Members> all;
  const Value* value = find(answer.settings, "facets");
  const auto* list = value == nullptr ? nullptr : std::get_if<Values>(&value->held);
  if (list == nullptr) return all;
  for (const auto& one : *list)
    if (const auto* members = std::get_if<Members>(&one.held)) all.push_back(*members);
  return all;
}

// --- What to set ---

std::string fence_line(const Members& facet) {
  const Members& fence = object_of(facet, "fence");
  return "mitre scale " + angle_of(fence, "mitre_scale") + " (the drill " + angle_of(fence, "fence_angle") +
         " from the disk), table tilt " + angle_of(fence, "table_tilt");
}

std::string rise_line(const Members& facet) {
  const double over = number_of(object_of(facet, "fence"), "tilt_rise");
  return "table slopes up toward the disk: rise " + print_length_with_unit(mm(over), UnitSystem::metric) +
         " over 100 mm, " + print_length_with_unit(inches(4 * over / 100), UnitSystem::inch) + " over 4 in";
}

/// The holds without a fence, and the same held by eye.
std::vector<std::string> other_holds(const Members& facet) {
  const Members& wedge = object_of(facet, "wedge");
  const Members& flat = object_of(facet, "flat");
  const Members& level = object_of(facet, "level");
  return {"or a V-block on a wedge, lip level: swing " + angle_of(wedge, "swing") + ", wedge " +
              angle_of(wedge, "tilt") + ", roll " + angle_of(wedge, "roll"),
          "or on a level table: swing " + angle_of(flat, "swing") + ", roll " + angle_of(flat, "roll") +
              "; on a wedge, lip level end on: swing " + angle_of(level, "swing") + ", wedge " +
              angle_of(level, "tilt"),
          "or freehand: the drill " + angle_of(wedge, "swing") + " to the wheel seen from above, its shank " +
              angle_of(wedge, "tilt") + " lower than the point, the lip level"};
}

/// Broken where it is longer than a terminal is wide.
void add(Page& page, PageLine line) {
  line.indent = 2;
  page.lines.push_back(std::move(line));
}

void add_facets(Page& page, const std::vector<Members>& facets, UnitSystem units) {
  const bool two = facets.size() > 1;
  page.number = angle_of(object_of(facets.front(), "fence"), "table_tilt");
  page.first = (two ? "FIRST   " : "SET   ") + fence_line(facets.front());
  add(page, rise_line(facets.front()));
  for (const auto& line : other_holds(facets.front())) add(page, line);
  if (!two) return;
  const Members& second = facets.back();
  add(page, "SECOND  " + fence_line(second));
  add(page, rise_line(second));
  for (const auto& line : other_holds(second)) add(page, line);
  add(page, "feed the second facet " + long_of(second, "infeed", units) +
                " from its first touch, square to the disk; the lip then stands " +
                long_of(second, "clearance_left", units) + " clear of it");
}

void add_cone(Page& page, const Members& cone, UnitSystem units) {
  page.number = angle_of(cone, "cone_half_angle");
  page.first = "FIXTURE wheel face to pivot " + angle_of(cone, "cone_half_angle") + ", pivot to drill " +
               angle_of(cone, "cone_axis_angle") + ", skew " + long_of(cone, "cone_skew", units);
  add(page, "lip clocked " + angle_of(cone, "lip_clock") + ", the pivot from the lip's outward line; tip out " +
                long_of(cone, "point_overhang", units) + " past the foot");
  add(page, "along the pivot, wheel face to the foot of the skew: " + long_of(cone, "axis_distance", units));
  std::string swing = "swing " + angle_of(cone, "swing_needed") + " from the lip on";
  if (const Measure* limit = find_measure(cone, "swing_limit"))
    swing += "; stop it before " + print_angle(degrees(limit->value)) + ", there the wheel cuts the other lip";
  add(page, swing);
}

// --- In what order ---

void add_order(Page& page, std::initializer_list<const char*> steps) {
  for (const char* step : steps) page.lines.push_back(step_of_work(step));
}

void add_order_of_work(Page& page, const std::string& way) {
  if (way == "two-facet")
    add_order(page,
              {"disk stopped: set fence and table, clamp a stop behind the shank",
               "use the half of the disk that runs down onto the table; shank to the left, flute up, the lip to be "
               "ground uppermost and level",
               "feed straight in to the stop, short touches, until the lip is whole",
               "half a turn in the hold, the other lip up the same way; the same stop, nothing else moved"});
  if (way == "four-facet")
    add_order(page,
              {"disk stopped: set fence and table for the first facet, clamp a stop behind the shank",
               "use the half of the disk that runs down onto the table; shank to the left, flute up, the lip to be "
               "ground uppermost and level",
               "first facets: feed to the stop until the lip is whole; half a turn, the other, the same stop",
               "tilt the table for the second facet, the fence stays; feed until its edge runs through the middle of "
               "the point, half a turn, the same stop"});
  if (way == "cone")
    add_order(page,
              {"wheel stopped: set the angles, the skew and the stop of the swing; swing it through by hand once",
               "clock the drill by its outer corner, set the overhang, clamp",
               "start with the face along the lip, swing from the lip to the heel and back off; never the other way",
               "half a turn, clocked alike, the same stop for the other lip"});
}

// --- What comes of it ---

std::string signed_angle(double value) { return (value < 0 ? "-" : "+") + print_angle(degrees(std::abs(value))); }

/// "1 deg more fence: included angle +2.0, lip relief -0.4"
void add_effects(Page& page, const Answer& answer) {
  std::string setting;
  std::string line;
  const auto flush = [&] {
    if (!line.empty()) add(page, line);
    line.clear();
  };
  for (const auto& why : answer.why) {
    const auto more = why.step.find(" more ");
    const auto colon = why.step.find(": ");
    const auto* change = std::get_if<Measure>(&why.value.held);
    if (more == std::string::npos || colon == std::string::npos || more > colon || change == nullptr) continue;
    if (std::abs(change->value) < 0.05 || why.step.find(" lip level") < colon) continue;
    const std::string about = why.step.substr(0, colon);
    if (about != setting) flush();
    setting = about;
    line += (line.empty() ? about + ": " : ", ") + why.step.substr(colon + 2) + " " + signed_angle(change->value);
  }
  flush();
}

/// How often such a regrind can be done until the web is thinned, where that was worked out.
std::string regrinds_left(const Answer& answer) {
  for (const auto& why : answer.why)
    if (why.step == "regrinds of that length until then")
      if (const auto* count = std::get_if<Measure>(&why.value.held))
        return ", which allows about " + significant(count->value, 2) + " more like it before it wants thinning";
  return "";
}

void add_findings(Page& page, const Answer& answer, UnitSystem units) {
  const auto angle = [](const Measure& measure) {
    return doubted(measure, [](double value) { return print_angle(degrees(value)); });
  };
  const auto length = [&](const Measure& measure) {
    return doubted(measure, [&](double value) { return print_length(mm(value), units); });
  };
  const Members& found = answer.findings;
  std::string line;
  const auto tell = [&](const char* words, const char* name) {
    if (const Measure* measure = find_measure(found, name))
      line += (line.empty() ? "gives " : ", ") + std::string(words) + " " + angle(*measure);
  };
  tell("point", "included_angle");
  tell("lip relief", "lip_relief");
  tell("chisel edge", "chisel_edge_angle");
  tell("heel clear to", "heel_clear_angle");
  if (!line.empty()) add(page, line);
  if (const Measure* error = find_measure(found, "height_error_per_degree"))
    add(page, "index the second lip within 1 deg: a degree makes one lip higher by " + length(*error) +
                  ", an error of the stop goes in whole");
  if (const Measure* off = find_measure(found, "grind_off"))
    add(page, "grind off " + length(*off) + " along the axis, each lip alike");
  if (const Measure* web = find_measure(found, "web_after"))
    add(page, "web after it " + length(*web) + regrinds_left(answer));
}

} // namespace

Page page_of_grind(const Answer& answer, const TextStyle& style) {
  Page page;
  const auto facets = facets_of(answer);
  const Members& cone = object_of(answer.settings, "cone");
  if (!facets.empty()) add_facets(page, facets, style.units);
  if (!cone.empty()) add_cone(page, cone, style.units);
  add_order_of_work(page, find_word(answer.settings, "way"));
  add_findings(page, answer, style.units);
  if (answer.verdict == "go") add_effects(page, answer);
  return page;
}

} // namespace quillside
