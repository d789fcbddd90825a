#pragma once
// What every job tells in the same way: which row answered and where it was published, the step behind a number, the
// cautions that hold.

#include <map>
#include <optional>
#include <set>
#include <string>

#include <quillside/answer/answer.hpp>
#include <quillside/data/choose.hpp>
#include <quillside/model/law.hpp>

namespace quillside {

/// Fills an Answer while the job finds out what it is about.
class Telling {
public:
  Telling(const Tables& tables, Answer& answer, const Work* work, std::string_view cutter);

  /// The inputs that every tool has: size, material with its condition or hardness, cutter, machine.
  void tool(const Typed<NamedSize>& size, const Typed<Work>& material, const Typed<const Cutter*>& cutter,
            const std::optional<Typed<const Machine*>>& machine);
  /// The spindle speed the tables want for a tool of that diameter. Nothing when the metal is harder than any row: then
  /// the answer is refused, and \p instead is what would do.
  std::optional<Band<SpindleSpeed>> wanted_speed(Length diameter, std::string instead);

  /// The hardness band of the row that gave the speed, where none was named: what the metal is taken for.
  [[nodiscard]] std::optional<HardnessBand> assumed_hardness() const { return assumed_hardness_; }

  /// A step of `why` from a table row.
  void because_of_row(std::string step, std::string formula, Value value, std::string_view source_id);
  /// A step of `why` from a model.
  void because_of_law(std::string step, const Law& law, Value value);

  /// What to put on the cut; nothing when no row says.
  void fluid();

  /// Something the job found that a caution may be tagged with.
  void flag(std::string_view flag) { flags_.insert(flag); }
  /// A word of a caution's text that the job fills in.
  void word(std::string name, std::string text) { words_[std::move(name)] = std::move(text); }

  /// Adds the cautions that hold, the gravest first; the last thing a job does.
  void cautions(std::string_view machine_kind);

private:
  void name_source(std::string_view id);
  void rows_of(const SpeedChoice& choice);
  void basis_of(const SpeedChoice& choice);
  void past_last_row(const PastLastRow& past, std::string instead);
  [[nodiscard]] std::string filled_in(std::string_view text) const;

  const Tables& tables_;
  Answer& answer_;
  const Work* work_;
  std::string_view cutter_;
  std::optional<HardnessBand> assumed_hardness_;
  std::set<std::string_view> flags_;
  std::map<std::string, std::string, std::less<>> words_;
};

} // namespace quillside
