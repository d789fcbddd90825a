#pragma once
// The document that the tool hands to the drawing program for a card, kept on its way there: with the further answers
// that a picture is made of.

#include <filesystem>

#include <quillside/page/document.hpp>

#include "../folder.hpp"
#include "document_of.hpp"

namespace quillside::test {

/// \param exit of the ask
inline std::string document_text(const std::string& line, const Wanted& wanted = {}, int exit = 0) {
  const Folder folder;
  // Instead of the drawing program: it keeps what it is handed.
  const std::string keeper =
      folder.write("keep", "#!/bin/sh\ncat >'" + folder.file("document") + "'\necho a picture\n");
  std::filesystem::permissions(keeper, std::filesystem::perms::owner_all);
  const Ran ran = quillside(line + " --units " + wanted.units + " --paper " + wanted.paper + " --card '" +
                                folder.file("a.pdf") + "'",
                            {{}, {{"QUILLSIDE_DRAW", keeper}, {"SOURCE_DATE_EPOCH", "1764460800"}}});
  INFO(line << "\n" << ran.err);
  REQUIRE(ran.exit == exit);
  return folder.read("document");
}

inline page::Document drawn_document(const std::string& line, const Wanted& wanted = {}, int exit = 0) {
  return page::read_document(document_text(line, wanted, exit));
}

} // namespace quillside::test
