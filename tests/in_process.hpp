#pragma once
// Runs the program in this process, with streams and an environment of the test's own.

#include <map>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "run.hpp"
#include "shell_words.hpp"

namespace quillside::test {

struct Ran {
  int exit = 0;
  std::string out;
  std::string err;
};

/// What the test sets up round a run: standard input, and the variables that are set (no others are).
struct Surroundings {
  std::vector<std::string> input;
  std::map<std::string, std::string> variables;
};

inline Ran run_words(const std::vector<std::string>& words, const Surroundings& around = {}) {
  Ran ran;
  std::size_t next = 0;
  cli::Console console;
  console.read_line = [&]() -> std::optional<std::string> {
    return next < around.input.size() ? std::optional(around.input[next++]) : std::nullopt;
  };
  console.out = [&](std::string_view text) { ran.out += text; };
  console.err = [&](std::string_view text) { ran.err += text; };
  console.env = [&](const char* name) -> std::optional<std::string> {
    const auto found = around.variables.find(name);
#ifdef QUILLSIDE_DRAWING
    // This process is not the tool: nothing lies beside it.
    if (found == around.variables.end() && std::string_view(name) == "QUILLSIDE_DRAW") return QUILLSIDE_DRAWING;
#endif
    return found == around.variables.end() ? std::nullopt : std::optional(found->second);
  };
  ran.exit = cli::run(words, console);
  return ran;
}

/// The same from one line, quoted as in a shell.
inline Ran quillside(std::string_view line, const Surroundings& around = {}) {
  return run_words(cli::shell_words(line), around);
}

/// A length as a word of an ask, to the last digit.
inline std::string in_mm_words(double mm) {
  std::ostringstream words;
  words.precision(17);
  words << mm << "mm";
  return words.str();
}

} // namespace quillside::test
