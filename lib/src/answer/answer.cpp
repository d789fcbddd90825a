#include <quillside/answer/answer.hpp>

#include <algorithm>
#include <utility>

namespace quillside {

Value::Value() = default;
Value::Value(bool truth) : held(truth) {}
Value::Value(long count) : held(count) {}
Value::Value(int count) : held(static_cast<long>(count)) {}
Value::Value(std::string word) : held(std::move(word)) {}
Value::Value(std::string_view word) : held(std::string(word)) {}
Value::Value(const char* word) : held(std::string(word)) {}
Value::Value(Measure measure) : held(measure) {}
Value::Value(std::vector<Value> list) : held(std::move(list)) {}
Value::Value(std::vector<Member> object) : held(std::move(object)) {}
Value::Value(const Value& other) = default;
Value::Value(Value&& other) noexcept = default;
Value& Value::operator=(const Value& other) = default;
Value& Value::operator=(Value&& other) noexcept = default;
Value::~Value() = default;

const Value* find(const std::vector<Member>& members, std::string_view name) {
  const auto found =
      std::find_if(members.begin(), members.end(), [&](const Member& member) { return member.name == name; });
  return found == members.end() ? nullptr : &found->value;
}

const Measure* find_measure(const std::vector<Member>& members, std::string_view name) {
  const Value* value = find(members, name);
  return value == nullptr ? nullptr : std::get_if<Measure>(&value->held);
}

std::string find_word(const std::vector<Member>& members, std::string_view name) {
  const Value* value = find(members, name);
  const auto* word = value == nullptr ? nullptr : std::get_if<std::string>(&value->held);
  return word == nullptr ? std::string{} : *word;
}

const Input* find_input(const Answer& answer, std::string_view name) {
  const auto found =
      std::find_if(answer.inputs.begin(), answer.inputs.end(), [&](const Input& input) { return input.name == name; });
  return found == answer.inputs.end() ? nullptr : &*found;
}

const Measure* find_why(const Answer& answer, std::string_view step) {
  const auto found =
      std::find_if(answer.why.begin(), answer.why.end(), [&](const Why& why) { return why.step == step; });
  return found == answer.why.end() ? nullptr : std::get_if<Measure>(&found->value.held);
}

} // namespace quillside
