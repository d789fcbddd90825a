#include <quillside/data/sign.hpp>

#include <algorithm>
#include <cctype>

namespace quillside {

namespace {

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words(1);
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte >= 128 || std::isalnum(byte) != 0)
      words.back() += static_cast<char>(std::tolower(byte));
    else if (!words.back().empty())
      words.emplace_back();
  }
  if (words.back().empty()) words.pop_back();
  return words;
}

/// `corner` begins corners; a beginning of one or two letters would begin everything.
bool names(const std::string& word, const std::string& wanted) {
  return word == wanted || (wanted.size() >= 3 && word.starts_with(wanted)) ||
         (word.size() >= 4 && wanted.starts_with(word) && wanted.size() <= word.size() + 2);
}

bool any_names(const std::vector<std::string>& words, const std::string& wanted) {
  return std::any_of(words.begin(), words.end(), [&](const std::string& word) { return names(word, wanted); });
}

/// How well a row holds the words; -1 when it lacks one.
int rank(const Sign& row, const std::vector<std::string>& wanted) {
  const auto in_sign = words_of(row.sign);
  std::vector<std::string> elsewhere = words_of(row.cause);
  for (const auto word : row.words)
    for (auto& one : words_of(word)) elsewhere.push_back(std::move(one));
  int total = 0;
  for (const auto& word : wanted) {
    if (any_names(in_sign, word))
      total += 3;
    else if (any_names(elsewhere, word))
      total += 1;
    else if (!names(std::string(row.tool), word))
      return -1;
  }
  return total;
}

} // namespace

std::vector<const Sign*> find_signs(std::span<const Sign> signs, const std::vector<std::string>& words) {
  std::vector<std::string> wanted;
  for (const auto& word : words)
    for (auto& one : words_of(word)) wanted.push_back(std::move(one));
  std::vector<std::pair<int, const Sign*>> found;
  for (const auto& row : signs)
    if (const int how_well = rank(row, wanted); how_well >= 0) found.emplace_back(how_well, &row);
  std::stable_sort(found.begin(), found.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
  std::vector<const Sign*> rows;
  for (const auto& [how_well, row] : found) rows.push_back(row);
  return rows;
}

} // namespace quillside
