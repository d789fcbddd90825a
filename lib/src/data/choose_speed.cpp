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

/// Of several rows of one source, the one that comes first.
Rows first_of_each_source(const Rows& rows) {
  Rows kept;
  for (const auto* row : rows) {
    const bool seen =
        std::any_of(kept.begin(), kept.end(), [&](const SpeedRow* other) { return other->source == row->source; });
    if (!seen) kept.push_back(row);
  }
  return kept;
}

/// Where a source prints several that fit (a hardness at the edge of two bands): the harder, slower one. The slowest
/// first.
Rows slowest_of_each_source(Rows rows) {
  std::stable_sort(rows.begin(), rows.end(), slower);
  return first_of_each_source(rows);
}

struct Picked {
  Rows rows; // slowest first; never empty
  bool below_softest = false;
  bool between_bands = false;
  bool hardness_unstated = false;
  bool condition_unstated = false;
  bool softer_is_slower = false;
};

/// The hardness of the work, held against the bands of rows. Bands on its own scale are compared as they are; others
/// through the table of comparisons, where the metal allows that.
class HardnessOfWork {
public:
  HardnessOfWork(const Tables& tables, const Work& work)
      : tables_(tables), named_(*work.hardness), convertible_(may_convert_hardness(work.material->metal)) {
    if (convertible_) brinell_ = to_brinell(tables.hardness, named_);
    // Beyond the table of comparisons nothing is known but the side: softer or harder than any line of it.
    beyond_ = !brinell_ && convertible_ ? side_of_table() : 0;
  }

  /// -1 the band is softer than the work, 0 it holds it, 1 it is harder; nothing when the two cannot be compared.
  [[nodiscard]] std::optional<int> side_of(const SpeedRow& row) const {
    const auto band = comparable(row);
    if (!band) return std::nullopt;
    if (beyond_ != 0 && row.hardness.band.scale != named_.scale) return -beyond_;
    const double number = row.hardness.band.scale == named_.scale ? named_.number : *brinell_;
    return band->high < number ? -1 : band->low > number ? 1 : 0;
  }

  /// The low end of a band, for finding the next one.
  [[nodiscard]] double low_of(const SpeedRow& row) const {
    return in_brinell(row.hardness.band.low, row).value_or(row.hardness.band.low);
  }
  [[nodiscard]] double high_of(const SpeedRow& row) const {
    return in_brinell(row.hardness.band.high, row).value_or(row.hardness.band.high);
  }
  [[nodiscard]] Hardness named() const { return named_; }

  [[nodiscard]] Fault cannot_compare(const Material& material) const {
    return wrong_word(print_hardness(named_),
                      "cannot be compared with the rows for " + std::string(material.key) +
                          ": scales are converted only for non-austenitic steel; give HB",
                      {"200HB"});
  }

private:
  [[nodiscard]] std::optional<double> in_brinell(double number, const SpeedRow& row) const {
    return to_brinell(tables_.hardness, {number, row.hardness.band.scale});
  }

  /// The band on the scale it is compared on.
  [[nodiscard]] std::optional<HardnessBand> comparable(const SpeedRow& row) const {
    if (!row.hardness.given()) return std::nullopt;
    const HardnessBand& band = row.hardness.band;
    if (band.scale == named_.scale) return band;
    if (!convertible_) return std::nullopt;
    const auto from = in_brinell(band.low, row);
    const auto to = in_brinell(band.high, row);
    if (!from || !to) return std::nullopt;
    return HardnessBand{*from, *to, HardnessScale::brinell};
  }

  [[nodiscard]] int side_of_table() const {
    // The lowest number on a scale that its table still knows, found by asking for what is asked of it.
    for (double lower = named_.number; lower > 0; lower -= 1)
      if (to_brinell(tables_.hardness, {lower, named_.scale})) return 1;
    return -1;
  }

  const Tables& tables_;
  Hardness named_;
  bool convertible_;
  std::optional<double> brinell_;
  int beyond_ = 0;
};

/// What the rows of one material say of a hardness.
struct HardnessRows {
  Rows holding;
  Rows next_harder; // of each source the next band above
  Rows softer;
};

HardnessRows sort_by_hardness(const Rows& rows, const HardnessOfWork& hardness) {
  HardnessRows sorted;
  for (const auto* row : rows) {
    const auto side = hardness.side_of(*row);
    if (!side) continue;
    (*side < 0 ? sorted.softer : *side == 0 ? sorted.holding : sorted.next_harder).push_back(row);
  }
  Rows& harder = sorted.next_harder;
  std::stable_sort(harder.begin(), harder.end(),
                   [&](const SpeedRow* a, const SpeedRow* b) { return hardness.low_of(*a) < hardness.low_of(*b); });
  harder = first_of_each_source(harder);
  return sorted;
}

/// The rows whose band holds the hardness, or the next harder ones where it lies between two.
std::optional<Picked> pick_by_hardness(const Rows& rows, const HardnessOfWork& hardness) {
  HardnessRows sorted = sort_by_hardness(rows, hardness);
  Picked picked;
  if (!sorted.holding.empty()) {
    picked.rows = slowest_of_each_source(std::move(sorted.holding));
    return picked;
  }
  if (sorted.next_harder.empty()) return std::nullopt;
  picked.between_bands = !sorted.softer.empty();
  picked.below_softest = sorted.softer.empty();
  picked.rows = slowest_of_each_source(std::move(sorted.next_harder));
  return picked;
}

Rows with_condition(const Rows& rows, std::string_view condition) {
  return only(rows, [&](const SpeedRow* row) { return row->condition == condition; });
}

