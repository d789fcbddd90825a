#include <quillside/data/choose.hpp>

#include <algorithm>
#include <optional>
#include <string>

#include <quillside/words/fault.hpp>

namespace quillside {

namespace {

using Rows = std::vector<const SpeedRow*>;

std::span<const SpeedRow> rows_for(const Tables& tables, std::string_view ask) {
  if (ask == "drill") return tables.drilling_speeds;
  if (ask == "mill") return tables.milling_speeds;
  if (ask == "ream") return tables.reaming_speeds;
  return tables.burr_speeds;
}

CuttingSpeed low(const SpeedRow* row) { return row->speed.range.low; }
bool slower(const SpeedRow* a, const SpeedRow* b) { return low(a) < low(b); }

/// The rows of one material and cutter that give a cutting speed.
Rows rows_of(std::span<const SpeedRow> all, std::string_view material, std::string_view cutter) {
  Rows rows;
  for (const auto& row : all)
    if (row.material == material && row.cutter == cutter && row.speed.given()) rows.push_back(&row);
  return rows;
}

template <class Keep> Rows only(const Rows& rows, Keep keep) {
  Rows kept;
  std::copy_if(rows.begin(), rows.end(), std::back_inserter(kept), keep);
  return kept;
}

/// One row a source: where a source prints several that fit (a hardness at the edge of two bands), the harder, slower
/// one.
Rows slowest_of_each_source(Rows rows) {
  std::stable_sort(rows.begin(), rows.end(), slower);
  Rows kept;
  for (const auto* row : rows) {
    const bool seen =
        std::any_of(kept.begin(), kept.end(), [&](const SpeedRow* other) { return other->source == row->source; });
    if (!seen) kept.push_back(row);
  }
  return kept;
}

struct Picked {
  Rows rows; // slowest first; never empty
  bool below_softest = false;
  bool between_bands = false;
  bool hardness_unstated = false;
};

/// A hardness as the rows state it: on one scale for all of them.
class HardnessOfWork {
public:
  HardnessOfWork(const Tables& tables, const Work& work) : tables_(tables), named_(*work.hardness) {
    convertible_ = may_convert_hardness(work.material->metal);
    if (named_.scale == HardnessScale::brinell) {
      brinell_ = named_.number;
    } else if (convertible_) {
      brinell_ = to_brinell(tables.hardness, named_);
      if (!brinell_)
        throw wrong_word(print_hardness(named_), "is outside the table of hardness comparisons; give HB", {"200HB"});
    }
  }

  /// The band on the scale of the work; nothing when the two cannot be compared.
  [[nodiscard]] std::optional<HardnessBand> comparable(const SpeedRow& row) const {
    if (!row.hardness.given()) return std::nullopt;
    const HardnessBand& band = row.hardness.band;
    if (band.scale == named_.scale && !brinell_) return band;
    if (!brinell_) return std::nullopt;
    const auto from = band.scale == HardnessScale::brinell || convertible_
                          ? to_brinell(tables_.hardness, {band.low, band.scale})
                          : std::nullopt;
    const auto to = band.scale == HardnessScale::brinell || convertible_
                        ? to_brinell(tables_.hardness, {band.high, band.scale})
                        : std::nullopt;
    if (!from || !to) return std::nullopt;
    return HardnessBand{*from, *to, HardnessScale::brinell};
  }

  [[nodiscard]] double number() const { return brinell_.value_or(named_.number); }
  [[nodiscard]] bool has_brinell() const { return brinell_.has_value(); }

