#include <algorithm>
#include <cassert>
#include <limits>

#include "json/document.h"
#include "json/node_data.h"

namespace stile::json {
namespace {

/// The place of `offset` on a line whose number is known: no need to count from the start.
base::Place placeOnLine(const Document& document, std::size_t offset, int line) {
  const std::string_view text = document.text();
  const std::size_t before = offset == 0 ? std::string_view::npos : text.rfind('\n', offset - 1);
  const std::size_t start = before == std::string_view::npos ? 0 : before + 1;
  const std::string_view sourceLine = text.substr(start, text.find('\n', start) - start);
  base::Place place = base::placeAt(document.file(), sourceLine, offset - start);
  place.line = line;
  return place;
}

struct Escape {
  std::size_t written;  ///< bytes in the text
  std::size_t decoded;  ///< bytes of UTF-8
};

/// The escape at the start of `text`, which is known to be well-formed.
Escape escapeAt(std::string_view text) {
  if (text[1] != 'u') return {2, 1};
  const auto code = std::stoul(std::string(text.substr(2, 4)), nullptr, 16);
  if (code >= 0xD800 && code < 0xDC00) return {12, 4};
  return {6, code < 0x80 ? 1u : code < 0x800 ? 2u : 3u};
}

}  // namespace

Kind Node::kind() const {
  return data_->kind;
}

bool Node::boolean() const {
  assert(isBoolean());
  return data_->boolean;
}

const std::string& Node::string() const {
  assert(isString());
  return data_->text;
}

const std::string& Node::numberText() const {
  assert(isNumber());
  return data_->text;
}

std::optional<base::Rational> Node::number() const {
  assert(isNumber());
  return base::Rational::parse(data_->text);
}

std::optional<long long> Node::integer() const {
  const auto value = number();
  if (!value || !value->isWhole()) return std::nullopt;
  const long long whole = value->floor();
  // floor() stops at the ends of its range.
  if (base::Rational(whole) != *value) return std::nullopt;
  return whole;
}

std::optional<Node> Node::find(std::string_view key) const {
  const auto& order = data_->byKey;
  const auto found =
      std::lower_bound(order.begin(), order.end(), key,
                       [&](std::size_t i, std::string_view name) { return data_->keys[i].name < name; });
  if (found == order.end() || data_->keys[*found].name != key) return std::nullopt;
  return at(*found);
}

std::size_t Node::size() const {
  return data_->children.size();
}

Node Node::at(std::size_t index) const {
  assert(index < size());
  return Node(document_, &data_->children[index]);
}

const std::string& Node::keyAt(std::size_t index) const {
  assert(isObject() && index < size());
  return data_->keys[index].name;
}

base::Place Node::keyPlaceAt(std::size_t index) const {
  assert(isObject() && index < size());
  return placeOnLine(*document_, data_->keys[index].begin, data_->keys[index].line);
}

base::Place Node::place() const {
  return placeOnLine(*document_, data_->begin, data_->line);
}

std::size_t Node::offset() const {
  return data_->begin;
}

std::size_t Node::endOffset() const {
  return data_->end;
}

base::Place Node::placeInString(std::size_t byteOffset) const {
  assert(isString());
  const std::string_view text = document_->text();
  const std::size_t closingQuote = data_->end - 1;
  std::size_t at = data_->begin + 1;
  std::size_t decoded = 0;
  while (decoded < byteOffset && at < closingQuote) {
    Escape step{1, 1};
    if (text[at] == '\\') step = escapeAt(text.substr(at));
    // An offset into the middle of a character that was written as an escape.
    if (decoded + step.decoded > byteOffset) break;
    at += step.written;
    decoded += step.decoded;
  }
  return placeOnLine(*document_, at, data_->line);
}

}  // namespace stile::json
