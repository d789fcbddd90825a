#include <quillside/job/fit.hpp>

#include "asks.hpp"

namespace quillside::cli {

Reply ask_fit(const Call& call, const Session& session) {
  FitQuestion question;
  question.material = session.material(call.words[0]);
  question.part = session.reading(call, "part");
  question.part_width = session.reading(call, "part-width");
  question.interference = session.length(call, "interference");
  question.clearance = session.length(call, "clearance");
  if (const auto fit = call.flag("fit")) question.fit = Typed<std::string>{*fit, fit};
  if (const auto to = call.flag("to")) question.to = session.material(*to);
  const auto heat = [&](std::string_view flag) -> std::optional<Typed<Temperature>> {
    const auto word = call.flag(flag);
    if (!word) return std::nullopt;
    return Typed<Temperature>{read_temperature(*word), word};
  };
  question.tempered = heat("tempered");
  question.heat = heat("heat");
  return {fit(session.tables(), question)};
}

} // namespace quillside::cli