  [[nodiscard]] Fault cannot_compare(const Material& material) const {
    return wrong_word(print_hardness(named_),
                      "cannot be compared with the rows for " + std::string(material.key) +
                          ": scales are converted only for non-austenitic steel; give HB",
                      {"200HB"});
  }

private:
  const Tables& tables_;
  Hardness named_;
  bool convertible_ = false;
  std::optional<double> brinell_;
};

/// The rows of one material whose band holds the hardness, or the next harder one where it lies between two of them.
std::optional<Picked> pick_by_hardness(const Rows& rows, const HardnessOfWork& hardness, double& hardest) {
  Rows holding;
  const SpeedRow* next_harder = nullptr;
  const SpeedRow* softest = nullptr;
  double next_low = 0;
  double softest_low = 0;
  bool any_softer = false;
  for (const auto* row : rows) {
    const auto band = hardness.comparable(*row);
    if (!band) continue;
    hardest = std::max(hardest, band->high);
    if (band->low <= hardness.number() && hardness.number() <= band->high) holding.push_back(row);
    if (band->high < hardness.number()) any_softer = true;
    if (band->low > hardness.number() && (next_harder == nullptr || band->low < next_low)) {
      next_harder = row;
      next_low = band->low;
    }
    if (softest == nullptr || band->low < softest_low) {
      softest = row;
      softest_low = band->low;
    }
  }
  Picked picked;
  if (!holding.empty()) {
    picked.rows = slowest_of_each_source(holding);
    return picked;
  }
  if (next_harder == nullptr) return std::nullopt;
  picked.between_bands = any_softer;
  picked.below_softest = !any_softer;
  picked.rows = {any_softer ? next_harder : softest};
  return picked;
}

Rows with_condition(const Rows& rows, std::string_view condition) {
  return only(rows, [&](const SpeedRow* row) { return row->condition == condition; });
}

/// A source that prints several bands for a condition: the usual one, else the hardest.
Rows usual_of_each_source(const Rows& rows) {
  Rows sorted = rows;
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const SpeedRow* a, const SpeedRow* b) { return a->usual != b->usual ? a->usual : slower(a, b); });
  Rows kept;
  for (const auto* row : sorted) {
    const bool seen =
        std::any_of(kept.begin(), kept.end(), [&](const SpeedRow* other) { return other->source == row->source; });
    if (!seen) kept.push_back(row);
  }
  std::stable_sort(kept.begin(), kept.end(), slower);
  return kept;
}

std::optional<Picked> pick_by_condition(const Rows& rows, std::string_view condition) {
  for (const auto wanted : {condition, std::string_view{}}) {
    const Rows fitting = with_condition(rows, wanted);
    if (!fitting.empty()) return Picked{usual_of_each_source(fitting), false, false, false};
  }
  return std::nullopt;
}

/// No condition named: the rows marked usual, in the condition of the slowest of them; else those that hold for any
/// condition.
std::optional<Picked> pick_usual(const Rows& rows) {
  Rows usual = only(rows, [](const SpeedRow* row) { return row->usual; });
  if (usual.empty()) usual = with_condition(rows, {});
  if (usual.empty()) return std::nullopt;
  usual = slowest_of_each_source(usual);
  const auto first =
      std::find_if(usual.begin(), usual.end(), [](const SpeedRow* row) { return !row->condition.empty(); });
  const std::string_view condition = first == usual.end() ? std::string_view{} : (*first)->condition;
  return Picked{only(usual, [&](const SpeedRow* row) { return row->condition == condition; }), false, false, false};
}

struct PickedOrPast {
  std::optional<Picked> picked;
  std::optional<PastLastRow> past;
};

PickedOrPast pick(const Tables& tables, std::span<const SpeedRow> all, const Work& work,
                  const std::vector<const Material*>& chain, std::string_view cutter) {
  std::optional<HardnessOfWork> hardness;
  if (work.hardness) hardness.emplace(tables, work);
  double hardest = 0;
  bool any_rows = false;
  for (const auto* material : chain) {
    const Rows rows = rows_of(all, material->key, cutter);
    any_rows = any_rows || !rows.empty();
    auto picked = hardness                  ? pick_by_hardness(rows, *hardness, hardest)
                  : !work.condition.empty() ? pick_by_condition(rows, work.condition)
                                            : pick_usual(rows);
    if (picked) return {std::move(picked), std::nullopt};
  }
  if (!any_rows) return {};
  if (hardness && hardest > 0) return {std::nullopt, PastLastRow{hardness->number(), hardest}};
  if (hardness) {
    for (const auto* material : chain) {
      const Rows stating =
          only(rows_of(all, material->key, cutter), [](const SpeedRow* row) { return row->hardness.given(); });
      if (!stating.empty()) throw hardness->cannot_compare(*work.material);
    }
    if (!hardness->has_brinell()) throw hardness->cannot_compare(*work.material);
  }
  // No row states a hardness, or none is usual: the first material that has any rows answers with its slowest.
  for (const auto* material : chain) {
    const Rows rows = rows_of(all, material->key, cutter);
    if (!rows.empty()) return {Picked{slowest_of_each_source(rows), false, false, hardness.has_value()}, std::nullopt};
  }
  return {};
}

Band<CuttingSpeed> band_of(const Tables& tables, const Rows& rows, bool& one_value) {
  Band<CuttingSpeed> band{low(rows.front()), low(rows.front()), rows.front()->speed.range.high};
  for (const auto* row : rows) band.high = std::max(band.high, row->speed.range.high);
  one_value = rows.size() == 1 && band.low == band.high;
  if (one_value) {
    band.low = limit(tables.limits, "band_below").ratio * band.first;
    band.high = limit(tables.limits, "band_above").ratio * band.first;
  }
  return band;
}

