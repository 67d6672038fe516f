// encode(), decode(), escape() and unescape() (FHIRPath 3.0.0, trial use, additional string functions).
#include <algorithm>
#include <array>

#include "base/utf8.h"
#include "expression/function_table.h"

namespace stile::expression {
namespace {

constexpr std::string_view kHexDigits = "0123456789abcdef";
constexpr std::string_view kBase64 = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
constexpr std::string_view kUrlBase64 = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

using Coded = std::optional<std::string>;

std::string toHex(std::string_view text) {
  std::string result;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    result += kHexDigits[byte >> 4];
    result += kHexDigits[byte & 0xF];
  }
  return result;
}

int hexDigit(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  if (c >= 'A' && c <= 'F') return c - 'A' + 10;
  return -1;
}

Coded fromHex(std::string_view text) {
  if (text.size() % 2 != 0) return std::nullopt;
  std::string result;
  for (std::size_t i = 0; i < text.size(); i += 2) {
    const int high = hexDigit(text[i]);
    const int low = hexDigit(text[i + 1]);
    if (high < 0 || low < 0) return std::nullopt;
    result += static_cast<char>(high * 16 + low);
  }
  return result;
}

std::string toBase64(std::string_view text, std::string_view alphabet) {
  std::string result;
  for (std::size_t i = 0; i < text.size(); i += 3) {
    const std::size_t count = std::min<std::size_t>(3, text.size() - i);
    unsigned group = 0;
    for (std::size_t k = 0; k < 3; ++k) {
      group = group << 8 | (k < count ? static_cast<unsigned char>(text[i + k]) : 0u);
    }
    for (std::size_t k = 0; k < 4; ++k) {
      result += k <= count ? alphabet[group >> (18 - 6 * k) & 63] : '=';
    }
  }
  return result;
}

Coded fromBase64(std::string_view text, std::string_view alphabet) {
  while (text.ends_with('=')) text.remove_suffix(1);
  if (text.size() % 4 == 1) return std::nullopt;
  std::string result;
  unsigned group = 0;
  unsigned bits = 0;
  for (const char c : text) {
    const std::size_t value = alphabet.find(c);
    if (value == std::string_view::npos) return std::nullopt;
    group = (group << 6 | static_cast<unsigned>(value)) & 0xFFFF;
    bits += 6;
    if (bits < 8) continue;
    bits -= 8;
    result += static_cast<char>(group >> bits & 0xFF);
  }
  return result;
}

std::string replaced(std::string_view text, char wanted, std::string_view by) {
  std::string result;
  for (const char c : text) {
    if (c == wanted) {
      result += by;
    } else {
      result += c;
    }
  }
  return result;
}

struct Escape {
  char plain;
  std::string_view written;
};
constexpr std::array<Escape, 5> kHtml{
    {{'&', "&amp;"}, {'<', "&lt;"}, {'>', "&gt;"}, {'"', "&quot;"}, {'\'', "&#39;"}}};
constexpr std::array<Escape, 6> kJson{
    {{'\\', "\\\\"}, {'"', "\\\""}, {'\n', "\\n"}, {'\r', "\\r"}, {'\t', "\\t"}, {'\f', "\\f"}}};

template <std::size_t N>
std::string escaped(std::string_view text, const std::array<Escape, N>& table) {
  std::string result(text);
  for (const Escape& entry : table) result = replaced(result, entry.plain, entry.written);
  return result;
}

template <std::size_t N>
std::string unescaped(std::string_view text, const std::array<Escape, N>& table) {
  std::string result;
  while (!text.empty()) {
    const Escape* found = nullptr;
    for (const Escape& entry : table) {
      if (text.starts_with(entry.written)) found = &entry;
    }
    result += found ? found->plain : text.front();
    text.remove_prefix(found ? found->written.size() : 1);
  }
  return result;
}

Coded encoded(const std::string& text, const std::string& format) {
  if (format == "hex") return toHex(text);
  if (format == "base64") return toBase64(text, kBase64);
  if (format == "urlbase64") return toBase64(text, kUrlBase64);
  return std::nullopt;
}
Coded decoded(const std::string& text, const std::string& format) {
  Coded result;
  if (format == "hex") result = fromHex(text);
  if (format == "base64") result = fromBase64(text, kBase64);
  if (format == "urlbase64") result = fromBase64(text, kUrlBase64);
  // A text is UTF-8; other bytes are none.
  if (result && base::invalidUtf8At(*result) != std::string_view::npos) return std::nullopt;
  return result;
}
Coded escapedFor(const std::string& text, const std::string& format) {
  if (format == "html") return escaped(text, kHtml);
  if (format == "json") return escaped(text, kJson);
  return std::nullopt;
}
Coded unescapedFor(const std::string& text, const std::string& format) {
  if (format == "html") return unescaped(text, kHtml);
  if (format == "json") return unescaped(text, kJson);
  return std::nullopt;
}

template <Coded (*change)(const std::string&, const std::string&)>
Collection changed(Call& call) {
  const std::string* text = call.text();
  const auto format = call.textArgument(0);
  if (!text || !format) return {};
  // Before it is made: one character becomes six at most.
  call.machine.budget().text(text->size());
  Coded result = change(*text, *format);
  if (!result) return {};
  call.machine.budget().text(result->size());
  return {Item::text(std::move(*result))};
}

constexpr std::array<FunctionEntry, 4> kEncodingFunctions{{{"encode", 1, 1, changed<encoded>},
                                                   {"decode", 1, 1, changed<decoded>},
                                                   {"escape", 1, 1, changed<escapedFor>},
                                                   {"unescape", 1, 1, changed<unescapedFor>}}};

}  // namespace

std::span<const FunctionEntry> encodingFunctions() {
  return kEncodingFunctions;
}

}  // namespace stile::expression
