#pragma once
// Words that the program refuses, and what it says of them.

#include <string>

#include "json_of.hpp"

namespace quillside::test {

struct Wrong {
  std::string line;
  std::string word;                 // as the record names it
  std::string says;                 // somewhere in the message
  const char* suggestion = nullptr; // the record's `try`; null: not looked at
};

/// \param kind of the error
inline void hold_refused(const Wrong& wrong, const std::string& kind) {
  const Json error = error_of(wrong.line, 2);
  INFO(wrong.line << "\n" << error.dump());
  CHECK(error["kind"] == kind);
  CHECK(error["word"] == wrong.word);
  CHECK(error["message"].get<std::string>().find(wrong.says) != std::string::npos);
  if (wrong.suggestion != nullptr) CHECK(error["try"] == wrong.suggestion);
}

} // namespace quillside::test
