#pragma once
// Flags whose value is one of a few words.

#include <algorithm>
#include <array>
#include <optional>

#include <quillside/job/point.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/suggest.hpp>

#include "asks.hpp"

namespace quillside::cli {

template <class T, std::size_t count> struct Choices {
  std::string_view what; // as messages call it
  std::array<std::string_view, count> words;
  std::array<T, count> values;

  [[nodiscard]] T read(const std::string& word) const {
    const auto found = std::find(words.begin(), words.end(), word);
    if (found != words.end()) return values[static_cast<std::size_t>(found - words.begin())];
    const std::vector<std::string_view> all(words.begin(), words.end());
    std::string list;
    for (const auto one : all) list += (list.empty() ? "" : ", ") + std::string(one);
    const auto nearest = nearest_word(word, all);
    throw wrong_word(
        word, "is no " + std::string(what) + (nearest ? "; '" + *nearest + "' is meant?" : ";") + " allowed: " + list,
        {words.begin(), words.end()}, nearest);
  }
};

inline constexpr Choices<GrindingWay, 3> ways{"way of grinding",
                                              {"two-facet", "four-facet", "cone"},
                                              {GrindingWay::two_facet, GrindingWay::four_facet, GrindingWay::cone}};

template <class T, std::size_t count>
std::optional<Typed<T>> choice(const Call& call, std::string_view flag, const Choices<T, count>& choices) {
  const auto word = call.flag(flag);
  if (!word) return std::nullopt;
  return Typed<T>{choices.read(*word), word};
}

} // namespace quillside::cli
