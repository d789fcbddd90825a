#pragma once
// The data itself: what there is, a row as typed with where it stands and what it goes over, the faults of a file.

#include <string>
#include <string_view>
#include <vector>

#include <quillside/answer/answer.hpp>
#include <quillside/data/load.hpp>
#include <quillside/data/tables.hpp>

namespace quillside {

/// Every row that has a name: {kind: [{key, name, file}]}.
Answer list_tables(const Tables& tables);

/// One row as typed, and, for a material, the rows that answer for it.
/// \param below the tables without the files of the user: what a row of theirs goes over
/// Throws a Fault with a suggestion when nothing has that name.
Answer show_row(const Tables& tables, const Tables& below, std::string_view name);

/// The faults of files, read one after another over \p below. The verdict stays empty; the caller's exit tells.
struct CheckedFiles {
  Answer answer;
  std::vector<TableFault> faults;
};
CheckedFiles check_files(const Tables& below, const std::vector<TableText>& files);

/// Where tables were looked for.
struct SearchedPlace {
  std::string path;
  bool found = false;
};
Answer show_path(const std::vector<SearchedPlace>& places);

/// A commented row to fill in; the text is found under `file`.
Answer new_row(std::string_view kind);

} // namespace quillside