SpeedResult choose_for_one(const Tables& tables, std::string_view ask, const Work& work, const Material& layer,
                           std::string_view cutter) {
  const auto all = rows_for(tables, ask);
  const auto chain = chain_of(tables, layer);
  Work of_layer = work;
  of_layer.material = &layer;
  const PickedOrPast result = pick(tables, all, of_layer, chain, cutter);
  if (result.past) return *result.past;
  SpeedChoice choice;
  if (!result.picked) return choice;
  const Picked& picked = *result.picked;
  choice.row = picked.rows.front();
  choice.spanning.assign(picked.rows.begin() + 1, picked.rows.end());
  choice.band = band_of(tables, picked.rows, choice.one_value);
  choice.below_softest = picked.below_softest;
  choice.between_bands = picked.between_bands;
  choice.hardness_unstated = picked.hardness_unstated;
  for (const auto* material : chain)
    for (const auto& row : all)
      if (row.material == material->key && row.cutter == cutter && !row.hand &&
          std::find(picked.rows.begin(), picked.rows.end(), &row) == picked.rows.end() &&
          row.condition == choice.row->condition)
        choice.others.push_back(&row);
  return choice;
}

/// The slower of two results; past the last row counts as slowest of all.
SpeedResult slower_of(SpeedResult a, SpeedResult b) {
  if (std::holds_alternative<PastLastRow>(a)) return a;
  if (std::holds_alternative<PastLastRow>(b)) return b;
  const auto& one = std::get<SpeedChoice>(a);
  const auto& other = std::get<SpeedChoice>(b);
  if (one.row == nullptr) return b;
  if (other.row == nullptr) return a;
  return other.band.first < one.band.first ? b : a;
}

SpeedResult choose_for_all_layers(const Tables& tables, std::string_view ask, const Work& work,
                                  std::string_view cutter) {
  SpeedResult slowest = SpeedChoice{};
  for (const auto* layer : layers_of(tables, *work.material))
    slowest = slower_of(std::move(slowest), choose_for_one(tables, ask, work, *layer, cutter));
  return slowest;
}

bool answers(const SpeedResult& result) {
  return std::holds_alternative<PastLastRow>(result) || std::get<SpeedChoice>(result).row != nullptr;
}

} // namespace

SpeedResult choose_speed(const Tables& tables, std::string_view ask, const Work& work, std::string_view cutter) {
  SpeedResult result = choose_for_all_layers(tables, ask, work, cutter);
  if (!answers(result)) {
    for (const auto& ratio : tables.speed_ratios) {
      if (ratio.ask != ask || ratio.cutter != cutter) continue;
      result = choose_for_all_layers(tables, ask, work, ratio.of);
      if (auto* choice = std::get_if<SpeedChoice>(&result); choice != nullptr && choice->row != nullptr) {
        choice->ratio = &ratio;
        const bool spread = ratio.ratio.range.low < ratio.ratio.range.high;
        choice->band = {ratio.ratio.range.low * (spread ? choice->band.first : choice->band.low),
                        ratio.ratio.range.low * choice->band.first,
                        ratio.ratio.range.high * (spread ? choice->band.first : choice->band.high)};
        choice->one_value = choice->one_value && !spread;
      }
      break;
    }
  }
  if (!answers(result)) {
    Fault fault =
        contradiction(std::string(cutter), "no table has a " + std::string(ask) + " speed for " + std::string(cutter) +
                                               " in " + std::string(work.material->key));
    for (const auto& other : tables.cutters)
      if (answers(choose_for_all_layers(tables, ask, work, other.key))) fault.allowed.emplace_back(other.key);
    if (!fault.allowed.empty()) fault.suggestion = fault.allowed.front();
    throw fault;
  }
  if (auto* choice = std::get_if<SpeedChoice>(&result)) choice->assumed = work.condition.empty() && !work.hardness;
  return result;
}

const SpeedRow* choose_hand_practice(const Tables& tables, const Work& work, std::string_view cutter, Length diameter) {
  for (const auto* layer : layers_of(tables, *work.material)) {
    for (const auto* material : chain_of(tables, *layer)) {
      for (const auto& row : tables.burr_speeds) {
        const bool fits =
            !row.diameter.given() || (row.diameter.range.low <= diameter && diameter <= row.diameter.range.high);
        if (row.hand && row.material == material->key && row.cutter == cutter && fits) return &row;
      }
    }
  }
  return nullptr;
}

} // namespace quillside
