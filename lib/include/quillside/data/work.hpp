#pragma once
// What is being cut: a material, as typed, with its condition or hardness.

#include <optional>
#include <string>
#include <vector>

#include <quillside/data/tables.hpp>
#include <quillside/words/typed.hpp>

namespace quillside {

struct Work {
  const Material* material = nullptr;
  std::string_view condition;       // one of `conditions`; empty: none named
  std::optional<Hardness> hardness; // named instead of a condition
};

/// `416`, `416@annealed`, `416@28HRC`; a key or an alias, in either case.
/// Throws a Fault with a suggestion for an unknown material, and one that lists what the material has for an unknown
/// condition.
Work read_work(const Tables& tables, std::string_view text);

/// `416,304@annealed,brass`: a list of them. A family named without a condition stands for all of its grades, in the
/// order of the tables. What is named twice is taken once.
/// Throws as read_work, and for a list that names none.
std::vector<Typed<Work>> read_works(const Tables& tables, std::string_view list);

/// The material itself, then its family, its family's family and so on: the most specific first.
std::vector<const Material*> chain_of(const Tables& tables, const Material& material);

/// The materials whose rows answer for this one: its layers, or itself.
std::vector<const Material*> layers_of(const Tables& tables, const Material& material);

} // namespace quillside
