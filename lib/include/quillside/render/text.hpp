#pragma once
// Answers for a person: the number to dial in first, what it rests on below it, then the rest, the cautions, what was
// taken for granted. Rounded as words/print says; JSON is not.

#include <string>

#include <quillside/answer/answer.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/read.hpp>

namespace quillside {

struct TextStyle {
  UnitSystem units = UnitSystem::inch;
  bool why = false;   // every step with its formula and source
  bool large = false; // the first number in tall digits
  bool bold = false;  // on a terminal that shows it; never needed
};

/// Lines, each with its end.
std::string text(const Answer& answer, const TextStyle& style);

/// "quillside: ASK: MESSAGE", without an end; for table faults one line each.
std::string text(const Fault& fault, const std::string& ask);

} // namespace quillside
