#include "point_why.hpp"

#include <algorithm>
#include <string>
#include <variant>

#include <quillside/model/flat_facet.hpp>
#include <quillside/model/photo_marks.hpp>
#include <quillside/words/print.hpp>

#include "grinding_way.hpp"
#include "point_outcome.hpp"

namespace quillside {

namespace {

/// The widest tilt of a lens that passes unseen in the hand.
constexpr Angle unseen_tilt = degrees(5);

} // namespace

void tell_steps(const Answer& answer, Telling& telling, const std::vector<JudgedPoint>& ways) {
  for (const auto& way : ways)
    for (const auto& step : way.solved.steps) {
      const auto told = [&](const Why& why) {
        const auto* value = std::get_if<Measure>(&why.value.held);
        return why.source == step.law->id && value != nullptr && value->value == step.value.value &&
               value->low == step.value.low && value->high == step.value.high;
      };
      if (std::any_of(answer.why.begin(), answer.why.end(), told)) continue;
      const bool differs = ways.size() > 1;
      telling.because_of_law(step.step + (differs ? " (as " + std::string(name_of(way.solved.way)) + ")" : ""),
                             *step.law, step.value);
    }
}

void tell_ground(const Tables& tables, Telling& telling, const PointQuestion& ask, const Ground& ground,
                 const SolvedPoint& point) {
  telling.because_of_row("wanted point", std::string(ground.point->point.text), measure(ground.point->point.range.low),
                         ground.point->source);
  if (ground.relief != nullptr)
    telling.because_of_row("wanted relief of a cone or a first facet", relief_row_words(*ground.relief),
                           measure(ground.relief->relief.range.low), ground.relief->source);
  const PointShape shape{ask.size.value.length, ground.web.web, ground.point->point.range.low};
  telling.because_of_law("least relief that clears the heel of one flat", flat_heel_law,
                         measure(least_relief(shape, ground.land)));
  if (!point.web_read)
    telling.because_of_row("web, not read", "drill of " + std::string(ground.web.row->diameter.text),
                           measure(ground.web.web), ground.web.row->source);
  if (ask.trial_hole)
    if (const auto* usual = choose_usual_oversize(tables.usual_oversizes, ask.size.value.length))
      telling.because_of_row("usual oversize of a good point", std::string(usual->oversize.text),
                             measure(usual->oversize.range.high), usual->source);
}

void tell_limits(Telling& telling, const std::vector<PointCheck>& checks) {
  for (const auto& check : checks)
    if (check.limit != nullptr && check.value)
      telling.because_of_row("limit of " + spaced(check.item),
                             std::string(check.limit->what) + ": keep " + std::string(check.limit->keep) +
                                 ", touch up " + std::string(check.limit->touch_up),
                             *check.value, check.limit->source);
}

void tell_photo(Telling& telling, const PointQuestion& ask, const SolvedPoint& point) {
  if (!ask.side_marks && !ask.end_marks) return;
  telling.flag("photo");
  const Angle seen = foreshortened({point.included.spread.value, unseen_tilt});
  telling.word("tilted", print_angle(seen));
  telling.word("true", print_angle(point.included.spread.value));
  telling.because_of_law("included angle through a lens tilted by 5 deg along the axis", foreshortened_law,
                         measure(seen));
}

} // namespace quillside
