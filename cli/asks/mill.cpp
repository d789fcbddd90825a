#include <quillside/job/mill.hpp>
#include <quillside/job/mill_depths.hpp>

#include "../picture.hpp"
#include "asks.hpp"

namespace quillside::cli {

Reply ask_mill(const Call& call, const Session& session) {
  MillQuestion question{session.size(call.words[0], mill_sizes), session.material(call.words[1]),
                        session.cutter(call, "mill")};
  question.machine = session.machine(call, milled_on);
  if (const auto flutes = call.flag("flutes"))
    question.flutes = {read_count(*flutes, "number of flutes", 1, 12), flutes};
  question.width = session.length(call, "width");
  question.dial = session.length(call, "dial");
  question.overhang = session.length(call, "overhang");
  question.flute_length = session.length(call, "flute-length");
  if (const auto shank = call.flag("shank"))
    question.shank = Typed<Length>{session.size(*shank, mill_shank_sizes).value.length, shank};
  question.depth = session.length(call, "depth");
  question.wall_allow = session.length(call, "wall-allow");
  question.runout = session.length(call, "runout");
  question.helix = session.angle(call, "helix");
  question.climb = call.has("climb");
  Reply reply{mill(session.tables(), question)};
  if (has_picture(call)) reply.more = mill_depths(session.tables(), question);
  return reply;
}

} // namespace quillside::cli
