#include <quillside/job/chart.hpp>

#include <algorithm>
#include <cmath>
#include <set>

#include <quillside/job/burr.hpp>
#include <quillside/job/chart_sheet.hpp>
#include <quillside/job/drill.hpp>
#include <quillside/job/mill.hpp>
#include <quillside/model/chart_grid.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/print.hpp>

#include "telling.hpp"

namespace quillside {

namespace {

/// A size in one tool: a row of the chart.
struct Row {
  const ChartTool* tool = nullptr;
  Typed<NamedSize> size;
};

const ToolSizes& sizes_of(std::string_view ask) {
  return ask == "drill" ? drill_sizes : ask == "mill" ? mill_sizes : burr_sizes;
}

/// What the list of sizes came to, besides the rows.
struct LeftOut {
  std::string none; // sizes that a tool does not come in
  std::string twice;
};

void add_word(std::string& list, const std::string& word) { list += (list.empty() ? "" : ", ") + word; }

std::vector<SizeWord> usual_sizes(const Tables& tables, std::string_view ask) {
  std::vector<SizeWord> words;
  for (const auto word : chart_list(tables.chart_lists, std::string(ask) + "-sizes"))
    words.push_back(read_size(word, UnitSystem::inch));
  return words;
}

/// Adds a row, unless the tool has one of that size.
void add_row(std::vector<Row>& rows, LeftOut& left_out, Row row) {
  const auto same = [&](const Row& other) {
    const Length apart = other.size.value.length - row.size.value.length;
    return other.tool == row.tool && apart <= same_size_within && apart >= mm(0) - same_size_within;
  };
  if (std::any_of(rows.begin(), rows.end(), same))
    add_word(left_out.twice, row.size.text.value_or(row.size.value.name));
  else
    rows.push_back(std::move(row));
}

std::vector<Row> rows_of(const Tables& tables, const ChartQuestion& ask, LeftOut& left_out) {
  std::vector<Row> rows;
  std::vector<std::string> known; // sizes that some tool comes in
  std::optional<Fault> unknown;
  for (const auto& tool : ask.tools) {
    const auto words = ask.sizes ? ask.sizes->value : usual_sizes(tables, tool.ask);
    for (const auto& word : words) {
      try {
        // On a wall a size is called as whoever made the chart calls it: 1/4, though the ladder says E first.
        const NamedSize size{word.text, resolve_size(tables.sizes, word, sizes_of(tool.ask)).length};
        add_row(rows, left_out, {&tool, {size, ask.sizes ? std::optional(word.text) : std::nullopt}});
        known.push_back(word.text);
      } catch (const Fault& fault) {
        if (fault.kind != FaultKind::word || ask.tools.size() == 1) throw;
        add_word(left_out.none, word.text + " (" + std::string(sizes_of(tool.ask).tool) + ")");
        if (!unknown) unknown = fault;
      }
    }
  }
  if (ask.sizes && unknown)
    for (const auto& word : ask.sizes->value)
      if (std::find(known.begin(), known.end(), word.text) == known.end()) throw *unknown;
  if (rows.empty())
    throw wrong_word(ask.sizes ? ask.sizes->text.value_or("") : "", "names no size: give some, as 1/8,no30,4mm");
  return rows;
}

Answer asked(const Tables& tables, const Row& row, const Typed<Work>& material) {
  const ChartTool& tool = *row.tool;
  if (tool.ask == "drill") {
    DrillQuestion question{row.size, material, tool.cutter};
    question.machine = tool.machine;
    return drill(tables, question);
  }
  if (tool.ask == "mill") {
    MillQuestion question{row.size, material, tool.cutter};
    question.machine = tool.machine;
    return mill(tables, question);
  }
  BurrQuestion question{row.size, material, tool.cutter};
  question.machine = tool.machine;
  return burr(tables, question);
}

/// The step of `why` that gave the speed: the row that answers, or the last one that the metal is harder than.
const Why* speed_row(const Answer& answer) {
  const auto found = std::find_if(answer.why.begin(), answer.why.end(), [](const Why& why) {
    return why.step == "cutting speed" || why.step == "past the last row";
  });
  return found == answer.why.end() ? nullptr : &*found;
}

const SourceNamed* source_named(const Answer& answer, std::string_view id) {
  const auto found = std::find_if(answer.sources.begin(), answer.sources.end(),
                                  [&](const SourceNamed& source) { return source.id == id; });
  return found == answer.sources.end() ? nullptr : &*found;
}

bool by_rule(const Answer& answer) {
  return std::any_of(answer.why.begin(), answer.why.end(), [](const Why& why) { return why.step == "by rule"; });
}

/// As it was named, or its key.
std::string_view name_of(const Typed<Work>& material) {
  return material.text ? std::string_view(*material.text) : material.value.material->key;
}

/// What a figure rests on that is less than a page somebody saw, in one word each.
void mark_standing(std::vector<Value>& marks, const Answer& answer, const SourceNamed* source) {
  if (source == nullptr) return;
  if (source->standing == "from memory") marks.emplace_back("memory");
  if (source->standing == "derived" || by_rule(answer)) marks.emplace_back("derived");
  if (source->standing == "common practice") marks.emplace_back("practice");
  if (source->standing == "demo") marks.emplace_back("demo");
}

/// Where on its machine a speed lies, and whether it is to be used with care.
void mark_machine(std::vector<Value>& marks, const Answer& answer, const Machine* machine) {
  const Measure* set = find_measure(answer.settings, key::spindle_speed.name);
  const Measure* wanted = find_measure(answer.findings, key::wanted_spindle_speed.name);
  if (answer.verdict == "do not") {
    const bool too_fast = machine != nullptr && wanted != nullptr && measure(machine->range.low).value > *wanted->high;
    marks.emplace_back(too_fast ? "no step" : "do not");
    return;
  }
  if (set == nullptr) return;
  const auto runs_at = [&](SpindleSpeed speed) { return measure(speed).value == set->value; };
  if (machine != nullptr && (runs_at(fastest(*machine)) || runs_at(machine->range.high))) marks.emplace_back("highest");
  if (machine != nullptr && runs_at(machine->range.low)) marks.emplace_back("lowest");
  if (answer.verdict == "back off") marks.emplace_back("back off");
}

std::vector<Member> cell_of(const Answer& answer, const Machine* machine) {
  std::vector<Member> cell;
  if (const Value* speed = find(answer.settings, key::spindle_speed.name))
    cell.push_back({key::spindle_speed.name, *speed});
  const Value* step = find(answer.settings, key::step.name);
  cell.push_back({key::step.name, step == nullptr ? Value{} : *step});
  const Why* why = speed_row(answer);
  if (why != nullptr) cell.push_back({"source", why->source});
  for (const char* name : {key::wanted_spindle_speed.name, key::limited_by.name})
    if (const Value* found = find(answer.findings, name)) cell.push_back({name, *found});
  cell.push_back({"verdict", answer.verdict ? Value(*answer.verdict) : Value{}});
  if (answer.reason) cell.push_back({"reason", *answer.reason});
  std::vector<Value> marks;
  mark_standing(marks, answer, why == nullptr ? nullptr : source_named(answer, why->source));
  mark_machine(marks, answer, machine);
  cell.push_back({"marks", std::move(marks)});
  return cell;
}

/// A cell that no table knows of.
std::vector<Member> empty_cell(const Fault& fault) {
  return {{key::step.name, Value{}},
          {"verdict", Value{}},
          {"reason", fault.message},
          {"marks", std::vector<Value>{Value("none")}}};
}

/// What the cells have in common with one another: cautions, rows and sources, each once.
class Gathered {
public:
  Gathered(const Tables& tables, Telling& telling, Answer& answer)
      : tables_(tables), telling_(telling), answer_(answer) {}

