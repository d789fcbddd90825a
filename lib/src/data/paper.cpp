#include <quillside/data/paper.hpp>

#include <algorithm>
#include <vector>

#include <quillside/words/fault.hpp>
#include <quillside/words/suggest.hpp>

namespace quillside {

const Paper& find_paper(std::string_view name) {
  const auto* found =
      std::find_if(papers.begin(), papers.end(), [&](const Paper& paper) { return paper.name == name; });
  if (found != papers.end()) return *found;
  std::vector<std::string_view> names;
  std::string list;
  for (const auto& paper : papers) {
    names.push_back(paper.name);
    list += (list.empty() ? "" : ", ") + std::string(paper.name);
  }
  const auto nearest = nearest_word(name, names);
  throw wrong_word(std::string(name),
                   "is no paper" + (nearest ? "; '" + *nearest + "' is meant?" : std::string(";")) +
                       " allowed: " + list,
                   {names.begin(), names.end()}, nearest);
}

} // namespace quillside
