#include <quillside/job/point.hpp>

#include <algorithm>
#include <stdexcept>

#include <quillside/model/flat_facet.hpp>
#include <quillside/model/four_facet.hpp>
#include <quillside/model/photo_marks.hpp>
#include <quillside/quantity/angle.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>

#include "evidence.hpp"
#include "point_ground.hpp"
#include "point_judge.hpp"
#include "point_next.hpp"
#include "point_readings.hpp"
#include "point_solve.hpp"
#include "spread_ends.hpp"
#include "telling.hpp"

namespace quillside {

namespace {

constexpr std::array all_ways{GrindingWay::two_facet, GrindingWay::four_facet, GrindingWay::cone};

std::string name_of(GrindingWay way) { return std::string(grinding_ways[static_cast<std::size_t>(way)]); }

/// What a point ground that way should be. The relief is that of the table; of one flat, the least that clears its
/// heel.
PointTargets targets_of(const Tables& tables, const Ground& ground, Length diameter, GrindingWay way) {
  const PointShape point{diameter, ground.web.web, ground.point->point.range.low};
  const Angle least = least_relief(point, ground.land);
  const Angle from_table = ground.relief != nullptr ? ground.relief->relief.range.low : least;
  if (way == GrindingWay::two_facet)
    return {point.included, least, chisel_edge_of_flat(point, flank_slope(point, least))};
  if (way == GrindingWay::cone) return {point.included, from_table, degrees_of(tables, "chisel_usual")};
  const double first = flank_slope(point, from_table);
  const double second = second_slope(point, std::max(degrees_of(tables, "second_relief"), from_table + degrees(5)));
  return {point.included, from_table, chisel_edge_of_four({point, first, second, mm(0)})};
}

PointDefaults defaults_of(const Tables& tables, const Ground& ground, Length diameter, const PointTargets& targets) {
  PointDefaults all{};
  const double doubt = limit(tables.limits, "web_doubt").ratio;
  all.web = {(1 - doubt) * ground.web.web, ground.web.web, (1 + doubt) * ground.web.web};
  // A point nobody measured is one of the usual ones, or near it.
  constexpr Angle sharp = degrees(88);
  constexpr Angle blunt = degrees(142);
  all.included = {std::min(sharp, targets.included - degrees(4)), targets.included,
                  std::max(blunt, targets.included + degrees(4))};
  if (const auto* row = choose_point_limit(tables.point_limits, "half_angle_difference", {}, diameter)) {
    all.unread_difference = read_angle_range(row->touch_up).high;
    all.kept_difference = read_angle_range(row->keep).high;
  }
  all.wanted_relief = targets.relief;
  all.land = ground.land;
  all.least_light = limit(tables.limits, "least_light").length;
  all.helix = {degrees_of(tables, "helix_least"), degrees_of(tables, "helix_usual"), degrees_of(tables, "helix_most")};
  all.clean_up = {mm(0), limit(tables.limits, "clean_up").length, limit(tables.limits, "clean_up_most").length};
  if (const auto* usual = choose_usual_oversize(tables.usual_oversizes, diameter)) {
    const auto& range = usual->oversize.range;
    all.usual_oversize = {range.low, (range.low + range.high) / 2.0, range.high};
  }
  return all;
}

/// The drill, for a fault that no single reading is to blame for.
std::string readings_in_words(const PointQuestion& ask) { return ask.size.text.value_or(""); }

/// The point judged in every way that the readings allow. One that was named has to be allowed.
std::vector<JudgedPoint> judge_ways(const Tables& tables, const PointQuestion& ask, const Ground& ground,
                                    const PointReadings& readings) {
  std::vector<JudgedPoint> judged;
  std::optional<Fault> refused;
  for (const GrindingWay way : all_ways) {
    if (ask.way && ask.way->value != way) continue;
    const auto targets = targets_of(tables, ground, readings.diameter, way);
    try {
      judged.push_back(judge_point(tables,
                                   solve_point(way, readings, defaults_of(tables, ground, readings.diameter, targets)),
                                   targets, ground.land, readings));
    } catch (const Fault& fault) {
      refused = fault;
    } catch (const std::domain_error& error) {
      refused =
          contradiction(readings_in_words(ask), "these readings make no drill's point: " + std::string(error.what()));
    }
  }
  if (!judged.empty()) return judged;
  const auto names = [&](const char* flag) { return refused->message.find(flag) != std::string::npos; };
  const bool by_web = names("--lip-depth") || names("--lip-lengths") || names("--point-length") ||
                      names("--light-gap") || names("--chisel") || names("--drop");
  if (by_web && !readings.web) refused->message += " (the web was taken from the tables: a --web may settle it)";
  throw Fault(*refused);
}

struct Verdict {
  std::string word;
  bool settled = true; // nothing more to read for it
};

Verdict verdict_of(const std::vector<JudgedPoint>& ways, const std::vector<PointCheck>& checks) {
  VerdictRange all;
  for (const auto& check : checks) {
    if (!check.range) continue;
    all.best = std::max(all.best, check.range->best);
    all.worst = std::max(all.worst, check.range->worst);
  }
  if (!all.settled()) return {"measure again", false};
  if (all.best == PointVerdict::regrind) return {"regrind"};
  if (all.best == PointVerdict::touch_up) return {"touch up"};
  const bool known = std::all_of(ways.begin(), ways.end(), [](const JudgedPoint& way) {
    return way.knows_included() && way.knows_lips() && way.knows_relief();
  });
  return known ? Verdict{"keep"} : Verdict{"measure again", false};
}

std::string word_of(PointVerdict verdict) {
  return verdict == PointVerdict::keep ? "keep" : verdict == PointVerdict::touch_up ? "touch up" : "regrind";
}
std::string word_of(const PointCheck& check) {
  if (!check.range) return "not judged";
  return check.range->settled() ? word_of(check.range->best) : "measure again";
}

// --- What it comes to, in words ---

std::string amount(double value, std::string_view unit) {
  return unit == "mm" ? in_words(mm(value)) : in_words(degrees(value));
}
std::string wanted_of(const PointCheck& check) {
  if (check.want_low && check.want_high && check.want_low->value > 0)
    return amount(check.want_low->value, check.want_low->unit) + " to " +
           amount(check.want_high->value, check.want_high->unit) + " wanted";
  if (check.want_high) return "at most " + amount(check.want_high->value, check.want_high->unit) + " wanted";
  if (check.want_low) return "at least " + amount(check.want_low->value, check.want_low->unit) + " wanted";
  return "what is wanted depends on how it was ground";
}
std::string spaced(std::string_view item) {
  std::string words(item);
  std::replace(words.begin(), words.end(), '_', ' ');
  return words;
}

std::string which_lip(const PointCheck& check) {
  if (check.lip == "both" || check.item == "heel_clear_angle") return "";
  if (check.item == "oversize") return "";
  if (check.item == "lip_height_difference") return ": lip " + check.lip + " stands higher, take that much off it";
  return ": lip " + check.lip + " is the flatter one";
}

std::string what_is_wrong(const PointCheck& check) {
  const auto& value = *check.value;
  if (check.item == "oversize")
    return "the hole is over the drill by " + amount(value.value, value.unit) +
           ", and the lips as read explain at most " + amount(check.want_high->value, check.want_high->unit) +
           ": look for a bent drill, a spindle out of true, or unequal half angles";
  if (check.range->settled())
    return spaced(check.item) + " " + amount(value.value, value.unit) + ", " + wanted_of(check) + which_lip(check);
  return spaced(check.item) + " " + amount(*value.low, value.unit) + " to " + amount(*value.high, value.unit) + ", " +
         wanted_of(check) + ": from " + word_of(check.range->best) + " to " + word_of(check.range->worst) +
         which_lip(check);
}

std::string what_is_missing(const std::vector<JudgedPoint>& ways) {
  const auto lacks = [&](bool (JudgedPoint::*knows)() const) {
    return !std::all_of(ways.begin(), ways.end(), [&](const JudgedPoint& way) { return (way.*knows)(); });
  };
  std::string missing;
  const auto add = [&](const char* what) {
    missing += (missing.empty() ? "nothing tells " : ", nor ") + std::string(what);
  };
  if (lacks(&JudgedPoint::knows_included)) add("the included angle");
  if (lacks(&JudgedPoint::knows_lips)) add("whether the lips are equal");
  if (lacks(&JudgedPoint::knows_relief)) add("the relief with its heel");
  return missing;
}

std::string reason_of(const Verdict& verdict, const std::vector<JudgedPoint>& ways,
                      const std::vector<PointCheck>& checks) {
  std::vector<const PointCheck*> wrong;
  for (const auto& check : checks)
    if (check.range && check.range->worst != PointVerdict::keep) wrong.push_back(&check);
  std::stable_sort(wrong.begin(), wrong.end(), [](const PointCheck* a, const PointCheck* b) {
    return std::pair(a->range->best, a->range->worst) > std::pair(b->range->best, b->range->worst);
  });
  std::string reason;
  for (const auto* check : wrong) reason += (reason.empty() ? "" : "; ") + what_is_wrong(*check);
  if (verdict.word == "regrind") return reason;
  const std::string missing = what_is_missing(ways);
  return reason + (reason.empty() || missing.empty() ? "" : "; ") + missing;
}

std::string instead_of(const NextReading& next) {
  if (next.flag == "--way")
    return "--way: say how it was ground, two-facet, four-facet or cone; that settles the " + spaced(next.item);
  if (next.flag.empty() && next.item == "oversize")
    return "a second hole with the work clamped, and a dial on the spindle and on the drill: a bent drill or a spindle "
           "out of "
           "true makes such a hole with any point";
  if (next.flag.empty())
    return "no reading on this bench settles the " + spaced(next.item) +
           ": it lies too near its limit; touching it up costs less than measuring";
  return next.flag + " with a " + next.instrument + ": " + std::string(how_to_read(next.flag)) +
         (next.settles ? "; that settles the " + spaced(next.item) + ", unless it lies near its limit"
                       : "; alone it may not yet settle the " + spaced(next.item));
}

/// What to read next; where the way is unknown and stands in the way of every reading, both.
std::string next_step(const Tables& tables, const PointQuestion& ask, const Ground& ground,
                      const PointReadings& readings, const std::vector<JudgedPoint>& ways,
                      const std::vector<PointCheck>& checks) {
  const auto item = unsettled_item(ways, checks);
  if (!item) return "";
  const auto rejudge = [&](const PointReadings& with) { return judge_ways(tables, ask, ground, with); };
  const NextReading next = next_reading(tables, readings, ways, *item, !ask.way, rejudge);
  if ((!next.flag.empty() && next.settles) || ask.way) return instead_of(next);
  const bool by_way = *item == "lip_relief" || *item == "heel_clear_angle" || *item == "chisel_edge_angle";
  if (by_way && ways.size() > 1)
    return "--way: say how it was ground, two-facet, four-facet or cone, and ask again: what is wanted of the " +
           spaced(*item) + " hangs on it";
  return instead_of(next);
}

// --- Telling ---

std::string_view word_of(LightAt at) {
  constexpr std::array<std::string_view, 4> words{"none", "tip", "middle", "corner"};
  return words[static_cast<std::size_t>(at)];
}

template <class Quantity> Value numbers(const Pair<Reading<Quantity>>& pair) {
  return std::vector<Value>{measure(pair[0].value), measure(pair[1].value)};
}
Value numbers_of(const std::vector<Mark>& marks) {
  std::vector<Value> all;
  for (const auto& mark : marks) {
    all.emplace_back(measure(mark.x));
    all.emplace_back(measure(mark.y));
  }
  return all;
}

void tell_inputs(Answer& answer, const PointQuestion& ask, const Ground& ground, const std::vector<JudgedPoint>& ways) {
  answer.input("size", Typed<Length>{ask.size.value.length, ask.size.text});
  if (ask.material) answer.input_word("material", ask.material->value.material->key, ask.material->text);
  if (ask.machine) answer.input_word("machine", ask.machine->value->key, ask.machine->text);
  if (ask.way) answer.input_word("way", name_of(ask.way->value), ask.way->text);
  if (ask.feed) answer.input("feed", *ask.feed);
  const auto reading = [&](const char* name, const auto& word) {
    if (word) answer.inputs.push_back({name, measure(word->value.value), word->text});
  };
  const auto pair = [&](const char* name, const auto& word) {
    if (word) answer.inputs.push_back({name, numbers(word->value), word->text});
  };
  reading("angle", ask.angle);
  pair("half_angles", ask.half_angles);
  reading("lip_depth", ask.lip_depth);
  reading("point_length", ask.point_length);
  pair("lip_lengths", ask.lip_lengths);
  reading("lip_height", ask.lip_height);
  reading("web", ask.web);
  reading("chisel", ask.chisel);
  reading("chisel_length", ask.chisel_length);
  reading("relief", ask.relief);
  reading("drop", ask.drop);
  reading("turn", ask.turn);
  reading("gauge_angle", ask.gauge_angle);
  if (ask.light)
    answer.inputs.push_back(
        {"light", std::vector<Value>{word_of(ask.light->value[0]), word_of(ask.light->value[1])}, ask.light->text});
  pair("light_gap", ask.light_gap);
  reading("trial_hole", ask.trial_hole);
  if (ask.chips) answer.input_word("chips", ask.chips->value == Chips::one ? "one" : "two", ask.chips->text);
  reading("land_wear", ask.land_wear);
  reading("margin_wear", ask.margin_wear);
  if (ask.thinned) answer.input_flag("thinned");
  if (ask.split) answer.input_flag("split");
  if (ask.side_marks) {
    const auto& m = ask.side_marks->value.marks;
    answer.inputs.push_back({"side_marks",
                             numbers_of({m.corner_a, m.inner_a, m.inner_b, m.corner_b, m.margin_a, m.margin_b}),
                             ask.side_marks->text});
  }
  if (ask.end_marks) {
    const auto& m = ask.end_marks->value.marks;
    answer.inputs.push_back(
        {"end_marks", numbers_of({m.corner_a, m.inner_a, m.inner_b, m.corner_b}), ask.end_marks->text});
  }
  if (!ask.web && !ways.front().solved.web_read) answer.input("web", Typed<Length>{ground.web.web, std::nullopt});
  if (!ways.front().solved.included_read)
    answer.input("angle", Typed<Angle>{ways.front().solved.included.spread.value, std::nullopt});
  answer.input("land", Typed<Angle>{ground.land, std::nullopt});
}

/// A figure that every way gives: its doubt is that of all of them.
template <class Get> auto of_all(const std::vector<JudgedPoint>& ways, Get get) {
  auto hull = get(ways.front().solved);
  for (const auto& way : ways) {
    const auto one = get(way.solved);
    if (!one || !hull) {
      hull.reset();
      break;
    }
    hull->low = std::min({hull->low, one->low, one->value});
    hull->high = std::max({hull->high, one->high, one->value});
  }
  return hull;
}

void tell_found(Answer& answer, const std::vector<JudgedPoint>& ways) {
  const auto tell = [&](const auto& key, const auto& get) {
    if (const auto spread = of_all(ways, get)) answer.found(key, *spread);
  };
  tell(key::included_angle,
       [](const SolvedPoint& p) { return p.included_read ? std::optional(p.included.spread) : std::nullopt; });
  const auto half = [&](std::size_t lip) {
    return of_all(
        ways, [lip](const SolvedPoint& p) { return p.halves ? std::optional((*p.halves)[lip].spread) : std::nullopt; });
  };
  if (const auto a = half(0)) answer.found(key::half_angles, std::vector<Value>{Answer::of(*a), Answer::of(*half(1))});
  tell(key::half_angle_difference, [](const SolvedPoint& p) { return p.half_difference; });
  tell(key::lip_height_difference,
       [](const SolvedPoint& p) { return p.height ? std::optional(p.height->spread) : std::nullopt; });
  tell(key::lip_relief, [](const SolvedPoint& p) { return p.relief ? std::optional(p.relief->spread) : std::nullopt; });
  const auto edge = [](const SolvedPoint& p) {
    return p.chisel_read || p.chisel_follows ? std::optional(p.chisel.spread) : std::nullopt;
  };
  tell(key::chisel_edge_angle, [&](const SolvedPoint& p) -> std::optional<Spread<Angle>> {
    const auto acute = edge(p);
    return acute ? std::optional(supplement(*acute)) : std::nullopt;
  });
  tell(key::chisel_edge_angle_acute, edge);
  tell(key::web, [](const SolvedPoint& p) { return p.web_found; });
  tell(key::chisel_length, [](const SolvedPoint& p) { return p.chisel_length; });
  tell(key::oversize, [](const SolvedPoint& p) { return p.oversize; });
  tell(key::grind_off, [](const SolvedPoint& p) { return p.grind_off; });
}

void tell_checks(Answer& answer, const std::vector<PointCheck>& checks) {
  std::vector<Value> list;
  for (const auto& check : checks) {
    std::vector<Member> members{{"item", check.item}};
    if (check.value) members.push_back({"value", *check.value});
    if (check.want_low) members.push_back({"want_low", *check.want_low});
    if (check.want_high) members.push_back({"want_high", *check.want_high});
    members.push_back({"verdict", word_of(check)});
    members.push_back({"lip", check.lip});
    list.emplace_back(std::move(members));
  }
  answer.found(key::checks, std::move(list));
}

/// The steps of every way; one that two ways share is told once.
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
      telling.because_of_law(step.step + (differs ? " (as " + name_of(way.solved.way) + ")" : ""), *step.law,
                             step.value);
    }
}