/// A source that prints several bands for a condition: the usual one, else the hardest.
Rows usual_of_each_source(Rows rows) {
  std::stable_sort(rows.begin(), rows.end(),
                   [](const SpeedRow* a, const SpeedRow* b) { return a->usual != b->usual ? a->usual : slower(a, b); });
  Rows kept = first_of_each_source(rows);
  std::stable_sort(kept.begin(), kept.end(), slower);
  return kept;
}

/// A row that states a hardness is more specific than one that does not: where there is one, the others are passed
/// over.
Rows most_specific(Rows rows) {
  Rows stating = only(rows, [](const SpeedRow* row) { return row->hardness.given(); });
  return stating.empty() ? rows : stating;
}

/// The rows of that condition; a row that names neither condition nor hardness holds for any.
std::optional<Picked> pick_by_condition(const Rows& rows, std::string_view condition) {
  Rows fitting = with_condition(rows, condition);
  if (fitting.empty())
    fitting = only(rows, [](const SpeedRow* row) { return row->condition.empty() && !row->hardness.given(); });
  if (fitting.empty()) return std::nullopt;
  Picked picked;
  picked.rows = usual_of_each_source(most_specific(std::move(fitting)));
  return picked;
}

/// No condition named: the rows marked usual, in the condition of the slowest of them; else those that hold for any
/// condition.
std::optional<Picked> pick_usual(const Rows& rows) {
  Rows usual = only(rows, [](const SpeedRow* row) { return row->usual; });
  if (usual.empty()) usual = with_condition(rows, {});
  if (usual.empty()) return std::nullopt;
  usual = slowest_of_each_source(most_specific(std::move(usual)));
  const auto first =
      std::find_if(usual.begin(), usual.end(), [](const SpeedRow* row) { return !row->condition.empty(); });
  const std::string_view condition = first == usual.end() ? std::string_view{} : (*first)->condition;
  Picked picked;
  picked.rows = with_condition(usual, condition);
  return picked;
}

struct PickedOrPast {
  std::optional<Picked> picked;
  std::optional<PastLastRow> past;
};

/// The rows of a material and its families, level by level.
using Levels = std::vector<Rows>;

/// By hardness: the first level that holds it. A level above may hold it at a higher speed than a softer row of a level
/// below: then the softer row comes first, for harder metal is never cut faster.
PickedOrPast pick_hardness_by_level(const Tables& tables, const Work& work, const Levels& levels) {
  const HardnessOfWork hardness(tables, work);
  const SpeedRow* slowest_softer = nullptr;
  const SpeedRow* hardest = nullptr;
  bool any_stated = false;
  for (const auto& rows : levels) {
    if (auto picked = pick_by_hardness(rows, hardness)) {
      if (slowest_softer != nullptr && slower(slowest_softer, picked->rows.front())) {
        picked->rows.insert(picked->rows.begin(), slowest_softer);
        picked->softer_is_slower = true;
      }
      return {std::move(picked), std::nullopt};
    }
    for (const auto* row : rows) {
      any_stated = any_stated || row->hardness.given();
      if (!hardness.side_of(*row)) continue;
      if (hardest == nullptr || hardness.high_of(*row) > hardness.high_of(*hardest)) hardest = row;
      if (slowest_softer == nullptr || slower(row, slowest_softer)) slowest_softer = row;
    }
  }
  if (hardest != nullptr) return {std::nullopt, PastLastRow{hardness.named(), hardest}};
  if (any_stated || (hardness.named().scale != HardnessScale::brinell && !may_convert_hardness(work.material->metal)))
    throw hardness.cannot_compare(*work.material);
  for (const auto& rows : levels) {
    if (rows.empty()) continue;
    Picked picked;
    picked.rows = slowest_of_each_source(rows);
    picked.hardness_unstated = true;
    return {std::move(picked), std::nullopt};
  }
  return {};
}

/// By condition, or by what is usual: the first level that has such a row; else the slowest of the first level that has
/// any.
PickedOrPast pick_condition_by_level(const Work& work, const Levels& levels) {
  for (const auto& rows : levels) {
    auto picked = work.condition.empty() ? pick_usual(rows) : pick_by_condition(rows, work.condition);
    if (picked) return {std::move(picked), std::nullopt};
  }
  for (const auto& rows : levels) {
    if (rows.empty()) continue;
    Picked picked;
    picked.rows = slowest_of_each_source(rows);
    picked.condition_unstated = true;
    return {std::move(picked), std::nullopt};
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

/// The rows that were passed over: of any level, for the same condition or for any.
Rows passed_over(const Levels& levels, const Rows& picked) {
  Rows others;
  for (const auto& rows : levels) {
    for (const auto* row : rows) {
      const bool is_picked = std::find(picked.begin(), picked.end(), row) != picked.end();
      if (!is_picked && (row->condition.empty() || row->condition == picked.front()->condition)) others.push_back(row);
    }
  }
  return others;
}

SpeedResult choose_for_one(const Tables& tables, std::string_view ask, const Work& work, const Material& layer,
                           std::string_view cutter) {
  Levels levels;
  for (const auto* material : chain_of(tables, layer))
    levels.push_back(rows_of(rows_for(tables, ask), material->key, cutter));
  Work of_layer = work;
  of_layer.material = &layer;
  const PickedOrPast result =
      work.hardness ? pick_hardness_by_level(tables, of_layer, levels) : pick_condition_by_level(of_layer, levels);
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
  choice.condition_unstated = picked.condition_unstated && !work.condition.empty();
  choice.softer_is_slower = picked.softer_is_slower;
  choice.others = passed_over(levels, picked.rows);
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
