#pragma once
// What a drawing wants out of an answer: its inputs, typed or taken for granted, and members of its objects.

#include <optional>
#include <string_view>
#include <vector>

#include <quillside/answer/answer.hpp>

namespace quillside::page {

using Members = std::vector<Member>;
using Values = std::vector<Value>;

/// The input's quantity; null when it was not given nor taken, or is no quantity.
const Measure* input_measure(const Answer& answer, std::string_view name);
/// Nothing when there is no such input, or it is no length.
std::optional<Length> length_asked(const Answer& answer, std::string_view name);

/// Nothing when there is no such member, or it is no quantity.
std::optional<Length> length_if_any(const Members& members, std::string_view name);

// Of what is there in every answer that is drawn: std::runtime_error names the quantity that is not.

Angle angle_in(const Members& members, std::string_view name);
Length length_in(const Members& members, std::string_view name);
/// Of an object. \param value holds one
const Members& members_of(const Value& value);
/// Of the object that is a member. \param name of one that is there
const Members& members_in(const Members& members, std::string_view name);

} // namespace quillside::page
