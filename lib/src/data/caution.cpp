#include <quillside/data/caution.hpp>

#include <algorithm>

namespace quillside {

namespace {

bool is_one_of(std::string_view alternatives, std::string_view word) {
  for (;;) {
    const auto bar = alternatives.find('|');
    if (alternatives.substr(0, bar) == word) return true;
    if (bar == std::string_view::npos) return false;
    alternatives.remove_prefix(bar + 1);
  }
}

bool tag_holds(std::string_view tag, const CautionSubject& subject) {
  const auto colon = tag.find(':');
  const std::string_view about = tag.substr(0, colon);
  const std::string_view words = colon == std::string_view::npos ? std::string_view{} : tag.substr(colon + 1);
  if (about == "ask") return is_one_of(words, subject.ask);
  if (about == "metal") return is_one_of(words, subject.metal);
  if (about == "cutter") return is_one_of(words, subject.cutter);
  if (about == "machine") return is_one_of(words, subject.machine);
  return about == "flag" && std::any_of(subject.flags.begin(), subject.flags.end(),
                                        [&](std::string_view flag) { return is_one_of(words, flag); });
}

} // namespace

bool holds(const Caution& caution, const CautionSubject& subject) {
  return std::all_of(caution.when.begin(), caution.when.end(),
                     [&](std::string_view tag) { return tag_holds(tag, subject); });
}

} // namespace quillside
