// Help, man page and completion come from one description: each ask and each flag stands in all three.

#include "as_process.hpp"
#include "catch.hpp"
#include "in_process.hpp"

#include <cstdio>
#include <cstdlib>

#include "flags.hpp"
#include "pages.hpp"

using namespace quillside;

namespace {

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

std::string in_roff(std::string text) {
  for (std::size_t at = text.find('-'); at != std::string::npos; at = text.find('-', at + 2)) text.insert(at, "\\");
  return text;
}

/// What a shell answers to a script on its standard input.
std::string bash(const std::string& script) {
  const test::Folder folder;
  const test::Process process = test::shell("bash '" + folder.write("script", script) + "' 2>&1");
  CHECK(process.exit == 0);
  return process.out;
}

std::string completed(const std::string& words, int at) {
  return bash(cli::bash_completion() + "COMP_WORDS=(" + words + ")\nCOMP_CWORD=" + std::to_string(at) +
              "\n_quillside\nprintf '%s ' \"${COMPREPLY[@]}\"\n");
}

} // namespace

TEST_CASE("every ask and flag stands in help, man page and completion") {
  const std::string man = cli::man_page();
  const std::string completion = cli::bash_completion();
  for (const auto& ask : cli::asks()) {
    INFO(ask.name);
    CHECK(has(cli::help(), std::string(ask.name)));
    CHECK(has(man, ".SS " + std::string(ask.name)));
    CHECK(has(completion, "    " + std::string(ask.name) + ")"));
    for (const auto& flag : ask.flags) {
      const std::string name = "--" + std::string(flag.name);
      INFO(name);
      CHECK(has(cli::help(ask), name));
      CHECK(has(man, in_roff(name)));
      CHECK(has(completion, name));
    }
  }
  for (const auto& flag : cli::flags_everywhere()) {
    CHECK(has(cli::help(), "--" + std::string(flag.name)));
    CHECK(has(man, in_roff("--" + std::string(flag.name))));
  }
}

TEST_CASE("bash completes asks, the flags of an ask, and the words of a flag") {
  CHECK(completed("quillside dr", 1) == "drill ");
  CHECK(completed("quillside drill no30 303 --lea", 4) == "--leave --leave-at ");
  CHECK(completed("quillside drill no30 303 --units m", 5) == "metric ");
  CHECK_FALSE(has(completed("quillside mill 1/8 303 --", 4), "--leave"));
}

TEST_CASE("no line of the man page begins with a macro that man does not have") {
  const std::string man = cli::man_page();
  std::size_t from = 0;
  for (std::size_t to = man.find('\n'); to != std::string::npos; from = to + 1, to = man.find('\n', from)) {
    const std::string line = man.substr(from, to - from);
    if (line.empty() || line.front() != '.') continue;
    INFO(line);
    const std::string macro = line.substr(0, line.find(' '));
    CHECK((macro == ".TH" || macro == ".SH" || macro == ".SS" || macro == ".TP" || macro == ".B" || macro == ".I" ||
           macro == ".PP" || macro == ".nf" || macro == ".fi"));
  }
}
