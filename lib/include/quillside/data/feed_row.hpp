#pragma once
// Feeds as tables print them: drills by the turn, end mills by the tooth.

#include <quillside/data/row.hpp>

namespace quillside {

/// A feed per turn, or a share of the diameter per turn, for drills of a range of sizes: the low end belongs to it, the
/// high end does not.
struct DrillingFeed {
  std::string_view material; // empty: any
  std::string_view cutter;   // empty: any
  Printed<Length> diameter;
  Printed<FeedPerRev> feed; // this,
  Printed<double> share;    // or this
  std::string_view source;
  RowPlace place;
};

/// One printed point of a chip-load table.
struct ChipPoint {
  Length diameter;
  Range<FeedPerTooth> load;
};

/// Chip loads of one material and cutter: printed points by diameter, or a share of the diameter.
struct ChipLoad {
  std::string_view material;
  std::string_view cutter;
  std::span<const ChipPoint> points; // in order of diameter
  Printed<Length> diameter;          // the range a share holds for
  Printed<double> share;
  Printed<double> first; // of the share: where to begin
  Printed<double> slot;  // what the page multiplies by in a full slot
  std::string_view source;
  RowPlace place;
};

} // namespace quillside
