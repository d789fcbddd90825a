#include "grind_facets.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <stdexcept>

#include <boost/math/tools/toms748_solve.hpp>

#include <quillside/quantity/angle.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>

#include "evidence.hpp"
#include "grind_books.hpp"
#include "grind_found.hpp"
#include "grinding_way.hpp"
#include "spread_ends.hpp"

namespace quillside {

namespace {

std::string deg(Angle angle) { return print_angle(angle) + " deg"; }
/// Up to the next tenth, so that what is printed does what it is printed for.
std::string at_least(Angle angle) { return print_angle(degrees(std::ceil(in_degrees(angle) * 10 - 1e-6) / 10)); }
Angle obtuse(Angle edge) { return std::max(edge, turns(0.5) - edge); }

// --- Settings ---

constexpr Length rise_over = mm(100);

Value wedge_member(WedgeSetup setup) {
  return std::vector<Member>{{key::swing.name, measure(setup.swing)},
                             {key::tilt.name, measure(setup.tilt)},
                             {key::roll.name, measure(setup.roll)}};
}

struct SecondTouch {
  Length infeed;
  Length left;
};

Value facet_member(int number, Facet facet, const std::optional<SecondTouch>& touch) {
  const FenceSetup fence = fence_setup(facet);
  const WedgeSetup flat = level_table_setup(facet);
  const WedgeSetup level = level_end_view_setup(facet);
  return std::vector<Member>{
      {"facet", number},
      {"fence", std::vector<Member>{{key::fence_angle.name, measure(fence.fence)},
                                    {key::mitre_scale.name, measure(turns(0.25) - fence.fence)},
                                    {key::table_tilt.name, measure(fence.table_tilt)},
                                    {key::tilt_rise.name, measure(tangent(fence.table_tilt) * rise_over)}}},
      {"wedge", wedge_member(level_lip_setup(facet))},
      {"flat", std::vector<Member>{{key::swing.name, measure(flat.swing)}, {key::roll.name, measure(flat.roll)}}},
      {"level", std::vector<Member>{{key::swing.name, measure(level.swing)}, {key::tilt.name, measure(level.tilt)}}},
      {key::infeed.name, touch ? Value(measure(touch->infeed)) : Value{}},
      {key::clearance_left.name, touch ? Value(measure(touch->left)) : Value{}}};
}

void tell_holds(GrindWork& work, const std::string& which, Facet facet) {
  const FenceSetup fence = fence_setup(facet);
  work.telling.because_of_law("table tilt" + which, facet_fence_law, measure(fence.table_tilt));
  work.telling.because_of_law("wedge" + which + ", the lip level", facet_wedge_law,
                              measure(level_lip_setup(facet).tilt));
  work.telling.because_of_law("roll" + which + " on a level table", facet_flat_law,
                              measure(level_table_setup(facet).roll));
  work.telling.because_of_law("wedge" + which + ", the lip level end on", facet_level_law,
                              measure(level_end_view_setup(facet).tilt));
}

// --- What each degree does ---

constexpr Angle one_degree = degrees(1);

PointAngles angles_of(GrindWork& work, Facet facet) {
  const PointShape point{work.subject.point.diameter, work.subject.point.web, facet.included};
  return {facet.included, relief_of_slope(point, facet.slope), chisel_edge_of_flat(point, facet.slope)};
}

void tell_hold_effects(GrindWork& work, Facet facet) {
  std::vector<SettingMoved> moves;
  const auto move = [&](const std::string& setting, auto setup) {
    moves.push_back({"1 deg more " + setting, [&work, setup] { return angles_of(work, facet_ground(setup)); }});
  };
  const FenceSetup fence = fence_setup(facet);
  move("fence", FenceSetup{fence.fence + one_degree, fence.table_tilt});
  move("table tilt", FenceSetup{fence.fence, fence.table_tilt + one_degree});
  struct Named {
    const char* where;
    WedgeSetup setup;
    bool tilts;
    bool rolls;
  };
  for (const Named& hold : {Named{" on a wedge, the lip level", level_lip_setup(facet), true, true},
                            Named{" on a level table", level_table_setup(facet), false, true},
                            Named{" on a wedge, the lip level end on", level_end_view_setup(facet), true, false}}) {
    const WedgeSetup& at = hold.setup;
    move(std::string("swing") + hold.where, WedgeSetup{at.swing + one_degree, at.tilt, at.roll});
    if (hold.tilts) move(std::string("tilt") + hold.where, WedgeSetup{at.swing, at.tilt + one_degree, at.roll});
    if (hold.rolls) move(std::string("roll") + hold.where, WedgeSetup{at.swing, at.tilt, at.roll + one_degree});
  }
  tell_effects(work, angles_of(work, facet), moves, facet_forward_law);
}

// --- The heel ---

/// The least second relief whose facet, ground to the axis, clears the heel; nothing where none does.
std::optional<Angle> least_second_relief(PointShape point, double first_slope, Angle land) {
  const auto heel_over = [&](double relief) {
    return in_degrees(heel_clear_angle(FourFacet{point, first_slope, second_slope(point, degrees(relief)), mm(0)}) -
                      land);
  };
  const double flattest = in_degrees(radians(std::atan(first_slope))) + 1e-3;
  constexpr double steepest = 50;
  if (!(flattest < steepest) || heel_over(steepest) < 0) return std::nullopt;
  if (heel_over(flattest) >= 0) return degrees(flattest);
  std::uintmax_t steps = 200;
  const auto root = boost::math::tools::toms748_solve(heel_over, flattest, steepest,
                                                      boost::math::tools::eps_tolerance<double>(40), steps);
  return degrees(root.second);
}

void judge_heel(GrindWork& work, const std::string& told, Angle heel, const std::string& instead) {
  if (heel >= work.subject.land - heel_touches) return;
  work.object(told + ": its heel stands above the lip from " + deg(heel) + " behind it, and the land reaches to " +
                  deg(work.subject.land),
              instead);
}

std::string one_flat_that_clears(const GrindWork& work, PointShape point) {
  const Angle least = least_relief(point, work.subject.land);
  return least > steepest_relief ? std::string{} : "--relief " + at_least(least) + " on one flat";
}

std::string either(const std::string& one, const std::string& other) {
  return one.empty() || other.empty() ? one + other : one + ", or " + other;
}

// --- What is wanted of it ---

Angle relief_of_one_flat(GrindWork& work) {
  const auto& ask = work.ask;
  const PointShape& point = work.subject.point;
  const Angle least = least_relief(point, work.subject.land);
  work.telling.because_of_law("least relief with which one flat clears its heel", flat_heel_law, measure(least));
  if (ask.chisel) {
    const Angle relief = most_relief_of_chisel(point, ask.chisel->value);
    if (ask.relief && ask.relief->value > least_relief_of_straight_lip(point) &&
        std::abs(in_degrees(relief - ask.relief->value)) > 0.5)
      throw contradiction(ask.chisel->text.value_or(""),
                          "one flat of relief " + print_angle(ask.relief->value) + " has its chisel edge at " +
                              print_angle(chisel_edge_of_flat(point, flank_slope(point, ask.relief->value))) +
                              ", not at " + print_angle(obtuse(ask.chisel->value)) +
                              ": leave one out, or say --way cone or four-facet");
    return ask.relief ? ask.relief->value : relief;
  }
  if (ask.relief) return ask.relief->value;
  work.telling.word("relief", print_angle(least));
  work.telling.word("land", print_angle(work.subject.land));
  work.telling.flag("least-relief");
  return least;
}

double second_slope_wanted(GrindWork& work, double first_slope, Angle first_relief) {
  const auto& ask = work.ask;
  const PointShape& point = work.subject.point;
  if (ask.chisel) {
    if (ask.second_relief)
      throw contradiction(ask.chisel->text.value_or(""),
                          "a second relief makes the chisel edge: leave --chisel or --second-relief out");
    try {
      return second_slope_of_chisel({point.included, first_slope}, ask.chisel->value);
    } catch (const std::domain_error&) {
      throw contradiction(
          ask.chisel->text.value_or(""),
          "a second facet turns the chisel edge further than " + deg(chisel_edge_of_flat(point, first_slope)) +
              ", that of the first alone, and well short of 180: " + print_angle(obtuse(ask.chisel->value)) +
              " it cannot make");
    }
  }
  if (ask.second_relief) return second_slope(point, ask.second_relief->value);
  const Angle usual = std::max(degrees_of(work.tables, "second_relief"), first_relief + degrees(5));
  const auto least = least_second_relief(point, first_slope, work.subject.land);
  if (least && *least > usual) work.telling.flag("second-raised");
  return second_slope(point, least ? std::max(usual, *least) : usual);
}

/// Where the second facet is stopped too early.
void tell_stopped_short(GrindWork& work, const FourFacet& point) {
  const Length short_of = 0.01 * point.point.diameter;
  FourFacet stopped = point;
  stopped.boundary = mm(0) - short_of;
  work.telling.because_of_law("second facet stopped " + in_words(short_of) +
                                  " short of the axis: level left on the chisel edge",
                              chisel_flat_law, measure(chisel_flat(stopped)));
}

} // namespace

std::string second_facet_that_clears(const GrindWork& work, double first_slope) {
  const auto second = least_second_relief(work.subject.point, first_slope, work.subject.land);
  if (!second) return "";
  const Angle usual = std::max(degrees_of(work.tables, "second_relief"), *second);
  return "a second facet of " + at_least(usual) + " deg behind it" +
         (usual > *second ? " (" + at_least(*second) + " is the least)" : "");
}

void tell_one_flat(GrindWork& work, const OneFlat& flat) {
  const PointShape& point = flat.flank.point;
  const Facet facet{point.included, flat.flank.slope};
  const Angle heel = heel_clear_angle(flat.flank);
  work.answer.set(key::way, name_of(GrindingWay::two_facet));
  work.answer.set(key::facets, std::vector<Value>{facet_member(1, facet, {})});
  work.answer.set(key::cone, Value{});
  tell_holds(work, "", facet);
  tell_angles(work, with_flutes(work, flat.flank, angles_of(work, facet)), [&](Length web) {
    return relief_of_slope({point.diameter, web, point.included}, flat.flank.slope);
  });
  work.telling.because_of_law("chisel edge of one flat a lip", chisel_edge_law,
                              measure(chisel_edge_of_flat(point, flat.flank.slope)));
  work.answer.found(key::heel_clear_angle, heel);
  work.telling.because_of_law("heel as high again as the lip", flat_heel_law, measure(heel));
  judge_heel(work, flat.told, heel, flat.instead);
  tell_hold_effects(work, facet);
  tell_rim(work, "", facet, {.to_heel = true});
}

void grind_two_facet(GrindWork& work) {
  const PointShape& point = work.subject.point;
  const Angle relief = relief_of_one_flat(work);
  const bool typed = work.ask.relief || work.ask.chisel;
  if (!work.ask.relief) work.answer.input("relief", Typed<Angle>{relief, std::nullopt});
  if (!falls(work, relief)) return;
  const double slope = flank_slope(point, relief);
  if (relief > steepest_relief) {
    work.object(
        (typed ? "that chisel edge asks" : "one flat that clears a land of " + deg(work.subject.land) + " asks") +
            std::string(" relief ") + deg(relief) + ", more than " + deg(steepest_relief) + " leaves the lip too thin",
        "--way four-facet or --way cone");
    return;
  }
  const std::string second = second_facet_that_clears(work, slope);
  tell_one_flat(
      work, {{point, slope},
             "one flat of relief " + deg(relief),
             either(one_flat_that_clears(work, point), second.empty() ? "--way cone" : "--way four-facet, " + second)});
}

namespace {

/// The two facets wanted; nothing where the first would not fall.
std::optional<FourFacet> four_facets_wanted(GrindWork& work) {
  const auto& ask = work.ask;
  const PointShape& point = work.subject.point;
  const Angle relief = relief_by_size(work, "a first facet");
  if (!falls(work, relief)) return std::nullopt;
  const double first = flank_slope(point, relief);
  const FourFacet four{point, first, second_slope_wanted(work, first, relief), mm(0)};
  if (!(four.second_slope > first))
    throw contradiction(ask.second_relief ? ask.second_relief->text.value_or("") : "",
                        "a second facet has to be steeper than the first, which is " + deg(radians(std::atan(first))) +
                            " where they meet: give more --second-relief");
  if (!ask.second_relief) work.answer.input("second_relief", Typed<Angle>{second_relief(four), std::nullopt});
  return four;
}

Facet first_facet(const FourFacet& four) { return {four.point.included, four.first_slope}; }
Facet second_facet(const FourFacet& four) { return {four.point.included, four.second_slope}; }

void tell_four_settings(GrindWork& work, const FourFacet& four) {
  const SecondTouch touch{second_infeed(four, work.subject.land), clearance_left(four)};
  work.answer.set(key::way, name_of(GrindingWay::four_facet));
  work.answer.set(key::facets, std::vector<Value>{facet_member(1, first_facet(four), {}),
                                                  facet_member(2, second_facet(four), touch)});
  work.answer.set(key::cone, Value{});
  tell_holds(work, " of the first facet", first_facet(four));
  tell_holds(work, " of the second facet", second_facet(four));
  work.telling.because_of_law("slope of the second facet", second_slope_law, measure(four.second_slope));
  work.telling.because_of_law("infeed of the second facet, first touch to done", second_infeed_law,
                              measure(touch.infeed));
  work.telling.because_of_law("lip clear of the disk when the second facet is done", clearance_left_law,
                              measure(touch.left));
}

PointAngles angles_of(const FourFacet& four) {
  return {four.point.included, relief_of_slope(four.point, four.first_slope), chisel_edge_of_four(four)};
}

void tell_four_found(GrindWork& work, const FourFacet& four) {
  // Other flutes bend the lip, which the first facet makes; the chisel edge lies within both.
  PointAngles angles = angles_of(four);
  const PointAngles bent = with_flutes(work, FlatFlank{four.point, four.first_slope}, angles);
  angles.included = bent.included;
  angles.relief = bent.relief;
  tell_angles(work, angles, [&](Length web) {
    return relief_of_slope({four.point.diameter, web, four.point.included}, four.first_slope);
  });
  work.telling.because_of_law("chisel edge, corner to corner", four_facet_chisel_law,
                              measure(chisel_edge_of_four(four)));
  work.answer.found(key::chisel_flat, chisel_flat(four));
  tell_stopped_short(work, four);
}

void judge_four_heel(GrindWork& work, const FourFacet& four) {
  const Angle heel = heel_clear_angle(four);
  work.answer.found(key::heel_clear_angle, heel);
  work.telling.because_of_law("heel as high again as the lip", four_facet_heel_law, measure(heel));
  const auto least = least_second_relief(four.point, four.first_slope, work.subject.land);
  judge_heel(work,
             "relief " + deg(relief_of_slope(four.point, four.first_slope)) + " with a second facet of " +
                 deg(second_relief(four)),
             heel, least ? "--second-relief " + at_least(*least) : std::string("--way cone, or a smaller land"));
}

void tell_second_effects(GrindWork& work, const FourFacet& four) {
  const auto steeper = [&four] {
    const FenceSetup at = fence_setup(second_facet(four));
    FourFacet moved = four;
    moved.second_slope = facet_ground(FenceSetup{at.fence, at.table_tilt + one_degree}).slope;
    return angles_of(moved);
  };
  tell_effects(work, angles_of(four), {{"1 deg more table tilt of the second facet", steeper}}, four_facet_chisel_law);
}

} // namespace

void grind_four_facet(GrindWork& work) {
  const auto four = four_facets_wanted(work);
  if (!four) return;
  tell_four_settings(work, *four);
  tell_four_found(work, *four);
  judge_four_heel(work, *four);
  tell_hold_effects(work, first_facet(*four));
  tell_second_effects(work, *four);
  tell_rim(work, " of the first facet", first_facet(*four), {.to_heel = false});
  tell_rim(work, " of the second facet", second_facet(*four), {.to_heel = true, .from_axis = true});
}

} // namespace quillside
