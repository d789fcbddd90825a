#include <quillside/job/gauge.hpp>

#include "asks.hpp"

namespace quillside::cli {

namespace {

/// `118,135`.
std::optional<Typed<std::vector<Angle>>> angles_of(const Call& call) {
  const auto word = call.flag("angles");
  if (!word) return std::nullopt;
  Typed<std::vector<Angle>> angles{{}, word};
  for (std::size_t from = 0; from <= word->size();) {
    const std::size_t to = std::min(word->find(',', from), word->size());
    angles.value.push_back(read_angle(word->substr(from, to - from)));
    from = to + 1;
  }
  return angles;
}

} // namespace

Reply ask_gauge(const Call& call, const Session& session) {
  return {gauge(session.tables(), {.angles = angles_of(call),
                                   .table_tilt = session.angle(call, "table-tilt"),
                                   .paper = session.paper(call),
                                   .file = call.flag("out")})};
}

} // namespace quillside::cli
