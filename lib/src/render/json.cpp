#include <quillside/render/json.hpp>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <stdexcept>

#include <quillside/words/utf8.hpp>

namespace quillside {

namespace {

class Writer {
public:
  void raw(std::string_view text) { out_ += text; }

  void text(std::string_view value) {
    out_ += '"';
    while (!value.empty()) {
      const auto control =
          std::find_if(value.begin(), value.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20; });
      const auto plain = static_cast<std::size_t>(control - value.begin());
      for (const char c : printable(value.substr(0, plain))) {
        if (c == '"' || c == '\\') out_ += '\\';
        out_ += c;
      }
      if (control != value.end()) escape(*control);
      value.remove_prefix(std::min(plain + 1, value.size()));
    }
    out_ += '"';
  }

  void text_or_null(const std::optional<std::string>& value) {
    if (value)
      text(*value);
    else
      raw("null");
  }

  /// The shortest digits that read back as the same number.
  void number(double value) {
    if (!std::isfinite(value)) throw std::logic_error{"a record holds a number that is not finite"};
    std::array<char, 40> room{};
    const auto result = std::to_chars(room.data(), room.data() + room.size(), value == 0 ? 0.0 : value);
    out_.append(room.data(), result.ptr);
  }

  void whole(long value) { out_ += std::to_string(value); }

  void name(std::string_view value) {
    text(value);
    out_ += ':';
  }

  template <class List, class Each> void list(const List& entries, char open, char close, Each each) {
    out_ += open;
    bool first = true;
    for (const auto& entry : entries) {
      if (!first) out_ += ',';
      first = false;
      each(entry);
    }
    out_ += close;
  }

  void measure(const Measure& value) {
    raw("{\"value\":");
    number(value.value);
    raw(",\"unit\":");
    text(value.unit);
    if (value.low && value.high) {
      raw(",\"low\":");
      number(*value.low);
      raw(",\"high\":");
      number(*value.high);
    }
    raw("}");
  }

  void members(const std::vector<Member>& all) {
    list(all, '{', '}', [&](const Member& member) {
      name(member.name);
      value(member.value);
    });
  }

  void value(const Value& held) {
    std::visit([&](const auto& one) { put(one); }, held.held);
  }

  std::string take() { return std::move(out_); }

private:
  void escape(char control) {
    constexpr std::string_view hex = "0123456789abcdef";
    const auto code = static_cast<unsigned char>(control);
    if (control == '\n')
      out_ += "\\n";
    else
      out_ += std::string("\\u00") + hex[code >> 4U] + hex[code & 0xfU];
  }

  void put(std::monostate) { raw("null"); }
  void put(bool truth) { raw(truth ? "true" : "false"); }
  void put(long count) { whole(count); }
  void put(const std::string& word) { text(word); }
  void put(const Measure& quantity) { measure(quantity); }
  void put(const std::vector<Value>& all) {
    list(all, '[', ']', [&](const Value& one) { value(one); });
  }
  void put(const std::vector<Member>& all) { members(all); }

  std::string out_;
};

const Measure* as_measure(const Value& value) { return std::get_if<Measure>(&value.held); }

/// Every entry's quantity; empty for anything but a list of quantities.
std::vector<const Measure*> measures_of(const Value& value) {
  std::vector<const Measure*> all;
  const auto* list = std::get_if<std::vector<Value>>(&value.held);
  if (list == nullptr) return all;
  for (const auto& entry : *list) {
    const auto* measure = as_measure(entry);
    if (measure == nullptr) return {};
    all.push_back(measure);
  }
  return all;
}

/// A quantity's number, or those of a list of quantities; the unit stands beside it, once.
void write_input(Writer& out, const Input& input) {
  out.name(input.name);
  out.raw("{\"value\":");
  const auto* quantity = as_measure(input.value);
  const auto list = measures_of(input.value);
  if (quantity != nullptr)
    out.number(quantity->value);
  else if (!list.empty())
    out.list(list, '[', ']', [&](const Measure* one) { out.number(one->value); });
  else
    out.value(input.value);
  const auto* with_unit = list.empty() ? quantity : list.front();
  out.raw(",\"unit\":");
  if (with_unit != nullptr && std::string_view(with_unit->unit) != "1")
    out.text(with_unit->unit);
  else
    out.raw("null");
  out.raw(",\"text\":");
  out.text_or_null(input.text);
  out.raw(input.text ? ",\"given\":true}" : ",\"given\":false}");
}

void write_line(Writer& out, std::optional<int> line) {
  out.raw(",\"line\":");
  if (line)
    out.whole(*line);
  else
    out.raw("null");
}

} // namespace

