#include <quillside/job/signs.hpp>

#include <algorithm>
#include <set>

#include <quillside/words/fault.hpp>
#include <quillside/words/suggest.hpp>

#include "telling.hpp"

namespace quillside {

namespace {

/// Every word that finds something, for a suggestion.
std::set<std::string, std::less<>> vocabulary(const Tables& tables) {
  std::set<std::string, std::less<>> words;
  const auto take = [&](std::string_view text) {
    while (!text.empty()) {
      const auto end = std::min(text.find_first_of(" ,;:()/"), text.size());
      if (end > 2) words.emplace(text.substr(0, end));
      text.remove_prefix(std::min(end + 1, text.size()));
    }
  };
  for (const auto& row : tables.signs) {
    take(row.sign);
    take(row.tool);
    for (const auto word : row.words) take(word);
  }
  return words;
}

[[noreturn]] void none_found(const Tables& tables, const std::vector<std::string>& words) {
  const auto known = vocabulary(tables);
  const std::vector<std::string_view> views(known.begin(), known.end());
  std::string typed;
  std::string better;
  bool mended = false;
  for (const auto& word : words) {
    const bool finds = !find_signs(tables.signs, {word}).empty();
    const auto nearest = finds ? std::nullopt : nearest_word(word, views);
    typed += (typed.empty() ? "" : " ") + word;
    if (finds || nearest) better += (better.empty() ? "" : " ") + nearest.value_or(word);
    mended = mended || nearest.has_value();
  }
  const bool helps = mended && !find_signs(tables.signs, {better}).empty();
  throw wrong_word(typed,
                   std::string("is no sign in the tables") + (helps ? "; '" + better + "' is meant?" : "") +
                       "; fewer words find more: corners, lips, web, chip, hole, squeal, burr, wheel",
                   {"corners", "lips", "web", "chip", "hole", "squeal", "burr", "wheel"},
                   helps ? std::optional(better) : std::nullopt);
}

} // namespace

Answer signs(const Tables& tables, const std::vector<std::string>& words) {
  const auto found = find_signs(tables.signs, words);
  if (found.empty()) none_found(tables, words);
  Answer answer("signs");
  Telling telling(tables, answer, nullptr, {});
  if (!words.empty()) {
    std::string typed;
    for (const auto& word : words) typed += (typed.empty() ? "" : " ") + word;
    answer.inputs.push_back({"words", std::vector<Value>(words.begin(), words.end()), typed});
  }
  std::vector<Value> rows;
  for (const auto* row : found) {
    rows.emplace_back(std::vector<Member>{
        {"sign", row->sign}, {"tool", row->tool}, {"cause", row->cause}, {"set", row->set}, {"source", row->source}});
    telling.because_of_row(std::string(row->sign), std::string(row->cause), Value(row->set), row->source);
  }
  answer.found(key::rows, std::move(rows));
  telling.cautions({});
  return answer;
}

} // namespace quillside
