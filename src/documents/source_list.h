// The numbered bibliography of one paper.
#pragma once

#include <string>
#include <vector>

#include "documents/document.h"
#include "rules/rule_set.h"

namespace stile::documents {

/// Numbers sources in the order in which they are first cited.
class SourceList {
 public:
  explicit SourceList(const rules::RuleSet& rules) : rules_(rules) {}
  /// "1, 4"; "" for none. What has no source is named so, without a number.
  std::string cite(const std::vector<std::string>& sourceIds);
  /// Author, title, and how the source was seen, in the order of the numbers.
  Rows listed() const;
  bool empty() const { return ids_.empty(); }

 private:
  const rules::RuleSet& rules_;
  std::vector<std::string> ids_;
};

}  // namespace stile::documents
