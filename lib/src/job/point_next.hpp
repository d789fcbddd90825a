#pragma once
// Which reading to take next: of those the bench has instruments for, the least trouble that would settle an item.
// Computed: each reading is made up at the value that the point as it is known would show, with its instrument's usual
// error, and the point is judged again with it.

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "point_judge.hpp"

namespace quillside {

/// The point judged anew with other readings, for every way that they allow.
using Rejudge = std::function<std::vector<JudgedPoint>(const PointReadings&)>;

struct NextReading {
  std::string_view item;  // what it settles
  std::string flag;       // as --lip-height; empty when nothing on the bench settles it
  std::string instrument; // its name, and how far it is off
  int trouble = 0;
  bool settles = true; // by itself; else it is only the first that is missing
};

/// The item that is to be settled first: one read but undecided, else one that `keep` still lacks; nothing when all is
/// settled.
std::optional<std::string_view> unsettled_item(const std::vector<JudgedPoint>& ways,
                                               const std::vector<PointCheck>& checks);

/// The cheapest reading that settles it. \p way_unknown: saying how the point was ground costs nothing, where that
/// does.
NextReading next_reading(const Tables& tables, const PointReadings& readings, const std::vector<JudgedPoint>& ways,
                         std::string_view item, bool way_unknown, const Rejudge& rejudge);

/// How the reading of a flag is taken, in a few words.
std::string_view how_to_read(std::string_view flag);

} // namespace quillside
