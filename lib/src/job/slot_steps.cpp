#include "slot_steps.hpp"

#include <algorithm>
#include <cmath>

#include <quillside/job/burr.hpp>
#include <quillside/job/drill.hpp>
#include <quillside/job/mill.hpp>
#include <quillside/model/slot_walls.hpp>

namespace quillside {

namespace {

constexpr const char* back = "back";
constexpr const char* front = "front";

Value sized(std::string_view name, Length size) {
  return std::vector<Member>{{"name", name}, {key::size.name, measure(size)}};
}

std::vector<Value> places(const std::vector<Length>& at) {
  std::vector<Value> list;
  for (const Length one : at) list.emplace_back(measure(one));
  return list;
}

/// One step under way.
class Step {
public:
  Step(std::string_view what, const char* side) : members_{{"do", what}, {"side", side}} {}

  Step& with(std::string_view cutter) { return add("cutter", cutter); }
  /// Speed, its step on the machine and feed, as the tool's own answer sets them.
  Step& at(const Answer& tool) {
    for (const auto* name : {key::spindle_speed.name, key::step.name, key::feed_rate.name, key::turn_time.name})
      if (const Value* value = find(tool.settings, name)) add(name, *value);
    return *this;
  }
  template <class Quantity> Step& set(Key<Quantity> key, Quantity value) { return add(key.name, measure(value)); }
  Step& add(const char* name, Value value) {
    members_.push_back({name, std::move(value)});
    return *this;
  }
  [[nodiscard]] Value done() const { return members_; }

private:
  std::vector<Member> members_;
};

template <class Quantity> std::optional<double> set_value(const Answer& answer, const Key<Quantity>& key) {
  const Measure* measure = find_measure(answer.settings, key.name);
  return measure == nullptr ? std::nullopt : std::optional(measure->value);
}

/// A depth in even passes, none deeper than the tool's own answer allows.
struct Passes {
  int count = 1;
  Length each;
};
std::optional<Passes> passes_in(const Answer& tool, const std::optional<Length>& depth) {
  const auto most = set_value(tool, key::depth_of_cut);
  if (!depth || !most) return std::nullopt;
  const int count = std::max(1, static_cast<int>(std::ceil(*depth / mm(*most) - 1e-9)));
  return Passes{count, *depth / count};
}

class Planner {
public:
  Planner(const Tables& tables, const SlotQuestion& ask, const SlotPlan& plan)
      : tables_(tables), ask_(ask), plan_(plan) {}

  SlotSteps all(const ShankGauges& gauges) {
    if (!plan_.measured) {
      lay_out();
      if (plan_.pocket) from_the_back(*plan_.pocket);
      first_cut();
    }
    walls();
    finish(gauges);
    return std::move(done_);
  }

private:
  void put(const Step& step) { done_.steps.push_back(step.done()); }

  /// By value: a later answer may move the list.
  Answer told(std::string who, Answer answer) {
    done_.tools.push_back({std::move(who), answer});
    return answer;
  }

  [[nodiscard]] MillQuestion milled(const NamedSize& size) const {
    MillQuestion question{{size, std::nullopt}, ask_.material, ask_.cutter};
    question.machine = ask_.machine;
    return question;
  }

  void take_time(const Answer& mill, Length run, int times) {
    if (const auto rate = set_value(mill, key::feed_rate)) done_.time = done_.time + run * times / mm_per_min(*rate);
  }

  void lay_out() {
    put({"clamp the plate, a long edge to the fixed jaw, on parallels; zero X and Y on the middle of the slot",
         plan_.pocket ? back : front});
  }

  void from_the_back(const Pocket& pocket) {
    DrillQuestion question{{pocket.tool, std::nullopt}, ask_.material, {&usual_cutter(tables_, "drill"), std::nullopt}};
    question.machine = ask_.machine;
    question.thick = ask_.thick;
    question.leave = Typed<Length>{ask_.thick->value.value - pocket.depth, std::nullopt};
    const std::string drill_name = pocket.tool.name + " drill";
    const Answer drilled = told(drill_name, drill(tables_, question));
    Step holes("drill the row of holes, the tip no deeper than the pocket's floor; a spot first", back);
    holes.with(drill_name).at(drilled);
    if (const auto stop = set_value(drilled, key::depth_stop)) {
      done_.depth_stop = mm(*stop);
      holes.set(key::depth, *done_.depth_stop);
    }
    // Where its full diameter ends, for who draws it.
    if (const Measure* point = find_measure(drilled.findings, key::point_allowance.name))
      holes.add(key::point_allowance.name, *point);
    holes.set(key::offset, mm(0));
    if (pocket.holes) {
      holes.add(key::positions.name, places(pocket.holes->centres)).add("count", pocket.holes->count);
      if (pocket.holes->count > 1) holes.set(Key<Length>{"pitch"}, pocket.holes->pitch);
      if (const Measure* each = find_measure(drilled.findings, key::cut_time.name))
        done_.time = done_.time + seconds(each->value) * pocket.holes->count;
    }
    put(holes);

    const std::string mill_name = pocket.tool.name + " end mill";
    const Answer milled_floor = told(mill_name, mill(tables_, milled(pocket.tool)));
    Step floor("mill the floor of the pocket, and what stands between the holes", back);
    floor.with(mill_name).at(milled_floor).set(key::depth, pocket.depth).set(key::offset, pocket.offset);
    const auto passes = passes_in(milled_floor, pocket.depth);
    if (passes) floor.set(key::depth_of_cut, passes->each).add("passes", passes->count);
    if (pocket.length) {
      const Length half = (*pocket.length - pocket.tool.length) / 2.0;
      floor.add(key::positions.name, places({-half, half}));
      if (passes) take_time(milled_floor, 2.0 * half, passes->count * (pocket.offset > mm(0) ? 2 : 1));
    }
    put(floor);
    put({"turn the plate end for end: the same edge to the fixed jaw, so X mirrors; zero on the middle again", front});
  }

