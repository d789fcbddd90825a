#include <quillside/job/grind.hpp>

#include <quillside/model/lip.hpp>
#include <quillside/words/print.hpp>

#include "grind_books.hpp"
#include "grind_cone.hpp"
#include "grind_facets.hpp"
#include "grind_forward.hpp"
#include "grind_wanted.hpp"
#include "grinding_way.hpp"

namespace quillside {

namespace {

void tell_inputs(Answer& answer, const GrindQuestion& ask, const GrindSubject& subject, const TakenWay& way) {
  answer.input("size", Typed<Length>{ask.size.value.length, ask.size.text});
  if (ask.material) answer.input_word("material", ask.material->value.material->key, ask.material->text);
  answer.input_word("way", name_of(way.way), ask.way ? ask.way->text : std::nullopt);
  const auto typed = [&](const char* name, const auto& word) {
    if (word) answer.input(name, *word);
  };
  const auto reading = [&](const char* name, const auto& word) {
    if (word) answer.inputs.push_back({name, measure(word->value.value), word->text});
  };
  if (!ask.hold.given())
    answer.input("angle", ask.angle ? *ask.angle : Typed<Angle>{subject.point.included, std::nullopt});
  typed("relief", ask.relief);
  typed("chisel", ask.chisel);
  typed("second_relief", ask.second_relief);
  typed("flute_angle", ask.flute_angle);
  typed("cone_half_angle", ask.cone_half_angle);
  typed("fence", ask.hold.fence);
  typed("table_tilt", ask.hold.table_tilt);
  typed("swing", ask.hold.swing);
  typed("tilt", ask.hold.tilt);
  typed("roll", ask.hold.roll);
  typed("wheel", ask.wheel.diameter);
  typed("wheel_speed", ask.wheel.speed);
  typed("wheel_marked", ask.wheel.marked);
  reading("land_wear", ask.land_wear);
  reading("margin_wear", ask.margin_wear);
  answer.inputs.push_back({"web", measure(subject.web.value), ask.web ? ask.web->text : std::nullopt});
  answer.input("land", Typed<Angle>{subject.land, ask.land ? ask.land->text : std::nullopt});
  answer.input("helix", Typed<Angle>{subject.helix.value, std::nullopt});
}

void tell_ground(const Tables& tables, Telling& telling, const GrindQuestion& ask, const Ground& ground) {
  if (!ask.angle && !ask.hold.given())
    telling.because_of_row("wanted point", std::string(ground.point->point.text),
                           measure(ground.point->point.range.low), ground.point->source);
  if (!ask.web) {
    telling.because_of_row("web, not read", "drill of " + std::string(ground.web.row->diameter.text),
                           measure(ground.web.web), ground.web.row->source);
    telling.flag("web-taken");
  }
  if (!ask.land) {
    const Limit& land = limit(tables.limits, "land_angle");
    telling.because_of_row("land behind the lip", std::string(land.what), measure(ground.land), land.source);
  }
}

void tell_way(Telling& telling, const TakenWay& way) {
  telling.flag(name_of(way.way));
  if (way.because.empty()) return;
  telling.word("way", std::string(name_of(way.way)));
  telling.word("because", way.because);
  telling.flag("way-taken");
}

void grind_wanted(GrindWork& work, GrindingWay way) {
  if (way == GrindingWay::two_facet) return grind_two_facet(work);
  if (way == GrindingWay::four_facet) return grind_four_facet(work);
  grind_cone(work);
}

void close(Answer& answer, const std::vector<Objection>& objections) {
  if (objections.empty()) {
    answer.verdict = "go";
    return;
  }
  std::string reason;
  std::string instead;
  for (const auto& objection : objections) {
    reason += (reason.empty() ? "" : "; ") + objection.reason;
    if (!objection.instead.empty()) instead += (instead.empty() ? "" : "; ") + objection.instead;
  }
  answer.refuse(reason);
  if (!instead.empty()) answer.instead = instead;
}

/// The relief that is ground, for the worn length; nothing where the hold gives none.
std::optional<Angle> relief_found(const Answer& answer) {
  const Measure* relief = find_measure(answer.findings, key::lip_relief.name);
  if (relief == nullptr) return std::nullopt;
  return degrees(relief->value);
}

} // namespace

Answer grind(const Tables& tables, const GrindQuestion& ask) {
  GrindSubject subject = subject_of(tables, ask);
  std::vector<Objection> refused;
  const auto held = ask.hold.given() ? facet_held(ask, refused) : std::nullopt;
  if (held) subject.point.included = held->included;
  const TakenWay way = ask.hold.given() ? TakenWay{GrindingWay::two_facet, ""} : way_of(ask);

  Answer answer("grind");
  Telling telling(tables, answer, ask.material ? &ask.material->value : nullptr, {});
  tell_inputs(answer, ask, subject, way);
  tell_ground(tables, telling, ask, subject.ground);
  tell_way(telling, way);
  GrindWork work{tables, ask, subject, answer, telling, refused};
  if (held)
    grind_forward(work, *held);
  else if (!ask.hold.given())
    grind_wanted(work, way.way);
  judge_wheel(work);
  if (const auto relief = relief_found(answer)) tell_books(work, *relief);
  close(answer, work.objections);
  if (answer.verdict == "go") telling.flag("go");
  telling.cautions({});
  return answer;
}

} // namespace quillside
