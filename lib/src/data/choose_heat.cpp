#include <quillside/data/choose_heat.hpp>

#include <algorithm>

#include <quillside/data/limit.hpp>
#include <quillside/words/fault.hpp>

#include "most_specific.hpp"

namespace quillside {

namespace {

/// How far along from one row's reach to the other's, 0 to 1.
double share_between(const ExpansionRow& lower, const ExpansionRow& upper, Temperature hot) {
  const auto reach = upper.over.range.high - lower.over.range.high;
  if (!(reach > kelvins(0))) return 1;
  return std::clamp((hot - lower.over.range.high) / reach, 0.0, 1.0);
}

bool hardened(const Work& work) {
  return work.condition == "tempered" || (work.hardness && work.hardness->scale == HardnessScale::rockwell_c);
}

bool holds(const HeatCeiling& row, const Work& work, bool temper_named) {
  if (row.until_tempered && temper_named) return false;
  const bool unnamed = work.condition.empty() && !work.hardness;
  if (row.until_tempered && row.condition.empty()) return unnamed || hardened(work);
  if (row.condition == "tempered") return hardened(work);
  return row.condition.empty() || row.condition == work.condition;
}

bool is_of(const OxideColour& row, std::string_view metal) {
  return std::find(row.metal.begin(), row.metal.end(), metal) != row.metal.end();
}

} // namespace

ExpansionChoice choose_expansion(const Tables& tables, const Work& work, Temperature hot) {
  auto rows = most_specific<ExpansionRow>(tables, tables.expansions, work, [](const ExpansionRow&) { return true; });
  if (rows.empty()) {
    Fault fault;
    fault.kind = FaultKind::data;
    fault.word = std::string(work.material->key);
    fault.message = "no table says how " + std::string(work.material->key) +
                    " grows with heat; 'quillside tables new expansion' prints a row to fill in";
    throw fault;
  }
  std::stable_sort(rows.begin(), rows.end(), [](const ExpansionRow* a, const ExpansionRow* b) {
    return a->over.range.high < b->over.range.high;
  });
  const auto at =
      std::find_if(rows.begin(), rows.end(), [&](const ExpansionRow* row) { return hot <= row->over.range.high; });
  const ExpansionRow& upper = at == rows.end() ? *rows.back() : **at;
  const ExpansionRow& lower = at == rows.begin() || at == rows.end() ? upper : **(at - 1);
  const double share = share_between(lower, upper, hot);
  const auto between = [&](Expansion a, Expansion b) { return a + (b - a) * share; };
  const Expansion low = between(lower.expansion.range.low, upper.expansion.range.low);
  const Expansion high = between(lower.expansion.range.high, upper.expansion.range.high);
  ExpansionChoice choice{{low, (low + high) / 2.0, high}, {&upper}};
  if (&lower != &upper) choice.rows.insert(choice.rows.begin(), &lower);
  if (low == high) {
    const double doubt = limit(tables.limits, "expansion_doubt").ratio;
    choice.mean = give_or_take(low, low * doubt);
  }
  return choice;
}

const OxideColour* colour_at(const Tables& tables, std::string_view metal, Temperature heat) {
  const OxideColour* last = nullptr;
  for (const auto& row : tables.oxide_colours) {
    if (!is_of(row, metal) || row.heat.range.low > heat) continue;
    if (last == nullptr || row.heat.range.low >= last->heat.range.low) last = &row;
  }
  return last;
}

const OxideColour* first_colour(const Tables& tables, std::string_view metal) {
  const OxideColour* first = nullptr;
  for (const auto& row : tables.oxide_colours)
    if (is_of(row, metal) && (first == nullptr || row.heat.range.low < first->heat.range.low)) first = &row;
  return first;
}

const HeatCeiling* choose_ceiling(const Tables& tables, const Work& work, bool temper_named) {
  const HeatCeiling* lowest = nullptr;
  for (const auto* layer : layers_of(tables, *work.material))
    for (const auto* row :
         most_specific<HeatCeiling>(tables, tables.heat_ceilings, *layer,
                                    [&](const HeatCeiling& one) { return holds(one, work, temper_named); }))
      if (lowest == nullptr || row->ceiling.range.low < lowest->ceiling.range.low) lowest = row;
  return lowest;
}

} // namespace quillside
