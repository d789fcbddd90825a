#include "point_outcome.hpp"

#include <algorithm>
#include <utility>

#include "evidence.hpp"
#include "point_next.hpp"
#include "point_ways.hpp"

namespace quillside {

namespace {

std::string word_of(PointVerdict verdict) {
  return verdict == PointVerdict::keep ? "keep" : verdict == PointVerdict::touch_up ? "touch up" : "regrind";
}

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

} // namespace

PointOutcome outcome_of(const std::vector<JudgedPoint>& ways, const std::vector<PointCheck>& checks) {
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
  return known ? PointOutcome{"keep"} : PointOutcome{"measure again", false};
}

std::string reason_of(const PointOutcome& outcome, const std::vector<JudgedPoint>& ways,
                      const std::vector<PointCheck>& checks) {
  std::vector<const PointCheck*> wrong;
  for (const auto& check : checks)
    if (check.range && check.range->worst != PointVerdict::keep) wrong.push_back(&check);
  std::stable_sort(wrong.begin(), wrong.end(), [](const PointCheck* a, const PointCheck* b) {
    return std::pair(a->range->best, a->range->worst) > std::pair(b->range->best, b->range->worst);
  });
  std::string reason;
  for (const auto* check : wrong) reason += (reason.empty() ? "" : "; ") + what_is_wrong(*check);
  if (outcome.word == "regrind") return reason;
  const std::string missing = what_is_missing(ways);
  return reason + (reason.empty() || missing.empty() ? "" : "; ") + missing;
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

std::string word_of(const PointCheck& check) {
  if (!check.range) return "not judged";
  return check.range->settled() ? word_of(check.range->best) : "measure again";
}

std::string spaced(std::string_view item) {
  std::string words(item);
  std::replace(words.begin(), words.end(), '_', ' ');
  return words;
}

} // namespace quillside
