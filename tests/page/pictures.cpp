// Pictures as the command line makes them: the file is whole or it is not there, and every trouble is one line.

#include <csignal>
#include <filesystem>

#include <sys/stat.h>
#include <unistd.h>

#include "../as_process.hpp"
#include "../folder.hpp"
#include "../json_of.hpp"
#include "tools.hpp"

using namespace quillside;
using test::error_of;
using test::Folder;
using test::Process;
using test::Ran;
using test::shell;
namespace fs = std::filesystem;

namespace {

const std::string ask = "drill no30 303 --machine pillar";

Ran asked(const std::string& more, const test::Surroundings& around = {}) {
  return test::quillside(ask + " " + more, around);
}

std::size_t files_in(const Folder& folder) {
  return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder.path()), fs::directory_iterator()));
}

/// The program in an environment that has the shell's own tools and no more.
const std::string tool = test::tool("PATH=/usr/bin:/bin");

bool one_line(const std::string& text) { return !text.empty() && text.find('\n') == text.size() - 1; }

} // namespace

TEST_CASE("flag --card: the ending of the file says what it is, and the answer is printed as ever") {
  const Folder folder;
  struct Kind {
    const char* name;
    const char* begins;
  };
  const auto kind =
      GENERATE(Kind{"a.pdf", "%PDF-"}, Kind{"a.svg", "<?xml"}, Kind{"a.png", "\x89PNG"}, Kind{"a.b.PDF", "%PDF-"});
  const Ran plain = asked("");
  const Ran ran = asked("--card '" + folder.file(kind.name) + "'");
  CHECK(ran.exit == 0);
  CHECK(ran.out == plain.out);
  CHECK(ran.err.empty());
  CHECK(folder.read(kind.name).starts_with(kind.begins));
  CHECK(files_in(folder) == 1);
}

TEST_CASE("flag --card with a record: the record names the file among the inputs; one with DO NOT is drawn as well") {
  const Folder folder;
  const auto answer = test::answer_of("drill 1/8 416@60HRC --card '" + folder.file("no.svg") + "' --paper a4");
  CHECK(answer["verdict"] == "do not");
  CHECK(answer["inputs"]["card"]["value"] == folder.file("no.svg"));
  CHECK(answer["inputs"]["paper"]["given"] == true);
  // a5, in points: 148 and 210 mm.
  CHECK(folder.read("no.svg").find("width=\"419.527559pt\" height=\"595.275591pt\"") != std::string::npos);
}

TEST_CASE("the paper is the flag's, else the settings', else letter for inch and a4 for metric") {
  const Folder folder;
  const auto width = [&](const std::string& flags, const test::Surroundings& around = {}) {
    const Ran ran = asked(flags + " --card '" + folder.file("a.svg") + "'", around);
    REQUIRE(ran.exit == 0);
    const std::string svg = folder.read("a.svg");
    return std::stod(svg.substr(svg.find("width=\"") + 7)) / 72 * 25.4;
  };
  // ISO 216 and ASME Y14.1: half of a4 is a5, 148 wide; half of letter is 5.5 in, 139.7 wide.
  CHECK_THAT(width(""), test::WithinAbs(139.7, 0.001));
  CHECK_THAT(width("--units metric"), test::WithinAbs(148, 0.001));
  CHECK_THAT(width("--paper tabloid"), test::WithinAbs(215.9, 0.001));
  (void)folder.write("quillside/settings.toml", "paper = \"a3\"\n");
  CHECK_THAT(width("", {{}, {{"XDG_CONFIG_HOME", folder.path()}}}), test::WithinAbs(210, 0.001));
  CHECK_THAT(width("--paper letter", {{}, {{"XDG_CONFIG_HOME", folder.path()}}}), test::WithinAbs(139.7, 0.001));
}

TEST_CASE("poppler calls the pages by the names of their papers") {
  const Folder folder;
  const auto said = [&](const std::string& line) {
    REQUIRE(test::quillside(line + " '" + folder.file("a.pdf") + "'").exit == 0);
    test::run_shell("pdfinfo '" + folder.file("a.pdf") + "' | grep '^Page size' >'" + folder.file("said") + "'");
    return folder.read("said");
  };
  CHECK(said("gauge --paper a4 --out").find("(A4)") != std::string::npos);
  CHECK(said("gauge --paper a3 --out").find("(A3)") != std::string::npos);
  CHECK(said("gauge --paper letter --out").find("(letter)") != std::string::npos);
  CHECK(said("size no30 --paper a3 --card").find("(A4)") != std::string::npos);
  CHECK(said("size no30 --paper tabloid --card").find("(letter)") != std::string::npos);
}

