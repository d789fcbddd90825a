#include "session.hpp"

#include <algorithm>

#include <quillside/data/load.hpp>
#include <quillside/words/fault.hpp>

namespace quillside::cli {

namespace {

std::string config_folder(const Console& console) {
  if (const auto config = console.env("XDG_CONFIG_HOME"); config && !config->empty()) return *config;
  const auto home = console.env("HOME");
  return home && !home->empty() ? *home + "/.config" : std::string{};
}

} // namespace

Session::Session(const Console& console)
    : variable_(console.env("QUILLSIDE_TABLES")), config_(config_folder(console)), builtin_(builtin_tables()) {}

TableSearch Session::search(const Call& call) const { return {call.tables, variable_, config_}; }

void Session::begin(const Call& call) {
  if (!settings_read_ && call.ask->name != "tables") {
    settings_ = read_settings(config_);
    settings_read_ = true;
  }
  units_ = settings_.units.value_or(UnitSystem::inch);
  if (const auto units = call.flag("units")) {
    if (*units != "inch" && *units != "metric")
      throw wrong_word(*units, "is no system of units: inch or metric", {"inch", "metric"});
    units_ = *units == "inch" ? UnitSystem::inch : UnitSystem::metric;
  }
  named_ = call.tables;
}

const Tables& Session::tables() const {
  if (loaded_ == named_) return tables_;
  const auto files = read_table_files({named_, variable_, config_});
  std::vector<TableText> texts;
  for (const auto& file : files) texts.push_back({file.path, file.text});
  tables_ = texts.empty() ? builtin_ : load_or_fail(builtin_, texts);
  loaded_ = named_;
  return tables_;
}

Typed<const Paper*> Session::paper(const Call& call, std::optional<std::string> usual) const {
  if (const auto named = call.flag("paper")) return {&find_paper(*named), named};
  if (settings_.paper) return {&find_paper(*settings_.paper), std::nullopt};
  return {&find_paper(usual.value_or(units_ == UnitSystem::inch ? "letter" : "a4")), std::nullopt};
}

Typed<NamedSize> Session::size(const std::string& word, const ToolSizes& tool) const {
  return {resolve_size(tables().sizes, read_size(word, units_), tool), word};
}

Typed<Work> Session::material(const std::string& word) const { return {read_work(tables(), word), word}; }

Typed<const Cutter*> Session::cutter(const Call& call, std::string_view tool) const {
  const auto named = call.flag("cutter");
  return {named ? &find_cutter(tables(), *named, tool) : &usual_cutter(tables(), tool), named};
}

std::optional<Typed<const Machine*>> Session::machine(const Call& call, std::span<const std::string_view> kinds) const {
  if (const auto named = call.flag("machine")) return Typed<const Machine*>{&find_machine(tables(), *named), named};
  for (const auto& usual : settings_.machines) {
    const Machine& machine = usual_machine(usual);
    if (std::find(kinds.begin(), kinds.end(), machine.kind) != kinds.end())
      return Typed<const Machine*>{&machine, std::nullopt};
  }
  return std::nullopt;
}

const Machine& Session::usual_machine(const UsualMachine& usual) const {
  try {
    return find_machine(tables(), usual.name);
  } catch (Fault& fault) {
    // Nobody typed it: the settings file is wrong, not the words.
    const std::string file = settings_file(config_);
    fault.kind = FaultKind::data;
    fault.place = Place{file, usual.line, usual.column};
    fault.message = file + ":" + std::to_string(usual.line) + ":" + std::to_string(usual.column) + ": " + fault.message;
    throw;
  }
}

std::optional<Typed<Length>> Session::length(const Call& call, std::string_view flag) const {
  const auto word = call.flag(flag);
  if (!word) return std::nullopt;
  return Typed<Length>{read_length(*word, units_), word};
}

std::optional<Typed<Reading<Length>>> Session::reading(const Call& call, std::string_view flag) const {
  const auto word = call.flag(flag);
  if (!word) return std::nullopt;
  return Typed<Reading<Length>>{read_length_reading(*word, units_), word};
}

std::optional<Typed<Angle>> Session::angle(const Call& call, std::string_view flag) const {
  const auto word = call.flag(flag);
  if (!word) return std::nullopt;
  return Typed<Angle>{read_angle(*word), word};
}

std::optional<Typed<Reading<Angle>>> Session::angle_reading(const Call& call, std::string_view flag) const {
  const auto word = call.flag(flag);
  if (!word) return std::nullopt;
  return Typed<Reading<Angle>>{read_angle_reading(*word), word};
}

} // namespace quillside::cli
