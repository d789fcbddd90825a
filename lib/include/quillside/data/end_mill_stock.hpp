#pragma once
// The sizes that small end mills are commonly sold in: what a plan may choose from when nobody names a cutter.

#include <array>
#include <optional>

#include <quillside/data/row.hpp>

namespace quillside {

/// Evenly spaced sizes.
struct EndMillStock {
  std::string_view key;
  std::string_view units; // one of `stock_units`: what the sizes are named in
  Printed<Length> sizes;  // smallest to largest
  Printed<Length> step;   // from one to the next
  std::string_view source;
  RowPlace place;
};
inline constexpr std::array<std::string_view, 2> stock_units{"inch", "metric"};

/// A size of one of the rows.
struct StockSize {
  Length size;
  const EndMillStock* row = nullptr; // never null
};
/// The largest at or under \p length, the smallest at or over it; nothing where no row of those units reaches.
std::optional<StockSize> stock_at_or_under(std::span<const EndMillStock> stock, UnitSystem units, Length length);
std::optional<StockSize> stock_at_or_over(std::span<const EndMillStock> stock, UnitSystem units, Length length);

} // namespace quillside
