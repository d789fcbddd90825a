#pragma once
// Which screw a word means, and which row answers for a hole of it.
//
// A screw has a size (M3, no4, 1/4) and a thread (M3x0.5, 4-40, 1/4-20). A size alone means the thread marked usual. A
// plain length that is the diameter of a screw means that screw.

#include <optional>
#include <string>
#include <string_view>

#include <quillside/data/tables.hpp>

namespace quillside {

/// What goes through a hole, or into it: a screw, or something round that is none.
struct Screw {
  std::string name; // M3, no4, 1/4; of something round that is no screw: its size as typed
  Length major;
  const ScrewThread* thread = nullptr; // null: of no thread in the tables
  bool thread_named = false;           // not only the size
  bool metric = false;                 // drilled with metric drills
};

/// \p units what a bare number means.
/// Throws a Fault of the kind `word` for a word that is neither a screw nor a length, with what is nearest.
Screw read_screw(const Tables& tables, std::string_view text, UnitSystem units);
/// Something round that is no screw, as a pin; of the sizes of \p tool. Throws as resolve_size does.
Screw read_round(const Tables& tables, std::string_view text, UnitSystem units, const ToolSizes& tool);
/// The thread of that name, as `M3x0.35`, `4-48`, `no4-48`, in either case of letters; a size gives its usual thread.
/// Throws a Fault of the kind `word` that suggests.
const ScrewThread& read_thread(const Tables& tables, std::string_view text);

/// The hole that this goes through.
struct ClearanceChoice {
  Length hole;
  const ClearanceHole* row = nullptr;
  bool of_next_larger = false; // no row of its own: with as much room as the next larger screw is given
};
/// Nothing when it is larger than any screw with a row.
std::optional<ClearanceChoice> choose_clearance(const Tables& tables, const Screw& screw);
/// The head of that shape on this screw; null when no row says.
const ScrewHead* choose_screw_head(const Tables& tables, const Screw& screw, std::string_view shape);
/// Percentage of thread for a metal (as Material::metal; empty: any); the row that names the metal goes first.
/// Throws a Fault of the kind `data` when no row holds.
const ThreadEngagement& choose_engagement(const Tables& tables, std::string_view metal);
/// What is left for a reamer of this size; null when no row reaches.
const ReamAllowance* choose_ream_allowance(const Tables& tables, Length diameter);

/// Drills of one system: a metric hole is drilled with metric drills, an inch one with numbers, letters and fractions.
struct DrillWanted {
  Length hole;
  bool metric = false;
};
/// The nearest one; of two as near the smaller. Null when the ladder has none within a tenth of the hole.
const SizeRow* nearest_drill(std::span<const SizeRow> sizes, DrillWanted wanted);
/// The smallest one that is no smaller. Null beyond the ladder.
const SizeRow* drill_at_or_above(std::span<const SizeRow> sizes, DrillWanted wanted);
/// The largest one that is no larger. Null below the ladder.
const SizeRow* drill_at_or_below(std::span<const SizeRow> sizes, DrillWanted wanted);

} // namespace quillside
