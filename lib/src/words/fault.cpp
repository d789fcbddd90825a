#include <quillside/words/fault.hpp>

#include <utility>

#include <quillside/words/utf8.hpp>

namespace quillside {

int exit_code(FaultKind kind) {
  switch (kind) {
  case FaultKind::word:
  case FaultKind::conflict: return 2;
  case FaultKind::data: return 3;
  case FaultKind::file: return 4;
  case FaultKind::fault: break;
  }
  return 5;
}

const char* name_of(FaultKind kind) {
  switch (kind) {
  case FaultKind::word: return "word";
  case FaultKind::conflict: return "conflict";
  case FaultKind::data: return "data";
  case FaultKind::file: return "file";
  case FaultKind::fault: break;
  }
  return "fault";
}

namespace {

/// A word that is echoed stays on its line.
std::string shortened(std::string word) {
  constexpr std::size_t longest = 80;
  if (word.size() <= longest) return word;
  word.resize(longest);
  return printable(word) + "...";
}

} // namespace

Fault wrong_word(const std::string& word, const std::string& reason, std::vector<std::string> allowed,
                 std::optional<std::string> suggestion) {
  Fault fault;
  fault.kind = FaultKind::word;
  fault.word = shortened(printable(word));
  fault.message = "'" + fault.word + "' " + reason;
  fault.allowed = std::move(allowed);
  fault.suggestion = std::move(suggestion);
  return fault;
}

Fault contradiction(const std::string& word, const std::string& message) {
  Fault fault;
  fault.kind = FaultKind::conflict;
  fault.word = shortened(printable(word));
  fault.message = printable(message);
  return fault;
}

} // namespace quillside
