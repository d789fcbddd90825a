#include <quillside/words/print.hpp>

#include "page_of_text.hpp"

namespace quillside {

namespace {

std::string in_inch(const Measure& length) { return print_length_with_unit(mm(length.value), UnitSystem::inch); }
std::string in_metric(const Measure& length) { return print_length(mm(length.value), UnitSystem::metric); }
std::string both_units(const Measure& length) { return in_inch(length) + "   " + in_metric(length); }

void add_rows(std::vector<PageLine>& lines, const Answer& answer, const char* name, const char* heading) {
  const Value* value = find(answer.findings, name);
  const auto* rows = value == nullptr ? nullptr : std::get_if<std::vector<Value>>(&value->held);
  if (rows == nullptr || rows->empty()) return;
  for (const auto& row : *rows) {
    const auto& members = std::get<std::vector<Member>>(row.held);
    const Measure& length = *find_measure(members, "length");
    std::vector<std::string> cells{&row == rows->data() ? heading : "", find_word(members, "name"), in_inch(length),
                                   in_metric(length)};
    std::string first = cells[0];
    first.resize(8, ' ');
    std::string size = cells[1];
    size.resize(std::max<std::size_t>(size.size(), 9), ' ');
    lines.push_back(in_columns(first + size + both_units(length), std::move(cells)));
  }
}

} // namespace

Page page_of_size(const Answer& answer, const TextStyle& style) {
  Page page;
  const Value* size = find(answer.findings, "size");
  const auto* members = size == nullptr ? nullptr : std::get_if<std::vector<Member>>(&size->held);
  if (members == nullptr) return page;
  const Measure* length = find_measure(*members, "length");
  const auto fraction = print_fraction(mm(length->value));
  page.number = style.units == UnitSystem::inch ? print_length(mm(length->value), UnitSystem::inch)
                                                : fixed_decimal(length->value, 3);
  page.first =
      both_units(*length) + "   " + print_thou(mm(length->value)) + (fraction ? "   " + *fraction + " in" : "");
  add_rows(page.lines, answer, "same", "same");
  add_rows(page.lines, answer, "below", "below");
  add_rows(page.lines, answer, "above", "above");
  return page;
}

} // namespace quillside
