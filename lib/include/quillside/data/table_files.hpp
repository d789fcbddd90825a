#pragma once
// Table files and settings on disk: where they are looked for, and reading them. Nothing here ever writes.

#include <optional>
#include <string>
#include <vector>

#include <quillside/words/read.hpp>

namespace quillside {

/// What the user named, and what the environment says.
struct TableSearch {
  std::vector<std::string> named;      // --tables, in order
  std::optional<std::string> variable; // $QUILLSIDE_TABLES: files or folders parted by ':'
  std::string config;                  // $XDG_CONFIG_HOME, or ~/.config; empty when neither is known
};

struct TablePlace {
  std::string path;
  bool found = false;
};

/// The places in the order of their precedence, the strongest first; built-in tables come after all of them.
std::vector<TablePlace> places_of(const TableSearch& search);

struct TableFileText {
  std::string path;
  std::string text;
};

/// The files that are there, the weakest first, so that each goes over those before it.
/// Throws a Fault of the kind `file` for one that was named but cannot be read, of the kind `data` for one over 1 MiB.
std::vector<TableFileText> read_table_files(const TableSearch& search);
/// One file. Throws as above; a folder is no file.
TableFileText read_table_file(const std::string& path);

/// Any file as text. Throws a Fault of the kind `file` when it cannot be read; a folder is no file.
std::string read_text_file(const std::string& path);

/// $XDG_CONFIG_HOME/quillside/settings.toml.
struct UsualMachine {
  std::string name;
  int line = 0; // where the settings file names it
  int column = 0;
};
struct Settings {
  std::optional<UnitSystem> units;
  std::vector<UsualMachine> machines; // the usual ones; the first that suits the ask is taken
  std::optional<std::string> paper;
};

std::string settings_file(const std::string& config);
/// The settings of that folder; all absent when there is no file. Throws a Fault of the kind `data` with its place for
/// a wrong key or value, of the kind `file` when the file cannot be read.
Settings read_settings(const std::string& config);

} // namespace quillside
