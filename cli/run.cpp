#include "run.hpp"

#include <algorithm>
#include <array>
#include <exception>

#include <quillside/data/table_files.hpp>
#include <quillside/render/json.hpp>
#include <quillside/render/text.hpp>
#include <quillside/version.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/utf8.hpp>

#include "asks/asks.hpp"
#include "out_file.hpp"
#include "picture.hpp"
#include "shell_words.hpp"

namespace quillside::cli {

namespace {

Reply reply_to(const Call& call, const Session& session) {
  using Ask = Reply (*)(const Call&, const Session&);
  struct Named {
    std::string_view name;
    Ask ask;
  };
  constexpr auto all = std::to_array<Named>({{"burr", ask_burr},
                                             {"chart", ask_chart},
                                             {"drill", ask_drill},
                                             {"fit", ask_fit},
                                             {"gauge", ask_gauge},
                                             {"grind", ask_grind},
                                             {"hole", ask_hole},
                                             {"mill", ask_mill},
                                             {"notch", ask_notch},
                                             {"point", ask_point},
                                             {"signs", ask_signs},
                                             {"size", ask_size},
                                             {"slot", ask_slot},
                                             {"tables", ask_tables}});
  const auto found = std::find_if(all.begin(), all.end(), [&](const Named& one) { return one.name == call.ask->name; });
  return found->ask(call, session);
}

int exit_of(const Reply& reply) {
  if (!reply.faults.empty()) return exit_code(FaultKind::data);
  return reply.answer.verdict == "do not" ? 1 : 0;
}

/// Whatever goes wrong, as a Fault: what is no Fault of ours is our own fault.
Fault as_fault(const std::exception_ptr& exception) {
  try {
    std::rethrow_exception(exception);
  } catch (const Fault& fault) {
    return fault;
  } catch (const std::exception& error) {
    Fault fault;
    fault.message = std::string("a fault of our own: ") + error.what();
    return fault;
  }
}

std::string text_of(const TableFault& fault) {
  return fault.place.file + ":" + std::to_string(fault.place.line) + ":" + std::to_string(fault.place.column) + ": " +
         fault.what;
}

enum class Format { text, json };

Format format_of(const Call& call) {
  const auto format = call.flag("format");
  if (!format || *format == "text") return Format::text;
  if (*format == "json") return Format::json;
  throw wrong_word(printable(*format), "is no format: text or json", {"text", "json"});
}

/// Whether the record is wanted, though the words may be too wrong to parse.
bool asks_for_json(const std::vector<std::string>& words) {
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (words[i] == "--format=json") return true;
    if (words[i] == "--format" && i + 1 < words.size() && words[i + 1] == "json") return true;
  }
  return false;
}

std::string ask_named(const std::vector<std::string>& words) {
  const bool known = !words.empty() && std::any_of(asks().begin(), asks().end(), [&](const AskDescription& ask) {
    return ask.name == words.front();
  });
  return known ? words.front() : std::string{};
}

TextStyle style_of(const Call& call, const Session& session, const Console& console) {
  TextStyle style;
  style.units = session.units();
  style.why = call.has("why");
  style.large = call.has("large");
  const auto no_color = console.env("NO_COLOR");
  style.bold =
      console.out_is_terminal && (!no_color || no_color->empty()) && console.env("TERM").value_or("dumb") != "dumb";
  return style;
}

/// Every word and flag used is an input; what the job did not take in itself is added here.
void complete_inputs(Answer& answer, const Call& call) {
  for (const auto& [flag, value] : call.flags) {
    std::string name = flag;
    std::replace(name.begin(), name.end(), '-', '_');
    if (find_input(answer, name) != nullptr) continue;
    if (flag == "tables")
      answer.inputs.push_back({name, std::vector<Value>(call.tables.begin(), call.tables.end()), value});
    else
      answer.inputs.push_back({name, value.empty() ? Value(true) : Value(value), value.empty() ? "--" + flag : value});
  }
}

/// One line of a batch: its record, and its exit.
struct Record {
  std::string json;
  int exit = 0;
};

/// The flags of the batch itself hold for every line that does not say otherwise.
void take_from(const Call& batch, Call& call) {
  if (call.tables.empty()) call.tables = batch.tables;
  for (const auto* flag : {"units", "machine"})
    if (const auto value = batch.flag(flag); value && !call.has(flag)) call.flags[flag] = *value;
  if (const auto paper = batch.flag("paper"); paper && !call.has("paper") && has_picture(call))
    call.flags["paper"] = *paper;
}

Call call_of_line(const std::vector<std::string>& words, const Call& batch) {
  if (words.front() == "batch") throw wrong_word("batch", "cannot stand in a batch");
  Call call = parse_call(words);
  for (const auto* flag : {"help", "version"})
    if (call.has(flag)) throw wrong_word(std::string("--") + flag, "has no record: it cannot stand in a batch");
  format_of(call);
  take_from(batch, call);
  return call;
}

Record record_of(const std::string& line, int number, const Call& batch, Session& session, const Console& console) {
  std::vector<std::string> words;
  const auto complain = [&](const std::string& message) {
    console.err("quillside: line " + std::to_string(number) + ": " + message + "\n");
  };
  try {
    std::string blanks = line;
    std::replace_if(
        blanks.begin(), blanks.end(), [](char c) { return c == '\t' || c == '\r'; }, ' ');
    if (!is_plain_utf8(blanks)) throw wrong_word(blanks, "is no plain UTF-8 text");
    words = shell_words(blanks);
    const Call call = call_of_line(words, batch);
    session.begin(call);
    const auto picture = picture_wanted(call, session);
    if (picture && picture->file == "-") throw wrong_word("-", "is no place for a picture in a batch: name a file");
    Reply reply = reply_to(call, session);
    complete_inputs(reply.answer, call);
    if (picture) write_whole_file(picture->file, picture_of(*picture, reply, words, console));
    for (const auto& fault : reply.faults) complain(text_of(fault));
    return {json(reply.answer, number), exit_of(reply)};
  } catch (...) {
    const Fault fault = as_fault(std::current_exception());
    const std::string ask = ask_named(words);
    complain((ask.empty() ? "" : ask + ": ") + fault.message);
    return {json(fault, ask, number), exit_code(fault.kind)};
  }
}

bool gives_no_record(const std::string& line) {
  const auto first = line.find_first_not_of(" \t\r");
  return first == std::string::npos || line.compare(first, 2, "//") == 0;
}

int batch(const Call& call, Session& session, const Console& console) {
  int worst = 0;
  int number = 0;
  const auto take = [&](std::string line) {
    // A byte-order mark, as some editors put it before the first line.
    if (++number == 1 && line.starts_with("\xef\xbb\xbf")) line.erase(0, 3);
    if (gives_no_record(line)) return;
    const Record record = record_of(line, number, call, session, console);
    console.out(record.json + "\n");
    worst = std::max(worst, record.exit);
  };
  for (const auto* flag : {"card", "as"})
    if (call.has(flag)) throw wrong_word(std::string("--") + flag, "goes into the lines of a batch, not behind batch");
  if (call.words.empty() || call.words.front() == "-") {
    while (const auto line = console.read_line()) take(*line);
    return worst;
  }
  const std::string all = read_text_file(call.words.front());
  for (std::size_t from = 0; from < all.size();) {
    const std::size_t to = std::min(all.find('\n', from), all.size());
    take(all.substr(from, to - from));
    from = to + 1;
  }
  return worst;
}

int answer(const std::vector<std::string>& words, const Console& console) {
  const Call call = parse_call(words);
  if (call.has("help")) {
    console.out(help(*call.ask));
    return 0;
  }
  const Format format = format_of(call);
  Session session(console);
  session.begin(call);
  if (call.ask->name == "batch") return batch(call, session, console);
  const auto picture = picture_wanted(call, session);
  const bool picture_alone = picture && picture->file == "-";
  if (picture_alone && format == Format::json)
    throw contradiction("-", "a picture and a record cannot both go to standard output: name a file for the picture");
  Reply reply = reply_to(call, session);
  complete_inputs(reply.answer, call);
  if (picture) {
    const std::string bytes = picture_of(*picture, reply, words, console);
    if (picture_alone)
      console.out(bytes);
    else
      write_whole_file(picture->file, bytes);
  }
  if (!picture_alone)
    console.out(format == Format::json ? json(reply.answer, std::nullopt) + "\n"
                                       : text(reply.answer, style_of(call, session, console)));
  for (const auto& fault : reply.faults) console.err("quillside: tables: " + text_of(fault) + "\n");
  return exit_of(reply);
}

} // namespace

int run(const std::vector<std::string>& words, const Console& console) {
  if (words.empty()) {
    console.err(help());
    return exit_code(FaultKind::word);
  }
  try {
    if (words.front() == "--help") {
      console.out(help());
      return 0;
    }
    if (std::find(words.begin(), words.end(), "--version") != words.end()) {
      console.out(std::string("quillside ") + version + "\n");
      return 0;
    }
    return answer(words, console);
  } catch (...) {
    const Fault fault = as_fault(std::current_exception());
    console.err(text(fault, ask_named(words)) + "\n");
    if (asks_for_json(words) || words.front() == "batch") {
      try {
        console.out(json(fault, ask_named(words), std::nullopt) + "\n");
      } catch (const Fault&) {
        return exit_code(FaultKind::file); // the record has nowhere to go either
      }
    }
    return exit_code(fault.kind);
  }
}

} // namespace quillside::cli
