#include <quillside/job/size.hpp>

#include <quillside/words/fault.hpp>

#include "telling.hpp"

namespace quillside {

namespace {

constexpr std::size_t neighbours = 4;

Value listed(Telling& telling, const std::vector<const SizeRow*>& rows) {
  std::vector<Value> list;
  for (const auto* row : rows) {
    list.emplace_back(
        std::vector<Member>{{"name", row->name}, {"length", measure(row->length())}, {"kind", row->kind}});
    telling.because_of_row(std::string(row->name), std::string(row->size.text), measure(row->length()), row->source);
  }
  return list;
}

} // namespace

Answer size(const Tables& tables, const SizeQuestion& ask) {
  const Length length = ask.size.value.length;
  for (const auto& distance : {ask.over, ask.under})
    if (distance && !(distance->value > mm(0)))
      throw wrong_word(distance->text.value_or("0"), "is no distance to a neighbour: give more than 0");
  if (ask.under && !(ask.under->value < length))
    throw contradiction("--under", "--under " + ask.under->text.value_or("") + " is not less than the size itself, " +
                                       ask.size.text.value_or(ask.size.value.name));
  Answer answer("size");
  Telling telling(tables, answer, nullptr, {});
  answer.input("size", Typed<Length>{length, ask.size.text});
  if (ask.over) answer.input("over", *ask.over);
  if (ask.under) answer.input("under", *ask.under);

  answer.found(key::size, std::vector<Member>{{"name", ask.size.value.name}, {"length", measure(length)}});
  answer.found(key::same, listed(telling, sizes_same_as(tables.sizes, length)));
  // At least so much smaller or larger: a size at just that distance counts, so the search starts a hair on its near
  // side.
  const Length hair = 2.0 * same_size_within;
  answer.found(key::below,
               listed(telling, ask.under ? sizes_below(tables.sizes, length - ask.under->value + hair, neighbours)
                                         : sizes_below(tables.sizes, length, neighbours)));
  answer.found(key::above,
               listed(telling, ask.over ? sizes_above(tables.sizes, length + ask.over->value - hair, neighbours)
                                        : sizes_above(tables.sizes, length, neighbours)));
  return answer;
}

} // namespace quillside
