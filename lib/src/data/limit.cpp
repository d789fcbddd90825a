#include <quillside/data/limit.hpp>

#include <algorithm>

#include <quillside/words/fault.hpp>

namespace quillside {

const Limit& limit(std::span<const Limit> limits, std::string_view key) {
  const auto found = std::find_if(limits.begin(), limits.end(), [&](const Limit& row) { return row.key == key; });
  if (found != limits.end()) return *found;
  Fault fault;
  fault.kind = FaultKind::data;
  fault.word = std::string(key);
  fault.message = "no table has the limit '" + std::string(key) + "'";
  throw fault;
}

} // namespace quillside
