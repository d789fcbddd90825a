#pragma once
// The real streams and environment of the process.

#include "console.hpp"

namespace quillside::cli {

/// Unbuffered writes, so that nothing is lost. A pipe that was closed by its reader ends the process quietly.
Console terminal();

} // namespace quillside::cli
