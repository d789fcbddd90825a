#include <quillside/data/end_mill_stock.hpp>

#include <cmath>

namespace quillside {

namespace {

// A length that is a size of the row but for rounding is that size.
constexpr double rounding = 1e-6;

bool named_in(const EndMillStock& row, UnitSystem units) {
  return row.units == (units == UnitSystem::inch ? stock_units[0] : stock_units[1]);
}

Length nth(const EndMillStock& row, double n) { return row.sizes.range.low + n * row.step.range.low; }

double last(const EndMillStock& row) {
  return std::floor((row.sizes.range.high - row.sizes.range.low) / row.step.range.low + rounding);
}

double steps_to(const EndMillStock& row, Length length) { return (length - row.sizes.range.low) / row.step.range.low; }

} // namespace

std::optional<StockSize> stock_at_or_under(std::span<const EndMillStock> stock, UnitSystem units, Length length) {
  std::optional<StockSize> best;
  for (const auto& row : stock) {
    const double n = std::min(std::floor(steps_to(row, length) + rounding), last(row));
    if (!named_in(row, units) || n < 0) continue;
    if (!best || nth(row, n) > best->size) best = StockSize{nth(row, n), &row};
  }
  return best;
}

std::optional<StockSize> stock_at_or_over(std::span<const EndMillStock> stock, UnitSystem units, Length length) {
  std::optional<StockSize> best;
  for (const auto& row : stock) {
    const double n = std::max(std::ceil(steps_to(row, length) - rounding), 0.0);
    if (!named_in(row, units) || n > last(row)) continue;
    if (!best || nth(row, n) < best->size) best = StockSize{nth(row, n), &row};
  }
  return best;
}

} // namespace quillside
