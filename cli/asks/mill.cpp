#include <quillside/job/mill.hpp>

#include "asks.hpp"

namespace quillside::cli {

Reply ask_mill(const Call& call, const Session& session) {
  MillQuestion question{session.size(call.words[0], mill_sizes), session.material(call.words[1]),
                        session.cutter(call, "mill")};
  question.machine = session.machine(call, {"mill"});
  if (const auto flutes = call.flag("flutes"))
    question.flutes = {read_count(*flutes, "number of flutes", 1, 12), flutes};
  question.width = session.length(call, "width");
  question.dial = session.length(call, "dial");
  return {mill(session.tables(), question)};
}

} // namespace quillside::cli
