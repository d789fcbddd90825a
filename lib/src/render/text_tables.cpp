#include <quillside/words/print.hpp>

#include "page_of_text.hpp"

namespace quillside {

namespace {

using Members = std::vector<Member>;
using Values = std::vector<Value>;

std::string word(const Members& members, const char* name) { return find_word(members, name); }

long count(const Members& members, const char* name) {
  const Value* value = find(members, name);
  const auto* number = value == nullptr ? nullptr : std::get_if<long>(&value->held);
  return number == nullptr ? 0 : *number;
}

std::string at(const Members& members) { return word(members, "file") + ":" + std::to_string(count(members, "line")); }

/// As it stands in a table file.
std::string as_toml(const Value& value) {
  if (const auto* text = std::get_if<std::string>(&value.held)) return '"' + *text + '"';
  if (const auto* truth = std::get_if<bool>(&value.held)) return *truth ? "true" : "false";
  if (const auto* number = std::get_if<Measure>(&value.held)) return shortest_decimal(number->value);
  std::string list;
  if (const auto* texts = std::get_if<Values>(&value.held))
    for (const auto& text : *texts) list += (list.empty() ? "" : ", ") + as_toml(text);
  return "[" + list + "]";
}

void add_row(std::vector<PageLine>& lines, const Members& members, const std::string& indent) {
  const Value* row = find(members, "row");
  const auto* fields = row == nullptr ? nullptr : std::get_if<Members>(&row->held);
  if (fields == nullptr) return;
  for (const auto& field : *fields)
    lines.push_back(in_columns(indent + field.name + " = " + as_toml(field.value), {field.name, as_toml(field.value)}));
}

/// A row in one line: its values in order, as typed.
std::string in_one_line(const Members& members) {
  const Value* row = find(members, "row");
  const auto* fields = row == nullptr ? nullptr : std::get_if<Members>(&row->held);
  std::string line;
  if (fields == nullptr) return line;
  for (const auto& field : *fields) line += (line.empty() ? "" : ", ") + field.name + " = " + as_toml(field.value);
  return line;
}

void page_of_list(Page& page, const Answer& answer) {
  for (const auto& kind : answer.findings) {
    const auto* rows = std::get_if<Values>(&kind.value.held);
    if (rows == nullptr) continue;
    page.lines.push_back(kind.name);
    for (const auto& row : *rows) {
      const auto& members = std::get<Members>(row.held);
      std::string key = "  " + word(members, "key");
      key.resize(std::max<std::size_t>(key.size() + 1, 24), ' ');
      page.lines.push_back(in_columns(key + word(members, "name"), {word(members, "key"), word(members, "name")}));
    }
  }
}

void page_of_row(Page& page, const Answer& answer) {
  page.first = word(answer.findings, "kind") + " " +
               find_word(std::vector<Member>{{"name", find_input(answer, "name")->value}}, "name") + "   " +
               at(answer.findings);
  if (const std::string over = word(answer.findings, "overrides"); !over.empty())
    page.lines.push_back("goes over " + over);
  add_row(page.lines, answer.findings, "  ");
  const Value* rows = find(answer.findings, "rows");
  const auto* list = rows == nullptr ? nullptr : std::get_if<Values>(&rows->held);
  if (list == nullptr) return;
  std::string kind;
  for (const auto& row : *list) {
    const auto& members = std::get<Members>(row.held);
    if (word(members, "kind") != kind) {
      kind = word(members, "kind");
      page.lines.push_back(kind);
    }
    page.lines.push_back("  " + in_one_line(members) + "   " + at(members));
  }
  page.lines.emplace_back("Sources");
  for (const auto& source : answer.sources)
    page.lines.push_back("  [" + source.id + "] " + source.cite + (source.page ? ", " + *source.page : "") + " (" +
                         source.standing + ")");
}

void page_of_check(Page& page, const Answer& answer) {
  const Value* files = find(answer.findings, "files");
  for (const auto& file : std::get<Values>(files->held)) {
    const auto& members = std::get<Members>(file.held);
    const auto& faults = std::get<Values>(find(members, "faults")->held);
    if (faults.empty()) page.lines.push_back(word(members, "file") + ": no faults");
    for (const auto& fault : faults) {
      const auto& one = std::get<Members>(fault.held);
      const std::string allowed = word(one, "allowed");
      page.lines.push_back(word(members, "file") + ":" + std::to_string(count(one, "line")) + ":" +
                           std::to_string(count(one, "column")) + ": " + word(one, "what") +
                           (allowed.empty() ? "" : "; allowed: " + allowed));
    }
  }
}

void page_of_path(Page& page, const Answer& answer) {
  for (const auto& place : std::get<Values>(find(answer.findings, "searched")->held)) {
    const auto& members = std::get<Members>(place.held);
    page.lines.push_back(std::string(std::get<bool>(find(members, "found")->held) ? "found     " : "not there ") +
                         word(members, "path"));
  }
}

} // namespace

Page page_of_tables(const Answer& answer, const TextStyle&) {
  Page page;
  const Input* what = find_input(answer, "what");
  const std::string asked = what == nullptr ? "" : std::get<std::string>(what->value.held);
  if (asked == "list") page_of_list(page, answer);
  if (asked == "show") page_of_row(page, answer);
  if (asked == "check") page_of_check(page, answer);
  if (asked == "path") page_of_path(page, answer);
  if (asked == "new") {
    page.first = word(answer.findings, "file");
    if (!page.first.empty() && page.first.back() == '\n') page.first.pop_back();
  }
  return page;
}

} // namespace quillside
