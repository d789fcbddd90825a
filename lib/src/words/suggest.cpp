#include <quillside/words/suggest.hpp>

#include <algorithm>
#include <vector>

namespace quillside {

namespace {
char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }
} // namespace

std::size_t edit_distance(std::string_view a, std::string_view b) {
  // Optimal string alignment (Damerau 1964, Wagner and Fischer 1974): three rows of the table are enough.
  std::vector<std::size_t> before(b.size() + 1);
  std::vector<std::size_t> last(b.size() + 1);
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const bool same = lower(a[i - 1]) == lower(b[j - 1]);
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + (same ? 0 : 1)});
      if (i > 1 && j > 1 && lower(a[i - 1]) == lower(b[j - 2]) && lower(a[i - 2]) == lower(b[j - 1]))
        row[j] = std::min(row[j], before[j - 2] + 1);
    }
    before.swap(last);
    last.swap(row);
  }
  return last[b.size()];
}

std::optional<std::string> nearest_word(std::string_view word, std::span<const std::string_view> candidates) {
  if (word.size() > 64) return std::nullopt;
  std::optional<std::string> nearest;
  std::size_t least = 4;
  for (const auto candidate : candidates) {
    const std::size_t third = std::max<std::size_t>(1, std::max(word.size(), candidate.size()) / 3);
    const std::size_t distance = edit_distance(word, candidate);
    if (distance < least && distance <= third && distance < candidate.size()) {
      least = distance;
      nearest = std::string(candidate);
    }
  }
  return nearest;
}

} // namespace quillside
