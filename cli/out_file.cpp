#include "out_file.hpp"

#include <cerrno>
#include <cstring>
#include <filesystem>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <quillside/words/fault.hpp>
#include <quillside/words/utf8.hpp>

namespace quillside::cli {

namespace {

namespace fs = std::filesystem;

[[noreturn]] void cannot_write(const std::string& path, const std::string& why) {
  Fault fault;
  fault.kind = FaultKind::file;
  fault.word = path;
  fault.message = printable(path) + " cannot be written: " + why;
  throw fault;
}

/// An open file that is still nameless to everyone else; removed unless it is kept.
class Beside {
public:
  explicit Beside(const fs::path& file)
      : name_((file.parent_path() / ".quillside.XXXXXX").string()), descriptor_(::mkostemp(name_.data(), O_CLOEXEC)) {}
  Beside(const Beside&) = delete;
  Beside& operator=(const Beside&) = delete;
  ~Beside() {
    if (descriptor_ >= 0) ::close(descriptor_);
    if (!kept_ && opened()) ::unlink(name_.c_str());
  }

  [[nodiscard]] bool opened() const { return descriptor_ >= 0 || closed_; }
  [[nodiscard]] int descriptor() const { return descriptor_; }
  bool close() {
    const bool fine = ::close(descriptor_) == 0;
    descriptor_ = -1;
    closed_ = true;
    return fine;
  }
  bool keep_as(const fs::path& file) {
    kept_ = ::rename(name_.c_str(), file.c_str()) == 0;
    return kept_;
  }

private:
  std::string name_;
  int descriptor_;
  bool closed_ = false;
  bool kept_ = false;
};

bool write_all(int descriptor, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t size = ::write(descriptor, bytes.data(), bytes.size());
    if (size < 0 && errno == EINTR) continue;
    if (size <= 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(size));
  }
  return true;
}

void write_into(const std::string& path, std::string_view bytes) {
  const int descriptor = ::open(path.c_str(), O_WRONLY | O_CLOEXEC);
  if (descriptor < 0) cannot_write(path, std::strerror(errno));
  const bool fine = write_all(descriptor, bytes);
  const int trouble = errno;
  ::close(descriptor);
  if (!fine) cannot_write(path, std::strerror(trouble));
}

mode_t usual_mode() {
  const mode_t mask = ::umask(0);
  ::umask(mask);
  return 0666U & ~mask;
}

} // namespace

void write_whole_file(const std::string& path, std::string_view bytes) {
  struct stat is {};
  const bool there = ::stat(path.c_str(), &is) == 0;
  if (there && S_ISDIR(is.st_mode)) cannot_write(path, "it is a folder");
  if (there && !S_ISREG(is.st_mode)) return write_into(path, bytes);
  if (there && ::access(path.c_str(), W_OK) != 0) cannot_write(path, std::strerror(errno));
  std::error_code trouble;
  // A link stays a link: what it leads to is replaced.
  const fs::path file = there ? fs::canonical(path, trouble) : fs::path(path);
  if (trouble) cannot_write(path, trouble.message());
  Beside beside(file);
  if (!beside.opened()) cannot_write(path, std::strerror(errno));
  if (!write_all(beside.descriptor(), bytes) || ::fchmod(beside.descriptor(), there ? is.st_mode : usual_mode()) != 0 ||
      ::fsync(beside.descriptor()) != 0 || !beside.close() || !beside.keep_as(file))
    cannot_write(path, std::strerror(errno));
}

} // namespace quillside::cli
