#include <quillside/model/screw_thread.hpp>

#include <cmath>
#include <stdexcept>

namespace quillside {

namespace {

void check(Thread thread) {
  if (!(thread.major > mm(0))) throw std::domain_error{"a thread with no diameter"};
  if (!(thread.pitch > mm(0)) || !(thread.pitch < thread.major / 2.0))
    throw std::domain_error{"the pitch of a thread is above 0 and less than half its diameter"};
}

Length depth_below_major(Thread thread, Length hole) {
  if (!(hole > mm(0))) throw std::domain_error{"a hole with no diameter"};
  return thread.major - hole;
}

} // namespace

Length sharp_height(Thread thread) {
  check(thread);
  return std::sqrt(3.0) / 2.0 * thread.pitch;
}

Length pitch_diameter(Thread thread) { return thread.major - 0.75 * sharp_height(thread); }

Length basic_minor_diameter(Thread thread) { return thread.major - 1.25 * sharp_height(thread); }

Length tap_hole(Thread thread, double share) {
  if (!(share >= 0 && share <= 1)) throw std::domain_error{"a share of a thread is 0 to 1"};
  return thread.major - 1.5 * share * sharp_height(thread);
}

double share_of_thread(Thread thread, Length hole) {
  return depth_below_major(thread, hole) / (1.5 * sharp_height(thread));
}

double share_of_basic_profile(Thread thread, Length hole) {
  return depth_below_major(thread, hole) / (1.25 * sharp_height(thread));
}

Length blind_hole_depth(BlindThread thread) {
  if (!(thread.full_thread >= mm(0)) || !(thread.pitch > mm(0)) || !(thread.lead >= 0))
    throw std::domain_error{"a blind thread has a length of 0 or more, a pitch, and a lead of 0 or more"};
  return thread.full_thread + thread.lead * thread.pitch;
}

} // namespace quillside
