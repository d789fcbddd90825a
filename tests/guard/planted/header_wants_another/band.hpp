#pragma once
// std::string is used, and nothing brings it.

struct Band {
  std::string unit;
};
