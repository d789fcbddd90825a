#pragma once
// Cautions: the hazard, the guard or gear, and whose word goes before ours. Each row holds when all of its tags do.

#include <array>
#include <span>
#include <string>
#include <vector>

#include <quillside/data/row.hpp>

namespace quillside {

struct Caution {
  std::string_view key;
  std::string_view severity; // one of `severities`, the gravest first
  std::string_view text;     // {word} is filled in by the ask
  Words when;                // tags that must all hold, as metal:brass|copper
  std::string_view source;
  RowPlace place;
};

inline constexpr std::array<std::string_view, 3> severities{"danger", "warn", "note"};
inline constexpr std::array<std::string_view, 5> caution_tags{"ask", "metal", "cutter", "machine", "flag"};

/// What an ask is about, in the words that cautions are tagged with.
struct CautionSubject {
  std::string_view ask;
  std::string_view metal;
  std::string_view cutter;
  std::string_view machine; // its kind; empty when none is named
  std::vector<std::string_view> flags;
};

bool holds(const Caution& caution, const CautionSubject& subject);

} // namespace quillside
