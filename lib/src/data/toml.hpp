#pragma once
// toml++, and where a node of it stands. Header-only, so that no user of the library needs it; only the .cpp files of
// this floor see it.

#define TOML_EXCEPTIONS 1
#include <toml++/toml.h>

namespace quillside {

/// Line and column from 1.
struct At {
  int line = 0;
  int column = 0;
};

inline At place_of(const toml::node& node) {
  return {static_cast<int>(node.source().begin.line), static_cast<int>(node.source().begin.column)};
}

} // namespace quillside
