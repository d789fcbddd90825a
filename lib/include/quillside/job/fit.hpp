#pragma once
// A part in a slot: how tight it is by class or by an allowance, what heating the plate gains, how hot it may get.
// The slot is in the material that is asked about, and only that is heated; the part goes in cold.
// Leaves out: pressing force, pressure and yielding; a plate that is not of one temperature; a slot that is out of
// square or rough.

#include <optional>
#include <string>

#include <quillside/answer/answer.hpp>
#include <quillside/data/work.hpp>

namespace quillside {

struct FitQuestion {
  Typed<Work> material;                             // of the plate with the slot
  std::optional<Typed<Reading<Length>>> part;       // measured thickness of the part
  std::optional<Typed<Reading<Length>>> part_width; // its other way
  // One of the three, else push, as for a slot:
  std::optional<Typed<Length>> interference;
  std::optional<Typed<Length>> clearance;
  std::optional<Typed<std::string>> fit;      // a name, a class
  std::optional<Typed<Work>> to;              // the metal of the part
  std::optional<Typed<Temperature>> tempered; // at which part or plate was tempered
  std::optional<Typed<Temperature>> heat;     // what the plate is heated to; absent: what the fit wants
};

/// Interference, gain and hot clearance are over the thickness; over the width where no thickness is given.
/// Throws a Fault: `word` for a reading that is none, a fit that is none, a temperature that is no heat, no reading at
/// all; `conflict` where two say how tight it is.
Answer fit(const Tables& tables, const FitQuestion& question);

} // namespace quillside
