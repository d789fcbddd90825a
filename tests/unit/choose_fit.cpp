// Which limits answer for a fit: names, classes, the ends of size ranges, and what is refused.

#include <string>

#include <quillside/data/choose_fit.hpp>
#include <quillside/words/fault.hpp>

#include "catch.hpp"

using namespace quillside;

namespace {

Fault fault_of(const char* name, Length size) {
  try {
    fit_limits(builtin_tables(), name, size);
  } catch (const Fault& fault) {
    return fault;
  }
  FAIL(name << " was answered");
  return {};
}

} // namespace

TEST_CASE("a fit by its name is the fit of its class") {
  const Tables tables = builtin_tables();
  struct Name {
    const char* name;
    const char* class_name;
  };
  const auto one = GENERATE(Name{"press", "H7/p6"}, Name{"push", "H7/h6"}, Name{"slide", "H7/g6"});
  const FitLimits named = fit_limits(tables, one.name, mm(16));
  const FitLimits plain = fit_limits(tables, one.class_name, mm(16));
  CHECK(named.name == one.name);
  CHECK(named.class_name == one.class_name);
  CHECK(plain.name == one.class_name);
  CHECK(named.interference.low == plain.interference.low);
  CHECK(named.interference.high == plain.interference.high);
  CHECK(named.hole.high == micrometres(18));
  CHECK(named.words.find(one.name) == 0);
  CHECK(plain.words.empty());
  // The name's own source stands before those of the limits.
  REQUIRE(named.sources.size() == plain.sources.size() + 1);
  CHECK(named.sources[1] == "iso-286-holes");
  CHECK(named.sources[2] == "iso-286-shafts");
}

TEST_CASE("a size belongs to the range that it ends, not to the one that it begins") {
  const Tables tables = builtin_tables();
  CHECK(fit_limits(tables, "H7/h6", mm(3)).hole.high == micrometres(10));
  CHECK(fit_limits(tables, "H7/h6", mm(3.001)).hole.high == micrometres(12));
  CHECK(fit_limits(tables, "FN2", inches(0.12)).hole.high == thou(0.4));
  CHECK(fit_limits(tables, "FN2", inches(0.1201)).hole.high == thou(0.5));
}

TEST_CASE("which fits may slip at their low end") {
  const Tables tables = builtin_tables();
  CHECK(fit_limits(tables, "press", mm(3)).transition());
  CHECK_FALSE(fit_limits(tables, "press", mm(3.1)).transition());
  CHECK_FALSE(fit_limits(tables, "slide", mm(3)).transition());
  CHECK_FALSE(fit_limits(tables, "FN2", mm(3)).transition());
}

TEST_CASE("a driven fit is of no class, and never looser than FN2") {
  const Tables tables = builtin_tables();
  const FitLimits driven = fit_limits(tables, "driven", inches(0.118));
  CHECK(driven.class_name.empty());
  CHECK(driven.interference.low == inches(0.002));
  CHECK(driven.interference.high == inches(0.005));
  CHECK(driven.hole.low == -driven.interference.high);
  CHECK(driven.hole.high == -driven.interference.low);
  CHECK(driven.shaft.low == mm(0));
  // Several times the top of FN2 at the size of a latch plate's tongue: 0.85 thou.
  CHECK(driven.interference.low > 2 * fit_limits(tables, "FN2", inches(0.118)).interference.high);
  REQUIRE(driven.sources.size() == 1);
  CHECK(source_of(tables, driven.sources[0]).standing == "common practice");
}

TEST_CASE("a whole fit is known in either case of letters; a tolerance class keeps its own") {
  const Tables tables = builtin_tables();
  CHECK(fit_limits(tables, "fn2", mm(3)).class_name == "FN2");
  const Fault fault = fault_of("h7/p6", mm(3));
  CHECK(fault.kind == FaultKind::word);
  CHECK(fault.word == "h7/p6");
  CHECK(fault.suggestion == "H7/p6");
}

TEST_CASE("what is no fit is refused with what is one") {
  for (const char* name : {"", "tight", "H7", "p6", "p6/H7", "H7/", "/p6", "H7/p6/p6", "H7/H8", "g6/h6", "FN9"}) {
    INFO(name);
    const Fault fault = fault_of(name, mm(3));
    CHECK(fault.kind == FaultKind::word);
    CHECK(fault.word == name);
    CHECK(fault.message.find("press") != std::string::npos);
    CHECK(fault.message.find("FN2") != std::string::npos);
    CHECK(fault.message.find("p6") != std::string::npos);
    CHECK(fault.allowed.size() > 20);
  }
  CHECK(fault_of("pres", mm(3)).suggestion == "press");
}

TEST_CASE("a size that the rows do not reach is refused with how far they do") {
  CHECK(fault_of("H7/p6", mm(50.001)).message.find("50.000 mm") != std::string::npos);
  CHECK(fault_of("press", mm(60)).message.find("60.000 mm") != std::string::npos);
  CHECK(fault_of("FN2", inches(1.98)).message.find("1.9700 in") != std::string::npos);
}
