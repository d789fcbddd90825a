#pragma once
// A length out of the inputs of an answer: typed, or taken for granted.

#include <optional>
#include <string_view>

#include <quillside/answer/answer.hpp>

namespace quillside::page {

/// Nothing when there is no such input, or it is no length.
inline std::optional<Length> length_asked(const Answer& answer, std::string_view name) {
  const Input* input = find_input(answer, name);
  const auto* measure = input == nullptr ? nullptr : std::get_if<Measure>(&input->value.held);
  if (measure == nullptr || std::string_view(measure->unit) != "mm") return std::nullopt;
  return mm(measure->value);
}

} // namespace quillside::page