TEST_CASE("flag --card -: the picture goes to standard output alone, as --as says") {
  CHECK(asked("--card - --as pdf").out.starts_with("%PDF-"));
  CHECK(asked("--card - --as png").out.starts_with("\x89PNG"));
  CHECK(asked("--card - --as svg").out.starts_with("<?xml"));
  CHECK(asked("--card - --as text").out == asked("").out);
}

TEST_CASE("words that ask for no picture that can be: exit 2, the word named, nothing written") {
  const Folder folder;
  const std::string file = folder.file("a");
  const auto refused = [&](const std::string& flags, const std::string& word, const std::string& kind) {
    INFO(flags);
    const auto error = error_of(ask + " " + flags, 2);
    CHECK(error["word"] == word);
    CHECK(error["kind"] == kind);
    CHECK(files_in(folder) == 0);
    return error;
  };
  CHECK(refused("--card '" + file + ".jpg'", file + ".jpg", "word")["allowed"] == test::Json{".pdf", ".svg", ".png"});
  refused("--card '" + file + "'", file, "word");
  refused("--card pdf", "pdf", "word");
  refused("--card -", "--card", "word");
  CHECK(refused("--card - --as pfd", "pfd", "word")["try"] == "pdf");
  refused("--card - --as pdf", "-", "conflict"); // and a record
  refused("--card '" + file + ".pdf' --as pdf", "--as", "conflict");
  refused("--as pdf", "--as", "conflict");
  refused("--paper a4", "--paper", "conflict");
  CHECK(refused("--card '" + file + ".pdf' --paper a5", "a5", "word")["allowed"].size() == 4);
  CHECK(refused("--card '" + file + ".pdf' --paper leter", "leter", "word")["try"] == "letter");
  refused("--card", "--card", "word");
}

TEST_CASE("a place that cannot be written: exit 4, one line that names it, and nothing is left behind") {
  const Folder folder;
  fs::create_directories(folder.file("is.pdf"));
  for (const auto& file : {folder.file("nowhere/a.pdf"), folder.file("is.pdf"), std::string("/proc/a.pdf"),
                           std::string("/dev/full/a.pdf")}) {
    INFO(file);
    const Ran ran = asked("--card '" + file + "'");
    CHECK(ran.exit == 4);
    CHECK(ran.out.empty());
    CHECK(one_line(ran.err));
    CHECK(ran.err.find(file) != std::string::npos);
    CHECK(files_in(folder) == 1);
  }
  CHECK(error_of(ask + " --card '" + folder.file("nowhere/a.pdf") + "'", 4)["kind"] == "file");
}

TEST_CASE("a full disk: exit 4; the old file is as it was, and no other is left beside it") {
  const Folder folder;
  const auto old = folder.write("a.pdf", "the old one");
  // 1 block of 512 bytes, which is less than any picture.
  const Process limited = shell("ulimit -f 1; " + tool + ask + " --card '" + old + "'");
  CHECK(limited.exit == 4);
  CHECK(limited.out.empty());
  CHECK(one_line(limited.err));
  CHECK(folder.read("a.pdf") == "the old one");
  CHECK(files_in(folder) == 1);
  fs::create_symlink("/dev/full", folder.file("full.pdf"));
  const Process full = shell(tool + ask + " --card '" + folder.file("full.pdf") + "'");
  CHECK(full.exit == 4);
  CHECK(one_line(full.err));
  CHECK(fs::is_symlink(folder.file("full.pdf")));
  const Process out = shell(tool + ask + " --card - --as pdf >/dev/full");
  CHECK(out.exit == 4);
  CHECK(one_line(out.err));
}

TEST_CASE("a file that is there is replaced whole: its mode stays, a link stays a link") {
  const Folder folder;
  const auto old = folder.write("a.pdf", "the old one");
  REQUIRE(chmod(old.c_str(), 0640) == 0);
  fs::create_symlink(old, folder.file("link.pdf"));
  CHECK(asked("--card '" + folder.file("link.pdf") + "'").exit == 0);
  CHECK(fs::is_symlink(folder.file("link.pdf")));
  CHECK(folder.read("a.pdf").starts_with("%PDF-"));
  struct stat is {};
  REQUIRE(stat(old.c_str(), &is) == 0);
  CHECK((is.st_mode & 0777U) == 0640);
  CHECK(files_in(folder) == 2);
  // One that a word at fault would have replaced.
  CHECK(test::quillside("drill 3/16mm 303 --card '" + old + "'").exit == 2);
  CHECK(folder.read("a.pdf").starts_with("%PDF-"));
  if (geteuid() != 0) { // root writes where it may not
    REQUIRE(chmod(old.c_str(), 0440) == 0);
    CHECK(asked("--card '" + old + "'").exit == 4);
  }
}

