#include <quillside/page/document.hpp>

#include <algorithm>
#include <array>
#include <stdexcept>

#include <nlohmann/json.hpp>

namespace quillside::page {

namespace {

// In the order it was written: a list of members is one.
using Json = nlohmann::ordered_json;

/// Every unit that a record carries (answer/key); a Measure points at one of these.
constexpr std::array<const char*, 20> units{"mm", "deg",  "m/min", "rev/min", "mm/min", "mm/rev", "mm/tooth",
                                            "N",  "N.m",  "W",     "s",       "degC",   "MPa",    "1",
                                            "J",  "mm/N", "Hz",    "HB",      "1/degC", "mm4"};

const char* unit_of(const std::string& name) {
  const auto is = [&](const char* unit) { return name == unit; };
  if (const auto* found = std::find_if(units.begin(), units.end(), is); found != units.end()) return *found;
  throw std::runtime_error{"'" + name + "' is no unit of a record"};
}

bool is_quantity(const Json& json) {
  return json.is_object() && json.contains("value") && json.contains("unit") && json["value"].is_number() &&
         json["unit"].is_string();
}

Measure quantity(const Json& json) {
  Measure measure{json.at("value").get<double>(), {}, {}, unit_of(json.at("unit").get<std::string>())};
  if (json.contains("low") && json.contains("high")) {
    measure.low = json["low"].get<double>();
    measure.high = json["high"].get<double>();
  }
  return measure;
}

std::vector<Member> members(const Json& json);

Value value(const Json& json) {
  if (json.is_null()) return {};
  if (json.is_boolean()) return json.get<bool>();
  if (json.is_number_integer()) return json.get<long>();
  if (json.is_number()) return Measure{json.get<double>(), {}, {}, "1"};
  if (json.is_string()) return json.get<std::string>();
  if (is_quantity(json)) return quantity(json);
  if (json.is_object()) return members(json);
  std::vector<Value> list;
  for (const auto& entry : json) list.push_back(value(entry));
  return list;
}

std::vector<Member> members(const Json& json) {
  std::vector<Member> all;
  for (const auto& [name, held] : json.items()) all.push_back({name, value(held)});
  return all;
}

/// An input keeps its unit beside its number or its list of numbers.
Value input_value(const Json& json) {
  const Json& held = json.at("value");
  if (!json.at("unit").is_string()) return value(held);
  const char* unit = unit_of(json["unit"].get<std::string>());
  if (held.is_number()) return Measure{held.get<double>(), {}, {}, unit};
  std::vector<Value> list;
  for (const auto& one : held) list.emplace_back(Measure{one.get<double>(), {}, {}, unit});
  return list;
}

std::optional<std::string> text_or_nothing(const Json& json) {
  return json.is_null() ? std::nullopt : std::optional(json.get<std::string>());
}

Answer answer_of(const Json& json) {
  Answer answer(json.at("ask").get<std::string>());
  for (const auto& [name, input] : json.at("inputs").items())
    answer.inputs.push_back({name, input_value(input), text_or_nothing(input.at("text"))});
  answer.settings = members(json.at("set"));
  answer.findings = members(json.at("found"));
  answer.verdict = text_or_nothing(json.at("verdict"));
  answer.reason = text_or_nothing(json.at("reason"));
  answer.instead = text_or_nothing(json.at("instead"));
  for (const auto& why : json.at("why"))
    answer.why.push_back({why.at("step").get<std::string>(), why.at("formula").get<std::string>(),
                          value(why.at("value")), why.at("source").get<std::string>()});
  for (const auto& caution : json.at("cautions"))
    answer.cautions.push_back({caution.at("id").get<std::string>(), caution.at("severity").get<std::string>(),
                               caution.at("text").get<std::string>()});
  for (const auto& source : json.at("sources"))
    answer.sources.push_back({source.at("id").get<std::string>(), source.at("cite").get<std::string>(),
                              source.at("standing").get<std::string>(), text_or_nothing(source.at("page"))});
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

PageWanted page_of(const Json& json) {
  PageWanted page;
  page.kind = json.at("kind").get<std::string>();
  page.as = picture_kind(json.at("as").get<std::string>());
  page.paper = find_paper(json.at("paper").get<std::string>()).name;
  page.units = json.at("units").get<std::string>() == "metric" ? UnitSystem::metric : UnitSystem::inch;
  page.title = json.at("title").get<std::string>();
  page.asked = json.at("asked").get<std::string>();
  page.date = json.at("date").get<std::string>();
  page.maker = json.at("maker").get<std::string>();
  if (json.contains("read_from_mm") && !json["read_from_mm"].is_null())
    page.read_from = mm(json["read_from_mm"].get<double>());
  return page;
}

Json parsed(std::string_view json) {
  try {
    return Json::parse(json);
  } catch (const Json::exception& error) {
    throw std::runtime_error{std::string("no document: ") + error.what()};
  }
}

} // namespace

Document read_document(std::string_view text) {
  const Json json = parsed(text);
  try {
    Document document;
    document.answer = answer_of(json.at("answer"));
    if (json.contains("more"))
      for (const auto& one : json["more"]) document.more.push_back(answer_of(one));
    for (const auto& line : json.at("text"))
      document.text.push_back({part_of(line.at("part").get<std::string>()), line.at("text").get<std::string>(),
                               line.value("cells", std::vector<std::string>{}), line.value("number", std::string{})});
    document.page = page_of(json.at("page"));
    return document;
  } catch (const Json::exception& error) {
    throw std::runtime_error{std::string("a wrong document: ") + error.what()};
  }
}

Answer read_record(std::string_view text) {
  const Json json = parsed(text);
  try {
    return answer_of(json);
  } catch (const Json::exception& error) {
    throw std::runtime_error{std::string("a wrong record: ") + error.what()};
  }
}

} // namespace quillside::page
