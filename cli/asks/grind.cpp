#include <quillside/job/grind.hpp>

#include "choices.hpp"

namespace quillside::cli {

namespace {

std::optional<Typed<SpindleSpeed>> speed_of(const Call& call, std::string_view flag) {
  const auto word = call.flag(flag);
  if (!word) return std::nullopt;
  return Typed<SpindleSpeed>{read_spindle_speed(*word), word};
}

} // namespace

Reply ask_grind(const Call& call, const Session& session) {
  GrindQuestion question{.size = session.size(call.words[0], judged_drills)};
  if (call.words.size() > 1) question.material = session.material(call.words[1]);
  question.way = choice(call, "way", ways);
  question.angle = session.angle(call, "angle");
  question.relief = session.angle(call, "relief");
  question.chisel = session.angle(call, "chisel");
  question.web = session.reading(call, "web");
  question.second_relief = session.angle(call, "second-relief");
  question.flute_angle = session.angle(call, "flute-angle");
  question.cone_half_angle = session.angle(call, "cone-half-angle");
  question.land = session.angle(call, "land");
  question.land_wear = session.reading(call, "land-wear");
  question.margin_wear = session.reading(call, "margin-wear");
  question.hold = {.fence = session.angle(call, "fence"),
                   .table_tilt = session.angle(call, "table-tilt"),
                   .swing = session.angle(call, "swing"),
                   .tilt = session.angle(call, "tilt"),
                   .roll = session.angle(call, "roll")};
  question.wheel = {.diameter = session.length(call, "wheel"),
                    .speed = speed_of(call, "wheel-speed"),
                    .marked = speed_of(call, "wheel-marked")};
  return {grind(session.tables(), question)};
}

} // namespace quillside::cli
