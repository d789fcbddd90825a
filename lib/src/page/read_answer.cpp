#include "read_answer.hpp"

#include <stdexcept>
#include <string>

namespace quillside::page {

namespace {

const Measure& measure_in(const Members& members, std::string_view name) {
  const Measure* measure = find_measure(members, name);
  if (measure == nullptr) throw std::runtime_error{"an answer without its " + std::string(name)};
  return *measure;
}

} // namespace

const Measure* input_measure(const Answer& answer, std::string_view name) {
  const Input* input = find_input(answer, name);
  return input == nullptr ? nullptr : std::get_if<Measure>(&input->value.held);
}

std::optional<Length> length_asked(const Answer& answer, std::string_view name) {
  const Measure* measure = input_measure(answer, name);
  if (measure == nullptr || std::string_view(measure->unit) != "mm") return std::nullopt;
  return mm(measure->value);
}

std::optional<Length> length_if_any(const Members& members, std::string_view name) {
  const Measure* measure = find_measure(members, name);
  return measure == nullptr ? std::nullopt : std::optional(mm(measure->value));
}

Angle angle_in(const Members& members, std::string_view name) { return degrees(measure_in(members, name).value); }
Length length_in(const Members& members, std::string_view name) { return mm(measure_in(members, name).value); }

const Members& members_of(const Value& value) { return std::get<Members>(value.held); }

const Members& members_in(const Members& members, std::string_view name) { return members_of(*find(members, name)); }

} // namespace quillside::page
