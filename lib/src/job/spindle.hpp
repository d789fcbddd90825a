#pragma once
// From the spindle speed a table wants to the one that is set: what the machine has, what the marks allow, and the
// verdict.

#include <optional>
#include <string>

#include <quillside/data/machine.hpp>
#include <quillside/quantity/band.hpp>

#include "telling.hpp"

namespace quillside {

struct SpindleQuestion {
  Band<SpindleSpeed> table;              // what the tables want
  double share = 1;                      // of the table's speed: what depth or a dry cut leaves of it
  const Machine* machine = nullptr;      // absent: any speed can be set
  std::optional<SpindleSpeed> mark = {}; // never to be exceeded
};

struct SpindleOutcome {
  Band<SpindleSpeed> band;
  SpindleSetting setting;
  std::string verdict = "go"; // go, back off, do not
  std::string reason;
  std::string instead;
  bool lowered_by_machine = false; // its range, or its nearest step below
  bool lowered_by_tool = false;    // the mark on its body
  bool lowered_by_mark = false;
  bool under_table = false;
};

SpindleOutcome decide_spindle(const SpindleQuestion& question);

/// Tells the outcome: settings (unless refused), verdict, reason, what else would do, notes.
void tell_spindle(Answer& answer, Telling& telling, const SpindleQuestion& question, const SpindleOutcome& outcome);

} // namespace quillside
