#pragma once
// Which rows answer for heat: how a metal grows up to a temperature, what colour it has then, how hot it may get.

#include <vector>

#include <quillside/data/work.hpp>
#include <quillside/quantity/spread.hpp>

namespace quillside {

/// Mean expansion from the room up to a temperature.
struct ExpansionChoice {
  Spread<Expansion> mean;
  std::vector<const ExpansionRow*> rows; // one, or the two it lies between
};
/// The most specific material's rows: between two in proportion to the degrees they reach to, beyond the ends the end
/// row's. One printed figure is off by the limit `expansion_doubt` either way; a range is its own doubt. No rows: a
/// Fault of the kind `data`.
ExpansionChoice choose_expansion(const Tables& tables, const Work& work, Temperature hot);

/// The last colour that such a metal has taken at that temperature; null where it has none yet, or no row.
const OxideColour* colour_at(const Tables& tables, std::string_view metal, Temperature heat);
/// The first colour that such a metal takes; null where no row tells of any.
const OxideColour* first_colour(const Tables& tables, std::string_view metal);

/// The ceiling that binds this metal: of the most specific material's rows that hold, the lowest; null where none
/// does. \param temper_named the temper of a hardened part is known: rows `until_tempered` hold no longer. They hold
/// for a metal named tempered, or by a Rockwell C number, or in no condition at all (then only those that name none).
const HeatCeiling* choose_ceiling(const Tables& tables, const Work& work, bool temper_named);

} // namespace quillside
