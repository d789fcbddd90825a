#include <quillside/job/drill.hpp>
#include <quillside/words/fault.hpp>

#include "asks.hpp"

namespace quillside::cli {

namespace {

std::optional<Typed<LeaveAt>> leave_at(const Call& call) {
  const auto word = call.flag("leave-at");
  if (!word) return std::nullopt;
  if (*word != "tip" && *word != "corner")
    throw wrong_word(*word, "is no place to measure from: tip or corner", {"tip", "corner"});
  return Typed<LeaveAt>{*word == "tip" ? LeaveAt::tip : LeaveAt::corner, word};
}

} // namespace

Reply ask_drill(const Call& call, const Session& session) {
  DrillQuestion question{session.size(call.words[0], drill_sizes), session.material(call.words[1]),
                         session.cutter(call, "drill")};
  question.machine = session.machine(call, drilled_on);
  question.thick = session.reading(call, "thick");
  question.leave = session.length(call, "leave");
  question.leave_at = leave_at(call);
  question.depth = session.length(call, "depth");
  question.through = call.has("through");
  question.point = session.angle(call, "point");
  question.dry = call.has("dry");
  question.web = session.length(call, "web");
  question.overhang = session.length(call, "overhang");
  question.lever = session.length(call, "lever");
  return {drill(session.tables(), question)};
}

} // namespace quillside::cli
