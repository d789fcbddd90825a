#pragma once
// What the drawing program is handed: answers, the lines a person reads of the first, and the page that is wanted.
//
//   {"answer": RECORD, "more": [RECORD...], "text": [{"part","text","cells","number"}...],
//    "page": {"kind","as","paper","units","title","asked","date","maker","read_from_mm"}}
//
// RECORD is an answer as render/json writes it. `more`, `text` (a chart needs none), `read_from_mm`, `cells` and
// `number` may be absent.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <quillside/answer/answer.hpp>
#include <quillside/data/paper.hpp>
#include <quillside/page/canvas.hpp>
#include <quillside/render/lines.hpp>

namespace quillside::page {

struct PageWanted {
  std::string kind; // card, gauge, ...: one of those that page/draw knows
  PictureKind as = PictureKind::pdf;
  std::string paper; // one of data/paper
  UnitSystem units = UnitSystem::inch;
  std::string title;               // the ask and its words, without its flags
  std::string asked;               // the ask as typed
  std::string date;                // 2026-11-30
  std::string maker;               // name and number of the program
  std::optional<Length> read_from; // how far off its reader stands
};

struct Document {
  Answer answer{""};
  std::vector<Answer> more; // the same question at other figures, where a page shows more than one
  std::vector<Line> text;
  PageWanted page;
};

/// Throws std::runtime_error, with what is wrong, for text that is no such document; a Fault for a paper there is not.
Document read_document(std::string_view json);

/// An answer out of its record: what json(answer) wrote, read back. Units are the closed list of answer/key; another
/// throws std::runtime_error, as does anything that is no record.
Answer read_record(std::string_view json);

} // namespace quillside::page
