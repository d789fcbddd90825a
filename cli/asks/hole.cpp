#include <quillside/job/hole.hpp>
#include <quillside/words/fault.hpp>

#include "asks.hpp"
#include "choices.hpp"

namespace quillside::cli {

namespace {

constexpr Choices<HoleKind, 5> kinds{
    "kind of hole",
    {"pin", "ream", "tap", "clear", "countersink"},
    {HoleKind::pin, HoleKind::ream, HoleKind::tap, HoleKind::clear, HoleKind::countersink}};

Screw size_of(const Session& session, HoleKind kind, const std::string& word) {
  const bool round = kind == HoleKind::pin || kind == HoleKind::ream;
  return round ? read_round(session.tables(), word, session.units(), reamer_sizes)
               : read_screw(session.tables(), word, session.units());
}

} // namespace

Reply ask_hole(const Call& call, const Session& session) {
  const HoleKind kind = kinds.read(call.words[0]);
  HoleQuestion question{
      {kind, call.words[0]}, {size_of(session, kind, call.words[1]), call.words[1]}, session.cutter(call, "drill")};
  if (call.words.size() > 2) question.material = session.material(call.words[2]);
  question.machine = session.machine(call, drilled_on);
  question.thick = session.reading(call, "thick");
  if (const auto thread = call.flag("thread"))
    question.thread = Typed<const ScrewThread*>{&read_thread(session.tables(), *thread), thread};
  if (const auto percent = call.flag("engagement"))
    question.engagement = Typed<double>{read_percent(*percent, "percentage of thread"), percent};
  question.head = session.length(call, "head");
  question.cone = session.angle(call, "cone");
  return {hole(session.tables(), question)};
}

} // namespace quillside::cli
