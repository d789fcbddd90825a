#pragma once
// What somebody meant to type.

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace quillside {

/// Insertions, deletions, exchanges and swaps of neighbours that turn one word into the other, no letter being edited
/// twice (optimal string alignment); case does not count.
std::size_t edit_distance(std::string_view a, std::string_view b);

/// The nearest of \p candidates that is at most 3 edits, and at most a third of the longer word (or 1 edit), away.
/// Nothing for a word of over 64 letters.
std::optional<std::string> nearest_word(std::string_view word, std::span<const std::string_view> candidates);

} // namespace quillside
