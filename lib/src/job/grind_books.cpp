#include "grind_books.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <quillside/model/flat_facet.hpp>
#include <quillside/model/surface_speed.hpp>
#include <quillside/model/wear.hpp>
#include <quillside/quantity/angle.hpp>
#include <quillside/words/print.hpp>

#include "bench_doubt.hpp"
#include "evidence.hpp"

namespace quillside {

namespace {

/// Width of a facet across its lip.
Length facet_width(const GrindSubject& subject, Facet facet, FacetReach reach) {
  const PointShape& point = subject.point;
  const Length radius = point.diameter / 2.0;
  const Angle behind = std::min(subject.land - lip_offset(point, radius), turns(0.25));
  Length across = reach.to_heel ? sine(behind) * radius : mm(0);
  if (!reach.from_axis) across = across + point.web / 2.0;
  return across / cosine(flank_tilt(facet));
}

} // namespace

void tell_rim(GrindWork& work, const std::string& which, Facet facet, FacetReach reach) {
  const auto& wheel = work.ask.wheel.diameter;
  if (!wheel) return;
  const Length width = facet_width(work.subject, facet, reach);
  if (!(width < wheel->value)) {
    work.object("a facet of " + in_words(width) + " is wider than the wheel", "a larger wheel, or the face of a disk");
    return;
  }
  const RimHollow rim = rim_hollow({.width = width, .wheel_radius = wheel->value / 2.0});
  work.telling.because_of_law("hollow" + which + " on the rim", rim_hollow_law, measure(rim.depth));
  work.telling.because_of_law("steeper at the lip" + which + " on the rim, square to it", rim_hollow_law,
                              measure(rim.relief_gain));
  if (!reach.from_axis) {
    const PointShape& point = work.subject.point;
    const double slope = tangent(flank_tilt(facet) + rim.relief_gain) / sine(facet.included / 2.0);
    const Angle gain = relief_of_slope({point.diameter, point.web, facet.included}, slope) -
                       relief_of_slope({point.diameter, point.web, facet.included}, facet.slope);
    work.telling.because_of_law("lip relief gained" + which + " on the rim", rim_hollow_law, measure(gain));
    work.telling.word("rim-gain", print_angle(gain));
    work.telling.word("rim-depth", in_words(rim.depth));
    work.telling.flag("rim");
  }
}

void judge_wheel(GrindWork& work) {
  const auto& wheel = work.ask.wheel;
  if (wheel.diameter && wheel.speed)
    work.telling.because_of_law("speed of the rim", surface_speed_law,
                                measure(cutting_speed(wheel.speed->value, wheel.diameter->value)));
  if (wheel.speed && wheel.marked) {
    if (wheel.speed->value > wheel.marked->value)
      work.object("the wheel would run at " + print_spindle_speed(wheel.speed->value) + " rev/min, over the " +
                      print_spindle_speed_limit(wheel.marked->value) + " marked on it",
                  "a wheel marked for " + print_spindle_speed(wheel.speed->value) +
                      " rev/min or more, or a spindle of " + print_spindle_speed_limit(wheel.marked->value) +
                      " or less");
  } else if (wheel.diameter || wheel.speed || wheel.marked) {
    work.telling.flag("mark-unread");
  }
}

namespace {

/// How many regrinds of that length until the web is thinned.
void tell_regrinds_left(GrindWork& work, const Spread<Length>& after, Length off, double taper) {
  const Length diameter = work.subject.point.diameter;
  const PointLimit* row = choose_point_limit(work.tables.point_limits, "web", {}, diameter);
  if (row == nullptr) return;
  const Length most = read_percent_range(row->keep).high * diameter;
  work.telling.because_of_row("web that is thinned", std::string(row->what) + ": " + std::string(row->keep),
                              measure(most), row->source);
  if (after.value > most) {
    work.telling.word("web-after", in_words(after.value));
    work.telling.word("web-most", in_words(most));
    work.telling.flag("thin");
    return;
  }
  work.telling.because_of_law("regrinds of that length until then", web_growth_law,
                              measure(std::floor((most - after.value) / (taper * off))));
}

} // namespace

void tell_books(GrindWork& work, Angle relief) {
  const auto& ask = work.ask;
  if (!ask.land_wear && !ask.margin_wear) return;
  const auto read = [&](const auto& word, const char* what) {
    if (!word) return Spread<Length>{mm(0), mm(0), mm(0)};
    Spread<Length> spread = doubt_of(work.tables, what, word->value);
    spread.low = std::max(spread.low, mm(0));
    return spread;
  };
  const Spread<Length> land = read(ask.land_wear, "land-wear");
  const Spread<Length> margin = read(ask.margin_wear, "margin-wear");
  const Length clean_up = limit(work.tables.limits, "clean_up").length;
  const Length most_clean_up = limit(work.tables.limits, "clean_up_most").length;
  const auto& helix = work.subject.helix;
  const auto off_of = [&](Length land_wear, Angle turned, Length margin_wear, Length over) {
    return length_to_grind_off({{land_wear, relief, turned}, margin_wear, over});
  };
  const Spread<Length> off{off_of(land.low, helix.low, margin.low, mm(0)),
                           off_of(land.value, helix.value, margin.value, clean_up),
                           off_of(land.high, helix.high, margin.high, most_clean_up)};
  work.answer.found(key::grind_off, off);
  work.telling.because_of_law("length for the worn land", wear_land_law,
                              measure(length_for_land({land.value, relief, helix.value})));
  work.telling.because_of_law("grind off, with the clean-up", grind_off_law, Answer::of(off));

  const Limit& taper = limit(work.tables.limits, "web_taper");
  const auto& web = work.subject.web;
  const Spread<Length> after{web_after({web.low, limit(work.tables.limits, "web_taper_least").ratio, off.low}),
                             web_after({web.value, taper.ratio, off.value}),
                             web_after({web.high, limit(work.tables.limits, "web_taper_most").ratio, off.high})};
  work.answer.found(key::web_after, after);
  work.telling.because_of_row("taper of the web", std::string(taper.what), measure(taper.ratio), taper.source);
  work.telling.because_of_law("web after it", web_growth_law, Answer::of(after));
  tell_regrinds_left(work, after, off.value, taper.ratio);
}

} // namespace quillside
