#pragma once
// What the checks of a point come to: one verdict, the reason for it, and what to read next.

#include <string>
#include <string_view>
#include <vector>

#include <quillside/job/point.hpp>

#include "point_ground.hpp"
#include "point_judge.hpp"

namespace quillside {

struct PointOutcome {
  std::string word;
  bool settled = true; // nothing more to read for it
};

/// \p checks are those of all \p ways, which are at least one.
PointOutcome outcome_of(const std::vector<JudgedPoint>& ways, const std::vector<PointCheck>& checks);

/// What is wrong, the worst first, and what nobody read.
std::string reason_of(const PointOutcome& outcome, const std::vector<JudgedPoint>& ways,
                      const std::vector<PointCheck>& checks);

/// What a point to be kept still lacks, as words; empty where nothing is missing.
std::string what_is_missing(const std::vector<JudgedPoint>& ways);

/// What to read next; where the way is unknown and stands in the way of every reading, both. Empty where all is
/// settled.
std::string next_step(const Tables& tables, const PointQuestion& ask, const Ground& ground,
                      const PointReadings& readings, const std::vector<JudgedPoint>& ways,
                      const std::vector<PointCheck>& checks);

/// The verdict of one check.
std::string word_of(const PointCheck& check);

/// An item as words: lip height difference.
std::string spaced(std::string_view item);

} // namespace quillside
