#include "picture.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <ctime>

#include <quillside/render/json.hpp>
#include <quillside/render/lines.hpp>
#include <quillside/version.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/suggest.hpp>
#include <quillside/words/utf8.hpp>

#include "drawing.hpp"

namespace quillside::cli {

namespace {

constexpr std::array<std::string_view, 4> kinds{"pdf", "svg", "png", "text"};

std::string kind_named(const std::string& word) {
  if (std::find(kinds.begin(), kinds.end(), word) != kinds.end()) return word;
  const auto nearest = nearest_word(word, kinds);
  throw wrong_word(word,
                   "is nothing to draw as" + (nearest ? "; '" + *nearest + "' is meant?" : std::string(";")) +
                       " allowed: pdf, svg, png, text",
                   {kinds.begin(), kinds.end()}, nearest);
}

std::string kind_by_ending(const std::string& file) {
  const auto dot = file.rfind('.');
  std::string ending = dot == std::string::npos ? "" : file.substr(dot + 1);
  std::transform(ending.begin(), ending.end(), ending.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  if (ending == "pdf" || ending == "svg" || ending == "png") return ending;
  throw wrong_word(printable(file), "has an ending that says no kind of picture; allowed: .pdf, .svg, .png",
                   {".pdf", ".svg", ".png"});
}

/// The flag that names the file.
std::optional<std::string> flag_of_file(const Call& call) {
  if (call.has("card") && call.has("out"))
    throw contradiction("--card", "--card and --out are two pictures: ask for one at a time");
  for (const auto* flag : {"card", "out"})
    if (call.has(flag)) return flag;
  return std::nullopt;
}

std::string kind_of(const Call& call, const std::string& flag, const std::string& file) {
  const auto as = call.flag("as");
  if (file != "-" && as)
    throw contradiction("--as", "--as goes with - alone: the ending of " + printable(file) + " says what it is");
  if (file != "-") return kind_by_ending(file);
  if (!as) throw wrong_word("--" + flag, "needs --as with -: pdf, svg, png or text", {kinds.begin(), kinds.end()});
  return kind_named(*as);
}

std::string joined(const std::vector<std::string>& words) {
  std::string line;
  for (const auto& word : words) line += (line.empty() ? "" : " ") + printable(word);
  return line;
}

/// A word as a shell takes it.
std::string quoted(const std::string& word) {
  constexpr std::string_view plain = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789@%+=:,./_-";
  if (!word.empty() && word.find_first_not_of(plain) == std::string::npos) return word;
  std::string text = "'";
  for (const char c : word) text += c == '\'' ? "'\\''" : std::string(1, c);
  return text + "'";
}

/// The ask as typed, without what says how it is drawn.
std::string asked(const std::vector<std::string>& words) {
  constexpr std::array<std::string_view, 4> of_pictures{"--card", "--out", "--as", "--paper"};
  std::vector<std::string> kept{"quillside"};
  for (std::size_t i = 0; i < words.size(); ++i) {
    const std::string flag = words[i].substr(0, words[i].find('='));
    const bool of_picture = std::find(of_pictures.begin(), of_pictures.end(), flag) != of_pictures.end();
    if (!of_picture) kept.push_back(quoted(words[i]));
    if (of_picture && flag == words[i]) ++i; // its value is the next word
  }
  return joined(kept);
}

/// The day, here; or that of $SOURCE_DATE_EPOCH, so that a picture can be made the same twice.
std::string today(const Console& console) {
  std::time_t moment = std::time(nullptr);
  std::tm day{};
  const auto set = console.env("SOURCE_DATE_EPOCH");
  long seconds = 0;
  if (set && std::from_chars(set->data(), set->data() + set->size(), seconds).ptr == set->data() + set->size() &&
      !set->empty()) {
    moment = seconds;
    gmtime_r(&moment, &day);
  } else {
    localtime_r(&moment, &day);
  }
  std::array<char, 32> text{};
  return {text.data(), std::strftime(text.data(), text.size(), "%Y-%m-%d", &day)};
}

std::string document(const PictureWanted& wanted, const Reply& reply, const std::vector<std::string>& words,
                     const Console& console) {
  std::string more;
  for (const auto& one : reply.more) more += (more.empty() ? "" : ",") + json(one, std::nullopt);
  const auto member = [](const char* name, std::string_view text) {
    return std::string("\"") + name + "\":" + json(text);
  };
  // What a person reads of it; a chart is made from the record alone.
  const std::string text = wanted.kind != "chart" ? ",\"text\":" + json(lines(reply.answer, wanted.units)) : "";
  return "{\"answer\":" + json(reply.answer, std::nullopt) + ",\"more\":[" + more + "]" + text + ",\"page\":{" +
         member("kind", wanted.kind) + "," + member("as", wanted.as) + "," + member("paper", wanted.paper) + "," +
         member("units", wanted.units == UnitSystem::inch ? "inch" : "metric") + "," + member("title", wanted.title) +
         "," + member("asked", asked(words)) + "," + member("date", today(console)) + "," +
         member("maker", std::string("quillside ") + version) + "}}";
}

} // namespace

bool has_picture(const Call& call) { return call.has("card") || call.has("out"); }

std::optional<PictureWanted> picture_wanted(const Call& call, const Session& session) {
  const auto flag = flag_of_file(call);
  if (!flag) {
    const bool draws = call.ask->name == "chart" || call.ask->name == "gauge";
    if (call.has("as")) throw contradiction("--as", "--as goes with --card - or --out -, and neither is there");
    if (call.has("paper") && !draws) throw contradiction("--paper", "--paper goes with --card, and there is none");
    return std::nullopt;
  }
  const std::string file = *call.flag(*flag);
  const std::string as = kind_of(call, *flag, file);
  if (as == "text") return std::nullopt;
  std::vector<std::string> title{std::string(call.ask->name)};
  title.insert(title.end(), call.words.begin(), call.words.end());
  return PictureWanted{*flag == "card" ? "card" : std::string(call.ask->name),
                       file,
                       as,
                       std::string(session.paper(call).value->name),
                       session.units(),
                       joined(title)};
}

std::string picture_of(const PictureWanted& wanted, const Reply& reply, const std::vector<std::string>& words,
                       const Console& console) {
  const auto program = find_drawing_program(console.env("QUILLSIDE_DRAW"));
  if (!program) {
    Fault fault;
    fault.kind = FaultKind::file;
    fault.word = "quillside-draw";
    fault.message =
        "no drawing program: quillside-draw is neither beside this program nor where it is installed; build "
        "it (it needs libcairo2-dev and libpango1.0-dev), or name it in $QUILLSIDE_DRAW";
    throw fault;
  }
  return drawn_by(*program, document(wanted, reply, words, console));
}

} // namespace quillside::cli
