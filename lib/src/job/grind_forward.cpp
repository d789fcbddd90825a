#include "grind_forward.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <quillside/model/flat_facet.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>

#include "grind_facets.hpp"

namespace quillside {

namespace {

std::string deg(Angle angle) { return print_angle(angle) + " deg"; }

void require_one_hold(const GrindQuestion& ask) {
  const HoldQuestion& hold = ask.hold;
  const auto wanting = [](const std::optional<Typed<Angle>>& word, const char* what) {
    throw contradiction(typed_or(word->text, word->value), what);
  };
  if ((hold.fence || hold.table_tilt) && (hold.swing || hold.tilt || hold.roll))
    wanting(hold.fence ? hold.fence : hold.table_tilt,
            "--fence with --table-tilt is one hold, --swing with --tilt and --roll another: give one of them");
  if (hold.fence && !hold.table_tilt)
    wanting(hold.fence, "--fence needs --table-tilt: on a level table it grinds no relief");
  if (hold.table_tilt && !hold.fence) wanting(hold.table_tilt, "--table-tilt needs --fence");
  if ((hold.tilt || hold.roll) && !hold.swing)
    wanting(hold.tilt ? hold.tilt : hold.roll, "--tilt and --roll need --swing");
  if (hold.swing && !hold.tilt && !hold.roll)
    wanting(hold.swing, "--swing needs --tilt or --roll: without either it grinds no relief");
}

void require_nothing_wanted(const GrindQuestion& ask) {
  for (const auto& [word, flag] : {std::pair{&ask.angle, "--angle"},
                                   {&ask.relief, "--relief"},
                                   {&ask.chisel, "--chisel"},
                                   {&ask.second_relief, "--second-relief"},
                                   {&ask.cone_half_angle, "--cone-half-angle"}})
    if (*word)
      throw contradiction(typed_or((*word)->text, (*word)->value),
                          std::string(flag) + " is wanted of a point, and a hold says what point it gives: leave " +
                              flag + " or the hold out");
  if (ask.way && ask.way->value != GrindingWay::two_facet)
    throw contradiction(ask.way->text.value_or(""), "a hold is read as one flat behind each lip: --way two-facet, or "
                                                    "leave --way out");
}

Facet ground_by(const HoldQuestion& hold) {
  if (hold.fence) return facet_ground(FenceSetup{hold.fence->value, hold.table_tilt->value});
  const auto or_level = [](const std::optional<Typed<Angle>>& word) { return word ? word->value : turns(0); };
  return facet_ground(WedgeSetup{hold.swing->value, or_level(hold.tilt), or_level(hold.roll)});
}

/// The hold that would do, told as the one that was asked about.
std::string hold_that_clears(const GrindWork& work) {
  const PointShape& point = work.subject.point;
  const Angle least = least_relief(point, work.subject.land);
  if (least > steepest_relief) return "";
  const Facet facet{point.included, least_slope(point, work.subject.land)};
  const auto up = [](Angle angle) { return print_angle(degrees(std::ceil(in_degrees(angle) * 10 - 1e-6) / 10)); };
  if (work.ask.hold.fence) return "--table-tilt " + up(fence_setup(facet).table_tilt) + " with the same fence";
  if (!work.ask.hold.tilt) {
    const WedgeSetup level = level_table_setup(facet);
    return "--swing " + print_angle(level.swing) + " --roll " + up(level.roll);
  }
  const WedgeSetup wedge = level_lip_setup(facet);
  return "--swing " + print_angle(wedge.swing) + " --tilt " + up(wedge.tilt) + " --roll " + up(wedge.roll);
}

void compare_with_material(GrindWork& work) {
  const Angle wanted = work.subject.ground.point->point.range.low;
  const Angle given = work.subject.point.included;
  constexpr Angle alike = degrees(2);
  if (!work.ask.material || std::max(wanted - given, given - wanted) <= alike) return;
  work.telling.word("given", print_angle(given));
  work.telling.word("wanted", print_angle(wanted));
  work.telling.flag("other-point");
}

} // namespace

std::optional<Facet> facet_held(const GrindQuestion& ask, std::vector<Objection>& objections) {
  require_one_hold(ask);
  require_nothing_wanted(ask);
  const auto& word = ask.hold.fence ? ask.hold.fence : ask.hold.swing;
  try {
    const Facet facet = ground_by(ask.hold);
    if (facet.included >= least_included && facet.included <= most_included) return facet;
    throw contradiction(typed_or(word->text, word->value), "this hold grinds a point of " + deg(facet.included) +
                                                               ", and points of " + print_angle(least_included) +
                                                               " to " + deg(most_included) + " are answered");
  } catch (const std::domain_error& refused) {
    objections.push_back({"this hold will not do: " + std::string(refused.what()),
                          ask.hold.fence ? "a table that slopes up toward the disk" : "more tilt or more roll"});
    return std::nullopt;
  }
}

void grind_forward(GrindWork& work, Facet facet) {
  const Angle relief = relief_of_slope(work.subject.point, facet.slope);
  if (relief > steepest_relief) {
    const auto& word = work.ask.hold.fence  ? work.ask.hold.table_tilt
                       : work.ask.hold.tilt ? work.ask.hold.tilt
                                            : work.ask.hold.roll;
    throw contradiction(typed_or(word->text, word->value), "this hold grinds a relief of " + deg(relief) +
                                                               ", and reliefs to " + deg(steepest_relief) +
                                                               " are answered: the lip is too thin");
  }
  compare_with_material(work);
  const std::string clears = hold_that_clears(work);
  const std::string behind = second_facet_that_clears(work, facet.slope);
  const std::string steeper = behind.empty() || relief < slightest_relief
                                  ? "--way cone"
                                  : "--way four-facet --angle " + print_angle(work.subject.point.included) +
                                        " --relief " + print_angle(relief) + ", " + behind;
  tell_one_flat(work, {{work.subject.point, facet.slope},
                       "this hold grinds relief " + deg(relief),
                       clears.empty() ? steeper : clears + ", or " + steeper});
  work.telling.because_of_law("point of this hold", facet_forward_law, measure(facet.included));
}

} // namespace quillside
