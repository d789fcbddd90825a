#include "point_found.hpp"

#include <algorithm>
#include <optional>

#include "point_outcome.hpp"
#include "spread_ends.hpp"

namespace quillside {

namespace {

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

} // namespace

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

} // namespace quillside