void tell_limits(Telling& telling, const std::vector<PointCheck>& checks) {
  for (const auto& check : checks)
    if (check.limit != nullptr && check.value)
      telling.because_of_row("limit of " + spaced(check.item),
                             std::string(check.limit->what) + ": keep " + std::string(check.limit->keep) +
                                 ", touch up " + std::string(check.limit->touch_up),
                             *check.value, check.limit->source);
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

/// The widest tilt of a lens that passes unseen in the hand.
constexpr Angle unseen_tilt = degrees(5);

void tell_photo(Telling& telling, const PointQuestion& ask, const SolvedPoint& point) {
  if (!ask.side_marks && !ask.end_marks) return;
  telling.flag("photo");
  const Angle seen = foreshortened({point.included.spread.value, unseen_tilt});
  telling.word("tilted", print_angle(seen));
  telling.word("true", print_angle(point.included.spread.value));
  telling.because_of_law("included angle through a lens tilted by 5 deg along the axis", foreshortened_law,
                         measure(seen));
}

/// What to grind for: that way, or the one the readings allow whose settings suit a hand on a wheel.
const JudgedPoint& to_be_set(const std::vector<JudgedPoint>& ways) { return ways.back(); }

void tell_settings(const Tables& tables, Answer& answer, const JudgedPoint& way, Length diameter) {
  const auto& targets = way.targets;
  const auto limit_of = [&](std::string_view item) {
    return choose_point_limit(tables.point_limits, item, grinding_ways[static_cast<std::size_t>(way.solved.way)],
                              diameter);
  };
  const auto off = [](const PointLimit* row) { return row == nullptr ? turns(0) : read_angle_range(row->keep).high; };
  const PointLimit* included = limit_of("included_angle");
  answer.set(key::included_angle,
             Band<Angle>{targets.included - off(included), targets.included, targets.included + off(included)});
  answer.set(key::lip_relief, Band<Angle>{targets.relief - off(limit_of("lip_relief_below")), targets.relief,
                                          targets.relief + off(limit_of("lip_relief_over"))});
  const PointLimit* chisel = limit_of("chisel_edge_angle");
  Range<Angle> range{targets.chisel, targets.chisel};
  if (chisel != nullptr) range = read_angle_range(chisel->keep);
  answer.set(key::chisel_edge_angle,
             Band<Angle>{std::min(range.low, targets.chisel), targets.chisel, std::max(range.high, targets.chisel)});
}

void tell_cautions(Telling& telling, const PointQuestion& ask, const Ground& ground, const Verdict& verdict,
                   const std::vector<JudgedPoint>& ways, const std::vector<PointCheck>& checks) {
  if (verdict.word != "keep") telling.flag("grind");
  if (ask.split) telling.flag("split");
  if (ask.thinned) telling.flag("thinned");
  if (!ask.way && ways.size() > 1) telling.flag("way-unknown");
  if (ask.trial_hole) telling.flag("trial-hole");
  if (ways.front().solved.oversize && !ask.trial_hole) telling.flag("oversize-bound");
  const bool relief_judged =
      std::any_of(checks.begin(), checks.end(), [](const PointCheck& check) { return check.item == "lip_relief"; });
  if (relief_judged && ground.relief != nullptr) telling.flag("relief-limits");
  if (!ways.front().solved.web_read) telling.flag("web-taken");
}

} // namespace

