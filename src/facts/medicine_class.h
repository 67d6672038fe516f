// Medicine classes: which of the names people write belong to which class.
//
// A name matches exactly or not at all; there is no guessing at misspelt medicines, only a
// suggestion. What does not match is for a clinician to resolve.
#pragma once

#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "base/issue.h"
#include "facts/medicine_words.h"
#include "json/document.h"

namespace stile::facts {

struct MedicineClass {
  std::string id;
  std::string title;
  std::vector<std::string> names;    ///< generic names, lower case; those of `namesOf` included
  std::vector<std::string> namesOf;  ///< classes whose names count here too
  std::vector<int> onlyBy;           ///< routes by which a medicine is of this class; empty = any
  std::vector<int> notBy;            ///< routes by which it is not
  std::vector<std::string> sources;
};

/// What one written medicine is.
struct MedicineMatch {
  std::vector<int> classes;   ///< indices, ascending, each once
  std::vector<int> possible;  ///< classes that need a route, of a medicine written without one
  bool isResolved = false;    ///< every word is a known name, or a word of dose, salt or route
};

class MedicineClasses {
 public:
  /// Reads rules/medicines/classes.json.
  static MedicineClasses read(json::Node root, base::Issues& issues);

  /// Cuts `written` at "/", "+", "," and "and" and looks up the longest known name at each word; a
  /// word with hyphens may be a combination of names. Words of dose, form and time ("50 mg",
  /// "tablets", "daily"), and salts behind a name, are passed over; any other word leaves the
  /// medicine unresolved, even when a known name stands beside it. A route ("eye drops", or a name
  /// that implies one) counts for all of it: a class leaves out what is taken only by routes it is
  /// "notBy".
  MedicineMatch match(std::string_view written) const;

  /// Known names near to the words of `written` that are not known, nearest first; for a suggestion.
  std::vector<std::string> near(std::string_view written) const;

  int find(std::string_view id) const;  ///< -1 when there is no such class
  /// The class whose id, written as an option code, is `code` ("beta-blocker" is "betaBlocker"); or -1.
  int findByOption(std::string_view code) const;
  const std::vector<MedicineClass>& all() const { return classes_; }
  const MedicineWords& words() const { return words_; }

 private:
  friend class MedicineClassReader;
  /// Classes of the name of `count` words at `first`, or null.
  const std::vector<int>* named(const std::vector<std::string>& words, std::size_t first,
                                std::size_t count) const;
  /// Words the longest name at `first` takes; 0 = none begins there. Adds its classes.
  std::size_t takeName(const std::vector<std::string>& words, std::size_t first,
                       std::vector<int>& classes) const;

  std::vector<MedicineClass> classes_;
  MedicineWords words_;
  std::unordered_map<std::string, std::vector<int>> byName_;
  std::size_t longestName_ = 0;  ///< words
};

}  // namespace stile::facts
