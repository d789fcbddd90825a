#pragma once
// End milling: spindle speed, chip load, feed rate, the time of one handwheel turn.
// Leaves out: forces, bend and breaking of the cutter, so no depth of a pass is judged; run-out.

#include <optional>

#include <quillside/answer/answer.hpp>
#include <quillside/data/choose.hpp>

namespace quillside {

struct MillQuestion {
  Typed<NamedSize> size;
  Typed<Work> material;
  Typed<const Cutter*> cutter;                       // never null
  std::optional<Typed<const Machine*>> machine = {}; // absent: any speed can be set
  Typed<int> flutes{2, std::nullopt};                // 1 to 12
  std::optional<Typed<Length>> width = {};           // radial; absent: a full slot
  std::optional<Typed<Length>> dial = {};            // table travel a handwheel turn; absent: the machine's
};

/// Sizes that end mills come in here, 0.3 mm to 25.4 mm (1 in).
inline constexpr ToolSizes mill_sizes{"end mill", mm(0.3), inches(1.0)};

/// Throws a Fault of the kind `conflict` where the flags contradict each other.
Answer mill(const Tables& tables, const MillQuestion& question);

} // namespace quillside
