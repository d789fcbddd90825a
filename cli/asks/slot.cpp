#include <quillside/job/mill.hpp>
#include <quillside/job/slot.hpp>

#include "choices.hpp"

namespace quillside::cli {

namespace {

constexpr Choices<SlotEnds, 2> ends{"way of ending a slot", {"filed", "clear"}, {SlotEnds::filed, SlotEnds::clear}};

/// Cutters are chosen in the language that the part was measured in.
UnitSystem language_of(const std::string& word, UnitSystem bare) {
  if (word.find("mm") != std::string::npos) return UnitSystem::metric;
  const bool inch = word.find("in") != std::string::npos || word.find("thou") != std::string::npos ||
                    word.find('/') != std::string::npos;
  return inch ? UnitSystem::inch : bare;
}

} // namespace

Reply ask_slot(const Call& call, const Session& session) {
  const auto part = session.reading(call, "part");
  if (!part)
    throw wrong_word("slot", "needs --part, the measured thickness of what goes in, as --part 0.118", {"--part L"});
  SlotQuestion question{session.material(call.words[0]), *part, session.cutter(call, "mill")};
  question.machine = session.machine(call, milled_on);
  question.part_width = session.reading(call, "part-width");
  question.length = session.length(call, "length");
  question.ends = choice(call, "ends", ends).value_or(question.ends);
  question.thick = session.reading(call, "thick");
  question.leave = session.length(call, "leave");
  question.pocket_width = session.length(call, "pocket-width");
  if (const auto size = call.flag("cutter-size")) question.cutter_size = session.size(*size, mill_sizes);
  question.cut_width = session.reading(call, "cut-width");
  if (const auto fit = call.flag("fit")) question.fit = Typed<std::string>{*fit, fit};
  question.clearance = session.length(call, "clearance");
  question.interference = session.length(call, "interference");
  question.stock = language_of(part->text.value_or(""), session.units());
  return {slot(session.tables(), question)};
}

} // namespace quillside::cli
