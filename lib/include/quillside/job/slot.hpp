#pragma once
// A slot to fit a measured part: the width to aim for, the row of holes and the pocket from the back, the passes from
// the front, how far the table goes each side, and what to do at the corners. Asked again with the first cut measured,
// it plans what is left. Speeds, feeds and depths are those of `drill`, `mill` and `burr` for the same tools.
// Leaves out: laying out and squaring the plate; the lift of a cutter in a collet; a slot that is not straight.

#include <optional>
#include <string>

#include <quillside/answer/answer.hpp>
#include <quillside/data/choose.hpp>
#include <quillside/words/read.hpp>

namespace quillside {

/// Ends of the slot: filed square, or so long that round ends clear the part.
enum class SlotEnds { filed, clear };

struct SlotQuestion {
  Typed<Work> material;        // of the plate
  Typed<Reading<Length>> part; // its thickness, as measured
  Typed<const Cutter*> cutter; // of the end mills; never null
  std::optional<Typed<const Machine*>> machine = {};
  std::optional<Typed<Reading<Length>>> part_width = {}; // along the slot
  std::optional<Typed<Length>> length = {};              // of the slot; absent: what the part's width wants
  Typed<SlotEnds> ends{SlotEnds::filed, std::nullopt};
  std::optional<Typed<Reading<Length>>> thick = {};     // of the plate
  std::optional<Typed<Length>> leave = {};              // left at the front under the pocket; needs thick
  std::optional<Typed<Length>> pocket_width = {};       // needs thick
  std::optional<Typed<NamedSize>> cutter_size = {};     // of the slot; absent: chosen of what is sold
  std::optional<Typed<Reading<Length>>> cut_width = {}; // what the first cut measured
  // How the part sits; at most one. Absent: a push fit.
  std::optional<Typed<std::string>> fit = {}; // a name or a class, as data/choose_fit knows them
  std::optional<Typed<Length>> clearance = {};
  std::optional<Typed<Length>> interference = {};
  UnitSystem stock = UnitSystem::inch; // of the cutters that are chosen
};

/// Throws a Fault of the kind `conflict` where the flags contradict each other, of the kind `word` for a fit that no
/// row reaches. A slot that cannot be cut as asked is answered with `do not` and the reason.
Answer slot(const Tables& tables, const SlotQuestion& question);

} // namespace quillside
