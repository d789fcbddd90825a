#pragma once
// The program as a function.

#include <string>
#include <vector>

#include "console.hpp"

namespace quillside::cli {

/// \param words the command line without the program's name
/// Gives the exit code: 0 answered, 1 answered with `do not`, 2 wrong words, 3 a wrong table file, 4 a file or stream,
/// 5 our own fault.
int run(const std::vector<std::string>& words, const Console& console);

} // namespace quillside::cli
