#pragma once
// What the models of an end mill's load refuse before they reckon.

#include <stdexcept>

#include <quillside/model/mill_pass.hpp>
#include <quillside/model/specific_force.hpp>

namespace quillside::detail {

inline void require(bool holds, const char* why) {
  if (!holds) throw std::domain_error{why};
}

/// Each throws std::domain_error outside the ranges of its parts.
void check(Kienzle metal);
const MillPass& checked(const MillPass& pass);

} // namespace quillside::detail
