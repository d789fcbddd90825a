#pragma once
// Burrs held in the hand: the speed, and what limits it: the mark, the tool, the whirl of the shank, or the metal.
// Leaves out: a bent shank, worn bearings, forces of the cut, wear.

#include <optional>

#include <quillside/answer/answer.hpp>
#include <quillside/data/choose.hpp>
#include <quillside/model/whirl.hpp>

namespace quillside {

struct BurrQuestion {
  Typed<NamedSize> size; // of the head
  Typed<Work> material;
  Typed<const Cutter*> cutter;                       // never null
  std::optional<Typed<const Machine*>> machine = {}; // the hand tool
  std::optional<Typed<SpindleSpeed>> marked = {};    // the maximum marked on the burr
  std::optional<Typed<Length>> shank = {};           // absent: what a head of that size usually comes on
  std::optional<Typed<Length>> overhang = {};        // chuck nose to back of head; absent: 1/2 in
  std::optional<Typed<Length>> head_length = {};     // absent: of an ordinary cylinder
  Typed<HeadShape> shape{HeadShape::cylinder, std::nullopt};
};

/// Heads of burrs, 0.5 mm to 25.4 mm (1 in).
inline constexpr ToolSizes burr_sizes{"burr", mm(0.5), inches(1.0)};

/// Shanks, 1 mm to 12.7 mm (1/2 in).
inline constexpr ToolSizes shank_sizes{"shank", mm(1), inches(1, 2)};

/// The name of a shape as it is typed, and the shape of a name; a Fault that lists them otherwise.
std::string_view name_of(HeadShape shape);
HeadShape read_head_shape(const std::string& word);

/// Throws a Fault of the kind `conflict` for a shank that no beam is made of.
Answer burr(const Tables& tables, const BurrQuestion& question);

} // namespace quillside
