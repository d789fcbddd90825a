#pragma once
// A gauge from two regular figures laid flat to flat: its angle, and where the usual drill points show light in it.
// The light is computed for one drill, ground with two flats, with the web of the tables.
// Leaves out: a conical grind, whose crowned chisel edge shows a little less light under the tip.

#include <string>

#include <quillside/answer/answer.hpp>
#include <quillside/data/tables.hpp>

namespace quillside {

/// A regular figure of 3 to 12 sides; 0 sides is a flat plate.
struct Figure {
  int sides = 0;
};

/// `triangle` `square` `pentagon` `hex` `hexagon` ... `dodecagon`, `flat`, or the number of sides. Throws a Fault
/// otherwise.
Figure read_figure(std::string_view text);

struct NotchQuestion {
  Typed<Figure> figure;
  Typed<Figure> other;
};

/// Throws a Fault of the kind `conflict` for figures that leave no notch under 180 deg.
Answer notch(const Tables& tables, const NotchQuestion& question);

} // namespace quillside
