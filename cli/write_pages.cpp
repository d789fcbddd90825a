// Writes the man page and the completion script into a folder, at build time.

#include <fstream>
#include <iostream>
#include <string>

#include "pages.hpp"

int main(int count, char** words) {
  if (count != 2) {
    std::cerr << "usage: write_pages FOLDER\n";
    return 2;
  }
  const std::string folder = words[1];
  std::ofstream man(folder + "/quillside.1");
  man << quillside::cli::man_page();
  std::ofstream completion(folder + "/quillside.bash");
  completion << quillside::cli::bash_completion();
  return man && completion ? 0 : 4;
}
