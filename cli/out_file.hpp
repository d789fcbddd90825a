#pragma once
// A file written whole or not at all.

#include <string>
#include <string_view>

namespace quillside::cli {

/// Writes beside the file and renames, so that a reader finds the old file or the new one, and trouble leaves nothing
/// behind. What is no plain file (a device, a pipe) is written straight into. Throws a Fault of the kind `file`.
void write_whole_file(const std::string& path, std::string_view bytes);

} // namespace quillside::cli
