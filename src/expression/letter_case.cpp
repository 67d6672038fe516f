#include "expression/letter_case.h"

#include <clocale>
#include <cwctype>

#include "base/utf8.h"

namespace stile::expression {
namespace {

/// The C library's table for UTF-8, whatever the user's language is. Null when there is none; then
/// only ASCII letters change.
locale_t unicode() {
  static const locale_t table = newlocale(LC_CTYPE_MASK, "C.UTF-8", nullptr);
  return table;
}

char32_t codePointOf(std::string_view piece) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(piece[i]); };
  switch (piece.size()) {
    case 2:
      return static_cast<char32_t>((byte(0) & 0x1F) << 6 | (byte(1) & 0x3F));
    case 3:
      return static_cast<char32_t>((byte(0) & 0x0F) << 12 | (byte(1) & 0x3F) << 6 | (byte(2) & 0x3F));
    case 4:
      return static_cast<char32_t>((byte(0) & 0x07) << 18 | (byte(1) & 0x3F) << 12 | (byte(2) & 0x3F) << 6 |
                                   (byte(3) & 0x3F));
    default:
      return byte(0);
  }
}

void append(std::string& text, char32_t point) {
  const auto add = [&](char32_t byte) { text += static_cast<char>(static_cast<unsigned char>(byte)); };
  if (point < 0x80) return add(point);
  if (point < 0x800) {
    add(0xC0 | point >> 6);
  } else {
    if (point < 0x10000) {
      add(0xE0 | point >> 12);
    } else {
      add(0xF0 | point >> 18);
      add(0x80 | (point >> 12 & 0x3F));
    }
    add(0x80 | (point >> 6 & 0x3F));
  }
  add(0x80 | (point & 0x3F));
}

std::string mapped(std::string_view text, char first, char last, int shift,
                   std::wint_t (*change)(std::wint_t, locale_t)) {
  std::string result;
  result.reserve(text.size());
  for (const std::string_view piece : base::codePoints(text)) {
    const char c = piece.front();
    if (piece.size() == 1) {
      result += c >= first && c <= last ? static_cast<char>(c + shift) : c;
    } else if (!unicode()) {
      result += piece;
    } else {
      append(result, static_cast<char32_t>(change(static_cast<std::wint_t>(codePointOf(piece)), unicode())));
    }
  }
  return result;
}

}  // namespace

std::string upperCase(std::string_view text) {
  return mapped(text, 'a', 'z', 'A' - 'a', towupper_l);
}

std::string lowerCase(std::string_view text) {
  return mapped(text, 'A', 'Z', 'a' - 'A', towlower_l);
}

}  // namespace stile::expression
