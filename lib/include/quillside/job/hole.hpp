#pragma once
// A hole for something: a pin that is pressed in, a reamer, a tap, a screw that goes through, a screw whose head is
// sunk in. Which drill, at what speed and feed (those of the single ask `drill`), how deep, and the tool that follows
// it. Leaves out: taps that form the thread, tapping by machine, taper pins, counterbores other than for a cap head.

#include <optional>

#include <quillside/answer/answer.hpp>
#include <quillside/data/choose.hpp>
#include <quillside/data/choose_thread.hpp>
#include <quillside/words/read.hpp>

namespace quillside {

enum class HoleKind { pin, ream, tap, clear, countersink };

struct HoleQuestion {
  Typed<HoleKind> what;
  Typed<Screw> size;                                    // of pin and ream: its diameter, and no thread
  Typed<const Cutter*> cutter;                          // of the drill; never null
  std::optional<Typed<Work>> material = {};             // absent: no speeds
  std::optional<Typed<const Machine*>> machine = {};    // absent: no step is chosen
  std::optional<Typed<Reading<Length>>> thick = {};     // of the part; the hole goes through it
  std::optional<Typed<const ScrewThread*>> thread = {}; // never null; absent: the size's own
  std::optional<Typed<double>> engagement = {}; // share of a thread, trade's count; absent: what the metal is given
  std::optional<Typed<Length>> head = {};       // width of a head at the face; absent: as the tables have it
  std::optional<Typed<Angle>> cone = {};        // included; absent: as the tables have it
};

/// Sizes that pins and reamers come in.
inline constexpr ToolSizes reamer_sizes{"reamer", mm(0.5), inches(1.0)};

/// The word for it: pin, ream, tap, clear, countersink.
std::string_view name_of(HoleKind kind);

/// Throws a Fault of the kind `word` or `conflict` where a flag does not belong to the hole, where two contradict each
/// other, and where no drill or reamer there is would make it.
Answer hole(const Tables& tables, const HoleQuestion& question);

} // namespace quillside
