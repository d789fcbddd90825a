#include <quillside/job/burr.hpp>

#include "asks.hpp"

namespace quillside::cli {

Reply ask_burr(const Call& call, const Session& session) {
  BurrQuestion question{session.size(call.words[0], burr_sizes), session.material(call.words[1]),
                        session.cutter(call, "burr")};
  question.machine = session.machine(call, burred_on);
  if (const auto marked = call.flag("marked"))
    question.marked = Typed<SpindleSpeed>{read_spindle_speed(*marked), marked};
  if (const auto shank = call.flag("shank"))
    question.shank = Typed<Length>{session.size(*shank, shank_sizes).value.length, shank};
  question.overhang = session.length(call, "overhang");
  question.head_length = session.length(call, "head-length");
  if (const auto shape = call.flag("shape")) question.shape = {read_head_shape(*shape), shape};
  return {burr(session.tables(), question)};
}

} // namespace quillside::cli
