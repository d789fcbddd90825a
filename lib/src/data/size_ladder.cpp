#include <quillside/data/size_ladder.hpp>

#include <algorithm>

#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>

namespace quillside {

namespace {

const SizeRow* find_name(std::span<const SizeRow> sizes, std::string_view kind, const std::string& name) {
  const auto found = std::find_if(sizes.begin(), sizes.end(),
                                  [&](const SizeRow& row) { return row.kind == kind && row.name == name; });
  return found == sizes.end() ? nullptr : &*found;
}

/// The name the trade would call this length by, if the ladder has one: of several the one in the unit that was typed.
std::optional<std::string> ladder_name(std::span<const SizeRow> sizes, Length length, bool metric) {
  const auto same = sizes_same_as(sizes, length);
  if (same.empty()) return std::nullopt;
  const auto in_kind =
      std::find_if(same.begin(), same.end(), [&](const SizeRow* row) { return (row->kind == "metric") == metric; });
  return std::string((in_kind == same.end() ? same.front() : *in_kind)->name);
}

/// What somebody who typed a bare 30 may have meant.
std::vector<std::string> guesses(std::span<const SizeRow> sizes, const SizeWord& word, const ToolSizes& tool) {
  std::vector<std::string> meant;
  if (find_name(sizes, "number", "no" + word.text) != nullptr) meant.push_back("no" + word.text);
  if (word.text.ends_with('.')) return meant;
  for (const auto* unit : {"mm", "in", "thou"}) {
    try {
      const Length length = read_length(word.text + unit, UnitSystem::inch);
      if (length >= tool.smallest && length <= tool.largest) meant.push_back(word.text + unit);
    } catch (const Fault&) {
      continue; // not a number in that unit: no guess
    }
  }
  return meant;
}

std::string one_of(const std::vector<std::string>& words) {
  std::string all;
  for (std::size_t i = 0; i < words.size(); ++i)
    all += (i == 0 ? "" : i + 1 == words.size() ? " or " : ", ") + words[i];
  return all;
}

NamedSize named_on_ladder(std::span<const SizeRow> sizes, const SizeWord& word, std::string_view kind,
                          const std::string& name, const ToolSizes& tool) {
  const SizeRow* row = find_name(sizes, kind, name);
  if (row == nullptr)
    throw wrong_word(word.text, "is no size of the drill ladder: the tables have no " + std::string(kind) + " " + name);
  if (row->length() < tool.smallest || row->length() > tool.largest)
    throw wrong_word(word.text, "is no size of a " + std::string(tool.tool) + ": they run from " +
                                    print_length_with_unit(tool.smallest, UnitSystem::metric) + " to " +
                                    print_length_with_unit(tool.largest, UnitSystem::metric));
  return {name, row->length()};
}

} // namespace

NamedSize resolve_size(std::span<const SizeRow> sizes, const SizeWord& word, const ToolSizes& tool) {
  if (word.form == SizeWord::Form::number)
    return named_on_ladder(sizes, word, "number", "no" + std::to_string(word.number), tool);
  if (word.form == SizeWord::Form::letter)
    return named_on_ladder(sizes, word, "letter", std::string(1, word.letter), tool);
  if (word.length < tool.smallest || word.length > tool.largest) {
    const auto meant = word.bare ? guesses(sizes, word, tool) : std::vector<std::string>{};
    const std::string range = "they run from " + print_length_with_unit(tool.smallest, UnitSystem::metric) + " to " +
                              print_length_with_unit(tool.largest, UnitSystem::metric);
    throw wrong_word(word.text,
                     "is no size of a " + std::string(tool.tool) +
                         (meant.empty() ? ": " + range : ": " + one_of(meant) + "? " + range),
                     meant, meant.empty() ? std::nullopt : std::optional(meant.front()));
  }
  const bool metric = word.text.find("mm") != std::string::npos;
  return {ladder_name(sizes, word.length, metric).value_or(word.text), word.length};
}

std::vector<const SizeRow*> sizes_same_as(std::span<const SizeRow> sizes, Length length) {
  std::vector<const SizeRow*> same;
  for (const auto& row : sizes)
    if (row.length() >= length - same_size_within && row.length() <= length + same_size_within) same.push_back(&row);
  return same;
}

std::vector<const SizeRow*> sizes_below(std::span<const SizeRow> sizes, Length length, std::size_t count) {
  std::vector<const SizeRow*> below;
  for (auto row = sizes.rbegin(); row != sizes.rend() && below.size() < count; ++row)
    if (row->length() < length - same_size_within) below.push_back(&*row);
  return below;
}

std::vector<const SizeRow*> sizes_above(std::span<const SizeRow> sizes, Length length, std::size_t count) {
  std::vector<const SizeRow*> above;
  for (auto row = sizes.begin(); row != sizes.end() && above.size() < count; ++row)
    if (row->length() > length + same_size_within) above.push_back(&*row);
  return above;
}

} // namespace quillside
