#include "point_judge.hpp"

#include <algorithm>
#include <stdexcept>

#include <quillside/model/flat_facet.hpp>
#include <quillside/model/lip.hpp>
#include <quillside/quantity/angle.hpp>
#include <quillside/quantity/propagate.hpp>

#include "grinding_way.hpp"
#include "spread_ends.hpp"

namespace quillside {

namespace {

/// What is kept, and what can be touched up; the second holds the first.
template <class Quantity> struct Rule {
  Quantity keep_low, keep_high;
  Quantity touch_low, touch_high;
};

template <class Quantity> PointVerdict verdict_at(Quantity value, const Rule<Quantity>& rule) {
  if (value >= rule.keep_low && value <= rule.keep_high) return PointVerdict::keep;
  if (value >= rule.touch_low && value <= rule.touch_high) return PointVerdict::touch_up;
  return PointVerdict::regrind;
}

template <class Quantity> VerdictRange verdicts_over(const Spread<Quantity>& spread, const Rule<Quantity>& rule) {
  const auto low = verdict_at(spread.low, rule);
  const auto high = verdict_at(spread.high, rule);
  // The best lies where the spread comes nearest to what is kept.
  const Quantity nearest = spread.low > rule.keep_high   ? spread.low
                           : spread.high < rule.keep_low ? spread.high
                                                         : rule.keep_low;
  const bool overlaps = spread.low <= rule.keep_high && spread.high >= rule.keep_low;
  return {overlaps ? PointVerdict::keep : verdict_at(nearest, rule), std::max(low, high)};
}

class Judge {
public:
  Judge(const Tables& tables, SolvedPoint solved, const PointTargets& targets, Angle land,
        const PointReadings& readings)
      : tables_(tables), judged_{std::move(solved), targets, {}}, land_(land), readings_(readings) {}

  JudgedPoint judge() {
    included();
    halves();
    heights();
    hole();
    relief();
    heel();
    chisel();
    web();
    at_most_of("lip_bow", point().bow ? std::optional(point().bow->spread) : std::nullopt);
    at_most_of("land_wear", readings_.land_wear);
    at_most_of("margin_wear", readings_.margin_wear);
    return std::move(judged_);
  }

private:
  [[nodiscard]] const SolvedPoint& point() const { return judged_.solved; }
  [[nodiscard]] const PointLimit* limit_of(std::string_view item) const {
    return choose_point_limit(tables_.point_limits, item, name_of(point().way), readings_.diameter);
  }

  template <class Quantity>
  PointCheck& add(std::string_view item, const Spread<Quantity>& value, const Rule<Quantity>& rule,
                  const PointLimit* row) {
    PointCheck check;
    check.item = item;
    check.value = Answer::of(value);
    check.want_low = measure(rule.keep_low);
    check.want_high = measure(rule.keep_high);
    check.range = verdicts_over(value, rule);
    check.limit = row;
    judged_.checks.push_back(std::move(check));
    return judged_.checks.back();
  }
  void not_judged(std::string_view item) {
    PointCheck check;
    check.item = item;
    judged_.checks.push_back(std::move(check));
  }
  [[nodiscard]] bool left_out(std::string_view flag) const {
    return std::find(point().not_judged.begin(), point().not_judged.end(), flag) != point().not_judged.end();
  }

  /// Off a wanted value by no more than the rows say, to the one side and to the other.
  static Rule<Angle> about(Angle wanted, const PointLimit& below, const PointLimit& over) {
    const auto angle = [](std::string_view text) { return read_angle_range(text).high; };
    return {wanted - angle(below.keep), wanted + angle(over.keep), wanted - angle(below.touch_up),
            wanted + angle(over.touch_up)};
  }

  void included() {
    const PointLimit* row = limit_of("included_angle");
    if (row == nullptr) return;
    if (point().included_read)
      add("included_angle", point().included.spread, about(judged_.targets.included, *row, *row), row);
    else if (left_out("--lip-depth") || left_out("--point-length") || left_out("--lip-lengths for the angle"))
      not_judged("included_angle");
  }

