#pragma once
// Fault: the one exception that crosses a boundary. It names the word, says what is allowed and what to type instead.

#include <exception>
#include <optional>
#include <string>
#include <vector>

namespace quillside {

enum class FaultKind {
  word,     // a word of the ask is wrong
  conflict, // two words, or two readings, contradict each other
  data,     // a table file is wrong
  file,     // a file or a stream could not be read or written
  fault     // our own
};

/// 2 for words and conflicts, 3 for data, 4 for files, 5 for our own faults.
int exit_code(FaultKind kind);
/// The kind in one word, as records carry it.
const char* name_of(FaultKind kind);

/// A place in a file; line and column count from 1.
struct Place {
  std::string file;
  int line = 0;
  int column = 0;
};

struct Fault : std::exception {
  FaultKind kind = FaultKind::fault;
  std::string word;                      // as it was typed; empty when no single word is at fault
  std::string message;                   // one line, without the program's name and without the place
  std::vector<std::string> allowed;      // what would do, when that can be listed
  std::optional<std::string> suggestion; // the one thing to type instead
  std::optional<Place> place;

  [[nodiscard]] const char* what() const noexcept override { return message.c_str(); }
};

/// A fault of the kind `word`: "'WORD' REASON". The word is made safe to print, and cut short where it is very long.
Fault wrong_word(const std::string& word, const std::string& reason, std::vector<std::string> allowed = {},
                 std::optional<std::string> suggestion = std::nullopt);
/// A fault of the kind `conflict`.
Fault contradiction(const std::string& word, const std::string& message);

} // namespace quillside
