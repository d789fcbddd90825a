// Flutes where a number of rows is wanted.
// says: TeethPerTurn
#include <quillside/data/size_ladder.hpp>

using namespace quillside;

std::vector<const SizeRow*> below(std::span<const SizeRow> sizes) {
#ifdef REFUSE
  return sizes_below(sizes, mm(3), flutes(3));
#else
  return sizes_below(sizes, mm(3), 3);
#endif
}
