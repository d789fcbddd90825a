#pragma once
// The metals: grades, and the families that answer when a grade has no row of its own.

#include <array>

#include <quillside/data/row.hpp>

namespace quillside {

struct Material {
  std::string_view key;
  std::string_view name;
  std::string_view metal;  // one of `metals`
  std::string_view family; // key of the less specific material; empty at the top
  Words aliases;
  bool group = false; // a family, no grade of its own
  Words layers;       // of a layered metal: the slowest layer answers
  std::string_view source;
  RowPlace place;
};

inline constexpr std::array<std::string_view, 13> metals{"austenitic-stainless",
                                                         "ferritic-stainless",
                                                         "martensitic-stainless",
                                                         "precipitation-hardening-stainless",
                                                         "carbon-steel",
                                                         "alloy-steel",
                                                         "tool-steel",
                                                         "brass",
                                                         "nickel-silver",
                                                         "bronze",
                                                         "copper",
                                                         "aluminium",
                                                         "titanium"};

inline constexpr std::array<std::string_view, 7> conditions{"annealed", "hot-rolled",       "normalized", "cold-drawn",
                                                            "tempered", "solution-treated", "aged"};

} // namespace quillside
