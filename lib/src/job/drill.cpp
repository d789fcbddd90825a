#include <quillside/job/drill.hpp>

#include <algorithm>

#include <quillside/model/depth_stop.hpp>
#include <quillside/model/feed.hpp>
#include <quillside/model/peck.hpp>
#include <quillside/model/surface_speed.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>

#include "bench_doubt.hpp"
#include "drill_forces.hpp"
#include "point_ground.hpp"
#include "spindle.hpp"
#include "telling.hpp"

namespace quillside {

namespace {

/// How deep the tip goes, and what that leaves; present when a depth was asked for.
struct Depth {
  Length tip;
  Length in_metal; // of the tip, or the whole part where it goes through
  std::optional<Stop> stop;
};

void refuse_contradictions(const DrillQuestion& ask) {
  const auto together = [](const char* one, const char* other) {
    throw contradiction(one, std::string(one) + " and " + other +
                                 " say different depths; give one of --leave, --depth, --through");
  };
  if (ask.leave && ask.depth) together("--leave", "--depth");
  if (ask.leave && ask.through) together("--leave", "--through");
  if (ask.depth && ask.through) together("--depth", "--through");
  const auto needs = [](const char* one, const char* other) {
    throw contradiction(one, std::string(one) + " needs " + other);
  };
  if (ask.leave && !ask.thick) needs("--leave", "--thick, the thickness of the part");
  if (ask.through && !ask.thick) needs("--through", "--thick, the thickness of the part");
  if (ask.leave_at && !ask.leave) needs("--leave-at", "--leave");
  if (ask.thick && !(ask.thick->value.value > mm(0)))
    throw wrong_word(ask.thick->text.value_or("0"), "is no thickness of a part: give more than 0");
  if (ask.thick && !(ask.thick->value.half_width < ask.thick->value.value))
    throw wrong_word(ask.thick->text.value_or(""),
                     "is no reading of a thickness: its error is as large as the reading");
  if (ask.depth && !(ask.depth->value > mm(0)))
    throw wrong_word(ask.depth->text.value_or("0"), "is no depth of a hole: give more than 0");
  if (ask.point && !(ask.point->value >= degrees(30) && ask.point->value <= degrees(175)))
    throw wrong_word(ask.point->text.value_or(""), "is no point angle of a drill: give 30 to 175 deg", {"118", "135"});
  if (ask.web && !(ask.web->value > mm(0) && ask.web->value < ask.size.value.length / 2.0))
    throw wrong_word(ask.web->text.value_or("0"), "is no web of this drill: give more than 0 and less than half of it");
  if (ask.overhang && !(ask.overhang->value >= ask.size.value.length))
    throw wrong_word(ask.overhang->text.value_or("0"), "is no overhang of this drill: give at least its own diameter");
  if (ask.lever && !(ask.lever->value > mm(0)))
    throw wrong_word(ask.lever->text.value_or("0"), "is no length of a lever: give more than 0");
  if (ask.lever && !(ask.machine && ask.machine->value->pinion_radius.given()))
    needs("--lever", "--machine, one whose row gives the pinion_radius of its quill");
  if (ask.leave && !(ask.leave->value > mm(0)))
    throw contradiction("--leave",
                        "--leave " + ask.leave->text.value_or("0") + " leaves nothing; to go through, say --through");
  if (ask.thick && ask.depth && ask.depth->value > ask.thick->value.value)
    throw contradiction("--depth", "--depth " + ask.depth->text.value_or("") + " is more than the part is thick, " +
                                       ask.thick->text.value_or("") + "; to go through, say --through");
  if (ask.leave && !(ask.leave->value < ask.thick->value.value))
    throw contradiction("--leave", "--leave " + ask.leave->text.value_or("") + " leaves all of a part " +
                                       ask.thick->text.value_or("") + " thick; there is nothing to drill");
}

std::optional<Depth> depth_of(const Tables& tables, const DrillQuestion& ask, DrillPoint point) {
  const Length allowance = point_allowance(point);
  Depth depth{};
  if (ask.leave) {
    const bool at_corner = ask.leave_at && ask.leave_at->value == LeaveAt::corner;
    depth.tip = ask.thick->value.value - ask.leave->value + (at_corner ? allowance : mm(0));
  } else if (ask.depth) {
    depth.tip = ask.depth->value + allowance;
  } else if (ask.through) {
    depth.tip = ask.thick->value.value + allowance + limit(tables.limits, "through_overrun").length;
  } else {
    return std::nullopt;
  }
  const double deepest = limit(tables.limits, "deepest_hole").ratio;
  if (depth.tip > deepest * point.diameter)
    throw contradiction(ask.depth ? "--depth" : "--thick",
                        "that is " + significant(depth.tip / point.diameter, 3) +
                            " diameters of this drill deep; no twist drill goes over " + significant(deepest, 3));
  depth.in_metal = depth.tip;
  if (ask.thick) {
    depth.in_metal = std::min(depth.tip, ask.thick->value.value);
    depth.stop = stop_at(depth.tip, doubt_of(tables, "thick", ask.thick->value), point);
  }
  return depth;
}

/// The shank whose thickness, laid on the face the part lies on, stops the tip where it should: the next size above
/// what is to be left.
Value shim_for(const Tables& tables, Length left) {
  const Length most = (1 + limit(tables.limits, "shim_over").ratio) * left;
  for (const auto& row : tables.sizes) {
    if (row.length() + same_size_within >= left && row.length() <= most)
      return std::vector<Member>{{"name", row.name}, {"size", measure(row.length())}};
  }
  return {};
}

void tell_inputs(Answer& answer, const DrillQuestion& ask, const Typed<Angle>& point) {
  if (ask.thick) answer.input("thick", Typed<Length>{ask.thick->value.value, ask.thick->text});
  if (ask.leave) answer.input("leave", *ask.leave);
  if (ask.leave)
    answer.input_word("leave_at", ask.leave_at && ask.leave_at->value == LeaveAt::corner ? "corner" : "tip",
                      ask.leave_at ? ask.leave_at->text : std::nullopt);
  if (ask.depth) answer.input("depth", *ask.depth);
  if (ask.through) answer.inputs.push_back({"through", true, "--through"});
  answer.input("point", point);
  if (ask.dry) answer.input_flag("dry");
  if (ask.web) answer.input("web", *ask.web);
  if (ask.lever) answer.input("lever", *ask.lever);
}

void tell_depth(const Tables& tables, Answer& answer, Telling& telling, const DrillQuestion& ask, const Depth& depth,
                DrillPoint point) {
  answer.set(key::depth_stop, depth.tip);
  if (ask.through) telling.flag("through");
  telling.because_of_law("depth stop", depth_stop_law, measure(depth.tip));
  bool shim = false;
  if (depth.stop && !ask.through) {
    const auto& left = *depth.stop;
    if (left.left_under_tip.value > mm(0)) {
      answer.found(key::left_under_tip, left.left_under_tip);
      answer.set(key::stop_shim, shim_for(tables, left.left_under_tip.value));
      shim = true;
      if (left.left_under_tip.low <= mm(0)) telling.flag("may-break-through");
    } else {
      telling.flag("tip-out");
    }
    if (left.left_under_corner.value <= ask.thick->value.value)
      answer.found(key::left_under_corner, left.left_under_corner);
  }
  if (!shim) answer.set(key::stop_shim, Value{});
  if (depth.tip < point_allowance(point)) {
    telling.flag("spot-only");
    answer.found(key::spot_diameter, width_behind_tip(point, depth.tip));
    telling.because_of_law("spot diameter", spot_diameter_law, measure(width_behind_tip(point, depth.tip)));
  }
}

void tell_pecks(const Tables& tables, Answer& answer, Telling& telling, const DrillQuestion& ask, Length diameter,
                const Depth& depth) {
  std::vector<Value> list;
  if (const PeckRow* row = choose_peck(tables, ask.material.value, diameter)) {
    const PeckSchedule schedule{row->first.range.low, row->next.range.low, row->deep_from.range.low,
                                row->deep_next.range.low};
    for (const Length& to : pecks_to({diameter, depth.tip}, schedule))
      list.emplace_back(std::vector<Member>{{key::to_depth.name, measure(to)}});
    telling.because_of_row("pecks",
                           "first " + std::string(row->first.text) + " diameters, then " + std::string(row->next.text) +
                               ", beyond " + std::string(row->deep_from.text) + " " + std::string(row->deep_next.text),
                           measure(depth.tip / diameter), row->source);
  }
  answer.set(key::pecks, std::move(list));
}

std::string percent(double share) { return shortest_decimal(share * 100) + " %"; }

/// What depth and a dry cut take off.
struct Reduction {
  double speed = 1;
  double feed = 1;
  bool by_depth = false;
};

Reduction reduction_of(const Tables& tables, Telling& telling, const DrillQuestion& ask, Length diameter,
                       const std::optional<Depth>& depth) {
  Reduction reduction;
  const DeepHole* deep = depth ? choose_deep_hole(tables, depth->in_metal / diameter) : nullptr;
  if (deep != nullptr) {
    // The larger cut of a printed range: slower is the safe side.
    reduction.speed *= 1 - deep->speed_cut.range.high;
    reduction.feed *= 1 - deep->feed_cut.range.high;
    reduction.by_depth = true;
    telling.flag("deep");
    telling.word("depth", significant(depth->in_metal / diameter, 2));
    telling.word("speed_cut", percent(deep->speed_cut.range.high));
    telling.word("feed_cut", percent(deep->feed_cut.range.high));
    telling.because_of_row("deep hole",
                           "from " + std::string(deep->depth.text) + " diameters: speed less " +
                               std::string(deep->speed_cut.text) + ", feed less " + std::string(deep->feed_cut.text),
                           measure(depth->in_metal / diameter), deep->source);
  }
  const bool steel_with_hss =
      ask.cutter.value->key != "carbide" && (may_convert_hardness(ask.material.value.material->metal) ||
                                             ask.material.value.material->metal.ends_with("stainless"));
  if (ask.dry && steel_with_hss) {
    const Limit& dry = limit(tables.limits, "dry_speed");
    reduction.speed *= dry.ratio;
    telling.flag("dry");
    telling.word("dry", std::string(dry.value));
    telling.because_of_row("dry", std::string(dry.what), measure(dry.ratio), dry.source);
  }
  return reduction;
}

std::string feed_text(const DrillingFeed& row) {
  return "drills of " + std::string(row.diameter.text) + ": " +
         (row.feed.given() ? std::string(row.feed.text) : std::string(row.share.text) + " of the diameter a turn");
}

/// The band of feeds the tables give, less what depth takes off.
Band<FeedPerRev> wanted_feed(const Tables& tables, Telling& telling, const DrillQuestion& ask, double share) {
  const FeedChoice feed =
      choose_drilling_feed(tables, ask.material.value, ask.cutter.value->key, ask.size.value.length);
  telling.because_of_row("feed", feed_text(*feed.row), Answer::of(feed.band), feed.row->source);
  for (const auto* row : feed.spanning) telling.because_of_row("spans the band", feed_text(*row), Value{}, row->source);
  if (source_of(tables, feed.row->source).standing == "from memory") telling.flag("feed-from-memory");
  return {share * feed.band.low, share * feed.band.first, share * feed.band.high};
}

/// Where the drill would buckle or the motor stand still, no feed is above what they allow.
Band<FeedPerRev> cut_to(const Band<FeedPerRev>& band, const AllowedFeed& allowed) {
  if (allowed.by == AllowedFeed::By::nothing) return band;
  return {std::min(band.low, allowed.feed), allowed.feed, std::min(band.high, std::max(allowed.feed, band.low))};
}

void tell_feed(Answer& answer, Telling& telling, const Band<FeedPerRev>& band, FeedRate rate) {
  answer.set(key::feed_per_rev, band);
  answer.set(key::feed_rate, rate);
  telling.because_of_law("feed rate", feed_per_rev_law, measure(rate));
}

void tell_wanted_point(const Tables& tables, Answer& answer, Telling& telling, const DrillQuestion& ask,
                       const DrillPointRow& wanted) {
  answer.found(key::wanted_point, wanted.point.range.low);
  telling.because_of_row("wanted point", std::string(wanted.point.text), measure(wanted.point.range.low),
                         wanted.source);
  const LipReliefRow* relief = choose_lip_relief(tables, ask.material.value.material->metal, ask.size.value.length);
  if (relief == nullptr) return;
  answer.found(key::wanted_relief, relief->relief.range.low);
  telling.because_of_row("wanted relief", relief_row_words(*relief), measure(relief->relief.range.low), relief->source);
}

std::string_view limited_by(const SpindleOutcome& outcome, const Reduction& reduction, AllowedFeed::By feed_by) {
  if (feed_by == AllowedFeed::By::buckling) return "buckling";
  if (feed_by == AllowedFeed::By::stall) return "stall";
  if (outcome.lowered_by_machine || outcome.lowered_by_tool) return "machine";
  return reduction.by_depth ? "depth" : "table";
}

Typed<Length> overhang_of(const Tables& tables, const DrillQuestion& ask) {
  return ask.overhang.value_or(
      Typed<Length>{limit(tables.limits, "drill_overhang").ratio * ask.size.value.length, std::nullopt});
}

/// Nothing reasonable is left of the feed: the answer backs off, unless the speed already says worse.
void back_off(Answer& answer, const AllowedFeed& allowed) {
  if (allowed.reason.empty() || answer.verdict == "do not") return;
  answer.verdict = "back off";
  answer.reason = answer.reason ? *answer.reason + "; " + allowed.reason : allowed.reason;
  answer.instead = allowed.instead;
}

} // namespace

Answer drill(const Tables& tables, const DrillQuestion& ask) {
  refuse_contradictions(ask);
  const Work& work = ask.material.value;
  const Length diameter = ask.size.value.length;
  const Machine* machine = ask.machine ? ask.machine->value : nullptr;
  const DrillPointRow& wanted_point = choose_drill_point(tables, work);
  const Typed<Angle> point_typed = ask.point.value_or(Typed<Angle>{wanted_point.point.range.low, std::nullopt});
  const DrillPoint point{diameter, point_typed.value};
  const auto depth = depth_of(tables, ask, point);

  Answer answer("drill");
  Telling telling(tables, answer, &work, ask.cutter.value->key);
  telling.tool(ask.size, ask.material, ask.cutter, ask.machine);
  tell_inputs(answer, ask, point_typed);
  if (const auto wanted = telling.wanted_speed(diameter, "anneal it, or grind it")) {
    const Reduction reduction = reduction_of(tables, telling, ask, diameter, depth);
    const SpindleQuestion spindle{*wanted, reduction.speed, machine};
    const SpindleOutcome outcome = decide_spindle(spindle);
    tell_spindle(answer, telling, spindle, outcome);
    const SpindleSpeed speed = outcome.setting.speed;
    answer.found(key::cutting_speed, cutting_speed(speed, diameter));
    const Band<FeedPerRev> table_feed = wanted_feed(tables, telling, ask, reduction.feed);
    const Typed<Length> overhang = overhang_of(tables, ask);
    const auto at_work = drill_at_work(tables, telling, ask, overhang.value, speed);
    AllowedFeed allowed{table_feed.first, AllowedFeed::By::nothing, "", ""};
    if (at_work)
      allowed =
          allowed_feed(*at_work, table_feed.first, limit(tables.limits, "feed_least_share").ratio * table_feed.low);
    answer.found(key::limited_by, limited_by(outcome, reduction, allowed.by));
    const Band<FeedPerRev> feed = cut_to(table_feed, allowed);
    const FeedRate rate = feed_rate(feed.first, speed);
    tell_feed(answer, telling, feed, rate);
    if (at_work) {
      answer.input("overhang", overhang);
      tell_drill_forces(answer, telling, ask, *at_work, feed.first);
      back_off(answer, allowed);
    }
    if (ask.dry)
      answer.set(key::fluid, "dry");
    else
      telling.fluid();
    answer.found(key::point_allowance, point_allowance(point));
    telling.because_of_law("point allowance", point_allowance_law, measure(point_allowance(point)));
    if (depth) {
      tell_depth(tables, answer, telling, ask, *depth, point);
      tell_pecks(tables, answer, telling, ask, diameter, *depth);
      const Time time = time_to_travel(depth->tip, rate);
      answer.found(key::cut_time, time);
      telling.because_of_law("cutting time", cut_time_law, measure(time));
    } else if (ask.thick) {
      telling.flag("no-depth");
    }
    tell_wanted_point(tables, answer, telling, ask, wanted_point);
    if (outcome.verdict == "do not") answer.refuse(outcome.reason);
  }
  telling.cautions(machine == nullptr ? std::string_view{} : machine->kind);
  return answer;
}

} // namespace quillside
