#include <quillside/data/table_files.hpp>

#include <sys/stat.h>

#include <quillside/words/fault.hpp>

#include "toml.hpp"

namespace quillside {

namespace {

[[noreturn]] void wrong(const std::string& path, const toml::source_region& at, const std::string& what,
                        std::vector<std::string> allowed) {
  Fault fault;
  fault.kind = FaultKind::data;
  fault.place = Place{path, static_cast<int>(at.begin.line), static_cast<int>(at.begin.column)};
  fault.message =
      path + ":" + std::to_string(fault.place->line) + ":" + std::to_string(fault.place->column) + ": " + what;
  fault.allowed = std::move(allowed);
  throw fault;
}

std::string one_of(const std::string& path, std::string_view key, const toml::node& node,
                   const std::vector<std::string>& allowed) {
  const auto text = node.value_exact<std::string>();
  std::string list;
  for (const auto& word : allowed) {
    if (text == word) return word;
    list += (list.empty() ? "" : ", ") + word;
  }
  wrong(path, node.source(), "'" + std::string(key) + "' is one of " + list, allowed);
}

std::vector<std::string> words_of(const std::string& path, std::string_view key, const toml::node& node) {
  if (const auto text = node.value_exact<std::string>()) return {*text};
  std::vector<std::string> words;
  if (const auto* array = node.as_array()) {
    for (const auto& entry : *array) {
      const auto text = entry.value_exact<std::string>();
      if (!text) wrong(path, entry.source(), "'" + std::string(key) + "' holds names in quotes", {});
      words.push_back(*text);
    }
    return words;
  }
  wrong(path, node.source(), "'" + std::string(key) + "' is a name in quotes, or a list of them", {});
}

} // namespace

Settings read_settings(const std::string& config) {
  Settings settings;
  const std::string path = config + "/quillside/settings.toml";
  struct stat info {};
  if (config.empty() || stat(path.c_str(), &info) != 0) return settings;
  const TableFileText file = read_table_file(path);
  toml::table root;
  try {
    root = toml::parse(file.text, path);
  } catch (const toml::parse_error& error) {
    wrong(path, error.source(), "no TOML: " + std::string(error.description()), {});
  }
  for (const auto& [key, value] : root) {
    if (key == "units")
      settings.units =
          one_of(path, "units", value, {"inch", "metric"}) == "inch" ? UnitSystem::inch : UnitSystem::metric;
    else if (key == "machine")
      settings.machines = words_of(path, "machine", value);
    else if (key == "paper")
      settings.paper = one_of(path, "paper", value, {"a4", "letter", "a3", "tabloid"});
    else
      wrong(path, value.source(), "'" + std::string(key.str()) + "' is no setting; allowed: units, machine, paper",
            {"units", "machine", "paper"});
  }
  return settings;
}

} // namespace quillside
