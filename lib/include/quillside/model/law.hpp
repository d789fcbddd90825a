#pragma once
// A Law is one formula with its name and where it was published. Every model declares its own beside its functions; a
// job pairs a model's result with its Law, and `why` prints both.

namespace quillside {

struct Law {
  const char* id;       // as docs/models/ knows it
  const char* formula;  // in the trade's own symbols, for a person
  const char* source;   // author, title, edition, year; or the kind of reasoning
  const char* standing; // one of the standings of data/source: published, from memory, derived, common practice
};

} // namespace quillside
