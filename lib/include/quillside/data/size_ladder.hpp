#pragma once
// The drill ladder: number, letter, fraction and metric sizes in order, and what a typed size means on it.

#include <array>
#include <string>
#include <vector>

#include <quillside/data/row.hpp>

namespace quillside {

struct SizeRow {
  std::string_view kind; // one of `size_kinds`
  std::string_view name;
  Printed<Length> size;
  std::string_view source;
  RowPlace place;

  [[nodiscard]] Length length() const { return size.range.low; }
};

inline constexpr std::array<std::string_view, 4> size_kinds{"number", "letter", "fraction", "metric"};

/// A tool size with the name the trade calls it by.
struct NamedSize {
  std::string name; // as the ladder has it; else as typed
  Length length;
};

/// Resolves a typed size on the ladder; \p sizes in order of size.
/// Throws a Fault for a number or letter that has no row, for a bare number that no such tool has (it lists the
/// guesses), and for a size beyond \p smallest to \p largest.
struct ToolSizes {
  std::string_view tool; // noun for messages: drill, end mill, burr
  Length smallest;
  Length largest;
};
NamedSize resolve_size(std::span<const SizeRow> sizes, const SizeWord& word, const ToolSizes& tool);

/// How near two sizes are to be called the same: half of the last digit that number sizes are printed with (0.0001 in).
inline constexpr Length same_size_within = thou(0.05);

/// The rows of the same size as \p length.
std::vector<const SizeRow*> sizes_same_as(std::span<const SizeRow> sizes, Length length);
/// The \p count rows next below, the nearest first.
std::vector<const SizeRow*> sizes_below(std::span<const SizeRow> sizes, Length length, std::size_t count);
/// The \p count rows next above, the nearest first.
std::vector<const SizeRow*> sizes_above(std::span<const SizeRow> sizes, Length length, std::size_t count);

} // namespace quillside
