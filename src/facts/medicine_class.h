// Medicine classes: which of the names people write belong to which class.
//
// A name matches exactly or not at all; there is no guessing at misspelt medicines. What does not
// match is for a clinician to resolve.
#pragma once

#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "base/issue.h"
#include "json/document.h"

namespace stile::facts {

struct MedicineClass {
  std::string id;
  std::string title;
  std::vector<std::string> names;  ///< generic names, lower case
  std::vector<std::string> sources;
};

/// What one written medicine is.
struct MedicineMatch {
  std::vector<int> classes;  ///< indices, ascending, each once
  bool isResolved = false;   ///< every word is a known name, or a word of dose, form or time
};

class MedicineClasses {
 public:
  /// Reads rules/medicines/classes.json.
  static MedicineClasses read(json::Node root, base::Issues& issues);

  /// Cuts `written` at "/", "+", "," and "and" and looks up the longest known name at each word.
  /// Words of dose, form and time ("50 mg", "tablets", "daily") are passed over; any other word
  /// leaves the medicine unresolved, even when a known name stands beside it.
  MedicineMatch match(std::string_view written) const;
  int find(std::string_view id) const;  ///< -1 when there is no such class
  const std::vector<MedicineClass>& all() const { return classes_; }

 private:
  std::vector<MedicineClass> classes_;
  std::unordered_map<std::string, std::vector<int>> byName_;
  std::size_t longestName_ = 0;  ///< words
};

}  // namespace stile::facts
