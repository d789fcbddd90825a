#pragma once
// The picture that an ask is wanted as: which, where to, on what paper; and the document for the drawing program.

#include <optional>
#include <string>
#include <vector>

#include "asks/asks.hpp"
#include "console.hpp"
#include "session.hpp"

namespace quillside::cli {

struct PictureWanted {
  std::string kind;  // card, or the ask's own: chart, gauge
  std::string file;  // - is standard output
  std::string as;    // pdf, svg, png
  std::string paper; // one of data/paper
  UnitSystem units = UnitSystem::inch;
  std::string title; // the ask and its words
};

/// Whether the call names a file for one.
bool has_picture(const Call& call);

/// Nothing when no picture is wanted: no file, or `--as text`. Throws a Fault for an ending or a kind that there is
/// not, for `-` without `--as`, and for a flag of pictures where there is no picture.
std::optional<PictureWanted> picture_wanted(const Call& call, const Session& session);

/// The bytes of its file. \param words the command line without the program's name. Throws a Fault of the kind `file`
/// when there is no drawing program, or what it said.
std::string picture_of(const PictureWanted& wanted, const Reply& reply, const std::vector<std::string>& words,
                       const Console& console);

} // namespace quillside::cli
