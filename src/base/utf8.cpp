#include "base/utf8.h"

namespace stile::base {
namespace {

/// Length of the well-formed sequence at the start of `text`; 0 when there is none.
std::size_t sequenceLength(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char lead = byte(0);
  if (lead < 0x80) return 1;
  std::size_t length = 0;
  // The second byte's range shuts out overlong forms, surrogates and values above U+10FFFF
  // (Unicode 15, table 3-7).
  unsigned char low = 0x80;
  unsigned char high = 0xBF;
  if (lead >= 0xC2 && lead <= 0xDF) {
    length = 2;
  } else if (lead >= 0xE0 && lead <= 0xEF) {
    length = 3;
    if (lead == 0xE0) low = 0xA0;
    if (lead == 0xED) high = 0x9F;
  } else if (lead >= 0xF0 && lead <= 0xF4) {
    length = 4;
    if (lead == 0xF0) low = 0x90;
    if (lead == 0xF4) high = 0x8F;
  } else {
    return 0;
  }
  if (text.size() < length || byte(1) < low || byte(1) > high) return 0;
  for (std::size_t i = 2; i < length; ++i) {
    if (byte(i) < 0x80 || byte(i) > 0xBF) return 0;
  }
  return length;
}

}  // namespace

std::size_t invalidUtf8At(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t length = sequenceLength(text.substr(at));
    if (length == 0) return at;
    at += length;
  }
  return std::string_view::npos;
}

std::vector<std::string_view> codePoints(std::string_view text) {
  std::vector<std::string_view> pieces;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t length = sequenceLength(text.substr(at));
    pieces.push_back(text.substr(at, length == 0 ? 1 : length));
    at += pieces.back().size();
  }
  return pieces;
}

std::size_t countCodePoints(std::string_view text) {
  std::size_t count = 0;
  for (std::size_t at = 0; at < text.size(); ++count) {
    const std::size_t length = sequenceLength(text.substr(at));
    at += length == 0 ? 1 : length;
  }
  return count;
}

std::string wellFormedUtf8(std::string_view text) {
  std::string result;
  while (!text.empty()) {
    const std::size_t bad = invalidUtf8At(text);
    result += text.substr(0, bad);
    if (bad == std::string_view::npos) break;
    result += "\xEF\xBF\xBD";
    text.remove_prefix(bad + 1);
  }
  return result;
}

}  // namespace stile::base
