#pragma once
// What a run of the program sees of the world: three streams and the environment. Tests hand in their own.

#include <functional>
#include <optional>
#include <string>
#include <string_view>

namespace quillside::cli {

struct Console {
  std::function<std::optional<std::string>()> read_line; // of standard input, without its end
  std::function<void(std::string_view)> out;             // throws a Fault of the kind `file` when it cannot be written
  std::function<void(std::string_view)> err;
  std::function<std::optional<std::string>(const char*)> env; // a variable of the environment
  bool out_is_terminal = false;
};

} // namespace quillside::cli
