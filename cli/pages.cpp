#include "pages.hpp"

#include <quillside/version.hpp>

#include "flags.hpp"

namespace quillside::cli {

namespace {

/// Text as man takes it: dashes are minus signs, a leading point or quote is no macro.
std::string roff(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '-' || c == '\\')
      out += c == '-' ? "\\-" : "\\e";
    else
      out += c;
  }
  return !out.empty() && (out.front() == '.' || out.front() == '\'') ? "\\&" + out : out;
}

std::string flag_entry(const Flag& flag) {
  std::string entry = ".TP\n.B \\-\\-" + roff(flag.name);
  if (!flag.value.empty()) entry += " \\fI" + roff(flag.value) + "\\fR";
  return entry + "\n" + roff(flag.about) + ".\n";
}

std::string ask_entry(const AskDescription& ask) {
  std::string entry = ".SS " + roff(ask.name) + " " + roff(ask.words) + "\n" + roff(ask.about) + ".\n";
  for (const auto& flag : ask.flags) entry += flag_entry(flag);
  return entry;
}

std::string examples() {
  std::string all;
  for (const auto& ask : asks())
    for (const auto example : ask.examples) all += ".PP\n.nf\n" + roff(example) + "\n.fi\n";
  return all;
}

/// A value that is one of a few words, as `inch|metric`; empty for any other.
std::string choices(std::string_view value) {
  if (value.find('|') == std::string_view::npos) return {};
  std::string words(value);
  for (char& c : words)
    if (c == '|') c = ' ';
  return words;
}

std::string dashed_names(const std::vector<Flag>& flags) {
  std::string names;
  for (const auto& flag : flags) names += (names.empty() ? "--" : " --") + std::string(flag.name);
  return names;
}

} // namespace

std::string man_page() {
  std::string page = ".TH QUILLSIDE 1 \"\" \"quillside " + std::string(version) + "\" \"User Commands\"\n";
  page += ".SH NAME\nquillside \\- speeds, feeds and depths for a lone metalworker\n";
  page += ".SH SYNOPSIS\n.B quillside\n\\fIASK WORDS\\fR... \\fIFLAGS\\fR...\n";
  page +=
      ".SH DESCRIPTION\nAnswers what is asked before a cut: the number to dial in first, then the band that works, "
      "what was\n"
      "taken for granted, the cautions, and where the figure was published. No figure goes before the maker's marked\n"
      "limits, local codes or qualified instruction.\n";
  page += ".PP\nA size is 3/16, 1\\-1/8, 0.1875in, 4.8mm, 55thou, no30 or F; a fraction is inch always. A material is "
          "a grade or\n"
          "what people call it, or either with a condition or a hardness: 416, brass, 416@annealed, 416@28HRC.\n";
  page += ".SH ASKS\n";
  for (const auto& ask : asks()) page += ask_entry(ask);
  page += ".SH FLAGS EVERYWHERE\n";
  for (const auto& flag : flags_everywhere()) page += flag_entry(flag);
  page += ".SH FILES\n.TP\n.I $XDG_CONFIG_HOME/quillside/tables/*.toml\nTables that go over the built\\-in ones.\n"
          ".TP\n.I $XDG_CONFIG_HOME/quillside/settings.toml\nunits, machine, paper.\n";
  page += ".SH ENVIRONMENT\n.TP\n.B QUILLSIDE_TABLES\nTable files or folders, parted by colons.\n.TP\n.B NO_COLOR\nNo "
          "bold text.\n.TP\n.B QUILLSIDE_DRAW\nThe drawing program, where it is neither beside this one nor "
          "installed.\n.TP\n.B SOURCE_DATE_EPOCH\nThe day in the foot of a picture, in seconds.\n";
  page += ".SH EXIT STATUS\n0 answered; 1 answered with DO NOT; 2 the words were wrong or contradict; 3 a table or "
          "settings file is\n"
          "wrong; 4 a file or stream could not be read or written; 5 a fault of the program.\n";
  page += ".SH ACCURACY\nText is rounded; JSON is not. A figure that was not read off a page says so.\n";
  return page + ".SH EXAMPLES\n" + examples();
}

std::string bash_completion() {
  std::string names;
  for (const auto& ask : asks()) names += (names.empty() ? "" : " ") + std::string(ask.name);
  std::string script = "# bash completion for quillside\n_quillside() {\n"
                       "  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} words=\n"
                       "  case $before in\n";
  std::vector<Flag> all = flags_everywhere();
  for (const auto& ask : asks()) all.insert(all.end(), ask.flags.begin(), ask.flags.end());
  for (const auto& flag : all)
    if (const std::string words = choices(flag.value); !words.empty())
      script +=
          "    --" + std::string(flag.name) + ") COMPREPLY=($(compgen -W \"" + words + "\" -- \"$word\")); return ;;\n";
  script += "    --tables|--card|--out) COMPREPLY=($(compgen -f -- \"$word\")); return ;;\n  esac\n";
  script += "  if [ \"$COMP_CWORD\" = 1 ]; then COMPREPLY=($(compgen -W \"" + names +
            " --help --version\" -- \"$word\")); return; fi\n";
  script += "  case ${COMP_WORDS[1]} in\n";
  for (const auto& ask : asks())
    script += "    " + std::string(ask.name) + ") words=\"" + dashed_names(ask.flags) + "\" ;;\n";
  script += "  esac\n  COMPREPLY=($(compgen -W \"$words " + dashed_names(flags_everywhere()) + "\" -- \"$word\"))\n}\n";
  return script + "complete -o default -F _quillside quillside\n";
}

} // namespace quillside::cli
