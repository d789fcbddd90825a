#pragma once
// How wide and how long the slot has to be, and how far what comes out may be off.

#include <optional>
#include <string>
#include <vector>

#include <quillside/data/size_ladder.hpp>
#include <quillside/job/slot.hpp>
#include <quillside/quantity/band.hpp>
#include <quillside/quantity/spread.hpp>

namespace quillside {

/// How tight a part sits: above zero tight, below zero clearance.
struct Tightness {
  Range<Length> interference;
  std::string fit;                       // as the rows have it; empty where an allowance was given
  std::string described;                 // for `why`
  std::vector<std::string_view> sources; // of the rows; empty where an allowance was given
};
/// \param size the measure that goes in
Tightness tightness(const Tables& tables, const SlotQuestion& question, Length size);

/// The opening that takes a part so: the middle of what the fit allows comes first.
Band<Length> opening(Length part, const Range<Length>& interference);

/// Ends hold nothing: a tight fit is tight at the walls only, and the ends are cut to the part.
Range<Length> at_the_ends(Range<Length> interference);

/// What decides how wide the slot comes out.
struct SlotAsCut {
  Spread<Length> first_cut;
  Length travel;      // wall to wall
  Length one_setting; // how far one setting of the table may be off, either way
};
/// Its width, nine times in ten. What the cutter's bend leaves after a spring pass is far under the error of a dial,
/// and left out.
Spread<Length> width_as_cut(const SlotAsCut& cut);

/// The larger side of a doubt.
Length half_width(const Spread<Length>& spread);

/// Drill shanks as gauges: the largest that has to go in, the smallest that must not.
struct ShankGauges {
  const SizeRow* goes = nullptr;      // null: no size of the ladder is so small
  const SizeRow* stays_out = nullptr; // null: none is so large
};
ShankGauges shank_gauges(const Tables& tables, const Band<Length>& width);

} // namespace quillside
