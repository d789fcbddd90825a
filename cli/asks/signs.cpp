#include <quillside/job/signs.hpp>

#include "asks.hpp"

namespace quillside::cli {

Reply ask_signs(const Call& call, const Session& session) { return {signs(session.tables(), call.words)}; }

} // namespace quillside::cli