  void take(const Answer& cell, std::string_view material) {
    take_row(cell, speed_row(cell));
    for (const auto& why : cell.why)
      if (why.step == "by rule" || why.step == "machine") take_row(cell, &why);
    for (const auto& caution : cell.cautions) take_caution(caution, material);
  }

  /// The cautions that were taken as they stand, the gravest first among those of the chart itself. One that does not
  /// hold for every material begins with those that it holds for.
  void tell(std::size_t materials) {
    for (const auto& flag : flags_) telling_.flag(flag);
    telling_.cautions({});
    for (auto& taken : cautions_) {
      std::string metals;
      for (const auto metal : taken.materials) add_word(metals, std::string(metal));
      if (taken.materials.size() < materials) taken.caution.text = metals + ": " + taken.caution.text;
      answer_.cautions.push_back(std::move(taken.caution));
    }
    const auto rank = [](const CautionGiven& caution) {
      return std::find(severities.begin(), severities.end(), caution.severity) - severities.begin();
    };
    std::stable_sort(answer_.cautions.begin(), answer_.cautions.end(),
                     [&](const CautionGiven& a, const CautionGiven& b) { return rank(a) < rank(b); });
  }

private:
  void take_row(const Answer& cell, const Why* why) {
    if (why == nullptr) return;
    const bool told = std::any_of(answer_.why.begin(), answer_.why.end(), [&](const Why& other) {
      return other.step == why->step && other.formula == why->formula && other.source == why->source;
    });
    if (told) return;
    // A machine's row gives each cell another speed: it is told once, without one.
    answer_.why.push_back(why->step == "machine" ? Why{why->step, why->formula, {}, why->source} : *why);
    const SourceNamed* source = source_named(cell, why->source);
    if (source != nullptr && source_named(answer_, why->source) == nullptr) answer_.sources.push_back(*source);
  }

