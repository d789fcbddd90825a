#pragma once
// The drawing program: where it is, and a document sent through it.

#include <optional>
#include <string>
#include <string_view>

namespace quillside::cli {

/// The program that $QUILLSIDE_DRAW names; else the one beside this program's own file, as in a build; else the one at
/// its place under libexec, as installed. Nothing when none is there.
std::optional<std::string> find_drawing_program(const std::optional<std::string>& named);

/// The picture of a document (lib/include/quillside/page/document.hpp). Throws a Fault: with the program's own message
/// and of the kind its exit says, of the kind `file` when it cannot be started.
std::string drawn_by(const std::string& program, std::string_view document);

} // namespace quillside::cli
