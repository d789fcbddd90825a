#pragma once
// A value with the word it was read from; a value that nobody typed has no word.

#include <optional>
#include <string>

namespace quillside {

template <class T> struct Typed {
  T value{};
  std::optional<std::string> text; // as typed; absent: taken by default
};

} // namespace quillside
