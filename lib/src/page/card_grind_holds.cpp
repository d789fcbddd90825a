#include "card_grind_holds.hpp"

#include <optional>
#include <utility>

#include "read_answer.hpp"

namespace quillside::page::card_grind {

namespace {

constexpr const char* flute_up = "Shank to the left, flute up, the lip to be ground uppermost";

std::string facet_name(const Values& facets, std::size_t i) {
  return facets.size() < 2 ? "" : i == 0 ? "FIRST FACET" : "SECOND FACET";
}

std::string feed_of(const Members& facet, UnitSystem units) {
  if (find_measure(facet, "infeed") == nullptr) return "";
  return ". Second facet: feed it by " + print_length_with_unit(length_in(facet, "infeed"), units) +
         " from its first touch";
}

Wedge wedge_of(const std::string& what, Angle tilt) { return {named(what, tilt), tilt}; }

/// One sheet for both facets: the fence stays.
RestSheet fence_sheet(const Values& facets, UnitSystem units) {
  const Members& first = members_in(members_of(facets.front()), "fence");
  RestSheet sheet{{"FENCE", "on a table that tilts", ""}, angle_in(first, "fence_angle"), true};
  sheet.words.numbers = {named("fence", sheet.swing), named("mitre scale", angle_in(first, "mitre_scale"))};
  for (std::size_t i = 0; i < facets.size(); ++i) {
    const Angle tilt = angle_in(members_in(members_of(facets[i]), "fence"), "table_tilt");
    const std::string which = facets.size() < 2 ? "table tilt" : i == 0 ? "1st table tilt" : "2nd table tilt";
    sheet.words.numbers.push_back(named(which, tilt));
    sheet.wedges.push_back(wedge_of(which, tilt));
  }
  sheet.words.says = std::string("Drill along the fence, which stays for both lips") +
                     (facets.size() > 1 ? " and both facets" : "") + ". Table sloping up toward the disk. " + flute_up +
                     " and level with the table" + feed_of(members_of(facets.back()), units) + ".";
  return sheet;
}

RestSheet wedge_sheet(const Values& facets, std::size_t i, UnitSystem units) {
  const Members& facet = members_of(facets[i]);
  const Members& wedge = members_in(facet, "wedge");
  RestSheet sheet{{"WEDGE", "V-block on it, lip level", facet_name(facets, i)}, angle_in(wedge, "swing")};
  const Angle tilt = angle_in(wedge, "tilt");
  sheet.roll = angle_in(wedge, "roll");
  sheet.words.numbers = {named("swing", sheet.swing), named("wedge", tilt), named("roll", sheet.roll)};
  sheet.wedges = {wedge_of("wedge", tilt)};
  sheet.words.says =
      std::string("Level rest. Wedge and V-block along the line, thick end to the disk: the point higher than "
                  "the shank. ") +
      flute_up + " and truly level; end on it shows the roll" + feed_of(facet, units) + ".";
  return sheet;
}

RestSheet flat_sheet(const Values& facets, std::size_t i, UnitSystem units) {
  const Members& facet = members_of(facets[i]);
  const Members& flat = members_in(facet, "flat");
  RestSheet sheet{{"FLAT", "level rest, no wedge", facet_name(facets, i)}, angle_in(flat, "swing")};
  sheet.roll = angle_in(flat, "roll");
  sheet.words.numbers = {named("swing", sheet.swing), named("roll", sheet.roll)};
  sheet.words.says = std::string("V-block along the line. ") + flute_up +
                     "; turn the drill until that lip's outer end stands up by the roll, as drawn below" +
                     feed_of(facet, units) + ".";
  return sheet;
}

/// A swing with tilt or roll that was asked about; a fence that was is the fence's sheet as it stands.
std::optional<RestSheet> sheet_as_asked(const Answer& answer) {
  const Measure* swing = input_measure(answer, "swing");
  if (swing == nullptr) return std::nullopt;
  const auto angle = [&](const char* name) {
    const Measure* measure = input_measure(answer, name);
    return measure == nullptr ? turns(0) : degrees(measure->value);
  };
  RestSheet sheet{{"AS ASKED", "swing, tilt and roll", ""}, degrees(swing->value)};
  const Angle tilt = angle("tilt");
  sheet.roll = angle("roll");
  sheet.words.numbers = {named("swing", sheet.swing), named("wedge", tilt), named("roll", sheet.roll)};
  if (tilt > turns(0)) sheet.wedges = {wedge_of("wedge", tilt)};
  sheet.words.says = std::string("V-block along the line, ") +
                     (tilt > turns(0) ? "on a wedge with its thick end to the disk. " : "no wedge. ") + flute_up +
                     "; end on it shows the roll.";
  return sheet;
}

} // namespace

std::vector<RestSheet> rest_sheets(const Answer& answer, UnitSystem units) {
  const Values& facets = std::get<Values>(find(answer.settings, "facets")->held);
  std::vector<RestSheet> sheets;
  if (auto asked = sheet_as_asked(answer)) sheets.push_back(std::move(*asked));
  sheets.push_back(fence_sheet(facets, units));
  for (std::size_t i = 0; i < facets.size(); ++i) sheets.push_back(wedge_sheet(facets, i, units));
  for (std::size_t i = 0; i < facets.size(); ++i) sheets.push_back(flat_sheet(facets, i, units));
  return sheets;
}

} // namespace quillside::page::card_grind
