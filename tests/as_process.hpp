#pragma once
// Runs a line of shell as a process of its own; what the shell writes to standard error is caught whole.

#include <array>
#include <cstdio>
#include <string>

#include <sys/wait.h>

#include "folder.hpp"

namespace quillside::test {

struct Process {
  int exit = -1; // -1 where a signal ended it
  std::string out;
  std::string err;
};

inline Process shell(const std::string& line) {
  const Folder folder;
  Process process;
  FILE* pipe = popen(("{ " + line + "\n} 2>'" + folder.file("err") + "'").c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::array<char, 4096> room{};
  for (std::size_t size = 0; (size = std::fread(room.data(), 1, room.size(), pipe)) > 0;)
    process.out.append(room.data(), size);
  const int status = pclose(pipe);
  if (WIFEXITED(status)) process.exit = WEXITSTATUS(status);
  process.err = folder.read("err");
  return process;
}

/// The program in a bare environment; a table or setting of whoever runs the tests has no part in it.
inline std::string tool(const std::string& variables = {}) {
  return "env -i " + variables + (variables.empty() ? "" : " ") + "'" QUILLSIDE_BINARY "' ";
}

} // namespace quillside::test
