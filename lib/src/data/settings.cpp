#include <quillside/data/table_files.hpp>

#include <sys/stat.h>

#include <quillside/words/fault.hpp>

#include "stray_character.hpp"
#include "toml.hpp"

namespace quillside {

namespace {

/// Reads the keys one by one; what is wrong with any of them is told together.
class SettingsReader {
public:
  explicit SettingsReader(const std::string& path) : path_(path) {}

  Settings read(const std::string& text) {
    Settings settings;
    if (const auto stray = stray_character(text)) {
      const toml::source_position at{static_cast<toml::source_index>(stray->place.line),
                                     static_cast<toml::source_index>(stray->place.column)};
      wrong({at, at, nullptr}, stray->what);
      return settings;
    }
    toml::table root;
    try {
      root = toml::parse(text, path_);
    } catch (const toml::parse_error& error) {
      wrong(error.source(), "no TOML: " + std::string(error.description()));
      return settings;
    }
    for (const auto& [key, value] : root) {
      if (key == "units") {
        if (const auto units = one_of("units", value, {"inch", "metric"}))
          settings.units = *units == "inch" ? UnitSystem::inch : UnitSystem::metric;
      } else if (key == "machine") {
        settings.machines = machines_of("machine", value);
      } else if (key == "paper") {
        settings.paper = one_of("paper", value, {"a4", "letter", "a3", "tabloid"});
      } else {
        wrong(value.source(), "'" + std::string(key.str()) + "' is no setting; allowed: units, machine, paper");
      }
    }
    return settings;
  }

  void throw_if_wrong() const {
    if (!fault_.place) return;
    throw fault_;
  }

private:
  void wrong(const toml::source_region& at, const std::string& what) {
    const Place place{path_, static_cast<int>(at.begin.line), static_cast<int>(at.begin.column)};
    fault_.kind = FaultKind::data;
    if (!fault_.place) fault_.place = place;
    fault_.message += (fault_.message.empty() ? "" : "; ") + path_ + ":" + std::to_string(place.line) + ":" +
                      std::to_string(place.column) + ": " + what;
  }

  std::optional<std::string> one_of(std::string_view key, const toml::node& node,
                                    const std::vector<std::string>& allowed) {
    const auto text = node.value_exact<std::string>();
    std::string list;
    for (const auto& word : allowed) {
      if (text == word) return word;
      list += (list.empty() ? "" : ", ") + word;
    }
    wrong(node.source(), "'" + std::string(key) + "' is one of " + list);
    return std::nullopt;
  }

  /// A name, or a list of names.
  std::vector<UsualMachine> machines_of(std::string_view key, const toml::node& node) {
    std::vector<UsualMachine> machines;
    const auto add = [&](const std::string& name, const toml::node& at) {
      const At place = place_of(at);
      machines.push_back({name, place.line, place.column});
    };
    const auto* array = node.as_array();
    if (const auto text = node.value_exact<std::string>())
      add(*text, node);
    else if (array == nullptr)
      wrong(node.source(), "'" + std::string(key) + "' is a name in quotes, or a list of them");
    else
      for (const auto& entry : *array)
        if (const auto name = entry.value_exact<std::string>())
          add(*name, entry);
        else
          wrong(entry.source(), "'" + std::string(key) + "' holds names in quotes");
    return machines;
  }

  std::string path_;
  Fault fault_;
};

} // namespace

std::string settings_file(const std::string& config) { return config + "/quillside/settings.toml"; }

Settings read_settings(const std::string& config) {
  const std::string path = settings_file(config);
  struct stat info {};
  if (config.empty() || stat(path.c_str(), &info) != 0) return {};
  SettingsReader reader(path);
  Settings settings = reader.read(read_table_file(path).text);
  reader.throw_if_wrong();
  return settings;
}

} // namespace quillside