  struct Taken {
    CautionGiven caution;
    std::vector<std::string_view> materials;
  };

  /// A caution that names a figure of its cell is not the next one's: a row for charts stands for it, tagged with
  /// `cell-` and its key. So does one for a note that matters on a wall.
  void take_caution(const CautionGiven& given, std::string_view material) {
    const auto row = std::find_if(tables_.cautions.begin(), tables_.cautions.end(),
                                  [&](const Caution& caution) { return caution.key == given.id; });
    if (row == tables_.cautions.end()) return;
    flags_.insert("cell-" + given.id);
    if (given.severity == "note" || row->text.find('{') != std::string_view::npos) return;
    auto taken = std::find_if(cautions_.begin(), cautions_.end(),
                              [&](const Taken& other) { return other.caution.id == given.id; });
    if (taken == cautions_.end()) taken = cautions_.insert(cautions_.end(), {given, {}});
    auto& metals = taken->materials;
    if (std::find(metals.begin(), metals.end(), material) == metals.end()) metals.push_back(material);
  }

  const Tables& tables_;
  Telling& telling_;
  Answer& answer_;
  std::set<std::string> flags_; // telling_ keeps views of them
  std::vector<Taken> cautions_;
};

std::vector<Value> rows_told(const std::vector<Row>& rows) {
  std::vector<Value> told;
  for (const auto& row : rows) {
    std::vector<Member> one{{"ask", row.tool->ask},
                            {"name", row.size.value.name},
                            {key::size.name, measure(row.size.value.length)},
                            {"cutter", row.tool->cutter.value->name}};
    if (row.tool->machine) one.push_back({"machine", row.tool->machine->value->name});
    told.emplace_back(std::move(one));
  }
  return told;
}

std::vector<Value> columns_told(const std::vector<Typed<Work>>& materials) {
  std::vector<Value> told;
  for (const auto& material : materials) {
    const Work& work = material.value;
    std::vector<Member> one{{"material", work.material->key}, {"name", work.material->name}};
    if (!work.condition.empty()) one.push_back({"condition", work.condition});
    if (work.hardness) one.push_back({"hardness", print_hardness(*work.hardness)});
    told.emplace_back(std::move(one));
  }
  return told;
}

/// The files the figures were read from.
std::vector<Value> tables_named(const Tables& tables) {
  std::vector<Value> names{Value("built-in")};
  for (const auto& text : tables.texts)
    if (!text.name.starts_with("built-in:")) names.emplace_back(text.name);
  return names;
}

void tell_inputs(const Tables& tables, Answer& answer, const ChartQuestion& ask,
                 const std::vector<Typed<Work>>& materials, const Typed<Length>& read_from) {
  const auto list = [&](const char* name, std::vector<Value> words, const std::optional<std::string>& text) {
    answer.inputs.push_back({name, std::move(words), text});
  };
  std::vector<Value> words;
  for (const auto& tool : ask.tools) words.emplace_back(tool.ask);
  list("asks", words, ask.asks);
  words.clear();
  for (const auto& material : materials) words.emplace_back(name_of(material));
  list("materials", words, ask.materials ? ask.materials->text : std::nullopt);
  if (ask.sizes) {
    words.clear();
    for (const auto& size : ask.sizes->value) words.emplace_back(size.text);
    list("sizes", words, ask.sizes->text);
  }
  answer.input("read_from", read_from);
  answer.input_word("paper", ask.paper.value->name, ask.paper.text);
  for (const auto& tool : ask.tools)
    if (tool.machine && find_input(answer, "machine") == nullptr)
      answer.input_word("machine", tool.machine->value->key, tool.machine->text);
  list("tables", tables_named(tables), ask.tables);
}

std::string in_metres(Length length) { return shortest_decimal(std::floor(in_mm(length) / 100) / 10) + "m"; }

/// The letters of the chart, or a Fault that says which distance would do.
[[noreturn]] void does_not_fit(const Answer& answer, const ChartQuestion& ask, const Typed<Length>& read_from,
                               double share) {
  const Length most = largest_letters(answer) / share;
  const std::string word = read_from.text.value_or(in_metres(read_from.value));
  throw wrong_word(word,
                   "wants letters " + print_length_with_unit(share * read_from.value, UnitSystem::metric) +
                       " high: not one column and one row of them go on " + std::string(ask.paper.value->name) +
                       "; from " + in_metres(most) + " they do" +
                       (ask.paper.value->name == "a3" ? "" : ", or take larger paper"),
                   {"up to " + in_metres(most)}, in_metres(most));
}

void check_distance(const Typed<Length>& read_from, double share) {
  if (share * read_from.value >= small_print) return;
  const Length least = small_print / share;
  throw wrong_word(read_from.text.value_or("0"),
                   "is too near to read a wall from: the letters would be smaller than the small print, which is read "
                   "from " +
                       in_metres(least) + "; give more, as 2m",
                   {in_metres(least) + " or more"}, "2m");
}

} // namespace

Answer chart(const Tables& tables, const ChartQuestion& ask) {
  const double share = limit(tables.limits, "letter_share").ratio;
  const Typed<Length> read_from =
      ask.read_from.value_or(Typed<Length>{limit(tables.limits, "read_from").length, std::nullopt});
  check_distance(read_from, share);
  LeftOut left_out;
  const auto rows = rows_of(tables, ask, left_out);
  std::vector<Typed<Work>> materials;
  if (ask.materials) {
    materials = ask.materials->value;
  } else {
    std::string list;
    for (const auto word : chart_list(tables.chart_lists, "materials")) add_word(list, std::string(word));
    materials = read_works(tables, list);
  }

  Answer answer("chart");
  Telling telling(tables, answer, nullptr, {});
  tell_inputs(tables, answer, ask, materials, read_from);
  Gathered gathered(tables, telling, answer);
  std::vector<Value> cells;
  std::optional<Fault> nothing_known;
  bool known = false;
  bool settable = false;
  std::string reason;
  for (const auto& row : rows) {
    std::vector<Value> line;
    for (const auto& material : materials) {
      try {
        const Answer cell = asked(tables, row, material);
        gathered.take(cell, name_of(material));
        line.emplace_back(cell_of(cell, row.tool->machine ? row.tool->machine->value : nullptr));
        known = true;
        settable = settable || cell.verdict != "do not";
        if (reason.empty()) reason = cell.reason.value_or("");
      } catch (const Fault& fault) {
        if (fault.kind != FaultKind::conflict) throw;
        if (!nothing_known) nothing_known = fault;
        line.emplace_back(empty_cell(fault));
      }
    }
    cells.emplace_back(std::move(line));
  }
  if (!known && nothing_known) throw *nothing_known;

  const Length height = letter_height(read_from.value, share);
  telling.because_of_law("height of letters", letter_height_law, measure(height));
  if (!left_out.none.empty()) telling.flag("left-out");
  if (!left_out.twice.empty()) telling.flag("twice");
  telling.word("left-out", left_out.none);
  telling.word("twice", left_out.twice);
  for (const auto& tool : ask.tools) telling.flag(tool.ask);
  gathered.tell(materials.size());

  answer.found(key::letter_height, height);
  answer.found(key::rows, rows_told(rows));
  answer.found(key::columns, columns_told(materials));
  answer.found(key::cells, std::move(cells));
  if (!settable) answer.refuse("there is nothing to set in any cell; the first: " + reason);
  const ChartSheet sheet = chart_sheet(answer);
  if (sheet.pages == 0) does_not_fit(answer, ask, read_from, share);
  answer.findings.insert(answer.findings.begin(), {key::pages.name, measure(static_cast<double>(sheet.pages))});
  return answer;
}

} // namespace quillside
