#include <quillside/data/choose_thread.hpp>

#include <algorithm>
#include <vector>

#include <quillside/words/fault.hpp>
#include <quillside/words/suggest.hpp>

#include "for_metal.hpp"

namespace quillside {

namespace {

std::string in_small_letters(std::string_view word) {
  std::string text(word);
  std::transform(text.begin(), text.end(), text.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  return text;
}

/// `#4` and `no4` are one name; so are `no4-40` and `4-40`.
std::string plain_name(std::string_view word) {
  std::string name = in_small_letters(word);
  if (name.starts_with('#')) name.replace(0, 1, "no");
  if (name.starts_with("no") && name.find('-') != std::string::npos) name.erase(0, 2);
  return name;
}

const ScrewThread* thread_named(const Tables& tables, const std::string& name) {
  const auto found = std::find_if(tables.screw_threads.begin(), tables.screw_threads.end(),
                                  [&](const ScrewThread& row) { return in_small_letters(row.key) == name; });
  return found == tables.screw_threads.end() ? nullptr : &*found;
}

/// The usual thread of a size; a size with several and none marked has the first.
template <class Fits> const ScrewThread* usual_thread(const Tables& tables, Fits fits) {
  const ScrewThread* thread = nullptr;
  for (const auto& row : tables.screw_threads)
    if (fits(row) && (thread == nullptr || (row.usual && !thread->usual))) thread = &row;
  return thread;
}

const ScrewThread* thread_of_size(const Tables& tables, const std::string& name) {
  return usual_thread(tables, [&](const ScrewThread& row) { return in_small_letters(row.screw) == name; });
}

std::vector<std::string_view> all_names(const Tables& tables) {
  std::vector<std::string_view> names;
  for (const auto& row : tables.screw_threads) {
    names.push_back(row.key);
    if (row.usual) names.push_back(row.screw);
  }
  return names;
}

/// A name with the threads of the same size, for somebody who typed a pitch that is none of them.
std::string threads_of_same_size(const Tables& tables, const std::string& name) {
  const auto cut = name.find_last_of("x-");
  if (cut == std::string::npos) return {};
  std::string size = name.substr(0, cut);
  std::string list;
  for (const auto& row : tables.screw_threads) {
    const std::string screw = in_small_letters(row.screw);
    if (screw == size || screw == "no" + size) list += (list.empty() ? "" : ", ") + std::string(row.key);
  }
  return list;
}

Fault no_thread(const Tables& tables, std::string_view text) {
  const std::string name = plain_name(text);
  const std::string same = threads_of_same_size(tables, name);
  const auto names = all_names(tables);
  const auto nearest = nearest_word(std::string(text), names);
  return wrong_word(std::string(text),
                    "is no thread of the tables" + (!same.empty() ? "; that size has " + same
                                                    : nearest
                                                        ? "; '" + *nearest + "' is meant?"
                                                        : std::string("; write it as M3, M3x0.5, 4-40 or 1/4-20")),
                    {"M3", "M3x0.5", "4-40", "1/4-20"}, nearest);
}

/// Whether a length was typed in millimetres.
bool is_metric(const SizeWord& word, UnitSystem units) {
  if (word.form != SizeWord::Form::length) return false;
  return word.bare ? units == UnitSystem::metric : word.text.find("mm") != std::string::npos;
}

bool is_of_system(const SizeRow& row, bool metric) { return (row.kind == "metric") == metric; }

} // namespace

const ScrewThread& read_thread(const Tables& tables, std::string_view text) {
  const std::string name = plain_name(text);
  if (const auto* thread = thread_named(tables, name)) return *thread;
  if (const auto* thread = thread_of_size(tables, name)) return *thread;
  throw no_thread(tables, text);
}

Screw read_screw(const Tables& tables, std::string_view text, UnitSystem units) {
  const std::string name = plain_name(text);
  if (const auto* thread = thread_named(tables, name))
    return {std::string(thread->screw), thread->major.range.low, thread, true, thread->metric};
  if (const auto* thread = thread_of_size(tables, name))
    return {std::string(thread->screw), thread->major.range.low, thread, false, thread->metric};
  const bool like_a_thread = name.starts_with('m') || name.find('-') != std::string::npos;
  std::optional<SizeWord> word;
  try {
    word = read_size(text, units);
  } catch (const Fault&) {
    if (like_a_thread) throw no_thread(tables, text);
    throw;
  }
  if (word->form != SizeWord::Form::length)
    throw wrong_word(std::string(text),
                     word->form == SizeWord::Form::number
                         ? "is no screw: numbers of screws run from no0 to no12, and a number is none of a drill here"
                         : "is no screw: give its size, as M3, no4, 1/4, or a length",
                     {"M3", "no4", "1/4"});
  const auto* thread = usual_thread(tables, [&](const ScrewThread& row) {
    const Length major = row.major.range.low;
    return major >= word->length - same_size_within && major <= word->length + same_size_within;
  });
  return {thread == nullptr ? word->text : std::string(thread->screw), word->length, thread, false,
          is_metric(*word, units)};
}

Screw read_round(const Tables& tables, std::string_view text, UnitSystem units, const ToolSizes& tool) {
  const SizeWord word = read_size(text, units);
  const NamedSize size = resolve_size(tables.sizes, word, tool);
  // A reamer is called by what was typed, 1/4 and not E: letters and numbers are names of drills.
  const bool typed_length = word.form == SizeWord::Form::length;
  return {typed_length ? word.text : size.name, size.length, nullptr, false, is_metric(word, units)};
}

std::optional<ClearanceChoice> choose_clearance(const Tables& tables, const Screw& screw) {
  const ScrewThread* next = nullptr;
  const ClearanceHole* of_next = nullptr;
  for (const auto& row : tables.clearance_holes) {
    if (row.screw == screw.name) return ClearanceChoice{row.normal.range.low, &row, false};
    for (const auto& thread : tables.screw_threads) {
      if (thread.screw != row.screw || thread.major.range.low < screw.major) continue;
      if (next == nullptr || thread.major.range.low < next->major.range.low) {
        next = &thread;
        of_next = &row;
      }
    }
  }
  if (next == nullptr) return std::nullopt;
  return ClearanceChoice{screw.major + (of_next->normal.range.low - next->major.range.low), of_next, true};
}

const ScrewHead* choose_screw_head(const Tables& tables, const Screw& screw, std::string_view shape) {
  const auto found = std::find_if(tables.screw_heads.begin(), tables.screw_heads.end(),
                                  [&](const ScrewHead& row) { return row.screw == screw.name && row.shape == shape; });
  return found == tables.screw_heads.end() ? nullptr : &*found;
}

const ThreadEngagement& choose_engagement(const Tables& tables, std::string_view metal) {
  const auto* found =
      best_for_metal<ThreadEngagement>(tables.thread_engagements, metal, [](const ThreadEngagement&) { return true; });
  if (found != nullptr) return *found;
  Fault fault;
  fault.kind = FaultKind::data;
  fault.word = "thread_engagement";
  fault.message = "no table has a thread_engagement for " + (metal.empty() ? "any metal" : std::string(metal));
  throw fault;
}

const ReamAllowance* choose_ream_allowance(const Tables& tables, Length diameter) {
  const auto found =
      std::find_if(tables.ream_allowances.begin(), tables.ream_allowances.end(), [&](const ReamAllowance& row) {
        return row.diameter.range.low <= diameter && diameter < row.diameter.range.high;
      });
  return found == tables.ream_allowances.end() ? nullptr : &*found;
}

const SizeRow* nearest_drill(std::span<const SizeRow> sizes, DrillWanted wanted) {
  const SizeRow* nearest = nullptr;
  const auto off = [&](const SizeRow& row) {
    return row.length() < wanted.hole ? wanted.hole - row.length() : row.length() - wanted.hole;
  };
  for (const auto& row : sizes) {
    if (!is_of_system(row, wanted.metric) || off(row) > 0.1 * wanted.hole) continue;
    if (nearest == nullptr || off(row) + same_size_within / 10.0 < off(*nearest)) nearest = &row;
  }
  return nearest;
}

const SizeRow* drill_at_or_above(std::span<const SizeRow> sizes, DrillWanted wanted) {
  for (const auto& row : sizes)
    if (is_of_system(row, wanted.metric) && row.length() + same_size_within >= wanted.hole) return &row;
  return nullptr;
}

const SizeRow* drill_at_or_below(std::span<const SizeRow> sizes, DrillWanted wanted) {
  const SizeRow* below = nullptr;
  for (const auto& row : sizes)
    if (is_of_system(row, wanted.metric) && row.length() - same_size_within <= wanted.hole) below = &row;
  return below;
}

} // namespace quillside
