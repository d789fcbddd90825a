// Catch2 2 wants its main compiled once, here; Catch2 3 brings one as a library.
#if !__has_include(<catch2/catch_all.hpp>)
#define CATCH_CONFIG_MAIN
#include <catch2/catch.hpp>
#endif
