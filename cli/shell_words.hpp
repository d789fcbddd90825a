#pragma once
// The words of a line, quoted as in a shell.

#include <string>
#include <string_view>
#include <vector>

namespace quillside::cli {

/// Splits at spaces; '...' is literal, "..." keeps blanks and takes \" and \\, \ outside quotes takes the next letter
/// as it is. Nothing else is special: # begins no comment. Throws a Fault for a quote that is not closed.
std::vector<std::string> shell_words(std::string_view line);

} // namespace quillside::cli
