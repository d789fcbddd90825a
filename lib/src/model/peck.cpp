#include <quillside/model/peck.hpp>

#include <stdexcept>

namespace quillside {

std::vector<Length> pecks_to(DrilledDepth hole, PeckSchedule schedule) {
  if (!(hole.diameter > mm(0))) throw std::domain_error{"pecks of a drill with no diameter"};
  if (!(schedule.first > 0) || !(schedule.next > 0) || !(schedule.deep_next > 0) || !(schedule.deep_from > 0))
    throw std::domain_error{"a peck with no depth"};
  if (!(hole.depth >= mm(0))) throw std::domain_error{"pecks to no depth"};
  constexpr std::size_t most = 1000;
  std::vector<Length> depths;
  double reached = schedule.first;
  const double whole = hole.depth / hole.diameter;
  if (reached + shaving_left >= whole) return depths;
  while (reached + shaving_left < whole) {
    if (depths.size() + 1 == most) throw std::domain_error{"more than 1000 pecks"};
    depths.push_back(reached * hole.diameter);
    reached += reached >= schedule.deep_from ? schedule.deep_next : schedule.next;
  }
  depths.push_back(hole.depth);
  return depths;
}

} // namespace quillside