  void halves() {
    const PointLimit* row = limit_of("half_angle_difference");
    if (row == nullptr || !point().half_difference) return;
    const auto& [a, b] = *point().halves;
    const bool apart = a.spread.value < b.spread.value || b.spread.value < a.spread.value;
    // Light whose size nobody measured, at one place of both lips, says nothing of a difference.
    if (point().halves_are_bounds && !apart) return;
    const Rule<Angle> rule{turns(0), read_angle_range(row->keep).high, turns(0), read_angle_range(row->touch_up).high};
    auto& check = add("half_angle_difference", *point().half_difference, rule, row);
    // The flatter lip is the one named, where the readings tell.
    if (a.spread.low > b.spread.high) check.lip = "A";
    if (b.spread.low > a.spread.high) check.lip = "B";
  }

  void heights() {
    const PointLimit* row = limit_of("lip_height_difference");
    if (row == nullptr || !point().height) return;
    const Rule<Length> rule{mm(0), read_length_range(row->keep).high, mm(0), read_length_range(row->touch_up).high};
    auto& check = add("lip_height_difference", point().height->spread, rule, row);
    if (point().higher) check.lip = *point().higher;
    if (point().height_is_floor) check.range->worst = PointVerdict::regrind;
    if (readings_.chips == Chips::one) {
      check.range->best = std::max(check.range->best, PointVerdict::touch_up);
      check.range->worst = std::max(check.range->worst, check.range->best);
    }
    check.bound_only = point().height_is_floor && check.range->best == PointVerdict::keep;
  }

  /// A hole more over size than lips, run-out and habit explain: something else is wrong, or a reading is.
  void hole() {
    if (!point().explained_oversize || !point().oversize) return;
    const Length most = *point().explained_oversize;
    auto& check = add("oversize", *point().oversize, Rule<Length>{mm(0), most, mm(0), most}, nullptr);
    check.want_low.reset();
    if (point().oversize->low > most)
      check.range = VerdictRange{PointVerdict::keep, PointVerdict::regrind};
    else
      check.range = VerdictRange{};
  }

  void relief() {
    if (!point().relief) {
      if (left_out("--chisel") || left_out("--end-marks")) not_judged("lip_relief");
      return;
    }
    const PointLimit* below = limit_of("lip_relief_below");
    const PointLimit* over = limit_of("lip_relief_over");
    if (below == nullptr || over == nullptr) return;
    const Angle wanted = wanted_relief(point().included.spread.value, point().web.spread.value);
    auto& check = add("lip_relief", point().relief->spread, about(wanted, *below, *over), over);
    if (point().relief->spread.value < wanted) check.limit = below;
    if (point().way == GrindingWay::two_facet)
      check.range = verdicts_over(over_wanted(), about(turns(0), *below, *over));
    check.bound_only = point().relief_is_most && check.range->best == PointVerdict::keep;
  }

  /// Of one flat: what clears the heel of such a point. Of the others, what the table wants.
  [[nodiscard]] Angle wanted_relief(Angle included, Length web) const {
    if (point().way != GrindingWay::two_facet) return judged_.targets.relief;
    try {
      return least_relief({readings_.diameter, web, included}, land_);
    } catch (const std::domain_error&) {
      return judged_.targets.relief;
    }
  }

  /// Relief over what is wanted: what is wanted of one flat hangs on the very angle and web that are in doubt, and so
  /// does a relief that was read off the chisel edge.
  [[nodiscard]] Spread<Angle> over_wanted() const {
    if (point().chisel_read && point().relief->from == point().chisel.from)
      return propagate(
          [&](Angle included, Length web, Angle edge) {
            return most_relief_of_chisel({readings_.diameter, web, included}, edge) - wanted_relief(included, web);
          },
          point().included.spread, point().web.spread, point().chisel.spread);
    return propagate([&](Angle relief, Angle included, Length web) { return relief - wanted_relief(included, web); },
                     point().relief->spread, point().included.spread, point().web.spread);
  }

