#include <quillside/model/belt.hpp>

#include <stdexcept>

namespace quillside {

SpindleSpeed driven_speed(SpindleSpeed driver, Pulleys pulleys) {
  if (!(pulleys.driving > mm(0)) || !(pulleys.driven > mm(0))) throw std::domain_error{"a pulley with no diameter"};
  return driver * (pulleys.driving / pulleys.driven);
}

} // namespace quillside
