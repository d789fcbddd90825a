#include <quillside/data/work.hpp>

#include <algorithm>

#include <quillside/words/fault.hpp>
#include <quillside/words/read.hpp>
#include <quillside/words/suggest.hpp>
#include <quillside/words/utf8.hpp>

namespace quillside {

namespace {

bool same_word(std::string_view a, std::string_view b) { return a.size() == b.size() && edit_distance(a, b) == 0; }

const Material* find_key(const Tables& tables, std::string_view key) {
  const auto found = std::find_if(tables.materials.begin(), tables.materials.end(),
                                  [&](const Material& row) { return row.key == key; });
  return found == tables.materials.end() ? nullptr : &*found;
}

const Material* find_name(const Tables& tables, std::string_view word) {
  for (const auto& row : tables.materials) {
    if (same_word(row.key, word)) return &row;
    for (const auto alias : row.aliases)
      if (same_word(alias, word)) return &row;
  }
  return nullptr;
}

Fault unknown_material(const Tables& tables, std::string_view word) {
  std::vector<std::string_view> names;
  for (const auto& row : tables.materials) {
    names.push_back(row.key);
    names.insert(names.end(), row.aliases.begin(), row.aliases.end());
  }
  std::vector<std::string> keys;
  for (const auto& row : tables.materials) keys.emplace_back(row.key);
  const auto nearest = nearest_word(word, names);
  return wrong_word(std::string(word),
                    "is no material of the tables; " + (nearest ? "'" + *nearest + "' is meant? " : std::string{}) +
                        "'quillside tables list' names them all",
                    keys, nearest);
}

void add_conditions(std::span<const SpeedRow> rows, std::string_view material, std::vector<std::string_view>& into) {
  for (const auto& row : rows) {
    if (row.material == material && !row.condition.empty() &&
        std::find(into.begin(), into.end(), row.condition) == into.end())
      into.push_back(row.condition);
  }
}

/// Every condition that some row names for the material, one of its layers or a family of it.
std::vector<std::string_view> conditions_of(const Tables& tables, const Material& material) {
  std::vector<std::string_view> found;
  for (const Material* layer : layers_of(tables, material)) {
    for (const Material* one : chain_of(tables, *layer)) {
      for (const auto rows : {tables.drilling_speeds, tables.milling_speeds, tables.reaming_speeds, tables.burr_speeds})
        add_conditions(rows, one->key, found);
    }
  }
  return found;
}

/// Every grade whose family, or the family of whose family, this one is.
std::vector<const Material*> grades_of(const Tables& tables, const Material& family) {
  std::vector<const Material*> grades;
  for (const auto& material : tables.materials) {
    const auto chain = chain_of(tables, material);
    if (!material.group && std::find(chain.begin() + 1, chain.end(), &family) != chain.end())
      grades.push_back(&material);
  }
  return grades;
}

} // namespace

Work read_work(const Tables& tables, std::string_view text) {
  if (!is_plain_utf8(text)) throw wrong_word(printable(text), "is no material: it is not plain UTF-8 text");
  const auto at = text.find('@');
  const std::string_view name = text.substr(0, at);
  Work work;
  work.material = find_name(tables, name);
  if (work.material == nullptr) throw unknown_material(tables, name);
  if (at == std::string_view::npos) return work;

  const std::string_view state = text.substr(at + 1);
  if (!state.empty() &&
      ((state.front() >= '0' && state.front() <= '9') || state.front() == '-' || state.front() == '.')) {
    work.hardness = read_hardness(state);
    return work;
  }
  const auto known = conditions_of(tables, *work.material);
  const auto found =
      std::find_if(known.begin(), known.end(), [&](std::string_view one) { return same_word(one, state); });
  if (found == known.end()) {
    std::vector<std::string> allowed(known.begin(), known.end());
    std::string list;
    for (const auto one : known) list += std::string(one) + ", ";
    if (!list.empty()) list += "or ";
    allowed.emplace_back("a hardness, as 200HB");
    const auto nearest = nearest_word(state, known);
    throw wrong_word(std::string(text),
                     "names no condition of " + std::string(work.material->key) + ": '" + std::string(state) +
                         "'; allowed: " + list + "a hardness, as 200HB",
                     allowed, nearest ? std::optional(std::string(work.material->key) + "@" + *nearest) : std::nullopt);
  }
  work.condition = *found;
  return work;
}

std::vector<Typed<Work>> read_works(const Tables& tables, std::string_view list) {
  std::vector<Typed<Work>> works;
  const auto same = [](const Work& a, const Work& b) {
    const bool alike = a.hardness && b.hardness
                           ? a.hardness->scale == b.hardness->scale && a.hardness->number == b.hardness->number
                           : a.hardness.has_value() == b.hardness.has_value();
    return a.material == b.material && a.condition == b.condition && alike;
  };
  const auto take = [&](const Work& work, std::string_view typed) {
    const bool taken =
        std::any_of(works.begin(), works.end(), [&](const auto& other) { return same(other.value, work); });
    if (!taken) works.push_back({work, std::string(typed)});
  };
  for (const auto& word : words_of_list(list)) {
    const Work work = read_work(tables, word);
    const auto grades = work.material->group && work.condition.empty() && !work.hardness
                            ? grades_of(tables, *work.material)
                            : std::vector<const Material*>{};
    for (const auto* grade : grades) take({grade, {}, {}}, grade->key);
    if (grades.empty()) take(work, word);
  }
  if (works.empty()) throw wrong_word(std::string(list), "names no material: give some, as 416,304 or brass");
  return works;
}

std::vector<const Material*> chain_of(const Tables& tables, const Material& material) {
  std::vector<const Material*> chain;
  for (const Material* one = &material; one != nullptr;
       one = one->family.empty() ? nullptr : find_key(tables, one->family))
    chain.push_back(one);
  return chain;
}

std::vector<const Material*> layers_of(const Tables& tables, const Material& material) {
  if (material.layers.empty()) return {&material};
  std::vector<const Material*> layers;
  for (const auto key : material.layers) layers.push_back(find_key(tables, key));
  return layers;
}

} // namespace quillside
