#pragma once
// The man page and the completion script, made from the one description of asks and flags (flags.hpp).

#include <string>

namespace quillside::cli {

/// In the man(7) macros.
std::string man_page();
/// For bash: asks, then the flags of the ask, then words where a flag takes one of a few.
std::string bash_completion();

} // namespace quillside::cli
