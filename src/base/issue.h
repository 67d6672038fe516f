// Trouble in content or input, with the place and the remedy.
//
// Issues are collected, all of them and not only the first, and shown by the faces. They are
// for what people wrote (files, answers, expressions). Files that cannot be read are a
// `Failure` (result.h); what rules conclude are findings.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace stile::base {

/// Where something stands in a text. Line and column count from 1, the column in code points;
/// 0 means "not known". `sourceLine` is the whole line, without its end.
struct Place {
  std::string file;
  int line = 0;
  int column = 0;
  std::string sourceLine;
};

enum class Severity {
  Error,    ///< the content or input is refused
  AskBack,  ///< possible but implausible: kept, and to be confirmed
  Note,     ///< worth telling; nothing is refused
};

/// One trouble. `subject` is the id of the rule, fact, item or answer concerned (may be empty).
struct Issue {
  Severity severity = Severity::Error;
  Place place;
  std::string subject;
  std::string message;  ///< what is wrong, one plain sentence without a full stop
  std::string remedy;   ///< what to do about it, one plain sentence; may be empty
};

/// A collection that only grows.
class Issues {
 public:
  void add(Issue issue) { list_.push_back(std::move(issue)); }
  void error(Place place, std::string subject, std::string message, std::string remedy = {}) {
    add({Severity::Error, std::move(place), std::move(subject), std::move(message), std::move(remedy)});
  }
  bool hasErrors() const;
  bool empty() const { return list_.empty(); }
  const std::vector<Issue>& all() const { return list_; }
  void append(const Issues& other);

 private:
  std::vector<Issue> list_;
};

/// `file:line:column: subject: message; remedy`, then the source line and a caret under the
/// column when they are known. Ends without a newline.
std::string toText(const Issue& issue);

/// The place of a byte offset in a text.
Place placeAt(std::string_view file, std::string_view text, std::size_t offset);

}  // namespace stile::base
