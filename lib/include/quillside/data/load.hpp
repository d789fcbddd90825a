#pragma once
// Table files from text: read, checked, and laid over the tables that are already there.
// Every fault of a file is found at once, each with its line and column; only a file that is no TOML at all ends at the
// first.

#include <string>
#include <vector>

#include <quillside/data/tables.hpp>
#include <quillside/words/fault.hpp>

namespace quillside {

struct TableFault {
  Place place;
  std::string what;    // what is wrong
  std::string allowed; // what would do; may be empty
};

struct Loaded {
  Tables tables; // of use only when there are no faults
  std::vector<TableFault> faults;
};

/// Lays the rows of \p texts over \p base; a later text goes over an earlier one. A row with the same kind, material,
/// condition, hardness and cutter (or the same key) replaces the one below it as a whole.
Loaded load_over(const Tables& base, const std::vector<TableText>& texts);

/// The same, throwing one Fault of the kind `data` that tells of all faults.
Tables load_or_fail(const Tables& base, const std::vector<TableText>& texts);

/// Largest table file that is read.
inline constexpr std::size_t largest_table_file = 1024UL * 1024UL;

} // namespace quillside
