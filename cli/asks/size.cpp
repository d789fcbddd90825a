#include <quillside/job/size.hpp>

#include "asks.hpp"

namespace quillside::cli {

Reply ask_size(const Call& call, const Session& session) {
  SizeQuestion question{session.size(call.words[0], any_sizes)};
  question.over = session.length(call, "over");
  question.under = session.length(call, "under");
  return {size(session.tables(), question)};
}

} // namespace quillside::cli
