#include "grind_cone.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

#include <quillside/model/cone_flank.hpp>
#include <quillside/model/flat_facet.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>

#include "evidence.hpp"
#include "grind_facets.hpp"
#include "grind_found.hpp"
#include "grinding_way.hpp"

namespace quillside {

namespace {

std::string deg(Angle angle) { return print_angle(angle) + " deg"; }
Angle obtuse(Angle edge) { return std::max(edge, turns(0.5) - edge); }

bool swings_free(const Swing& swing, Angle spare = turns(0)) {
  return !swing.limit || swing.needed + spare < *swing.limit;
}
/// Room for the stop of a fixture that is taken or named by this job (judgement, no source).
constexpr Angle room_for_a_stop = degrees(3);

bool heel_is_clear(const ConeFlank& flank, Angle land) {
  const auto heel = heel_clear_angle(flank);
  return !heel || *heel >= land - heel_touches;
}

/// Nothing where these numbers make no cone, or one that would not do.
template <class Make> std::optional<ConeFlank> sound(Angle land, const Make& make) {
  try {
    const ConeFlank flank = make();
    if (swings_free(swing_of(flank, land), room_for_a_stop) && heel_is_clear(flank, land)) return flank;
  } catch (const std::domain_error&) {
  }
  return std::nullopt;
}

/// Half angles of a cone: how a pivot stands to the face of its wheel.
struct HalfAngles {
  Angle least;
  Angle most;
};

/// The heel drops this much over that of a uniform relief; more only weakens it. 1.0 to 1.5 is suggested, the others
/// are for points where none of those swings free.
constexpr std::array<double, 8> heel_drops{1.25, 1.1, 1.4, 1.0, 1.5, 1.75, 2.0, 2.5};

/// A cone of any half angle that would do, the one that is best first.
template <class Worse>
std::optional<ConeFlank> best_sound(const WantedPoint& wanted, Angle land, const HalfAngles& among,
                                    const Worse& worse) {
  std::optional<ConeFlank> best;
  for (Angle half = among.least; half <= among.most && half < wanted.point.included / 2.0; half = half + degrees(0.5)) {
    const auto flank = sound(land, [&] { return cone_of_half_angle(wanted, half); });
    if (flank && (!best || worse(*flank) < worse(*best))) best = flank;
  }
  return best;
}

/// The one nearest to \p near.
std::optional<ConeFlank> any_sound(const WantedPoint& wanted, Angle land, Angle near) {
  return best_sound(wanted, land, {degrees(5), degrees(90)}, [near](const ConeFlank& flank) {
    return std::max(flank.cone_half_angle - near, near - flank.cone_half_angle);
  });
}

std::optional<ConeFlank> of_heel_drop(const WantedPoint& wanted, Angle land, const HalfAngles& among) {
  for (const double ratio : heel_drops) {
    const auto flank = sound(land, [&] { return cone_of_heel_drop(wanted, {land, ratio}); });
    if (flank && flank->cone_half_angle >= among.least && flank->cone_half_angle <= among.most) return flank;
  }
  return std::nullopt;
}

/// A cone that a fixture is usually set for, by the drop of its heel. On a thick web, that of a small drill, no heel
/// may drop so much: then the nearest to it.
std::optional<ConeFlank> taken(const WantedPoint& wanted, Angle land, const HalfAngles& usual) {
  if (const auto flank = of_heel_drop(wanted, land, usual)) return flank;
  const auto from_usual_drop = [land](const ConeFlank& flank) {
    return std::abs(heel_drop_ratio(flank, land) - heel_drops.front());
  };
  if (const auto flank = best_sound(wanted, land, usual, from_usual_drop)) return flank;
  if (const auto flank = of_heel_drop(wanted, land, {degrees(0), degrees(90)})) return flank;
  return any_sound(wanted, land, 0.5 * (usual.least + usual.most));
}

std::string half_angle_that_would_do(const WantedPoint& wanted, Angle land, Angle near) {
  const auto flank = any_sound(wanted, land, near);
  return flank ? "--cone-half-angle " + print_angle(flank->cone_half_angle)
               : std::string("--way four-facet, or less relief or another --chisel on a cone");
}

/// That asked for; else the usual one, or where a flat of this relief already turns it so far, a little more than that.
Angle chisel_of(GrindWork& work, Angle relief) {
  const auto& ask = work.ask;
  if (ask.chisel) return obtuse(ask.chisel->value);
  const PointShape& point = work.subject.point;
  const Limit& usual = limit(work.tables.limits, "chisel_usual");
  Angle chisel = degrees(usual.ratio);
  work.telling.because_of_row("chisel edge of a cone", std::string(usual.what), measure(chisel), usual.source);
  if (relief > least_relief_of_straight_lip(point)) {
    constexpr Angle further = degrees(5);
    const Angle least = chisel_edge_of_flat(point, flank_slope(point, relief)) + further;
    if (chisel < least) {
      work.telling.because_of_law("raised: a cone turns it further than a flat", cone_inverse_law, measure(least));
      work.telling.word("chisel", print_angle(least));
      work.telling.flag("chisel-raised");
      chisel = least;
    }
  }
  work.answer.input("chisel", Typed<Angle>{chisel, std::nullopt});
  return chisel;
}

/// A wanted point that no cone has is a contradiction where it was typed, and a refusal where it was taken.
void refuse_wanted(GrindWork& work, const std::string& says, const std::string& instead) {
  const auto& ask = work.ask;
  for (const auto& [word, flag] : {std::pair{&ask.chisel, "--chisel"}, {&ask.relief, "--relief"}})
    if (*word)
      throw contradiction(typed_or((*word)->text, (*word)->value), std::string(flag) + " " +
                                                                       typed_or((*word)->text, (*word)->value) + ": " +
                                                                       says + "; " + instead + " would do");
  work.object(says, instead);
}

bool can_be_a_cone(GrindWork& work, const WantedPoint& wanted) {
  const Angle flat = chisel_edge_of_flat(wanted.point, flank_slope(wanted.point, wanted.relief));
  if (!(wanted.chisel_edge > flat)) {
    refuse_wanted(work,
                  "a cone of relief " + deg(wanted.relief) + " turns its chisel edge further than " + deg(flat) +
                      ", that of a flat, and " + deg(wanted.chisel_edge) + " is wanted",
                  "a --chisel well over " + print_angle(flat) + " or less relief");
    return false;
  }
  return true;
}

std::optional<ConeFlank> flank_of(GrindWork& work, const WantedPoint& wanted) {
  const Angle land = work.subject.land;
  if (!can_be_a_cone(work, wanted)) return std::nullopt;
  if (const auto& half = work.ask.cone_half_angle) {
    if (!(half->value < wanted.point.included / 2.0))
      throw contradiction(typed_or(half->text, half->value), "--cone-half-angle " + typed_or(half->text, half->value) +
                                                                 " is not under half the point angle, " +
                                                                 deg(wanted.point.included / 2.0));
    try {
      return cone_of_half_angle(wanted, half->value);
    } catch (const std::domain_error& refused) {
      throw contradiction(typed_or(half->text, half->value),
                          "--cone-half-angle " + typed_or(half->text, half->value) + ": " + refused.what() + "; " +
                              half_angle_that_would_do(wanted, land, half->value) + " would do");
    }
  }
  const auto usual = [&](const char* row) { return degrees(limit(work.tables.limits, row).ratio); };
  const auto flank = taken(wanted, land, {usual("cone_half_least"), usual("cone_half_most")});
  if (!flank)
    refuse_wanted(work,
                  "no cone of relief " + deg(wanted.relief) + " with its chisel edge at " + deg(wanted.chisel_edge) +
                      " clears its heel and leaves the other lip alone",
                  "--way four-facet");
  return flank;
}

void tell_fixture(GrindWork& work, const ConeFlank& flank, const Swing& swing) {
  const ConeSetup setup = cone_setup(flank);
  std::vector<Member> cone{{key::cone_half_angle.name, measure(setup.cone_half_angle)},
                           {key::cone_axis_angle.name, measure(setup.axis_angle)},
                           {key::cone_skew.name, measure(setup.skew)},
                           {key::lip_clock.name, measure(setup.lip_clock)},
                           {key::point_overhang.name, measure(point_overhang(flank))},
                           {key::axis_distance.name, measure(setup.axis_distance)},
                           {key::apex_offset.name, measure(flank.apex_offset)},
                           {key::swing_needed.name, measure(swing.needed)}};
  if (swing.limit) cone.push_back({key::swing_limit.name, measure(*swing.limit)});
  work.answer.set(key::way, name_of(GrindingWay::cone));
  work.answer.set(key::facets, std::vector<Value>{});
  work.answer.set(key::cone, std::move(cone));
  if (setup.axis_distance < mm(0)) work.telling.flag("foot-in-wheel");
  work.telling.because_of_law("pivot axis to drill axis", cone_setup_law, measure(setup.axis_angle));
  work.telling.because_of_law("apex of the cone past the drill's axis", cone_inverse_law, measure(flank.apex_offset));
  work.telling.because_of_law("swing needed from the lip on", cone_swing_law, measure(swing.needed));
  if (swing.limit)
    work.telling.because_of_law("swing that would cut the other lip", cone_swing_law, measure(*swing.limit));
}

void judge_swing(GrindWork& work, const WantedPoint& wanted, const ConeFlank& flank, const Swing& swing) {
  if (swings_free(swing)) return;
  work.object("the swing has to go " + deg(swing.needed) + " to pass the heel, and from " + deg(*swing.limit) +
                  " on the wheel cuts the other lip",
              half_angle_that_would_do(wanted, work.subject.land, flank.cone_half_angle));
}

void judge_heel(GrindWork& work, const WantedPoint& wanted, const ConeFlank& flank) {
  const auto heel = heel_clear_angle(flank);
  if (heel) {
    work.answer.found(key::heel_clear_angle, *heel);
    work.telling.because_of_law("heel as high again as the lip", cone_drop_law, measure(*heel));
  }
  if (heel_is_clear(flank, work.subject.land)) {
    work.telling.because_of_law("drop at the heel over that of a uniform relief", cone_drop_law,
                                measure(heel_drop_ratio(flank, work.subject.land)));
    return;
  }
  work.object("its heel stands above the lip from " + deg(*heel) + " behind it, and the land reaches to " +
                  deg(work.subject.land),
              half_angle_that_would_do(wanted, work.subject.land, flank.cone_half_angle));
}

void tell_fixture_effects(GrindWork& work, const ConeFlank& flank) {
  const Flute flute{flank.point, work.subject.helix.value};
  const ConeSetup setup = cone_setup(flank);
  const auto gives = [flute](ConeSetup moved) {
    const MeasuredPoint found = measured_point({flute, moved, turns(0)});
    return PointAngles{found.included, found.relief, found.chisel_edge};
  };
  constexpr Angle one = degrees(1);
  constexpr Length tenth = mm(0.1);
  std::vector<SettingMoved> moves;
  const auto move = [&](const std::string& setting, auto change) {
    ConeSetup moved = setup;
    change(moved);
    moves.push_back({setting, [gives, moved] { return gives(moved); }});
  };
  const std::string by = in_words(tenth) + " more ";
  move("1 deg more wheel face to pivot", [&](ConeSetup& s) { s.cone_half_angle = s.cone_half_angle + one; });
  move("1 deg more pivot to drill", [&](ConeSetup& s) { s.axis_angle = s.axis_angle + one; });
  move("1 deg more lip clock", [&](ConeSetup& s) { s.lip_clock = s.lip_clock + one; });
  move(by + "skew", [&](ConeSetup& s) { s.skew = s.skew + tenth; });
  move(by + "apex to foot", [&](ConeSetup& s) { s.axis_distance = s.axis_distance + tenth; });
  move(by + "overhang", [&](ConeSetup& s) { s.foot_height = s.foot_height - tenth; });
  try {
    tell_effects(work, gives(setup), moves, curved_lip_law);
  } catch (const std::domain_error&) {
    // A lip too short for a chord has no differences to tell.
  }
}

} // namespace

void grind_cone(GrindWork& work) {
  const Angle relief = relief_by_size(work, "a cone");
  if (!falls(work, relief)) return;
  const WantedPoint wanted{work.subject.point, relief, chisel_of(work, relief)};
  const auto flank = flank_of(work, wanted);
  if (!flank) return;
  Swing swing;
  try {
    swing = swing_of(*flank, work.subject.land);
  } catch (const std::domain_error&) {
    work.object("a cone so narrow ends before the heel of a land of " + deg(work.subject.land),
                half_angle_that_would_do(wanted, work.subject.land, flank->cone_half_angle));
    return;
  }
  tell_fixture(work, *flank, swing);
  judge_swing(work, wanted, *flank, swing);
  const Angle chisel = chisel_edge_of_cone(*flank);
  work.telling.because_of_law("chisel edge, corner to corner", cone_chisel_law, measure(chisel));
  const PointAngles angles = with_flutes(work, *flank, {wanted.point.included, wanted.relief, chisel});
  tell_angles(work, angles, [&](Length web) {
    return relief_of_slope({wanted.point.diameter, web, wanted.point.included}, flank->slope);
  });
  judge_heel(work, wanted, *flank);
  tell_fixture_effects(work, *flank);
}

} // namespace quillside
