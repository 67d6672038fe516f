// The tree behind Node and Document. For src/json only.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "json/document.h"

namespace stile::json {

/// One value with its place in the text. `begin` and `end` are byte offsets, `line` counts from 1.
struct Node::Data {
  struct Key {
    std::string name;  ///< decoded
    std::size_t begin = 0;
    int line = 0;
  };

  Kind kind = Kind::Null;
  bool boolean = false;
  int line = 0;
  std::size_t begin = 0;
  std::size_t end = 0;
  std::string text;                ///< a string decoded, a number as written
  std::vector<Data> children;      ///< elements, or the values of members
  std::vector<Key> keys;           ///< of an object: one per child
  std::vector<std::size_t> byKey;  ///< of an object: indices in the order of the key names

  class Builder;
};

/// The tree of `text`, which must be well-formed JSON. Repeated keys and numbers that do not fit
/// become issues.
class Node::Data::Builder {
 public:
  Builder(std::string_view text, std::string_view file, base::Issues& issues)
      : text_(text), file_(file), issues_(issues) {}

  Data build();

 private:
  Data value();
  void object(Data& data);
  void array(Data& data);
  void number(Data& data);
  std::string string();
  void skipSpace();
  void sortKeys(Data& data);
  void issue(std::size_t offset, std::string message, std::string remedy);
  std::string pointer() const;

  std::string_view text_;
  std::string_view file_;
  base::Issues& issues_;
  std::size_t at_ = 0;
  int line_ = 1;
  std::size_t issueCount_ = 0;
  std::vector<std::string> path_;
};

}  // namespace stile::json
