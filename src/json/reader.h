// Reading a typed object out of JSON: required and optional members, and a complaint about every
// member nobody asked for. All issues are collected.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "json/document.h"

namespace stile::json {

/// Reads one object. `subject` names it in issues. Call `finish()` once every known member was
/// asked for: members nobody asked for become issues (a misspelt key must never be ignored).
class ObjectReader {
 public:
  ObjectReader(Node node, std::string subject, base::Issues& issues);

  bool isObject() const { return isObject_; }
  Node node() const { return node_; }
  void setSubject(std::string subject) { subject_ = std::move(subject); }
  const std::string& subject() const { return subject_; }

  std::optional<Node> find(std::string_view key);     ///< absent: nullopt
  std::optional<Node> require(std::string_view key);  ///< absent: issue
  std::string requireString(std::string_view key);    ///< "" and an issue when absent or wrong
  std::string string(std::string_view key, std::string otherwise = {});
  std::optional<bool> boolean(std::string_view key);
  std::optional<long long> integer(std::string_view key);
  std::optional<base::Rational> number(std::string_view key);
  std::vector<std::string> strings(std::string_view key);  ///< absent: empty
  std::vector<Node> array(std::string_view key);           ///< absent: empty
  void issue(Node at, std::string message, std::string remedy = {});
  void finish();

 private:
  Node node_;
  std::string subject_;
  base::Issues& issues_;
  bool isObject_;
  std::set<std::string, std::less<>> asked_;
};

}  // namespace stile::json
