#include "grind_wanted.hpp"

#include <quillside/model/flat_facet.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>

#include "bench_doubt.hpp"
#include "evidence.hpp"
#include "grinding_way.hpp"

namespace quillside {

namespace {

void require(const std::optional<Typed<Angle>>& word, Angle least, Angle most, const std::string& what) {
  if (!word || (word->value >= least && word->value <= most)) return;
  throw wrong_word(typed_or(word->text, word->value), "is no " + what + " that is answered here: " +
                                                          print_angle(least) + " to " + print_angle(most) + " deg");
}

void require_ranges(const GrindQuestion& ask) {
  require(ask.angle, least_included, most_included, "included angle");
  require(ask.flute_angle, least_included, most_included, "angle that flutes are made for");
  require(ask.relief, slightest_relief, steepest_relief, "lip relief");
  require(ask.second_relief, slightest_relief, degrees(50), "relief of a second facet");
  require(ask.cone_half_angle, degrees(5), degrees(74), "half angle of a cone");
  require(ask.land, degrees(30), degrees(120), "land angle");
  require(ask.hold.fence, degrees(20), degrees(89), "fence angle, between drill and disk,");
  require(ask.hold.swing, degrees(10), degrees(89), "swing, between drill and disk,");
  require(ask.hold.table_tilt, degrees(0), degrees(50), "tilt of a table");
  require(ask.hold.tilt, degrees(0), degrees(50), "tilt of a wedge");
  require(ask.hold.roll, degrees(0), degrees(60), "roll");
  if (ask.chisel) {
    const Angle edge = std::max(ask.chisel->value, turns(0.5) - ask.chisel->value);
    if (!(edge > degrees(91) && edge <= degrees(147)))
      throw wrong_word(typed_or(ask.chisel->text, ask.chisel->value),
                       "is no chisel edge angle: give the obtuse one, 91 to 147 deg, or its supplement, 33 to 89 deg");
  }
}

void require_lengths(const GrindQuestion& ask) {
  const Length diameter = ask.size.value.length;
  const auto share = [&](const auto& word, const char* flag, double least, double most) {
    if (!word) return;
    const double is = word->value.value / diameter;
    if (is >= least && is <= most) return;
    throw wrong_word(word->text.value_or(""), std::string("is no --") + flag + " of a drill of " + in_words(diameter) +
                                                  ": " + in_words(least * diameter) + " to " +
                                                  in_words(most * diameter) + "; is its unit right?");
  };
  share(ask.web, "web", 0.10, 0.30);
  share(ask.land_wear, "land-wear", 0, 0.5);
  share(ask.margin_wear, "margin-wear", 0, 2);
  if (const auto& wheel = ask.wheel.diameter; wheel && (wheel->value < mm(10) || wheel->value > mm(500)))
    throw wrong_word(wheel->text.value_or(""), "is no diameter of a bench wheel: 10 to 500 mm, 0.4 to 20 in");
}

Spread<Length> web_of(const Tables& tables, const GrindQuestion& ask, const Ground& ground) {
  if (ask.web) return doubt_of(tables, "web", ask.web->value);
  const double doubt = limit(tables.limits, "web_doubt").ratio;
  return {(1 - doubt) * ground.web.web, ground.web.web, (1 + doubt) * ground.web.web};
}

} // namespace

std::string typed_or(const std::optional<std::string>& text, Angle angle) { return text.value_or(print_angle(angle)); }

GrindSubject subject_of(const Tables& tables, const GrindQuestion& ask) {
  require_ranges(ask);
  require_lengths(ask);
  const Length diameter = ask.size.value.length;
  const Ground ground = ground_of(tables, diameter, ask.material ? &ask.material->value : nullptr);
  const Spread<Length> web = web_of(tables, ask, ground);
  return {.ground = ground,
          .point = {diameter, web.value, ask.angle ? ask.angle->value : ground.point->point.range.low},
          .web = web,
          .land = ask.land ? ask.land->value : ground.land,
          .helix = {degrees_of(tables, "helix_least"), degrees_of(tables, "helix_usual"),
                    degrees_of(tables, "helix_most")}};
}

TakenWay way_of(const GrindQuestion& ask) {
  const auto belongs = [&](const std::optional<Typed<Angle>>& word, const char* flag, GrindingWay way,
                           const char* name) {
    if (!word || !ask.way || ask.way->value == way) return;
    throw contradiction(word->text.value_or(""), std::string(flag) + " belongs to --way " + name + ", and --way " +
                                                     std::string(name_of(ask.way->value)) + " is asked for");
  };
  belongs(ask.second_relief, "--second-relief", GrindingWay::four_facet, "four-facet");
  belongs(ask.cone_half_angle, "--cone-half-angle", GrindingWay::cone, "cone");
  if (ask.second_relief && ask.cone_half_angle)
    throw contradiction(ask.cone_half_angle->text.value_or(""), "--second-relief belongs to --way four-facet, "
                                                                "--cone-half-angle to --way cone: leave one out");
  if (ask.way) return {ask.way->value, ""};
  if (ask.second_relief) return {GrindingWay::four_facet, "a second relief was asked for"};
  if (ask.cone_half_angle) return {GrindingWay::cone, "a cone's half angle was asked for"};
  return {GrindingWay::two_facet,
          "it has the fewest settings, one hold for each lip. --way four-facet makes a stronger lip "
          "on the same disk; --way cone wants a swing fixture"};
}

Angle relief_by_size(GrindWork& work, const std::string& of) {
  if (work.ask.relief) return work.ask.relief->value;
  const PointShape& point = work.subject.point;
  const auto* row = work.subject.ground.relief;
  Angle relief = least_relief(point, work.subject.land);
  if (row != nullptr) {
    relief = row->relief.range.low;
    work.telling.because_of_row("wanted relief of " + of, relief_row_words(*row), measure(relief), row->source);
    work.telling.flag("relief-limits");
  }
  const Limit& over = limit(work.tables.limits, "relief_over_least");
  const Angle enough = least_relief_of_straight_lip(point) + degrees(over.ratio);
  if (relief < enough) {
    work.telling.because_of_row("raised", std::string(over.what), measure(enough), over.source);
    work.telling.flag("relief-raised");
    relief = enough;
  }
  work.answer.input("relief", Typed<Angle>{relief, std::nullopt});
  return relief;
}

bool falls(GrindWork& work, Angle relief) {
  const Angle floor = least_relief_of_straight_lip(work.subject.point);
  if (relief > floor) return true;
  work.object("with relief " + print_angle(relief) + " deg the flank rises behind a straight lip of this web",
              "more relief than " + print_angle(floor) + " deg, or a thinner web");
  return false;
}

} // namespace quillside
