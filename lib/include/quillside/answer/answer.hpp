#pragma once
// An Answer: what was asked, what to set, what was found, the verdict, why, the cautions and the sources. Jobs make it;
// render and page show it; nothing in it is rounded or formatted.

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include <quillside/answer/key.hpp>
#include <quillside/quantity/band.hpp>
#include <quillside/quantity/spread.hpp>
#include <quillside/words/typed.hpp>

namespace quillside {

struct Member;

/// What a member holds: nothing, a truth, a count, a word, a quantity, a list or an object.
struct Value {
  std::variant<std::monostate, bool, long, std::string, Measure, std::vector<Value>, std::vector<Member>> held;

  // All in answer.cpp: an object holds members, and a Member holds a Value.
  Value();
  Value(bool truth);
  Value(long count);
  Value(int count);
  Value(std::string word);
  Value(std::string_view word);
  Value(const char* word);
  Value(Measure measure);
  Value(std::vector<Value> list);
  Value(std::vector<Member> object);
  Value(const Value& other);
  Value(Value&& other) noexcept;
  Value& operator=(const Value& other);
  Value& operator=(Value&& other) noexcept;
  ~Value();
};

struct Member {
  std::string name;
  Value value;
};

/// A word or flag of the ask, or what was taken in its place.
struct Input {
  std::string name;
  Value value;                     // a Measure, a word, a count, true, or a list
  std::optional<std::string> text; // as typed; absent when it was taken by default
};

struct Why {
  std::string step;
  std::string formula;
  Value value;
  std::string source; // id of one of the sources
};

struct CautionGiven {
  std::string id;
  std::string severity; // danger, warn, note
  std::string text;
};

struct SourceNamed {
  std::string id;
  std::string cite;
  std::string standing;
  std::optional<std::string> page;
};

class Answer {
public:
  explicit Answer(std::string name_of_ask) : ask(std::move(name_of_ask)) {}

  std::string ask;
  std::vector<Input> inputs;
  std::vector<Member> settings;
  std::vector<Member> findings;
  std::optional<std::string> verdict;
  std::optional<std::string> reason;
  std::optional<std::string> instead;
  std::vector<Why> why;
  std::vector<CautionGiven> cautions;
  std::vector<SourceNamed> sources;

  template <class Quantity> void set(Key<Quantity> key, Quantity value) {
    settings.push_back({key.name, measure(value)});
  }
  template <class Quantity> void set(Key<Quantity> key, const Band<Quantity>& band) {
    settings.push_back({key.name, of(band)});
  }
  void set(WordKey key, std::string_view word) { settings.push_back({key.name, word}); }
  void set_none(WordKey key) { settings.push_back({key.name, {}}); }
  void set(ListKey key, Value value) { settings.push_back({key.name, std::move(value)}); }

  template <class Quantity> void found(Key<Quantity> key, Quantity value) {
    findings.push_back({key.name, measure(value)});
  }
  template <class Quantity> void found(Key<Quantity> key, const Spread<Quantity>& spread) {
    findings.push_back({key.name, of(spread)});
  }
  void found(WordKey key, std::string_view word) { findings.push_back({key.name, word}); }
  void found(ListKey key, Value value) { findings.push_back({key.name, std::move(value)}); }
  /// The one finding that carries a band: what the table gives before machine and marks cut it.
  void found_wanted(const Band<SpindleSpeed>& band) { findings.push_back({key::wanted_spindle_speed.name, of(band)}); }

  template <class Quantity> void input(std::string name, const Typed<Quantity>& typed) {
    inputs.push_back({std::move(name), measure(typed.value), typed.text});
  }
  void input_word(std::string name, std::string_view word, std::optional<std::string> text) {
    inputs.push_back({std::move(name), word, std::move(text)});
  }
  /// A flag that stands alone.
  void input_flag(const std::string& name) { inputs.push_back({name, true, "--" + name}); }

  /// `do not`: nothing to set, and why.
  void refuse(std::string because) {
    verdict = "do not";
    reason = std::move(because);
    settings.clear();
  }

  template <class Quantity> static Measure of(const Band<Quantity>& band) {
    return with_ends(band.low, band.first, band.high);
  }
  template <class Quantity> static Measure of(const Spread<Quantity>& spread) {
    return with_ends(spread.low, spread.value, spread.high);
  }

private:
  template <class Quantity> static Measure with_ends(Quantity low, Quantity value, Quantity high) {
    Measure all = measure(value);
    all.low = measure(low).value;
    all.high = measure(high).value;
    return all;
  }
};

/// The member of that name; null when there is none.
const Value* find(const std::vector<Member>& members, std::string_view name);
/// The quantity of that name; null when there is none, or it is no quantity.
const Measure* find_measure(const std::vector<Member>& members, std::string_view name);
/// The word of that name; empty when there is none.
std::string find_word(const std::vector<Member>& members, std::string_view name);
const Input* find_input(const Answer& answer, std::string_view name);
/// The quantity that a step of `why` carries, by the name of the step; null when there is none.
const Measure* find_why(const Answer& answer, std::string_view step);

} // namespace quillside