  void first_cut() {
    const std::string name = cutter_name();
    const Answer cut = told(name, mill(tables_, milled(plan_.cutter)));
    Step step("first cut, centred; a cutter that cuts to its centre, let down as slowly as it is fed", front);
    step.with(name).at(cut);
    if (plan_.depth) step.set(key::depth, *plan_.depth);
    step.set(key::offset, mm(0));
    const auto passes = passes_in(cut, plan_.depth);
    if (passes) {
      step.set(key::depth_of_cut, passes->each).add("passes", passes->count);
      done_.passes = passes->count;
    }
    if (const auto half = plan_.half_run()) {
      // Short of the ends by what the last pass takes off them.
      const Length left = plan_.sides.empty() ? mm(0) : limit(tables_.limits, "finish_left").length;
      const Length run = std::max(*half - left, mm(0));
      step.add(key::positions.name, places({-run, run}));
      if (passes) take_time(cut, 2.0 * run, passes->count);
    }
    put(step);
    put({"measure the width of the cut with a caliper or with drill shanks, and ask again with --cut-width", front});
  }

  void walls() {
    for (const auto& side : plan_.sides) wall(side, &side == &plan_.sides.back());
  }

  void wall(const SideSetting& side, bool last) {
    const std::string name = cutter_name();
    MillQuestion question = milled(plan_.cutter);
    question.width = Typed<Length>{side.width_of_cut, std::nullopt};
    Answer cut = mill(tables_, question);
    const auto passes = passes_in(cut, plan_.depth);
    if (passes) {
      question.depth = Typed<Length>{passes->each, std::nullopt};
      cut = mill(tables_, question);
    }
    told(name, cut);
    Step step(last ? "last pass along each wall and end, fed against the cutter's turning: the wall at the left of the "
                     "way the cutter goes, the spindle turning clockwise seen from above"
                   : "pass along each wall, fed against the cutter's turning",
              front);
    add_wall(step.with(name), cut, side, passes, 1);
    if (const auto left = left_by(cut)) step.add(key::wall_left.name, Answer::of(*left));
    put(step);
    if (last) spring(cut, side, passes);
  }

  void spring(const Answer& cut, const SideSetting& side, const std::optional<Passes>& passes) {
    const int times = static_cast<int>(limit(tables_.limits, "spring_passes").ratio);
    if (times < 1) return;
    Step step("the same again, at the same setting: what the cutter's bend left", front);
    add_wall(step.with(cutter_name()), cut, side, passes, times);
    if (const auto left = left_by(cut)) {
      const auto after = [&](Length standing) {
        return left_after_spring_passes({side.width_of_cut, std::min(standing, 0.99 * side.width_of_cut)}, times);
      };
      done_.wall_left = Spread<Length>{after(left->low), after(left->value), after(left->high)};
      step.add(key::wall_left.name, Answer::of(*done_.wall_left));
    }
    put(step);
  }

  /// What a pass along the wall leaves standing there by the cutter's bend.
  static std::optional<Spread<Length>> left_by(const Answer& cut) {
    const Measure* error = find_measure(cut.findings, key::wall_error.name);
    if (error == nullptr || !error->low || !error->high) return std::nullopt;
    return Spread<Length>{mm(*error->low), mm(error->value), mm(*error->high)};
  }

  void add_wall(Step& step, const Answer& cut, const SideSetting& side, const std::optional<Passes>& passes,
                int times) {
    step.at(cut);
    if (plan_.depth) step.set(key::depth, *plan_.depth);
    step.set(key::offset, side.offset).set(key::width_of_cut, side.width_of_cut);
    if (passes) step.set(key::depth_of_cut, passes->each).add("passes", passes->count);
    if (const auto half = plan_.half_run()) {
      step.add(key::positions.name, places({-*half, *half}));
      if (passes) take_time(cut, 2.0 * *half, 2 * times * passes->count);
    }
  }

  void finish(const ShankGauges& gauges) {
    Step gauge("try drill shanks, each measured with a micrometer first, then the part itself", front);
    if (gauges.goes != nullptr) gauge.add("goes", sized(gauges.goes->name, gauges.goes->length()));
    if (gauges.stays_out != nullptr) gauge.add("stays_out", sized(gauges.stays_out->name, gauges.stays_out->length()));
    put(gauge);
    if (ask_.ends.value == SlotEnds::filed) put({"file the corners square, to the part", front});
    edges();
  }

  void edges() {
    const Length size = limit(tables_.limits, "edge_burr").length;
    const NamedSize burr_size = named(tables_, size, UnitSystem::inch);
    const std::string name = burr_size.name + " burr";
    const Answer burred =
        told(name,
             burr(tables_, {{burr_size, std::nullopt}, ask_.material, {&usual_cutter(tables_, "burr"), std::nullopt}}));
    put(Step("break the edges by hand, the back first; the front only as much as takes the burr off", front)
            .with(name)
            .at(burred));
  }

  [[nodiscard]] std::string cutter_name() const { return plan_.cutter.name + " end mill"; }

  const Tables& tables_;
  const SlotQuestion& ask_;
  const SlotPlan& plan_;
  SlotSteps done_;
};

} // namespace

SlotSteps steps_of(const Tables& tables, const SlotQuestion& question, const SlotPlan& plan,
                   const ShankGauges& gauges) {
  return Planner(tables, question, plan).all(gauges);
}

} // namespace quillside
