#include <quillside/words/fault.hpp>

#include <utility>

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

Fault wrong_word(std::string word, const std::string& reason, std::vector<std::string> allowed,
                 std::optional<std::string> suggestion) {
  Fault fault;
  fault.kind = FaultKind::word;
  fault.message = "'" + word + "' " + reason;
  fault.word = std::move(word);
  fault.allowed = std::move(allowed);
  fault.suggestion = std::move(suggestion);
  return fault;
}

Fault contradiction(std::string word, std::string message) {
  Fault fault;
  fault.kind = FaultKind::conflict;
  fault.word = std::move(word);
  fault.message = std::move(message);
  return fault;
}

} // namespace quillside