  void heel() {
    if (!point().heel || point().heel_clears) return;
    constexpr Angle all_round = turns(0.5);
    auto& check = add("heel_clear_angle", *point().heel, {land_, all_round, land_, all_round}, nullptr);
    check.want_high.reset();
  }

  void chisel() {
    if (left_out("--chisel") || left_out("--chisel-length") || left_out("--end-marks"))
      return not_judged("chisel_edge_angle");
    const PointLimit* row = limit_of("chisel_edge_angle");
    if (row == nullptr || !point().chisel_read) return;
    const auto& edge = point().chisel.spread;
    const auto keep = read_angle_range(row->keep);
    const auto touch = read_angle_range(row->touch_up);
    add("chisel_edge_angle", supplement(edge), Rule<Angle>{keep.low, keep.high, touch.low, touch.high}, row);
  }

  void web() {
    const PointLimit* row = limit_of("web");
    if (row == nullptr || !point().web_found) return;
    const auto share = [&](std::string_view text) { return readings_.diameter * read_percent_range(text).high; };
    auto& check = add("web", *point().web_found, {mm(0), share(row->keep), mm(0), share(row->touch_up)}, row);
    check.want_low.reset();
  }

  void at_most_of(std::string_view item, const std::optional<Spread<Length>>& read) {
    const PointLimit* row = limit_of(item);
    if (row == nullptr || !read) return;
    add(item, *read, {mm(0), read_length_range(row->keep).high, mm(0), read_length_range(row->touch_up).high}, row);
  }

  const Tables& tables_;
  JudgedPoint judged_;
  Angle land_;
  const PointReadings& readings_;
};

bool same(const std::optional<Measure>& one, const std::optional<Measure>& other) {
  return one.has_value() == other.has_value() && (!one || one->value == other->value);
}

void join(PointCheck& into, const PointCheck& other) {
  into.bound_only = into.bound_only || other.bound_only;
  if (into.value && other.value) {
    into.value->low = std::min(*into.value->low, *other.value->low);
    into.value->high = std::max(*into.value->high, *other.value->high);
  }
  if (into.range && other.range) {
    into.range->best = std::min(into.range->best, other.range->best);
    into.range->worst = std::max(into.range->worst, other.range->worst);
  }
  if (!same(into.want_low, other.want_low) || !same(into.want_high, other.want_high)) {
    into.want_low.reset();
    into.want_high.reset();
  }
}

} // namespace

JudgedPoint judge_point(const Tables& tables, SolvedPoint solved, const PointTargets& targets, Angle land,
                        const PointReadings& readings) {
  return Judge(tables, std::move(solved), targets, land, readings).judge();
}

std::vector<PointCheck> checks_of_all(const std::vector<JudgedPoint>& ways) {
  std::vector<PointCheck> all;
  for (const auto& way : ways)
    for (const auto& check : way.checks) {
      const auto known =
          std::find_if(all.begin(), all.end(), [&](const PointCheck& one) { return one.item == check.item; });
      if (known == all.end())
        all.push_back(check);
      else
        join(*known, check);
    }
  // A way that has no such item has nothing against the point there: the heel of a cone clears by itself.
  std::erase_if(all, [](const PointCheck& check) { return check.bound_only; });
  for (auto& check : all) {
    const auto lacks = [&](const JudgedPoint& way) {
      return std::none_of(way.checks.begin(), way.checks.end(),
                          [&](const PointCheck& one) { return one.item == check.item; });
    };
    if (check.range && std::any_of(ways.begin(), ways.end(), lacks)) check.range->best = PointVerdict::keep;
  }
  return all;
}

} // namespace quillside
