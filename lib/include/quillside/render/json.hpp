#pragma once
// Records for programs: one object an answer, the same members for every ask, numbers unrounded in fixed units.
// Written straight through: no document tree is built.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <quillside/answer/answer.hpp>
#include <quillside/render/lines.hpp>
#include <quillside/words/fault.hpp>

namespace quillside {

/// One line without its end. \p line is the line of a batch, from 1.
std::string json(const Answer& answer, std::optional<int> line);
/// The record of an ask that could not be answered. \p ask is empty when even that was not known.
std::string json(const Fault& fault, const std::string& ask, std::optional<int> line);
/// A list of objects: part, text, and where they say something, cells and number. For the drawing program.
std::string json(const std::vector<Line>& lines);
/// One text, quoted.
std::string json(std::string_view text);

} // namespace quillside
