#include "drawing.hpp"

#include <array>
#include <cerrno>
#include <csignal>
#include <cstring>
#include <filesystem>
#include <utility>

#include <fcntl.h>
#include <poll.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <quillside/words/fault.hpp>
#include <quillside/words/utf8.hpp>

extern char** environ;

namespace quillside::cli {

namespace {

namespace fs = std::filesystem;

constexpr const char* program_name = "quillside-draw";

Fault fault_of(FaultKind kind, const std::string& word, const std::string& message) {
  Fault fault;
  fault.kind = kind;
  fault.word = word;
  fault.message = message;
  return fault;
}

/// One end of a pipe; closed when it goes.
class End {
public:
  explicit End(int descriptor) : descriptor_(descriptor) {}
  End(End&& other) noexcept : descriptor_(std::exchange(other.descriptor_, -1)) {}
  End& operator=(End&&) = delete;
  ~End() { close(); }

  [[nodiscard]] int get() const { return descriptor_; }
  void close() {
    if (descriptor_ >= 0) ::close(descriptor_);
    descriptor_ = -1;
  }

private:
  int descriptor_;
};

struct Pipe {
  End from; // to read
  End into; // to write
};

Pipe pipe_of_two() {
  std::array<int, 2> ends{};
  if (::pipe2(ends.data(), O_CLOEXEC) != 0)
    throw fault_of(FaultKind::file, program_name,
                   std::string("no pipe to the drawing program: ") + std::strerror(errno));
  return {End(ends[0]), End(ends[1])};
}

pid_t start(const std::string& program, const Pipe& in, const Pipe& out, const Pipe& err) {
  posix_spawn_file_actions_t streams;
  posix_spawn_file_actions_init(&streams);
  posix_spawn_file_actions_adddup2(&streams, in.from.get(), STDIN_FILENO);
  posix_spawn_file_actions_adddup2(&streams, out.into.get(), STDOUT_FILENO);
  posix_spawn_file_actions_adddup2(&streams, err.into.get(), STDERR_FILENO);
  std::string name = program;
  const std::array<char*, 2> words{name.data(), nullptr};
  pid_t child = 0;
  const int failed = posix_spawn(&child, program.c_str(), &streams, nullptr, words.data(), environ);
  posix_spawn_file_actions_destroy(&streams);
  if (failed != 0)
    throw fault_of(FaultKind::file, program,
                   "the drawing program " + printable(program) + " does not start: " + std::strerror(failed));
  return child;
}

/// Nothing is left to read at the end of the stream.
bool take_from(End& end, std::string& all) {
  std::array<char, 16384> room{};
  const ssize_t size = ::read(end.get(), room.data(), room.size());
  if (size > 0) all.append(room.data(), static_cast<std::size_t>(size));
  return size > 0 || (size < 0 && errno == EINTR);
}

/// Nothing is left to write, or nobody reads.
bool give_to(End& end, std::string_view& left) {
  const ssize_t size = ::write(end.get(), left.data(), left.size());
  if (size > 0) left.remove_prefix(static_cast<std::size_t>(size));
  return !left.empty() && (size > 0 || errno == EINTR || errno == EAGAIN);
}

/// Writes the document while it reads the picture and the message: neither side waits for the other.
void exchange(std::string_view document, End& in, End& out, End& err, std::string& picture, std::string& message) {
  ::fcntl(in.get(), F_SETFL, O_NONBLOCK);
  while (out.get() >= 0 || err.get() >= 0) {
    std::array<pollfd, 3> wait{{{in.get(), POLLOUT, 0}, {out.get(), POLLIN, 0}, {err.get(), POLLIN, 0}}};
    if (::poll(wait.data(), wait.size(), -1) < 0 && errno != EINTR) return;
    if (wait[0].revents != 0 && !give_to(in, document)) in.close();
    if (wait[1].revents != 0 && !take_from(out, picture)) out.close();
    if (wait[2].revents != 0 && !take_from(err, message)) err.close();
  }
}

FaultKind kind_of_exit(int exit) {
  for (const auto kind : {FaultKind::word, FaultKind::data, FaultKind::file})
    if (exit == exit_code(kind)) return kind;
  return FaultKind::fault;
}

std::string first_line(const std::string& text) { return printable(text.substr(0, text.find('\n'))); }

} // namespace

std::optional<std::string> find_drawing_program(const std::optional<std::string>& named) {
  if (named && !named->empty()) return *named;
  std::error_code trouble;
  const fs::path here = fs::read_symlink("/proc/self/exe", trouble).parent_path();
  if (trouble) return std::nullopt;
  for (const auto& place : {here / program_name, here / QUILLSIDE_LIBEXEC_FROM_BIN / program_name})
    if (fs::exists(place, trouble)) return place.lexically_normal().string();
  return std::nullopt;
}

std::string drawn_by(const std::string& program, std::string_view document) {
  Pipe in = pipe_of_two();
  Pipe out = pipe_of_two();
  Pipe err = pipe_of_two();
  const pid_t child = start(program, in, out, err);
  in.from.close();
  out.into.close();
  err.into.close();
  std::string picture;
  std::string message;
  exchange(document, in.into, out.from, err.from, picture, message);
  int status = 0;
  while (::waitpid(child, &status, 0) < 0 && errno == EINTR) continue;
  if (!WIFEXITED(status))
    throw fault_of(FaultKind::fault, program, "the drawing program " + printable(program) + " broke off");
  if (const int exit = WEXITSTATUS(status); exit != 0)
    throw fault_of(kind_of_exit(exit), program, "no picture: " + first_line(message));
  return picture;
}

} // namespace quillside::cli
