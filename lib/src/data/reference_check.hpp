#pragma once
// Checks that need all tables together.

#include <vector>

#include <quillside/data/load.hpp>

#include "storage.hpp"

namespace quillside {

/// Adds a fault for every word of the \p checked files that names a row nobody has, for a name that means two
/// materials, and for a family that leads back to itself.
void check_references(const Storage& storage, const std::vector<TableText>& checked, std::vector<TableFault>& faults);

} // namespace quillside
