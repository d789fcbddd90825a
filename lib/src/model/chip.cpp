#include <quillside/model/chip.hpp>

#include <cmath>
#include <stdexcept>

#include <quillside/quantity/angle.hpp>

#include "one_tooth.hpp"

namespace quillside {

using detail::one_tooth;

namespace {

double share_of_diameter(Engagement engagement) {
  if (!(engagement.width > mm(0)) || !(engagement.width <= engagement.diameter))
    throw std::domain_error{"a width of cut is above 0 and at most the diameter"};
  return engagement.width / engagement.diameter;
}

/// Largest chip over feed per tooth; 1 from half engagement on.
double thinning(Engagement engagement) {
  const double share = share_of_diameter(engagement);
  return share >= 0.5 ? 1.0 : 2 * std::sqrt(share - share * share);
}

} // namespace

Angle arc_of_engagement(Engagement engagement) { return angle_of_cosine(1 - 2 * share_of_diameter(engagement)); }

Length largest_chip(FeedPerTooth feed, Engagement engagement) { return thinning(engagement) * (feed * one_tooth); }

Length mean_chip(FeedPerTooth feed, Engagement engagement) {
  const double arc = in_radians(arc_of_engagement(engagement));
  return 2 * share_of_diameter(engagement) / arc * (feed * one_tooth);
}

FeedPerTooth feed_for_chip(Length chip, Engagement engagement) { return chip / one_tooth / thinning(engagement); }

} // namespace quillside
