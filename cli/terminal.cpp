#include "terminal.hpp"

#include <cerrno>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <cstring>

#include <unistd.h>

#include <quillside/words/fault.hpp>

namespace quillside::cli {

namespace {

void write_all(int stream, std::string_view text) {
  while (!text.empty()) {
    const ssize_t written = ::write(stream, text.data(), text.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0 && errno == EPIPE) std::_Exit(0);
    if (written < 0) {
      Fault fault;
      fault.kind = FaultKind::file;
      fault.word = stream == STDOUT_FILENO ? "standard output" : "standard error";
      fault.message = fault.word + " cannot be written: " + std::strerror(errno);
      throw fault;
    }
    text.remove_prefix(static_cast<std::size_t>(written));
  }
}

std::optional<std::string> read_line() {
  std::string line;
  for (int c = std::getchar(); c != EOF; c = std::getchar()) {
    if (c == '\n') return line;
    line += static_cast<char>(c);
  }
  if (std::ferror(stdin) != 0) {
    Fault fault;
    fault.kind = FaultKind::file;
    fault.word = "standard input";
    fault.message = fault.word + " cannot be read: " + std::strerror(errno);
    throw fault;
  }
  return line.empty() ? std::nullopt : std::optional(line);
}

std::optional<std::string> variable(const char* name) {
  const char* value = std::getenv(name);
  return value == nullptr ? std::nullopt : std::optional<std::string>(value);
}

} // namespace

Console terminal() {
  std::signal(SIGPIPE, SIG_IGN);
  std::signal(SIGXFSZ, SIG_IGN); // a file that may not grow so far is a write that fails
  return {read_line, [](std::string_view text) { write_all(STDOUT_FILENO, text); },
          [](std::string_view text) {
            try {
              write_all(STDERR_FILENO, text);
            } catch (const Fault&) {
              return; // nobody is left to tell
            }
          },
          variable, ::isatty(STDOUT_FILENO) == 1};
}

} // namespace quillside::cli