Answer point(const Tables& tables, const PointQuestion& ask) {
  const PointReadings readings = readings_of(tables, ask);
  const Ground ground = ground_of(tables, ask.size.value.length, ask.material ? &ask.material->value : nullptr);
  const auto ways = judge_ways(tables, ask, ground, readings);
  const auto checks = checks_of_all(ways);
  const Verdict verdict = verdict_of(ways, checks);

  Answer answer("point");
  Telling telling(tables, answer, ask.material ? &ask.material->value : nullptr, {});
  tell_inputs(answer, ask, ground, ways);
  answer.verdict = verdict.word;
  if (verdict.word != "keep") {
    answer.reason = reason_of(verdict, ways, checks);
    tell_settings(tables, answer, to_be_set(ways), readings.diameter);
  }
  const bool more_to_read = !verdict.settled || (verdict.word == "touch up" && !what_is_missing(ways).empty());
  if (more_to_read) answer.instead = next_step(tables, ask, ground, readings, ways, checks);
  tell_found(answer, ways);
  tell_checks(answer, checks);
  tell_steps(answer, telling, ways);
  tell_ground(tables, telling, ask, ground, ways.front().solved);
  tell_limits(telling, checks);
  tell_photo(telling, ask, ways.front().solved);
  tell_cautions(telling, ask, ground, verdict, ways, checks);
  telling.cautions(ask.machine ? ask.machine->value->kind : std::string_view{});
  return answer;
}

} // namespace quillside
