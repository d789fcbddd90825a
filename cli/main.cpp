#include "run.hpp"
#include "terminal.hpp"

int main(int count, char** words) {
  return quillside::cli::run({words + 1, words + count}, quillside::cli::terminal());
}
