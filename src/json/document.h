// JSON with the place of every value. The only room that sees the JSON library.
//
// A Document is immutable and keeps the text, so numbers keep their written digits and every
// value knows its line and column. Duplicate keys, numbers that do not fit, invalid UTF-8, a
// byte-order mark and nesting deeper than kMaxDepth are issues.
#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/issue.h"
#include "base/rational.h"

namespace stile::json {

inline constexpr std::size_t kMaxDepth = 64;
inline constexpr std::size_t kMaxBytes = 64u << 20;

enum class Kind { Null, Boolean, Number, String, Array, Object };

class Document;

/// One value in a document; a light handle that lives as long as its Document.
class Node {
 public:
  Kind kind() const;
  bool isNull() const { return kind() == Kind::Null; }
  bool isObject() const { return kind() == Kind::Object; }
  bool isArray() const { return kind() == Kind::Array; }
  bool isString() const { return kind() == Kind::String; }
  bool isNumber() const { return kind() == Kind::Number; }
  bool isBoolean() const { return kind() == Kind::Boolean; }

  /// Each must be asked only of the right kind (checked by assert).
  bool boolean() const;
  const std::string& string() const;      ///< decoded, UTF-8
  const std::string& numberText() const;  ///< the digits as written
  std::optional<base::Rational> number() const;
  std::optional<long long> integer() const;  ///< nullopt when not whole or too large

  /// Member of an object, or nullopt when absent or when this is no object.
  std::optional<Node> find(std::string_view key) const;
  std::size_t size() const;  ///< members or elements; 0 for other kinds
  Node at(std::size_t index) const;  ///< element, or value of the member at `index`
  const std::string& keyAt(std::size_t index) const;
  base::Place keyPlaceAt(std::size_t index) const;

  base::Place place() const;
  std::size_t offset() const;
  std::size_t endOffset() const;  ///< one past the last byte
  /// For the text inside a string value: the place `byteOffset` bytes into the decoded string,
  /// exact when the string holds no escapes before it.
  base::Place placeInString(std::size_t byteOffset) const;

 private:
  friend class Document;
  struct Data;
  Node(const Document* document, const Data* data) : document_(document), data_(data) {}
  const Document* document_;
  const Data* data_;
};

class Document {
 public:
  /// nullptr when the text is not acceptable JSON; the reasons are in `issues`.
  static std::shared_ptr<const Document> parse(std::string text, std::string file, base::Issues& issues);
  ~Document();
  Node root() const;
  const std::string& file() const { return file_; }
  const std::string& text() const { return text_; }

 private:
  Document();
  friend class Node;
  std::string file_;
  std::string text_;
  std::unique_ptr<Node::Data> root_;
};

/// Writes indented JSON with keys in the order given; the same calls give the same bytes.
class Writer {
 public:
  explicit Writer(int indent = 2) : indent_(indent) {}  ///< 0 = one line
  Writer& beginObject();
  Writer& endObject();
  Writer& beginArray();
  Writer& endArray();
  Writer& key(std::string_view name);
  Writer& string(std::string_view value);
  Writer& number(long long value);
  Writer& number(const base::Rational& value);
  Writer& numberText(std::string_view digits);  ///< digits as they were written
  Writer& boolean(bool value);
  Writer& null();
  Writer& copy(Node node);  ///< the value as it stands, re-indented
  Writer& member(std::string_view name, std::string_view value) { return key(name).string(value); }
  Writer& member(std::string_view name, const char* value) { return key(name).string(value); }
  Writer& member(std::string_view name, const std::string& value) { return key(name).string(value); }
  Writer& member(std::string_view name, bool value) { return key(name).boolean(value); }
  Writer& member(std::string_view name, long long value) { return key(name).number(value); }
  Writer& member(std::string_view name, int value) { return key(name).number(static_cast<long long>(value)); }
  const std::string& text() const { return text_; }  ///< ends with a newline once complete

 private:
  void separate();
  void newline();
  int indent_;
  std::string text_;
  std::vector<std::pair<char, bool>> open_;  ///< bracket, has members
  bool afterKey_ = false;
};

}  // namespace stile::json
