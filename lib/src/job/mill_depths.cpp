#include <quillside/job/mill_depths.hpp>

#include <algorithm>
#include <functional>
#include <optional>

namespace quillside {

namespace {

constexpr int even_steps = 32;
constexpr int halvings = 6; // of one even step: a thousandth of the reach, or less
// How far to look, over the deepest pass that can be right; where it breaks is shown when it is not much further.
constexpr double reach_over_deepest = 1.4;
constexpr double reach_over_asked = 1.2;
constexpr double reach_over_broken = 1.25;
constexpr double broken_is_near = 3;

using Holds = std::function<bool(const Answer&)>;

class Depths {
public:
  Depths(const Tables& tables, const MillQuestion& question, Length flutes)
      : tables_(tables), question_(question), flutes_(flutes) {}

  [[nodiscard]] Answer at(Length depth) const {
    MillQuestion asked = question_;
    asked.depth = Typed<Length>{depth, std::nullopt};
    return mill(tables_, asked);
  }

  /// The least depth at which it holds, found between two even steps; nothing when it holds at none of them.
  [[nodiscard]] std::optional<Length> first(const Holds& holds, Length reach) const {
    for (int i = 1; i <= even_steps; ++i) {
      if (!holds(at(reach * i / even_steps))) continue;
      Length not_yet = reach * (i - 1) / even_steps;
      Length already = reach * i / even_steps;
      for (int k = 0; k < halvings; ++k) {
        const Length middle = (not_yet + already) / 2.0;
        (holds(at(middle)) ? already : not_yet) = middle;
      }
      return already;
    }
    return std::nullopt;
  }

  void add(Length depth) {
    if (depth > mm(0) && depth <= flutes_) depths_.push_back(depth);
  }
  void add_even(Length reach) {
    for (int i = 1; i <= even_steps; ++i) add(reach * i / even_steps);
  }

  [[nodiscard]] std::vector<Answer> answers() {
    std::sort(depths_.begin(), depths_.end());
    depths_.erase(std::unique(depths_.begin(), depths_.end()), depths_.end());
    std::vector<Answer> all;
    for (const Length depth : depths_) all.push_back(at(depth));
    return all;
  }

private:
  const Tables& tables_;
  const MillQuestion& question_;
  Length flutes_;
  std::vector<Length> depths_;
};

/// A finding reaches what a step of `why` says is its limit, at the high end of its doubt.
Holds reaches(const char* finding, const char* limit) {
  return [=](const Answer& answer) {
    const Measure* most = find_why(answer, limit);
    const Measure* found = find_measure(answer.findings, finding);
    return most != nullptr && found != nullptr && found->high.value_or(found->value) >= most->value;
  };
}

Holds judged(const char* verdict) {
  return [=](const Answer& answer) { return answer.verdict == verdict; };
}

} // namespace

std::vector<Answer> mill_depths(const Tables& tables, const MillQuestion& question) {
  if (mill(tables, question).verdict == "do not") return {};
  MillQuestion deepest = question;
  deepest.depth = std::nullopt;
  const Answer own = mill(tables, deepest);
  const Measure* allowed = find_measure(own.settings, key::depth_of_cut.name);
  const Input* flute = find_input(own, "flute_length");
  if (allowed == nullptr || flute == nullptr) return {};
  const Length flutes = mm(std::get<Measure>(flute->value.held).value);
  const Length likely = mm(allowed->high.value_or(allowed->value));

  Depths depths(tables, question, flutes);
  Length reach = std::min(flutes, reach_over_deepest * likely);
  if (question.depth) reach = std::min(flutes, std::max(reach, reach_over_asked * question.depth->value));
  if (const auto broken = depths.first(judged("do not"), std::min(flutes, broken_is_near * likely)))
    reach = std::min(flutes, std::max(reach, reach_over_broken * *broken));

  depths.add_even(reach);
  depths.add(mm(allowed->value));
  if (likely <= reach) depths.add(likely);
  if (question.depth) depths.add(question.depth->value);
  for (const auto& turns : {judged("do not"), reaches(key::root_stress.name, limit_step::stress),
                            reaches(key::power.name, limit_step::power)})
    if (const auto depth = depths.first(turns, reach)) depths.add(*depth);
  return depths.answers();
}

} // namespace quillside
