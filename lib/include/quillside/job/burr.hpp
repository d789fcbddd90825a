#pragma once
// Burrs held in the hand: the speed, and what limits it.
// Leaves out: whirl of a long shank, which can lie well below these speeds; forces; wear.

#include <optional>

#include <quillside/answer/answer.hpp>
#include <quillside/data/choose.hpp>

namespace quillside {

struct BurrQuestion {
  Typed<NamedSize> size; // of the head
  Typed<Work> material;
  Typed<const Cutter*> cutter;                       // never null
  std::optional<Typed<const Machine*>> machine = {}; // the hand tool
  std::optional<Typed<SpindleSpeed>> marked = {};    // the maximum marked on the burr
};

/// Heads of burrs, 0.5 mm to 25.4 mm (1 in).
inline constexpr ToolSizes burr_sizes{"burr", mm(0.5), inches(1.0)};

Answer burr(const Tables& tables, const BurrQuestion& question);

} // namespace quillside
