#pragma once
// What an ask needs besides its words: the tables, the settings, and the readers that join the two.

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include <quillside/data/choose.hpp>
#include <quillside/data/paper.hpp>
#include <quillside/data/table_files.hpp>
#include <quillside/words/typed.hpp>

#include "console.hpp"
#include "flags.hpp"

namespace quillside::cli {

class Session {
public:
  explicit Session(const Console& console);

  /// Reads units and tables for the call; every other reader works for that call until the next. The `tables` ask reads
  /// no settings, and its tables only when it looks into them: it has to answer while one of them is wrong.
  void begin(const Call& call);

  [[nodiscard]] const Tables& tables() const;
  [[nodiscard]] const Tables& builtin() const { return builtin_; }
  [[nodiscard]] UnitSystem units() const { return units_; }
  /// What `--paper` names; else the settings' paper; else \p usual; without one letter where units are inch, a4 where
  /// they are metric.
  [[nodiscard]] Typed<const Paper*> paper(const Call& call, std::optional<std::string> usual = std::nullopt) const;
  [[nodiscard]] TableSearch search(const Call& call) const;

  [[nodiscard]] Typed<NamedSize> size(const std::string& word, const ToolSizes& tool) const;
  [[nodiscard]] Typed<Work> material(const std::string& word) const;
  [[nodiscard]] Typed<const Cutter*> cutter(const Call& call, std::string_view tool) const;
  /// The one that is named; else the usual one of the settings that is of one of these kinds; else nothing.
  [[nodiscard]] std::optional<Typed<const Machine*>> machine(const Call& call,
                                                             std::span<const std::string_view> kinds) const;
  [[nodiscard]] std::optional<Typed<Length>> length(const Call& call, std::string_view flag) const;
  [[nodiscard]] std::optional<Typed<Reading<Length>>> reading(const Call& call, std::string_view flag) const;
  [[nodiscard]] std::optional<Typed<Angle>> angle(const Call& call, std::string_view flag) const;
  [[nodiscard]] std::optional<Typed<Reading<Angle>>> angle_reading(const Call& call, std::string_view flag) const;

private:
  [[nodiscard]] const Machine& usual_machine(const UsualMachine& usual) const;

  std::optional<std::string> variable_;
  std::string config_;
  Settings settings_;
  UnitSystem units_ = UnitSystem::inch;
  bool settings_read_ = false;
  std::vector<std::string> named_; // the --tables of the call
  Tables builtin_;
  mutable Tables tables_;                                  // made when it is first asked for
  mutable std::optional<std::vector<std::string>> loaded_; // the --tables it was made with
};

} // namespace quillside::cli
