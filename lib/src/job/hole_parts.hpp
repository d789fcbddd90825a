#pragma once
// What the kinds of hole have in common: the drill that was chosen, and how bad it is.

#include <optional>
#include <string>

#include <quillside/job/hole.hpp>

#include "telling.hpp"

namespace quillside {

/// A hole as it is made up: what to drill, what comes after, what was found.
struct HolePlan {
  const SizeRow* drill = nullptr; // never null once planned
  Value reamer;                   // nothing: none follows
};

/// Makes an answer worse, never better: `back off` over `go`, `do not` over both. Reasons are strung together.
void judge(Answer& answer, std::string_view verdict, const std::string& reason, const std::string& instead);

/// Takes over what a part of the work told: its steps of `why`, each with \p lead ("reamer: ") before its name, its
/// sources, its cautions.
void take_over(Answer& answer, const Answer& part, const std::string& lead);

/// The metal of the work; empty where none was named.
inline std::string_view metal_of(const HoleQuestion& ask) {
  return ask.material ? ask.material->value.material->metal : std::string_view{};
}

// Each chooses the drill and tells what is its own: findings, steps of `why`, flags for cautions.
HolePlan plan_tap(const Tables& tables, Answer& answer, Telling& telling, const HoleQuestion& ask);
HolePlan plan_clear(const Tables& tables, Answer& answer, Telling& telling, const HoleQuestion& ask);
HolePlan plan_countersink(const Tables& tables, Answer& answer, Telling& telling, const HoleQuestion& ask);
HolePlan plan_reamed(const Tables& tables, Answer& answer, Telling& telling, const HoleQuestion& ask);

} // namespace quillside
