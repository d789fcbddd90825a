#include "png.hpp"

#include <array>
#include <cmath>
#include <cstdint>
#include <stdexcept>
#include <string_view>

namespace quillside::page {

namespace {

std::string big_endian(std::uint32_t number) {
  std::string bytes;
  for (int shift = 24; shift >= 0; shift -= 8)
    bytes += static_cast<char>((number >> static_cast<unsigned>(shift)) & 0xffU);
  return bytes;
}

std::uint32_t check_sum(std::string_view bytes) {
  std::uint32_t sum = 0xffffffffU;
  for (const char c : bytes) {
    sum ^= static_cast<unsigned char>(c);
    for (int bit = 0; bit < 8; ++bit) sum = (sum >> 1U) ^ ((sum & 1U) != 0 ? 0xedb88320U : 0U);
  }
  return sum ^ 0xffffffffU;
}

} // namespace

std::string with_resolution(const std::string& png) {
  constexpr std::size_t header_end = 8 + 4 + 4 + 13 + 4; // signature; length, name, IHDR, check
  if (png.size() < header_end || png.substr(12, 4) != "IHDR") throw std::runtime_error{"a PNG without its header"};
  const auto dots_per_metre = static_cast<std::uint32_t>(std::lround(dots_per_inch / 0.0254));
  const std::string chunk = "pHYs" + big_endian(dots_per_metre) + big_endian(dots_per_metre) + '\x01';
  return png.substr(0, header_end) + big_endian(static_cast<std::uint32_t>(chunk.size() - 4)) + chunk +
         big_endian(check_sum(chunk)) + png.substr(header_end);
}

} // namespace quillside::page
