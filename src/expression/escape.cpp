#include "expression/escape.h"

#include <optional>

namespace stile::expression {
namespace {

using CodePoint = unsigned long;

/// The four hexadecimal digits at `at`, if there are four.
std::optional<CodePoint> hexAt(std::string_view source, std::size_t at) {
  if (source.size() < at + 4) return std::nullopt;
  CodePoint value = 0;
  for (const char c : source.substr(at, 4)) {
    CodePoint digit = 0;
    if (c >= '0' && c <= '9') {
      digit = static_cast<CodePoint>(c - '0');
    } else if (c >= 'a' && c <= 'f') {
      digit = static_cast<CodePoint>(c - 'a') + 10;
    } else if (c >= 'A' && c <= 'F') {
      digit = static_cast<CodePoint>(c - 'A') + 10;
    } else {
      return std::nullopt;
    }
    value = value * 16 + digit;
  }
  return value;
}

void appendUtf8(std::string& text, CodePoint point) {
  const auto append = [&](CodePoint byte) { text += static_cast<char>(static_cast<unsigned char>(byte)); };
  if (point < 0x80) {
    append(point);
  } else if (point < 0x800) {
    append(0xC0 | (point >> 6));
    append(0x80 | (point & 0x3F));
  } else if (point < 0x10000) {
    append(0xE0 | (point >> 12));
    append(0x80 | ((point >> 6) & 0x3F));
    append(0x80 | (point & 0x3F));
  } else {
    append(0xF0 | (point >> 18));
    append(0x80 | ((point >> 12) & 0x3F));
    append(0x80 | ((point >> 6) & 0x3F));
    append(0x80 | (point & 0x3F));
  }
}

bool isHighSurrogate(CodePoint unit) {
  return unit >= 0xD800 && unit <= 0xDBFF;
}
bool isLowSurrogate(CodePoint unit) {
  return unit >= 0xDC00 && unit <= 0xDFFF;
}

char escaped(char c) {
  switch (c) {
    case 'f':
      return '\f';
    case 'n':
      return '\n';
    case 'r':
      return '\r';
    case 't':
      return '\t';
    default:
      return c;
  }
}

/// Resolves the four digits after `\u` at `at`, moving it past them. False when they (with the
/// pair that must follow a high surrogate) are no character.
bool readUnicode(std::string_view source, std::size_t& at, CodePoint unit, std::string& text) {
  at += 4;
  if (isHighSurrogate(unit) && source.substr(at, 2) == "\\u") {
    const auto low = hexAt(source, at + 2);
    if (low && isLowSurrogate(*low)) {
      at += 6;
      appendUtf8(text, 0x10000 + ((unit - 0xD800) << 10) + (*low - 0xDC00));
      return true;
    }
  }
  if (unit == 0 || isHighSurrogate(unit) || isLowSurrogate(unit)) return false;
  appendUtf8(text, unit);
  return true;
}

}  // namespace

Delimited readDelimited(std::string_view source, std::size_t start) {
  Delimited result;
  const char delimiter = source[start];
  std::size_t at = start + 1;
  while (at < source.size()) {
    const char c = source[at++];
    if (c == delimiter) {
      result.isClosed = true;
      result.end = at;
      return result;
    }
    if (c != '\\') {
      result.text += c;
      continue;
    }
    if (at == source.size()) break;
    const std::size_t backslash = at - 1;
    const char next = source[at++];
    const auto unit = next == 'u' ? hexAt(source, at) : std::nullopt;
    if (!unit) {
      result.text += escaped(next);
    } else if (!readUnicode(source, at, *unit, result.text)) {
      result.hasBadEscape = true;
      result.end = backslash;
      return result;
    }
  }
  result.end = source.size();
  return result;
}

}  // namespace stile::expression
