#pragma once
// What somebody meant to type.

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace quillside {

/// Fewest insertions, deletions, exchanges and swaps of neighbours that turn one word into the other; case does not
/// count.
std::size_t edit_distance(std::string_view a, std::string_view b);

/// The nearest of \p candidates, if it is at most 3 edits and at most a third of the longer word away (always at least
/// 1).
std::optional<std::string> nearest_word(std::string_view word, std::span<const std::string_view> candidates);

} // namespace quillside
