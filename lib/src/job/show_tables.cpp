#include <quillside/job/show_tables.hpp>

#include <algorithm>
#include <functional>

#include <quillside/data/blank_row.hpp>
#include <quillside/data/typed_row.hpp>
#include <quillside/data/work.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/suggest.hpp>

#include "../data/fields.hpp"
#include "../data/same_row.hpp"
#include "telling.hpp"

namespace quillside {

namespace {

/// What a row is called, when it has a name of its own.
template <class Row> std::string_view key_of(const Row& row) {
  if constexpr (requires { row.key; })
    return row.key;
  else if constexpr (std::same_as<Row, SizeRow>)
    return row.name;
  else
    return {};
}

template <class Row> std::string_view name_of_row(const Row& row) {
  if constexpr (std::same_as<Row, Source>)
    return row.title;
  else if constexpr (std::same_as<Row, Limit>)
    return row.what;
  else if constexpr (std::same_as<Row, Caution>)
    return row.text;
  else if constexpr (requires { row.name; })
    return row.name;
  else
    return {};
}

/// A row that was found, whatever its kind.
struct FoundRow {
  std::string_view kind;
  std::string_view source;
  RowPlace place;
};

const TableText* text_of(const Tables& tables, std::string_view file) {
  const auto found =
      std::find_if(tables.texts.begin(), tables.texts.end(), [&](const TableText& text) { return text.name == file; });
  return found == tables.texts.end() ? nullptr : &*found;
}

Value value_of(const TypedField& field) {
  if (const auto* texts = std::get_if<std::vector<std::string>>(&field.value)) {
    std::vector<Value> list;
    for (const auto& text : *texts) list.emplace_back(text);
    return list;
  }
  if (const auto* number = std::get_if<double>(&field.value)) return measure(*number);
  if (const auto* truth = std::get_if<bool>(&field.value)) return *truth;
  return std::get<std::string>(field.value);
}

Value as_typed(const Tables& tables, const RowPlace& place) {
  std::vector<Member> row;
  if (const TableText* text = text_of(tables, place.file))
    for (const auto& field : row_as_typed(*text, place)) row.push_back({field.key, value_of(field)});
  return row;
}

Value place_of(const RowPlace& place) { return std::string(place.file) + ":" + std::to_string(place.line); }

template <class Row> const Row* find_key(std::span<const Row> rows, std::string_view key) {
  const auto found =
      std::find_if(rows.begin(), rows.end(), [&](const Row& row) { return !key.empty() && key_of(row) == key; });
  return found == rows.end() ? nullptr : &*found;
}

std::vector<Member> described(const Tables& tables, const FoundRow& found, Value overrides) {
  return {{"row", as_typed(tables, found.place)},
          {"file", found.place.file},
          {"line", found.place.line},
          {"column", found.place.column},
          {"overrides", std::move(overrides)}};
}

/// The row below that a row of the user goes over, as FILE:LINE; nothing when it goes over none.
template <class Row> Value overridden(std::span<const Row> below, const Row& row) {
  const auto stands_below = [&](const Row& other) {
    return other.place.file == row.place.file && other.place.line == row.place.line;
  };
  if (std::any_of(below.begin(), below.end(), stands_below)) return {};
  const auto under = std::find_if(below.begin(), below.end(), [&](const Row& other) { return replaces(row, other); });
  return under == below.end() ? Value{} : place_of(under->place);
}

template <class Row> std::string_view source_id(const Row& row) {
  if constexpr (requires { row.source; })
    return row.source;
  else
    return row.key;
}

template <class Row> bool is_for(const Row& row, const std::vector<const Material*>& materials) {
  if constexpr (requires { row.material; })
    return std::any_of(materials.begin(), materials.end(),
                       [&](const Material* one) { return one->key == row.material; });
  else
    return false;
}

void tell_source(Telling& telling, std::string_view kind, std::string_view source) {
  telling.because_of_row(std::string(kind), "as printed", Value{}, source);
}

/// The speeds, feeds and points that answer for a material: its own and its families'.
Value rows_for(const Tables& tables, const Tables& below, Telling& telling, const Material& material) {
  std::vector<const Material*> materials;
  for (const auto* layer : layers_of(tables, material))
    for (const auto* one : chain_of(tables, *layer)) materials.push_back(one);
  std::vector<Value> rows;
  kinds_of_both(
      tables, below,
      [&]<class Row>(std::string_view kind, const std::span<const Row>& all, const std::span<const Row>& under) {
        for (const auto& row : all) {
          if (!is_for(row, materials)) continue;
          std::vector<Member> one{{"kind", kind}};
          for (auto& member : described(tables, {kind, source_id(row), row.place}, overridden(under, row)))
            one.push_back(std::move(member));
          rows.emplace_back(std::move(one));
          tell_source(telling, kind, source_id(row));
        }
      });
  return rows;
}

const Material* material_named(const Tables& tables, std::string_view name) {
  try {
    return read_work(tables, name).material;
  } catch (const Fault&) {
    return nullptr; // no material: it may be a row of another kind
  }
}

Fault nothing_named(const Tables& tables, std::string_view name) {
  std::vector<std::string_view> names;
  kinds(tables, [&](std::string_view, const auto& rows) {
    for (const auto& row : rows)
      if (!key_of(row).empty()) names.push_back(key_of(row));
  });
  const auto nearest = nearest_word(name, names);
  return wrong_word(std::string(name),
                    "names no row; " + (nearest ? "'" + *nearest + "' is meant? " : std::string{}) +
                        "'quillside tables list' names them all",
                    {}, nearest);
}

} // namespace

Answer list_tables(const Tables& tables) {
  Answer answer("tables");
  answer.input_word("what", "list", "list");
  kinds(tables, [&](std::string_view kind, const auto& rows) {
    std::vector<Value> list;
    for (const auto& row : rows)
      if (!key_of(row).empty())
        list.emplace_back(
            std::vector<Member>{{"key", key_of(row)}, {"name", name_of_row(row)}, {"file", row.place.file}});
    if (!list.empty()) answer.findings.push_back({std::string(kind), std::move(list)});
  });
  return answer;
}

Answer show_row(const Tables& tables, const Tables& below, std::string_view name) {
  Answer answer("tables");
  answer.input_word("what", "show", "show");
  answer.input_word("name", name, std::string(name));
  Telling telling(tables, answer, nullptr, {});
  const auto tell = [&](const FoundRow& found, Value overrides) {
    for (auto& member : described(tables, found, std::move(overrides))) answer.findings.push_back(std::move(member));
    answer.findings.push_back({"kind", found.kind});
    tell_source(telling, found.kind, found.source);
  };
  if (const Material* material = material_named(tables, name)) {
    tell({"material", material->source, material->place}, overridden(below.materials, *material));
    answer.findings.push_back({"rows", rows_for(tables, below, telling, *material)});
    return answer;
  }
  bool found = false;
  kinds_of_both(
      tables, below,
      [&]<class Row>(std::string_view kind, const std::span<const Row>& rows, const std::span<const Row>& under) {
        const Row* row = found ? nullptr : find_key(rows, name);
        if (row == nullptr) return;
        found = true;
        tell({kind, source_id(*row), row->place}, overridden(under, *row));
      });
  if (!found) throw nothing_named(tables, name);
  return answer;
}

CheckedFiles check_files(const Tables& below, const std::vector<TableText>& files) {
  CheckedFiles checked{Answer("tables"), {}};
  checked.answer.input_word("what", "check", "check");
  std::vector<Value> names;
  for (const auto& file : files) names.emplace_back(file.name);
  checked.answer.inputs.push_back({"files", names, files.empty() ? std::string{} : std::string(files.front().name)});
  std::vector<Value> list;
  Tables tables = below;
  for (const auto& file : files) {
    Loaded loaded = load_over(tables, {file});
    std::vector<Value> faults;
    for (const auto& fault : loaded.faults)
      faults.emplace_back(std::vector<Member>{{"line", fault.place.line},
                                              {"column", fault.place.column},
                                              {"what", fault.what},
                                              {"allowed", fault.allowed.empty() ? Value{} : Value{fault.allowed}}});
    list.emplace_back(std::vector<Member>{{"file", file.name}, {"faults", std::move(faults)}});
    if (loaded.faults.empty()) tables = std::move(loaded.tables);
    checked.faults.insert(checked.faults.end(), loaded.faults.begin(), loaded.faults.end());
  }
  checked.answer.findings.push_back({"files", std::move(list)});
  return checked;
}

Answer show_path(const std::vector<SearchedPlace>& places) {
  Answer answer("tables");
  answer.input_word("what", "path", "path");
  std::vector<Value> list;
  for (const auto& place : places) list.emplace_back(std::vector<Member>{{"path", place.path}, {"found", place.found}});
  answer.findings.push_back({"searched", std::move(list)});
  return answer;
}

Answer new_row(std::string_view kind) {
  Answer answer("tables");
  answer.input_word("what", "new", "new");
  answer.input_word("kind", kind, std::string(kind));
  answer.findings.push_back({"file", blank_row(kind)});
  return answer;
}

} // namespace quillside
