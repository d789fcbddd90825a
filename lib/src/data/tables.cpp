#include <quillside/data/tables.hpp>

#include <algorithm>

#include <quillside/words/fault.hpp>
#include <quillside/words/suggest.hpp>

namespace quillside {

namespace {

template <class Row> const Row* find_key(std::span<const Row> rows, std::string_view key) {
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const Row& row) { return row.key == key; });
  return found == rows.end() ? nullptr : &*found;
}

bool lists(Words words, std::string_view word) { return std::find(words.begin(), words.end(), word) != words.end(); }

std::vector<std::string> as_strings(const std::vector<std::string_view>& words) { return {words.begin(), words.end()}; }

} // namespace

const Source& source_of(const Tables& tables, std::string_view id) {
  if (const Source* source = find_key(tables.sources, id)) return *source;
  Fault fault;
  fault.kind = FaultKind::data;
  fault.word = std::string(id);
  fault.message = "no table has the source '" + std::string(id) + "'";
  throw fault;
}

std::string cite(const Source& source) {
  std::string cited;
  for (const auto part : {source.author, source.title, source.edition, source.year}) {
    if (!part.empty() && part != "not seen") cited += (cited.empty() ? "" : ", ") + std::string(part);
  }
  return cited;
}

const Machine& find_machine(const Tables& tables, std::string_view name) {
  if (const Machine* machine = find_key(tables.machines, name)) return *machine;
  std::vector<std::string_view> names;
  for (const auto& row : tables.machines) names.push_back(row.key);
  throw wrong_word(std::string(name),
                   "is no machine of the tables; 'quillside tables new machine' prints a row to fill in",
                   as_strings(names), nearest_word(name, names));
}

const Cutter& find_cutter(const Tables& tables, std::string_view name, std::string_view tool) {
  std::vector<std::string_view> names;
  for (const auto& row : tables.cutters)
    if (lists(row.tools, tool)) names.push_back(row.key);
  const Cutter* cutter = find_key(tables.cutters, name);
  if (cutter != nullptr && lists(cutter->tools, tool)) return *cutter;
  std::string allowed;
  for (const auto one : names) allowed += (allowed.empty() ? "" : ", ") + std::string(one);
  throw wrong_word(std::string(name), "is no cutter of a " + std::string(tool) + "; allowed: " + allowed,
                   as_strings(names), nearest_word(name, names));
}

const Cutter& usual_cutter(const Tables& tables, std::string_view tool) {
  const auto found = std::find_if(tables.cutters.begin(), tables.cutters.end(),
                                  [&](const Cutter& row) { return lists(row.usual, tool); });
  if (found != tables.cutters.end()) return *found;
  Fault fault;
  fault.kind = FaultKind::data;
  fault.word = std::string(tool);
  fault.message = "no cutter is marked usual for a " + std::string(tool);
  throw fault;
}

} // namespace quillside
