#pragma once
// A folder of a test's own, gone when the test ends.

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

#include "catch.hpp"

namespace quillside::test {

class Folder {
public:
  Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "quillside-test-XXXXXX").string();
    REQUIRE(mkdtemp(name.data()) != nullptr);
    path_ = name;
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder() { std::filesystem::remove_all(path_); }

  [[nodiscard]] std::string path() const { return path_.string(); }
  [[nodiscard]] std::string file(const std::string& name) const { return (path_ / name).string(); }
  /// Writes a file, with the folders above it, and gives its path.
  [[nodiscard]] std::string write(const std::string& name, const std::string& text) const {
    const auto file = path_ / name;
    std::filesystem::create_directories(file.parent_path());
    std::ofstream(file, std::ios::binary) << text;
    return file.string();
  }
  [[nodiscard]] std::string read(const std::string& name) const {
    std::ifstream in(path_ / name, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
  }

private:
  std::filesystem::path path_;
};

} // namespace quillside::test
