#pragma once
// A size in inch and mm, and its neighbours in the drill ladder.

#include <optional>

#include <quillside/answer/answer.hpp>
#include <quillside/data/tables.hpp>

namespace quillside {

struct SizeQuestion {
  Typed<NamedSize> size;
  std::optional<Typed<Length>> over = {};  // the nearest sizes at least this much larger
  std::optional<Typed<Length>> under = {}; // the nearest sizes at least this much smaller
};

/// Anything a drill of the ladder, a pin or a caliper measures: above 0, at most 300 mm.
inline constexpr ToolSizes any_sizes{"tool", mm(0.001), mm(300)};

/// Throws a Fault of the kind `conflict` when --under leaves nothing.
Answer size(const Tables& tables, const SizeQuestion& question);

} // namespace quillside