std::string json(const Answer& answer, std::optional<int> line) {
  Writer out;
  out.raw("{\"schema\":1,\"ask\":");
  out.text(answer.ask);
  write_line(out, line);
  out.raw(",\"inputs\":");
  out.list(answer.inputs, '{', '}', [&](const Input& input) { write_input(out, input); });
  out.raw(",\"set\":");
  out.members(answer.settings);
  out.raw(",\"found\":");
  out.members(answer.findings);
  out.raw(",\"verdict\":");
  out.text_or_null(answer.verdict);
  out.raw(",\"reason\":");
  out.text_or_null(answer.reason);
  out.raw(",\"instead\":");
  out.text_or_null(answer.instead);
  out.raw(",\"why\":");
  out.list(answer.why, '[', ']', [&](const Why& why) {
    out.raw("{\"step\":");
    out.text(why.step);
    out.raw(",\"formula\":");
    out.text(why.formula);
    out.raw(",\"value\":");
    out.value(why.value);
    out.raw(",\"source\":");
    out.text(why.source);
    out.raw("}");
  });
  out.raw(",\"cautions\":");
  out.list(answer.cautions, '[', ']', [&](const CautionGiven& caution) {
    out.raw("{\"id\":");
    out.text(caution.id);
    out.raw(",\"severity\":");
    out.text(caution.severity);
    out.raw(",\"text\":");
    out.text(caution.text);
    out.raw("}");
  });
  out.raw(",\"sources\":");
  out.list(answer.sources, '[', ']', [&](const SourceNamed& source) {
    out.raw("{\"id\":");
    out.text(source.id);
    out.raw(",\"cite\":");
    out.text(source.cite);
    out.raw(",\"standing\":");
    out.text(source.standing);
    out.raw(",\"page\":");
    out.text_or_null(source.page);
    out.raw("}");
  });
  out.raw("}");
  return out.take();
}

std::string json(const Fault& fault, const std::string& ask, std::optional<int> line) {
  Writer out;
  out.raw("{\"schema\":1,\"ask\":");
  if (ask.empty())
    out.raw("null");
  else
    out.text(ask);
  write_line(out, line);
  out.raw(",\"error\":{\"kind\":");
  out.text(name_of(fault.kind));
  out.raw(",\"exit\":");
  out.whole(exit_code(fault.kind));
  out.raw(",\"word\":");
  out.text(fault.word);
  out.raw(",\"message\":");
  out.text(fault.message);
  out.raw(",\"allowed\":");
  out.list(fault.allowed, '[', ']', [&](const std::string& word) { out.text(word); });
  out.raw(",\"try\":");
  out.text_or_null(fault.suggestion);
  out.raw(",\"place\":");
  if (fault.place) {
    out.raw("{\"file\":");
    out.text(fault.place->file);
    out.raw(",\"line\":");
    out.whole(fault.place->line);
    out.raw(",\"column\":");
    out.whole(fault.place->column);
    out.raw("}");
  } else {
    out.raw("null");
  }
  out.raw("}}");
  return out.take();
}

std::string json(const std::vector<Line>& lines) {
  Writer out;
  out.list(lines, '[', ']', [&](const Line& line) {
    out.raw("{\"part\":");
    out.text(name_of(line.part));
    out.raw(",\"text\":");
    out.text(line.text);
    if (!line.cells.empty()) {
      out.raw(",\"cells\":");
      out.list(line.cells, '[', ']', [&](const std::string& cell) { out.text(cell); });
    }
    if (!line.number.empty()) {
      out.raw(",\"number\":");
      out.text(line.number);
    }
    out.raw("}");
  });
  return out.take();
}

std::string json(std::string_view text) {
  Writer out;
  out.text(text);
  return out.take();
}

} // namespace quillside
