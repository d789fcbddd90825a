#include <quillside/job/notch.hpp>

#include "asks.hpp"

namespace quillside::cli {

Reply ask_notch(const Call& call, const Session& session) {
  const auto figure = [&](std::size_t at) { return Typed<Figure>{read_figure(call.words[at]), call.words[at]}; };
  return {notch(session.tables(), {figure(0), figure(1)})};
}

} // namespace quillside::cli
