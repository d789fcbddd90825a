#pragma once
// An answer as lines for a person, each with its part: what a terminal prints and a card draws are the same lines.

#include <string>
#include <vector>

#include <quillside/answer/answer.hpp>
#include <quillside/words/read.hpp>

namespace quillside {

/// What a line is to its reader.
enum class Part {
  headline, // the number to dial in, or DO NOT and why
  basis,    // what that number rests on
  reason,   // why it is no plain yes, and what to do instead
  line,     // what else to set, and what follows
  step,     // one of an order of work, to be ticked off
  danger,
  care,
  note,
  taken, // what was taken for granted
  from   // where the figures were published
};
/// Its name in one word, as documents carry it.
const char* name_of(Part part);

struct Line {
  Part part = Part::line;
  std::string text;               // without a line end
  std::vector<std::string> cells; // of a line that stands in columns with its neighbours; empty for any other
  std::string number;             // of the headline: what tall digits show; empty when there is none
};

/// Every line of the answer in the order it is read. The steps of `why` are not among them.
std::vector<Line> lines(const Answer& answer, UnitSystem units);

} // namespace quillside
