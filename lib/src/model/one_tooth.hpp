#pragma once
// What a feed per tooth is multiplied by to be the length that one tooth goes forward.

#include <quillside/quantity/units.hpp>

namespace quillside::detail {

inline constexpr auto one_tooth = Quantity<tooth>::from_value(1);

} // namespace quillside::detail
