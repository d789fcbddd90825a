#include <quillside/page/document.hpp>

#include <algorithm>
#include <array>
#include <stdexcept>

#include <simdjson.h>

namespace quillside::page {

namespace {

using Json = simdjson::dom::element;
using simdjson::dom::element_type;

/// Every unit that a record carries (answer/key); a Measure points at one of these.
constexpr std::array<const char*, 20> units{"mm", "deg",  "m/min", "rev/min", "mm/min", "mm/rev", "mm/tooth",
                                            "N",  "N.m",  "W",     "s",       "degC",   "MPa",    "1",
                                            "J",  "mm/N", "Hz",    "HB",      "1/degC", "mm4"};

const char* unit_of(std::string_view name) {
  const auto is = [&](const char* unit) { return name == unit; };
  if (const auto* found = std::find_if(units.begin(), units.end(), is); found != units.end()) return *found;
  throw std::runtime_error{"'" + std::string(name) + "' is no unit of a record"};
}

/// The member of that name; nothing where there is none, or it is null.
std::optional<Json> member(Json json, std::string_view name) {
  Json held;
  if (json.at_key(name).get(held) != simdjson::SUCCESS || held.is_null()) return std::nullopt;
  return held;
}

std::string text_of(Json json) { return std::string(json.get_string().value()); }

/// The text of a member that must be there.
std::string text_at(Json json, std::string_view name) { return text_of(json[name]); }

std::optional<std::string> text_or_nothing(Json json) {
  return json.is_null() ? std::nullopt : std::optional(text_of(json));
}

double number_of(Json json) { return json.get_double().value(); }

std::optional<Measure> quantity(Json json) {
  const auto number = member(json, "value");
  const auto unit = member(json, "unit");
  if (!number || !number->is_number() || !unit || !unit->is_string()) return std::nullopt;
  Measure measure{number_of(*number), {}, {}, unit_of(unit->get_string().value())};
  const auto low = member(json, "low");
  const auto high = member(json, "high");
  if (low && high) {
    measure.low = number_of(*low);
    measure.high = number_of(*high);
  }
  return measure;
}

Value value(Json json);
std::vector<Member> members(Json json);

Value list_of(Json json) {
  const simdjson::dom::array array = json.get_array();
  std::vector<Value> list;
  list.reserve(array.size());
  for (const Json one : array) list.push_back(value(one));
  return list;
}

Value value(Json json) {
  switch (json.type()) {
  case element_type::NULL_VALUE: return {};
  case element_type::BOOL: return json.get_bool().value();
  case element_type::INT64: return static_cast<long>(json.get_int64().value());
  case element_type::UINT64:
  case element_type::DOUBLE: return Measure{number_of(json), {}, {}, "1"};
  case element_type::STRING: return json.get_string().value();
  case element_type::ARRAY: return list_of(json);
  case element_type::OBJECT: break;
  }
  if (auto measure = quantity(json)) return *measure;
  return members(json);
}

std::vector<Member> members(Json json) {
  const simdjson::dom::object object = json.get_object();
  std::vector<Member> all;
  all.reserve(object.size());
  for (const auto& [name, held] : object) all.push_back({std::string(name), value(held)});
  return all;
}

/// An input keeps its unit beside its number or its list of numbers.
Value input_value(Json json) {
  const Json held = json["value"];
  const auto unit_word = member(json, "unit");
  if (!unit_word) return value(held);
  const char* unit = unit_of(unit_word->get_string().value());
  if (held.is_number()) return Measure{number_of(held), {}, {}, unit};
  std::vector<Value> list;
  for (const Json one : held.get_array()) list.emplace_back(Measure{number_of(one), {}, {}, unit});
  return list;
}

Answer answer_of(Json json) {
  Answer answer(text_at(json, "ask"));
  for (const auto& [name, input] : json["inputs"].get_object())
    answer.inputs.push_back({std::string(name), input_value(input), text_or_nothing(input["text"])});
  answer.settings = members(json["set"]);
  answer.findings = members(json["found"]);
  answer.verdict = text_or_nothing(json["verdict"]);
  answer.reason = text_or_nothing(json["reason"]);
  answer.instead = text_or_nothing(json["instead"]);
  for (const Json why : json["why"].get_array())
    answer.why.push_back({text_at(why, "step"), text_at(why, "formula"), value(why["value"]), text_at(why, "source")});
  for (const Json caution : json["cautions"].get_array())
    answer.cautions.push_back({text_at(caution, "id"), text_at(caution, "severity"), text_at(caution, "text")});
  for (const Json source : json["sources"].get_array())
    answer.sources.push_back(
        {text_at(source, "id"), text_at(source, "cite"), text_at(source, "standing"), text_or_nothing(source["page"])});
  return answer;
}

Part part_of(const std::string& name) {
  for (const auto part : {Part::headline, Part::basis, Part::reason, Part::line, Part::step, Part::danger, Part::care,
                          Part::note, Part::taken, Part::from})
    if (name == name_of(part)) return part;
  throw std::runtime_error{"'" + name + "' is no part of a text"};
}

PictureKind picture_kind(const std::string& name) {
  if (name == "pdf") return PictureKind::pdf;
  if (name == "svg") return PictureKind::svg;
  if (name == "png") return PictureKind::png;
  throw std::runtime_error{"'" + name + "' is no kind of picture"};
}

PageWanted page_of(Json json) {
  PageWanted page;
  page.kind = text_at(json, "kind");
  page.as = picture_kind(text_at(json, "as"));
  page.paper = find_paper(text_at(json, "paper")).name;
  page.units = text_at(json, "units") == "metric" ? UnitSystem::metric : UnitSystem::inch;
  page.title = text_at(json, "title");
  page.asked = text_at(json, "asked");
  page.date = text_at(json, "date");
  page.maker = text_at(json, "maker");
  if (const auto far = member(json, "read_from_mm")) page.read_from = mm(number_of(*far));
  return page;
}

Line line_of(Json json) {
  Line line{part_of(text_at(json, "part")), text_at(json, "text"), {}, {}};
  if (const auto cells = member(json, "cells"))
    for (const Json cell : cells->get_array()) line.cells.push_back(text_of(cell));
  if (const auto number = member(json, "number")) line.number = text_of(*number);
  return line;
}

Document document_of(Json json) {
  Document document;
  document.answer = answer_of(json["answer"]);
  if (const auto more = member(json, "more"))
    for (const Json one : more->get_array()) document.more.push_back(answer_of(one));
  if (const auto text = member(json, "text"))
    for (const Json line : text->get_array()) document.text.push_back(line_of(line));
  document.page = page_of(json["page"]);
  return document;
}

/// What \p make makes of the text; \p what says what the text should have been.
template <class Make> auto made_of(std::string_view text, const char* what, Make make) {
  simdjson::dom::parser parser;
  try {
    return make(parser.parse(text.data(), text.size()).value());
  } catch (const simdjson::simdjson_error& error) {
    throw std::runtime_error{std::string("no ") + what + ": " + error.what()};
  }
}

} // namespace

Document read_document(std::string_view text) { return made_of(text, "document", document_of); }

Answer read_record(std::string_view text) { return made_of(text, "record", answer_of); }

} // namespace quillside::page
