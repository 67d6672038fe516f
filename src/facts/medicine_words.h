// The words people write beside a medicine's name: dose, form and time, salts, and how it is taken.
//
// They are content (rules/medicines/classes.json, "words" and "routes"), so that a clinic can add
// its own.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <unordered_set>
#include <vector>

#include "base/issue.h"
#include "json/document.h"

namespace stile::facts {

/// A way of taking a medicine that changes what it does to the body: in the eye, on the skin.
struct MedicineRoute {
  std::string id;
  std::string title;                   ///< "in the eye"
  std::vector<std::string> words;      ///< lower case
  std::vector<std::string> impliedBy;  ///< medicines that are taken in no other way
};

class MedicineWords {
 public:
  /// Reads the members "words" and "routes" of the file's root; both may be absent.
  static MedicineWords read(const std::optional<json::Node>& words, const std::vector<json::Node>& routes,
                            base::Issues& issues);

  /// A number, or a word of dose, form or time: it says how a medicine is taken, never which it is.
  bool isDose(const std::string& word) const;
  /// Part of a salt's name ("succinate"): passed over right behind a medicine's name.
  bool isSalt(const std::string& word) const { return salts_.contains(word); }
  int routeOf(std::string_view word) const;  ///< index, or -1
  /// The route a medicine of this name is always taken by: an index, or -1.
  int impliedRoute(std::string_view name) const;
  int findRoute(std::string_view id) const;  ///< index, or -1
  const std::vector<MedicineRoute>& routes() const { return routes_; }

 private:
  std::unordered_set<std::string> dose_;
  std::unordered_set<std::string> salts_;
  std::vector<MedicineRoute> routes_;
};

/// Lower-case words without the dots that end abbreviations. "/", "+", ",", "&", ";" and "and" become
/// the word "/".
std::vector<std::string> medicineWordsOf(std::string_view text);

/// `count` words from `first` on with single blanks between them.
std::string joinedWords(const std::vector<std::string>& words, std::size_t first, std::size_t count);

}  // namespace stile::facts
