#pragma once
// What heat does to a metal: how it grows, what colour it takes in air, how hot it may get.

#include <quillside/data/row.hpp>

namespace quillside {

/// Mean expansion from the low end of `over` to its high end.
struct ExpansionRow {
  std::string_view material;
  Printed<Expansion> expansion; // a range where the table gives one for a family
  Printed<Temperature> over;
  std::string_view source;
  std::string_view note;
  RowPlace place;
};

/// The colour that a bright surface has taken once it was this hot.
struct OxideColour {
  Words metal; // as a material's `metal`
  Printed<Temperature> heat;
  std::string_view colour;
  std::string_view source;
  RowPlace place;
};

/// How hot a metal may get, and what is lost past it.
struct HeatCeiling {
  std::string_view material;
  std::string_view condition; // empty: any
  Printed<Temperature> ceiling;
  bool until_tempered = false; // of a hardened part whose temper nobody named
  std::string_view what;       // what is lost past it, in words
  std::string_view source;
  RowPlace place;
};

} // namespace quillside
