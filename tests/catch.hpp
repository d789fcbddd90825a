#pragma once
// The one test header: it hides the difference between Catch2 2 and 3.

#if __has_include(<catch2/catch_all.hpp>)
#include <catch2/catch_all.hpp>
namespace quillside::test {
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
} // namespace quillside::test
#else
#include <catch2/catch.hpp>
namespace quillside::test {
using Catch::WithinAbs;
using Catch::WithinRel;
} // namespace quillside::test
#endif
