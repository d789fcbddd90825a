#pragma once
// What every view on the sheet of a slot shares: what is drawn and how large, letters and pens, figures, remarks.

#include <string>

#include <quillside/page/canvas.hpp>
#include <quillside/words/print.hpp>

#include "scale.hpp"
#include "slot_seen.hpp"

namespace quillside::page::card_slot {

inline constexpr Lettering title{mm(3), Weight::bold};
inline constexpr Lettering words{mm(2.2)};
inline constexpr Lettering figures{mm(2.5), Weight::bold};
inline constexpr Pen bold{mm(0.5)};
inline constexpr Pen plain{mm(0.25)};
inline constexpr Pen thin{mm(0.18)};
inline constexpr Pen middle_line{mm(0.18), 0, true};
inline constexpr Pen hidden{mm(0.25), 0, true};

inline constexpr Length to_figures = mm(22); // at the right of a view of the plate, for its widths

struct Scales {
  Scale view; // of the plate
  Scale section;
  Scale cutter;
  Scale offset; // that of the cutter, unless it could not be seen
};
/// \param width of the sheet
Scales scales_of(const SlotSeen& slot, Length width);

struct SlotSheet {
  Canvas& canvas;
  const SlotSeen& slot;
  UnitSystem units;
  Scales scales;

  /// Without its unit, which the head of the sheet names once.
  [[nodiscard]] std::string print(Length length) const;
};

/// Lines of words from the top of a box down, however many. Gives where the next would begin.
Length note(Canvas& canvas, const Box& box, const std::string& text, const Lettering& lettering = words);

/// The middle of a hole, or where the cutter stands.
void cross(Canvas& canvas, Spot at);

} // namespace quillside::page::card_slot
