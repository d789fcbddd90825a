#include <quillside/data/choose_fit.hpp>

#include <algorithm>

#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>
#include <quillside/words/suggest.hpp>

namespace quillside {

namespace {

bool same_letters(std::string_view a, std::string_view b) { return a.size() == b.size() && edit_distance(a, b) == 0; }

bool holds(const Printed<Length>& range, Length size) { return range.range.low < size && size <= range.range.high; }

void add_once(std::vector<std::string_view>& words, std::string_view word) {
  if (std::find(words.begin(), words.end(), word) == words.end()) words.push_back(word);
}

std::vector<std::string_view> tolerance_names(const Tables& tables, bool holes) {
  std::vector<std::string_view> names;
  for (const auto& row : tables.tolerance_classes)
    if (row.of_a_hole() == holes) add_once(names, row.name);
  return names;
}

std::string in_a_row(const std::vector<std::string_view>& words) {
  std::string all;
  for (const auto word : words) all += (all.empty() ? "" : " ") + std::string(word);
  return all;
}

/// Every word that would do, the pairs of hole and shaft among them.
std::vector<std::string> all_names(const Tables& tables) {
  std::vector<std::string> names;
  for (const auto name : fit_names(tables)) names.emplace_back(name);
  for (const auto hole : tolerance_names(tables, true))
    for (const auto shaft : tolerance_names(tables, false))
      names.push_back(std::string(hole) + "/" + std::string(shaft));
  return names;
}

Fault no_such_fit(const Tables& tables, std::string_view name) {
  const auto names = all_names(tables);
  const std::vector<std::string_view> candidates{names.begin(), names.end()};
  const auto nearest = nearest_word(name, candidates);
  return wrong_word(std::string(name),
                    "is no fit; allowed: " + in_a_row(fit_names(tables)) + ", or a hole of " +
                        in_a_row(tolerance_names(tables, true)) + " with a shaft of " +
                        in_a_row(tolerance_names(tables, false)) + ", as H7/p6",
                    names, nearest);
}

/// The row of that name that holds the size; null when no row has the name at all.
template <class Row> const Row* row_for(std::span<const Row> rows, std::string_view name, Length size) {
  const Row* widest = nullptr;
  for (const auto& row : rows) {
    if (row.name != name) continue;
    if (holds(row.size, size)) return &row;
    if (widest == nullptr || row.size.range.high > widest->size.range.high) widest = &row;
  }
  if (widest == nullptr) return nullptr;
  const Length reach = widest->size.range.high;
  const auto both = [](Length length) {
    return print_length_with_unit(length, UnitSystem::inch) + " (" +
           print_length_with_unit(length, UnitSystem::metric) + ")";
  };
  throw wrong_word(std::string(name),
                   "has no limits for a size of " + both(size) + "; its rows reach from over 0 to " + both(reach));
}

/// The class as its rows spell it; empty when there is none of it.
std::string_view spelt(const Tables& tables, std::string_view name) {
  for (const auto& row : tables.fit_classes)
    if (same_letters(row.name, name)) return row.name;
  return {};
}

FitLimits of_limits(std::string_view name, Range<Length> hole, Range<Length> shaft) {
  FitLimits limits;
  limits.name = name;
  limits.class_name = name;
  limits.hole = hole;
  limits.shaft = shaft;
  limits.interference = {shaft.low - hole.high, shaft.high - hole.low};
  return limits;
}

FitLimits of_class(const Tables& tables, std::string_view name, Length size) {
  if (const auto slash = name.find('/'); slash != std::string_view::npos) {
    const auto* hole = row_for(tables.tolerance_classes, name.substr(0, slash), size);
    const auto* shaft = row_for(tables.tolerance_classes, name.substr(slash + 1), size);
    if (hole == nullptr || shaft == nullptr || !hole->of_a_hole() || shaft->of_a_hole())
      throw no_such_fit(tables, name);
    FitLimits limits = of_limits(name, hole->limits.range, shaft->limits.range);
    add_once(limits.sources, hole->source);
    add_once(limits.sources, shaft->source);
    return limits;
  }
  const auto* row = row_for(tables.fit_classes, spelt(tables, name), size);
  if (row == nullptr) throw no_such_fit(tables, name);
  FitLimits limits = of_limits(row->name, row->hole.range, row->shaft.range);
  limits.sources = {row->source};
  return limits;
}

} // namespace

std::vector<std::string_view> fit_names(const Tables& tables) {
  std::vector<std::string_view> names;
  for (const auto& row : tables.fits) names.push_back(row.key);
  for (const auto& row : tables.fit_classes) add_once(names, row.name);
  return names;
}

FitLimits fit_limits(const Tables& tables, std::string_view name, Length size) {
  const auto called =
      std::find_if(tables.fits.begin(), tables.fits.end(), [&](const FitRow& row) { return row.key == name; });
  if (called == tables.fits.end()) return of_class(tables, name, size);
  FitLimits limits;
  if (called->interference.given()) {
    const auto tight = called->interference.range;
    limits.hole = {-tight.high, -tight.low};
    limits.interference = tight;
  } else {
    limits = of_class(tables, called->fit_class, size);
  }
  limits.name = called->key;
  limits.words = called->name;
  limits.sources.insert(limits.sources.begin(), called->source);
  return limits;
}

} // namespace quillside
