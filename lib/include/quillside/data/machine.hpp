#pragma once
// The machines: which spindle speeds they really have, and what else is known of them. A figure that is not in the row
// leaves out of an answer what needs it; none is ever guessed.

#include <array>
#include <optional>

#include <quillside/data/row.hpp>

namespace quillside {

/// One speed a machine can be set to. Steps count from 1 at the slowest; on a machine with an idler a step is named by
/// its two belts, motor belt first: "2-3".
struct Step {
  std::string_view name;
  SpindleSpeed speed;
};

struct Machine {
  std::string_view key;
  std::string_view name;
  std::string_view kind;           // one of `machine_kinds`
  std::span<const Step> steps;     // slowest first; empty on a machine that runs at any speed of its range
  Range<SpindleSpeed> range;       // slowest to fastest, of the steps where there are any
  Printed<SpindleSpeed> top_speed; // of the tool body, where that is marked lower
  Printed<Length> dial;            // table travel a handwheel turn
  std::string_view holder;         // one of `holders`
  Printed<Power> power;
  Printed<Length> runout;
  Printed<Length> pinion_radius;
  Printed<Length> lever;
  Printed<Stiffness> stiffness; // of spindle, column and table together, sideways at the cutter
  bool backlash_free = false;
  std::string_view source;
  RowPlace place;
};

inline constexpr std::array<std::string_view, 5> machine_kinds{"mill", "drill-press", "flexible-shaft", "hand-tool",
                                                               "air-grinder"};
inline constexpr std::array<std::string_view, 2> holders{"collet", "drill chuck"};

/// What a machine gives when a spindle speed is wanted.
struct SpindleSetting {
  SpindleSpeed speed;
  std::optional<Step> step;       // on a machine with steps
  std::optional<Step> next_above; // the step that was too fast, where there is one
  bool above_wanted = false;      // even the slowest is faster than wanted
};

/// The fastest speed of the machine that is not above \p wanted; where every one is, the slowest.
SpindleSetting setting_at_or_below(const Machine& machine, SpindleSpeed wanted);

/// The fastest the machine may turn: the end of its range, or the mark on its body where that is lower.
SpindleSpeed fastest(const Machine& machine);

} // namespace quillside
