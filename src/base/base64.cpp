#include "base/base64.h"

#include <cstdint>

namespace stile::base {
namespace {

constexpr std::string_view kSigns = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

}  // namespace

std::string toBase64(std::string_view bytes) {
  std::string text;
  text.reserve((bytes.size() + 2) / 3 * 4);
  for (std::size_t i = 0; i < bytes.size(); i += 3) {
    const std::size_t count = bytes.size() - i < 3 ? bytes.size() - i : 3;
    std::uint32_t group = 0;
    for (std::size_t j = 0; j < 3; ++j) group = group << 8 | (j < count ? static_cast<unsigned char>(bytes[i + j]) : 0u);
    for (std::size_t j = 0; j < 4; ++j) text += j <= count ? kSigns[group >> (18 - 6 * j) & 63u] : '=';
  }
  return text;
}

std::optional<std::string> fromBase64(std::string_view text) {
  if (text.size() % 4 != 0) return std::nullopt;
  std::string bytes;
  bytes.reserve(text.size() / 4 * 3);
  for (std::size_t i = 0; i < text.size(); i += 4) {
    const bool isLast = i + 4 == text.size();
    const std::size_t padding = isLast ? (text[i + 3] == '=') + (text[i + 3] == '=' && text[i + 2] == '=') : 0u;
    std::uint32_t group = 0;
    for (std::size_t j = 0; j < 4; ++j) {
      const std::size_t value = j < 4 - padding ? kSigns.find(text[i + j]) : 0u;
      if (value == std::string_view::npos) return std::nullopt;
      group = group << 6 | static_cast<std::uint32_t>(value);
    }
    for (std::size_t j = 0; j < 3 - padding; ++j) bytes += static_cast<char>(group >> (16 - 8 * j) & 255u);
    // Bits that padding leaves over are zero, so that one text stands for one row of bytes.
    if (padding == 1 && (group & 255u) != 0) return std::nullopt;
    if (padding == 2 && (group & 65535u) != 0) return std::nullopt;
  }
  return bytes;
}

}  // namespace stile::base
