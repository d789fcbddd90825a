#pragma once
// A text taken apart at the ends of its lines.

#include <sstream>
#include <string>
#include <vector>

namespace quillside::test {

inline std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

} // namespace quillside::test
