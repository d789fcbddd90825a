#pragma once
// The command line, described once: parsing, help, the man page and completion all read this.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace quillside::cli {

struct Flag {
  std::string_view name;  // without its dashes
  std::string_view value; // what follows it; empty for one that stands alone
  std::string_view about;
  bool repeatable = false;
};

struct AskDescription {
  std::string_view name;
  std::string_view words; // what follows it, as help shows it
  std::string_view about;
  std::size_t least_words = 0;
  std::size_t most_words = 0;
  std::vector<Flag> flags; // its own, besides those that go everywhere
  std::vector<std::string_view> examples;
};

/// Every ask, in the order of help.
const std::vector<AskDescription>& asks();
/// The flags that go with every ask.
const std::vector<Flag>& flags_everywhere();
/// Throws a Fault with a suggestion when there is no such ask.
const AskDescription& find_ask(const std::string& name);

/// The words of one ask, sorted into places and flags but not read yet.
struct Call {
  const AskDescription* ask = nullptr;
  std::vector<std::string> words;                        // after the ask's name
  std::map<std::string, std::string, std::less<>> flags; // the last of a repeatable one
  std::vector<std::string> tables;                       // every --tables

  [[nodiscard]] std::optional<std::string> flag(std::string_view name) const;
  [[nodiscard]] bool has(std::string_view name) const { return flags.contains(name); }
};

/// Throws a Fault for an unknown flag (with a suggestion), one of another ask, one given twice, one without its value,
/// and for too few or too many words.
Call parse_call(const std::vector<std::string>& words);

std::string help();
std::string help(const AskDescription& ask);

} // namespace quillside::cli
