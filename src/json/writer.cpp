#include <algorithm>
#include <cassert>

#include "base/utf8.h"
#include "json/document.h"

namespace stile::json {
namespace {

bool isPlain(char c) { return static_cast<unsigned char>(c) >= 0x20 && c != '"' && c != '\\'; }

std::string escaped(char c) {
  static constexpr std::string_view kHexDigits = "0123456789abcdef";
  switch (c) {
    case '"':
      return "\\\"";
    case '\\':
      return "\\\\";
    case '\n':
      return "\\n";
    case '\r':
      return "\\r";
    case '\t':
      return "\\t";
    default:
      const auto byte = static_cast<unsigned char>(c);
      return std::string("\\u00") + kHexDigits[byte >> 4] + kHexDigits[byte & 0xF];
  }
}

std::string literal(std::string_view value) {
  const std::string text = base::wellFormedUtf8(value);
  std::string result = "\"";
  for (auto from = text.begin(); from != text.end();) {
    const auto to = std::find_if_not(from, text.end(), isPlain);
    result.append(from, to);
    from = to;
    if (from != text.end()) result += escaped(*from++);
  }
  return result + "\"";
}

std::string decimalText(const base::Rational& value) {
  // Exact where the document reader can read it back, else twelve decimals: a third has no end.
  std::string exact = value.toText(30);
  if (base::Rational::parse(exact) == value) return exact;
  return value.toText(12);
}

}  // namespace

void Writer::newline() {
  if (indent_ == 0) return;
  text_ += '\n';
  text_.append(static_cast<std::size_t>(indent_) * open_.size(), ' ');
}

/// Whatever must stand before a value or a key.
void Writer::separate() {
  if (afterKey_) {
    afterKey_ = false;
    return;
  }
  if (open_.empty()) return;
  if (open_.back().second) text_ += ',';
  open_.back().second = true;
  newline();
}

Writer& Writer::beginObject() {
  separate();
  text_ += '{';
  open_.emplace_back('{', false);
  return *this;
}

Writer& Writer::endObject() {
  assert(!open_.empty() && open_.back().first == '{' && !afterKey_);
  const bool hasMembers = open_.back().second;
  open_.pop_back();
  if (hasMembers) newline();
  text_ += '}';
  if (open_.empty()) text_ += '\n';
  return *this;
}

Writer& Writer::beginArray() {
  separate();
  text_ += '[';
  open_.emplace_back('[', false);
  return *this;
}

Writer& Writer::endArray() {
  assert(!open_.empty() && open_.back().first == '[');
  const bool hasElements = open_.back().second;
  open_.pop_back();
  if (hasElements) newline();
  text_ += ']';
  if (open_.empty()) text_ += '\n';
  return *this;
}

Writer& Writer::key(std::string_view name) {
  assert(!open_.empty() && open_.back().first == '{' && !afterKey_);
  separate();
  text_ += literal(name);
  text_ += indent_ == 0 ? ":" : ": ";
  afterKey_ = true;
  return *this;
}

Writer& Writer::string(std::string_view value) {
  return numberText(literal(value));
}

Writer& Writer::number(long long value) {
  return numberText(std::to_string(value));
}

Writer& Writer::number(const base::Rational& value) {
  return numberText(decimalText(value));
}

Writer& Writer::numberText(std::string_view digits) {
  separate();
  text_ += digits;
  if (open_.empty()) text_ += '\n';
  return *this;
}

Writer& Writer::boolean(bool value) {
  return numberText(value ? "true" : "false");
}

Writer& Writer::null() {
  return numberText("null");
}

Writer& Writer::copy(Node node) {
  switch (node.kind()) {
    case Kind::Null:
      return null();
    case Kind::Boolean:
      return boolean(node.boolean());
    case Kind::Number:
      return numberText(node.numberText());
    case Kind::String:
      return string(node.string());
    case Kind::Array:
      beginArray();
      for (std::size_t i = 0; i < node.size(); ++i) copy(node.at(i));
      return endArray();
    case Kind::Object:
      beginObject();
      for (std::size_t i = 0; i < node.size(); ++i) key(node.keyAt(i)).copy(node.at(i));
      return endObject();
  }
  return *this;
}

}  // namespace stile::json
