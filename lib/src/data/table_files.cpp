#include <quillside/data/table_files.hpp>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <memory>

#include <dirent.h>
#include <sys/stat.h>

#include <quillside/data/load.hpp>
#include <quillside/words/fault.hpp>
#include <quillside/words/utf8.hpp>

namespace quillside {

namespace {

enum class Kind { none, file, folder };

Kind kind_of(const std::string& path) {
  struct stat info {};
  if (stat(path.c_str(), &info) != 0) return Kind::none;
  return S_ISDIR(info.st_mode) ? Kind::folder : Kind::file;
}

Fault unreadable(const std::string& path, const std::string& reason) {
  Fault fault;
  fault.kind = FaultKind::file;
  fault.word = printable(path);
  fault.message = "'" + fault.word + "' cannot be read: " + reason;
  return fault;
}

std::string read_up_to(const std::string& path, std::size_t most) {
  if (kind_of(path) == Kind::folder) throw unreadable(path, "it is a folder; name a file in it");
  const std::unique_ptr<FILE, int (*)(FILE*)> file(std::fopen(path.c_str(), "rb"), std::fclose);
  if (!file) throw unreadable(path, std::strerror(errno));
  std::string text;
  std::array<char, 16384> room{};
  while (text.size() < most) {
    const std::size_t size = std::fread(room.data(), 1, std::min(room.size(), most - text.size()), file.get());
    text.append(room.data(), size);
    if (std::ferror(file.get()) != 0) throw unreadable(path, std::strerror(errno));
    if (size == 0) break;
  }
  return text;
}

std::vector<std::string> toml_files_of(const std::string& folder) {
  std::vector<std::string> files;
  const std::unique_ptr<DIR, int (*)(DIR*)> open(opendir(folder.c_str()), closedir);
  if (!open) return files;
  while (const dirent* entry = readdir(open.get())) {
    const std::string name(entry->d_name);
    if (name.size() > 5 && name.ends_with(".toml") && name.front() != '.') files.push_back(folder + "/" + name);
  }
  std::sort(files.begin(), files.end());
  return files;
}

std::vector<std::string> parted(const std::string& paths) {
  std::vector<std::string> parts;
  std::size_t from = 0;
  while (from <= paths.size()) {
    const std::size_t to = std::min(paths.find(':', from), paths.size());
    if (to > from) parts.push_back(paths.substr(from, to - from));
    from = to + 1;
  }
  return parts;
}

/// A file that is named twice counts where it is named last.
std::vector<TableFileText> each_once(std::vector<TableFileText> files) {
  std::vector<TableFileText> once;
  for (auto& file : files) {
    std::erase_if(once, [&](const TableFileText& other) { return other.path == file.path; });
    once.push_back(std::move(file));
  }
  return once;
}

std::string config_folder(const TableSearch& search) {
  return search.config.empty() ? std::string{} : search.config + "/quillside/tables";
}

} // namespace

std::vector<TablePlace> places_of(const TableSearch& search) {
  std::vector<TablePlace> places;
  const auto add = [&](const std::string& path) { places.push_back({path, kind_of(path) != Kind::none}); };
  for (auto path = search.named.rbegin(); path != search.named.rend(); ++path) add(*path);
  if (search.variable) {
    const auto paths = parted(*search.variable);
    for (auto path = paths.rbegin(); path != paths.rend(); ++path) add(*path);
  }
  if (const std::string folder = config_folder(search); !folder.empty()) {
    const auto files = toml_files_of(folder);
    if (files.empty()) places.push_back({folder + "/*.toml", false});
    for (auto path = files.rbegin(); path != files.rend(); ++path) add(*path);
  }
  places.push_back({"built-in", true});
  return places;
}

TableFileText read_table_file(const std::string& path) {
  TableFileText read{path, read_up_to(path, largest_table_file + 1)};
  if (read.text.size() <= largest_table_file) return read;
  Fault fault;
  fault.kind = FaultKind::data;
  fault.word = path;
  fault.message = "'" + path + "' is over 1 MiB: no file of tables or settings is that long";
  fault.place = Place{path, 1, 1};
  throw fault;
}

std::string read_text_file(const std::string& path) { return read_up_to(path, std::string::npos); }

std::vector<TableFileText> read_table_files(const TableSearch& search) {
  std::vector<TableFileText> files;
  if (const std::string folder = config_folder(search); !folder.empty())
    for (const auto& path : toml_files_of(folder)) files.push_back(read_table_file(path));
  if (search.variable) {
    for (const auto& path : parted(*search.variable)) {
      if (kind_of(path) == Kind::folder) {
        for (const auto& inside : toml_files_of(path)) files.push_back(read_table_file(inside));
      } else {
        files.push_back(read_table_file(path));
      }
    }
  }
  for (const auto& path : search.named) files.push_back(read_table_file(path));
  return each_once(std::move(files));
}

} // namespace quillside
