#include <quillside/job/show_tables.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/suggest.hpp>

#include <algorithm>

#include "asks.hpp"

namespace quillside::cli {

namespace {

constexpr std::array<std::string_view, 5> whats{"list", "show", "check", "path", "new"};

/// The word behind `show` and `new`.
const std::string& the_word(const Call& call, const char* noun) {
  if (call.words.size() < 2) throw wrong_word(call.words[0], "needs a " + std::string(noun) + " behind it");
  if (call.words.size() > 2)
    throw wrong_word(call.words[2], "is one word too many: tables " + call.words[0] + " takes one " + noun);
  return call.words[1];
}

void nothing_behind(const Call& call) {
  if (call.words.size() > 1)
    throw wrong_word(call.words[1], "is one word too many: tables " + call.words[0] + " stands alone");
}

Reply check(const Call& call, const Session& session) {
  if (call.words.size() < 2) throw wrong_word("check", "needs a table file behind it");
  std::vector<TableFileText> files;
  for (auto word = call.words.begin() + 1; word != call.words.end(); ++word)
    if (std::find(call.words.begin() + 1, word, *word) == word) files.push_back(read_table_file(*word));
  std::vector<TableText> texts;
  for (const auto& file : files) texts.push_back({file.path, file.text});
  auto checked = check_files(session.builtin(), texts);
  return {std::move(checked.answer), std::move(checked.faults)};
}

Reply path(const Call& call, const Session& session) {
  nothing_behind(call);
  std::vector<SearchedPlace> places;
  for (const auto& place : places_of(session.search(call))) places.push_back({place.path, place.found});
  return {show_path(places)};
}

} // namespace

Reply ask_tables(const Call& call, const Session& session) {
  const std::string& what = call.words[0];
  if (what == "list") {
    nothing_behind(call);
    return {list_tables(session.tables())};
  }
  if (what == "show") return {show_row(session.tables(), session.builtin(), the_word(call, "name"))};
  if (what == "new") return {new_row(the_word(call, "kind"))};
  if (what == "check") return check(call, session);
  if (what == "path") return path(call, session);
  throw wrong_word(what, "is nothing to do with tables; allowed: list, show, check, path, new",
                   {whats.begin(), whats.end()}, nearest_word(what, whats));
}

} // namespace quillside::cli
