#include "grind_found.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <quillside/model/flat_facet.hpp>
#include <quillside/words/print.hpp>

#include "evidence.hpp"

namespace quillside {

namespace {

/// What an angle is at the nominal web and at either end of what the web may be.
template <class At> auto over_web(const Spread<Length>& web, const At& at) {
  const auto value = at(web.value);
  const auto [low, high] = std::minmax({at(web.low), value, at(web.high)});
  return Spread<std::decay_t<decltype(value)>>{low, value, high};
}

void tell_index_error(GrindWork& work, Angle relief) {
  const auto error = [&](Angle helix) {
    return height_of_index_error(work.subject.point.diameter, {.relief = relief, .helix = helix, .error = degrees(1)});
  };
  const Spread<Length> height{error(work.subject.helix.low), error(work.subject.helix.value),
                              error(work.subject.helix.high)};
  work.answer.found(key::height_error_per_degree, height);
  work.telling.because_of_law("second lip turned in 1 deg wrong: one lip stands higher", index_error_law,
                              Answer::of(height));
}

} // namespace

void tell_angles(GrindWork& work, const PointAngles& angles, const std::function<Angle(Length web)>& relief_at) {
  work.answer.found(key::included_angle, angles.included);
  const Angle shift = angles.relief - relief_at(work.subject.web.value);
  const auto relief = over_web(work.subject.web, [&](Length web) { return relief_at(web) + shift; });
  work.answer.found(key::lip_relief, relief);
  if (angles.chisel) work.answer.found(key::chisel_edge_angle, *angles.chisel);
  work.telling.because_of_law("lip relief at the corner, the web within its doubt", flank_slope_law,
                              Answer::of(relief));
  tell_index_error(work, angles.relief);
}

void tell_effects(GrindWork& work, const PointAngles& base, const std::vector<SettingMoved>& moves, const Law& law) {
  constexpr Angle least = degrees(0.005);
  const auto tell = [&](const SettingMoved& move, const char* what, Angle change) {
    if (std::max(change, turns(0) - change) < least) return;
    work.telling.because_of_law(move.setting + ": " + what, law, measure(change));
  };
  for (const auto& move : moves) {
    try {
      const PointAngles moved = move.gives();
      tell(move, "included angle", moved.included - base.included);
      tell(move, "lip relief", moved.relief - base.relief);
      if (moved.chisel && base.chisel) tell(move, "chisel edge", *moved.chisel - *base.chisel);
    } catch (const std::domain_error&) {
      // A step that leaves no point at all has no difference to tell.
    }
  }
}

namespace {

/// The greatest bow of a lip, of places along it.
Length greatest_bow(const GroundLip& lip, Length radius, Length inner) {
  Length greatest = mm(0);
  constexpr int places = 16;
  for (int i = 1; i < places; ++i) {
    const Length bow = lip_bow(lip, inner + (static_cast<double>(i) / places) * (radius - inner));
    if (std::abs(in_mm(bow)) > std::abs(in_mm(greatest))) greatest = bow;
  }
  return greatest;
}

} // namespace

PointAngles with_flutes(GrindWork& work, const GroundFlank& flank, const PointAngles& straight) {
  const auto& made_for = work.ask.flute_angle;
  if (!made_for || std::abs(in_degrees(made_for->value - straight.included)) < 0.05) return straight;
  const Flute flute{{work.subject.point.diameter, work.subject.point.web, made_for->value}, work.subject.helix.value};
  try {
    const Angle clocking = clocking_on_corner(flute, straight.included);
    const GroundLip lip{flute, flank, clocking};
    const MeasuredPoint found = measured_point(lip);
    const Length bow = greatest_bow(lip, work.subject.point.diameter / 2.0, found.inner_radius);
    work.telling.because_of_law("drill turned so that its outer corner, not its lip, lies as set; in the cutting "
                                "direction where above 0",
                                clock_on_corner_law, measure(clocking));
    work.telling.because_of_law("bow of the lip, hollow where below 0", curved_lip_law, measure(bow));
    work.telling.word("made-for", print_angle(made_for->value));
    work.telling.word("clock", print_angle(std::max(clocking, turns(0) - clocking)));
    work.telling.word("clock-way", clocking < turns(0) ? "against its cutting direction" : "in its cutting direction");
    work.telling.word("bow", std::string(bow < mm(0) ? "hollow" : "bowed out") + " by " +
                                 in_words(std::max(bow, mm(0) - bow)));
    work.telling.flag("other-flutes");
    return {found.included, found.relief, found.chisel_edge};
  } catch (const std::domain_error& refused) {
    work.object("flutes made for " + print_angle(made_for->value) + " deg make no lip of " +
                    print_angle(straight.included) + " deg with these settings: " + refused.what(),
                "a point nearer to " + print_angle(made_for->value) + " deg");
    return straight;
  }
}

} // namespace quillside
