#include "reference_check.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include <quillside/words/suggest.hpp>

#include "fields.hpp"

namespace quillside {

namespace {

/// Checks that need all tables: every word that names another row.
class ReferenceCheck {
public:
  ReferenceCheck(const Storage& storage, const std::vector<TableText>& checked, std::vector<TableFault>& faults)
      : checked_(checked), faults_(faults) {
    for (const auto& row : storage.sources) sources_.push_back(row.key);
    for (const auto& row : storage.materials) {
      materials_.push_back(row.key);
      if (!row.layers.empty()) layered_.push_back(row.key);
    }
    for (const auto& row : storage.cutters) cutters_.push_back(row.key);
    for (const auto& row : storage.screw_threads) screws_.push_back(row.screw);
    kinds(storage, [&](std::string_view, const auto& rows) {
      for (const auto& row : rows) check(row);
    });
    check_names(storage.materials);
  }

private:
  template <class Row> void check(const Row& row) {
    if (!is_checked(row.place)) return;
    if constexpr (requires { row.source; }) named(row.place, "source", row.source, sources_);
    if constexpr (requires { row.material; }) named(row.place, "material", row.material, materials_);
    if constexpr (requires { row.family; }) named(row.place, "family", row.family, materials_);
    if constexpr (requires { row.layers; })
      for (const auto layer : row.layers) {
        named(row.place, "layer", layer, materials_);
        if (std::find(layered_.begin(), layered_.end(), layer) != layered_.end())
          add(row.place, "layer '" + std::string(layer) + "' is layered itself", "plain materials");
      }
    if constexpr (requires { row.cutter; }) named(row.place, "cutter", row.cutter, cutters_);
    if constexpr (requires { row.screw; }) named(row.place, "screw", row.screw, screws_);
    if constexpr (requires { row.of; }) named(row.place, "cutter", row.of, cutters_);
  }

  /// A key or alias may mean one material only, and a family may not lead back to itself.
  void check_names(const std::vector<Material>& materials) {
    const auto lower = [](std::string_view word) {
      std::string text(word);
      std::transform(text.begin(), text.end(), text.begin(),
                     [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
      return text;
    };
    std::vector<std::pair<std::string, const Material*>> names;
    for (const auto& material : materials) {
      names.emplace_back(lower(material.key), &material);
      for (const auto alias : material.aliases) names.emplace_back(lower(alias), &material);
    }
    std::stable_sort(names.begin(), names.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    for (std::size_t i = 1; i < names.size(); ++i) {
      if (names[i].first != names[i - 1].first || names[i].second == names[i - 1].second) continue;
      const Material* blamed = is_checked(names[i].second->place) ? names[i].second : names[i - 1].second;
      const Material* other = blamed == names[i].second ? names[i - 1].second : names[i].second;
      add(blamed->place, "'" + names[i].first + "' already means " + std::string(other->key), "a name of its own");
    }
    for (const auto& material : materials)
      if (is_checked(material.place) && is_its_own_family(materials, material))
        add(material.place, "the family of '" + std::string(material.key) + "' leads back to itself",
            "a family above it");
  }

  /// Whether the way up from a material comes back to it.
  static bool is_its_own_family(const std::vector<Material>& materials, const Material& material) {
    std::string_view family = material.family;
    for (std::size_t steps = 0; !family.empty() && steps <= materials.size(); ++steps) {
      if (family == material.key) return true;
      const auto up =
          std::find_if(materials.begin(), materials.end(), [&](const Material& m) { return m.key == family; });
      family = up == materials.end() ? std::string_view{} : up->family;
    }
    return false;
  }

  [[nodiscard]] bool is_checked(const RowPlace& place) const {
    return std::any_of(checked_.begin(), checked_.end(),
                       [&](const TableText& text) { return text.name == place.file; });
  }

  void named(const RowPlace& place, std::string_view what, std::string_view word,
             const std::vector<std::string_view>& known) {
    if (word.empty() || std::find(known.begin(), known.end(), word) != known.end()) return;
    const auto nearest = nearest_word(word, known);
    add(place,
        std::string(what) + " '" + std::string(word) + "' is not known" +
            (nearest ? "; '" + *nearest + "' is meant?" : ""),
        what == "cutter"  ? joined(known, ", ")
        : what == "screw" ? "the screw of a screw_thread in this file or one loaded before it"
                          : "the key of a " + std::string(what) + " in this file or one loaded before it");
  }

  void add(const RowPlace& place, std::string what, std::string allowed) {
    faults_.push_back({{std::string(place.file), place.line, place.column}, std::move(what), std::move(allowed)});
  }

  const std::vector<TableText>& checked_;
  std::vector<TableFault>& faults_;
  std::vector<std::string_view> sources_, materials_, layered_, cutters_, screws_;
};

} // namespace

void check_references(const Storage& storage, const std::vector<TableText>& checked, std::vector<TableFault>& faults) {
  const ReferenceCheck check(storage, checked, faults);
}

} // namespace quillside
