#pragma once
// Which sheets for a grinder's rest a set-up has, one a hold, and what each says: the swing and tilt as asked, a fence
// on a table that tilts, a wedge, a level rest.

#include <string>
#include <vector>

#include <quillside/answer/answer.hpp>
#include <quillside/words/print.hpp>

#include "card_grind_sheet.hpp"

namespace quillside::page::card_grind {

/// To be sawn; its thick end belongs to the disk.
struct Wedge {
  std::string title;
  Angle tilt{};
};

/// One hold, on a sheet of its own.
struct RestSheet {
  SheetWords words;
  Angle swing{}; // drill to disk; of a fence in the plane of the table
  bool fence = false;
  std::vector<Wedge> wedges = {};
  Angle roll{};
};

/// Of an answer that sets facets.
std::vector<RestSheet> rest_sheets(const Answer& answer, UnitSystem units);

} // namespace quillside::page::card_grind
