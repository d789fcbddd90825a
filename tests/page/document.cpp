// The document between the tool and the drawing program: an answer goes through it unchanged.

#include <quillside/page/document.hpp>
#include <quillside/page/draw.hpp>
#include <quillside/render/text.hpp>
#include <quillside/words/fault.hpp>

#include "document_of.hpp"

using namespace quillside;

TEST_CASE("a record read back is the answer that wrote it: written again it is the same, and so is its text") {
  const auto& line = GENERATE(from_range(test::every_ask()));
  INFO(line);
  std::string record = test::quillside(line + " --format json").out;
  const Answer answer = page::read_record(record);
  record.pop_back(); // its line end
  CHECK(json(answer, std::nullopt) == record);
  const auto text_of = [](const std::string& ask) { return test::quillside(ask).out; };
  CHECK(text(answer, {}) == text_of(line));
}

TEST_CASE("what is no document is refused, and it is said what is wrong") {
  CHECK_THROWS_AS(page::read_document(""), std::runtime_error);
  CHECK_THROWS_AS(page::read_document("[]"), std::runtime_error);
  CHECK_THROWS_AS(page::read_document("{\"answer\":{}}"), std::runtime_error);
  CHECK_THROWS_AS(page::read_document("{\"answer\":\xff}"), std::runtime_error);
  auto document = test::document_of("size no30");
  document.page.kind = "poster";
  CHECK_THROWS_WITH(page::draw(document), "'poster' is no kind of page");
  std::string record = test::quillside("size no30 --format json").out;
  const auto unit = record.find("\"mm\"");
  REQUIRE(unit != std::string::npos);
  CHECK_THROWS_WITH(page::read_record(record.substr(0, unit) + "\"ell\"" + record.substr(unit + 4)),
                    "'ell' is no unit of a record");
}
