// quillside-draw: a document on standard input, a picture on standard output; on trouble one line on standard error.
// Exit: 0 drawn; 2 it cannot be drawn as asked; 4 the font is missing, or a stream cannot be read or written; 5 no
// document. A program of its own, so that an ask that draws nothing pays nothing for the drawing libraries.

#include <array>
#include <cstdio>
#include <exception>
#include <string>

#include <glib.h>
#include <malloc.h>

#include <quillside/page/draw.hpp>
#include <quillside/words/fault.hpp>

namespace {

/// The drawing libraries warn on standard error; the one line there is ours.
GLogWriterOutput quiet(GLogLevelFlags, const GLogField*, gsize, gpointer) { return G_LOG_WRITER_HANDLED; }

/// One picture and out: for a large chart, memory given back and asked for again costs a twentieth of the time.
void keep_memory() {
#ifdef M_TRIM_THRESHOLD
  constexpr int all = 1 << 25; // the most there may be
  mallopt(M_TRIM_THRESHOLD, all);
  mallopt(M_MMAP_THRESHOLD, all);
#endif
}

/// In blocks: a chart's document has some hundred thousand letters.
std::string all_of_standard_input() {
  std::string all;
  std::array<char, 65536> room{};
  while (const std::size_t size = std::fread(room.data(), 1, room.size(), stdin)) all.append(room.data(), size);
  return all;
}

int complain(const std::string& message, int exit) {
  std::fprintf(stderr, "%s\n", message.c_str());
  return exit;
}

} // namespace

int main() {
  g_log_set_writer_func(quiet, nullptr, nullptr);
  try {
    keep_memory();
    quillside::page::look_for_fonts();
    const std::string document = all_of_standard_input();
    const std::string picture = quillside::page::picture_of(quillside::page::read_document(document));
    std::fwrite(picture.data(), 1, picture.size(), stdout);
    if (std::fflush(stdout) != 0 || std::ferror(stdout) != 0) return complain("the picture cannot be written", 4);
    return 0;
  } catch (const quillside::Fault& fault) {
    return complain(fault.message, quillside::exit_code(fault.kind));
  } catch (const std::exception& error) {
    return complain(error.what(), 5);
  }
}