TEST_CASE("the drawing program: not there, not a program, one that fails, one that breaks off") {
  std::signal(SIGPIPE, SIG_IGN);
  const Folder folder;
  const auto drawn_by = [&](const std::string& program) {
    const Ran ran = asked("--card '" + folder.file("a.pdf") + "'", {{}, {{"QUILLSIDE_DRAW", program}}});
    CHECK(ran.out.empty());
    CHECK(one_line(ran.err));
    CHECK_FALSE(fs::exists(folder.file("a.pdf")));
    return ran;
  };
  const auto script = [&](const std::string& text) {
    const auto file = folder.write("draw", "#!/bin/sh\n" + text + "\n");
    fs::permissions(file, fs::perms::owner_all);
    return file;
  };
  CHECK(drawn_by(folder.file("nowhere")).exit == 4);
  CHECK(drawn_by(folder.path()).exit == 4);
  const Ran wrong = drawn_by(script("cat >/dev/null; echo 'so it is not done' >&2; echo more >&2; exit 2"));
  CHECK(wrong.exit == 2);
  CHECK(wrong.err == "quillside: drill: no picture: so it is not done\n");
  CHECK(drawn_by(script("exit 4")).exit == 4);
  CHECK(drawn_by(script("exit 77")).exit == 5);
  CHECK(drawn_by(script("kill -9 $$")).exit == 5);
}

TEST_CASE("found beside the tool; without it, and not installed: exit 4 and what would do") {
  const Folder folder;
  CHECK(shell(tool + ask + " --card '" + folder.file("a.pdf") + "'").exit == 0);
  fs::copy_file(QUILLSIDE_BINARY, folder.file("quillside"));
  const Process alone =
      shell("env -i '" + folder.file("quillside") + "' " + ask + " --card '" + folder.file("b.pdf") + "'");
  CHECK(alone.exit == 4);
  CHECK(one_line(alone.err));
  CHECK(alone.err.find("$QUILLSIDE_DRAW") != std::string::npos);
  CHECK_FALSE(fs::exists(folder.file("b.pdf")));
}

TEST_CASE("a font that is not installed: exit 4, and the package that has it is named") {
  const Folder folder;
  const auto none = folder.write(
      "fonts.conf", "<?xml version=\"1.0\"?><!DOCTYPE fontconfig SYSTEM \"fonts.dtd\"><fontconfig><cachedir>" +
                        folder.file("cache") + "</cachedir></fontconfig>");
  const Process process = shell("FONTCONFIG_FILE='" + none + "'; export FONTCONFIG_FILE; '" QUILLSIDE_BINARY "' " +
                                ask + " --card '" + folder.file("a.pdf") + "'");
  CHECK(process.exit == 4);
  CHECK(one_line(process.err));
  CHECK(process.err.find("fonts-dejavu-core") != std::string::npos);
  CHECK_FALSE(fs::exists(folder.file("a.pdf")));
}

TEST_CASE("in a batch a line may have its card in a file, but not on standard output") {
  const Folder folder;
  const Ran ran = test::quillside(
      "batch --paper a4",
      {{"size no30 --card '" + folder.file("a.pdf") + "'", "size no31 --card - --as pdf", "size F"}, {}});
  CHECK(ran.exit == 2);
  CHECK(folder.read("a.pdf").starts_with("%PDF-"));
  CHECK(std::count(ran.out.begin(), ran.out.end(), '\n') == 3);
  CHECK(ran.out.find("%PDF") == std::string::npos);
  CHECK(ran.err.find("line 2: size: '-' is no place for a picture in a batch") != std::string::npos);
  CHECK(test::quillside("batch --card '" + folder.file("b.pdf") + "'").exit == 2);
}

TEST_CASE("drawn twice on one day it is the same, byte for byte; the day and the ask as typed stand in the foot") {
  const Folder folder;
  const test::Surroundings day{{}, {{"SOURCE_DATE_EPOCH", "1764460800"}}}; // 2025-11-30, as date -u says
  for (const auto* name : {"a.pdf", "b.pdf", "a.svg", "b.svg", "a.png", "b.png"})
    REQUIRE(asked("--card '" + folder.file(name) + "' --why", day).exit == 0);
  CHECK(folder.read("a.pdf") == folder.read("b.pdf"));
  CHECK(folder.read("a.svg") == folder.read("b.svg"));
  CHECK(folder.read("a.png") == folder.read("b.png"));
  test::run_shell("pdftotext '" + folder.file("a.pdf") + "' '" + folder.file("a.txt") + "'");
  const std::string text = folder.read("a.txt");
  CHECK(text.find("2025-11-30") != std::string::npos);
  CHECK(text.find("quillside drill no30 303 --machine pillar --why") != std::string::npos);
  CHECK(text.find("2340") != std::string::npos);
}
