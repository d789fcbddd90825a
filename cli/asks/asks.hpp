#pragma once
// From the words of a call to the question of a job. One file an ask; nothing here computes.

#include <array>
#include <string_view>
#include <vector>

#include <quillside/answer/answer.hpp>
#include <quillside/data/load.hpp>

#include "../session.hpp"

namespace quillside::cli {

/// An answer, and the faults of the files that `tables check` looked through.
struct Reply {
  Answer answer;
  std::vector<TableFault> faults = {};
  std::vector<Answer> more = {}; // the same question at other figures, for a picture that shows more than one
};

/// What an ask is done on: the kinds of which a usual machine of the settings is taken.
inline constexpr std::array<std::string_view, 2> drilled_on{"drill-press", "mill"};
inline constexpr std::array<std::string_view, 1> milled_on{"mill"};
inline constexpr std::array<std::string_view, 3> burred_on{"flexible-shaft", "hand-tool", "air-grinder"};

Reply ask_drill(const Call& call, const Session& session);
Reply ask_mill(const Call& call, const Session& session);
Reply ask_burr(const Call& call, const Session& session);
Reply ask_point(const Call& call, const Session& session);
Reply ask_gauge(const Call& call, const Session& session);
Reply ask_grind(const Call& call, const Session& session);
Reply ask_fit(const Call& call, const Session& session);
Reply ask_hole(const Call& call, const Session& session);
Reply ask_notch(const Call& call, const Session& session);
Reply ask_signs(const Call& call, const Session& session);
Reply ask_size(const Call& call, const Session& session);
Reply ask_slot(const Call& call, const Session& session);
Reply ask_chart(const Call& call, const Session& session);
Reply ask_tables(const Call& call, const Session& session);

} // namespace quillside::cli
