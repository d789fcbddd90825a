#include "page_of_text.hpp"

namespace quillside {

Page page_of_signs(const Answer& answer, const TextStyle&) {
  Page page;
  const Value* rows = find(answer.findings, "rows");
  if (rows == nullptr) return page;
  for (const auto& row : std::get<std::vector<Value>>(rows->held)) {
    const auto& members = std::get<std::vector<Member>>(row.held);
    const auto word = [&](std::string_view name) { return find_word(members, name); };
    const std::string head = word("tool") + ": " + word("sign");
    if (page.first.empty())
      page.first = head;
    else
      page.lines.push_back(head);
    page.lines.push_back("  cause  " + word("cause"));
    page.lines.push_back("  set    " + word("set"));
  }
  return page;
}

} // namespace quillside
