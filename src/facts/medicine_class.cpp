#include "facts/medicine_class.h"

#include <algorithm>
#include <set>

#include "base/near_names.h"
#include "facts/medicine_class_reader.h"

namespace stile::facts {
namespace {

using Words = std::vector<std::string>;

void sortOnce(std::vector<int>& indices) {
  std::sort(indices.begin(), indices.end());
  indices.erase(std::unique(indices.begin(), indices.end()), indices.end());
}

enum class Membership { Yes, Possible, No };

/// Whether a medicine of the class's names, taken by `told` routes, is of the class.
Membership byRoute(const MedicineClass& one, const std::set<int>& told) {
  const auto isIn = [](const std::vector<int>& routes) {
    return [&routes](int route) { return std::find(routes.begin(), routes.end(), route) != routes.end(); };
  };
  if (!told.empty() && std::all_of(told.begin(), told.end(), isIn(one.notBy))) return Membership::No;
  if (one.onlyBy.empty()) return Membership::Yes;
  if (told.empty()) return Membership::Possible;
  return std::any_of(told.begin(), told.end(), isIn(one.onlyBy)) ? Membership::Yes : Membership::No;
}

}  // namespace

MedicineClasses MedicineClasses::read(json::Node root, base::Issues& issues) {
  return MedicineClassReader(issues).read(root);
}

const std::vector<int>* MedicineClasses::named(const Words& words, std::size_t first,
                                               std::size_t count) const {
  const auto found = byName_.find(joinedWords(words, first, count));
  return found == byName_.end() ? nullptr : &found->second;
}

std::size_t MedicineClasses::takeName(const Words& words, std::size_t first,
                                      std::vector<int>& classes) const {
  const auto add = [&](const std::vector<int>& more) {
    classes.insert(classes.end(), more.begin(), more.end());
  };
  for (std::size_t count = std::min(longestName_, words.size() - first); count > 0; --count) {
    if (const auto* found = named(words, first, count)) {
      add(*found);
      return count;
    }
  }
  // "amlodipine-valsartan": all of its parts must be names.
  std::string parted = words[first];
  std::replace(parted.begin(), parted.end(), '-', ' ');
  const Words parts = medicineWordsOf(parted);
  if (parts.size() < 2) return 0;
  std::vector<int> ofParts;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const auto* found = named(parts, i, 1);
    if (!found) return 0;
    ofParts.insert(ofParts.end(), found->begin(), found->end());
  }
  add(ofParts);
  return 1;
}

MedicineMatch MedicineClasses::match(std::string_view written) const {
  const Words words = medicineWordsOf(written);
  std::vector<int> candidates;
  std::set<int> routes;
  bool anyName = false;
  bool anyOther = false;
  bool isBehindName = false;
  for (std::size_t i = 0; i < words.size();) {
    if (const std::size_t taken = takeName(words, i, candidates)) {
      if (const int route = words_.impliedRoute(joinedWords(words, i, taken)); route >= 0)
        routes.insert(route);
      anyName = isBehindName = true;
      i += taken;
      continue;
    }
    const std::string& word = words[i++];
    if (isBehindName && words_.isSalt(word)) continue;
    if (word == "/") {
      isBehindName = false;
    } else if (const int route = words_.routeOf(word); route >= 0) {
      routes.insert(route);
    } else if (!words_.isDose(word)) {
      anyOther = true;
      isBehindName = false;
    }
  }
  MedicineMatch match;
  match.isResolved = anyName && !anyOther;
  sortOnce(candidates);
  for (const int candidate : candidates) {
    const Membership membership = byRoute(classes_[static_cast<std::size_t>(candidate)], routes);
    if (membership == Membership::Yes) match.classes.push_back(candidate);
    if (membership == Membership::Possible) match.possible.push_back(candidate);
  }
  return match;
}

std::vector<std::string> MedicineClasses::near(std::string_view written) const {
  constexpr std::size_t kShortest = 4;  // letters: "drop" is near to too much
  std::set<std::string_view> sorted;
  for (const auto& [name, classes] : byName_) sorted.insert(name);
  const std::vector<std::string_view> names(sorted.begin(), sorted.end());
  const Words words = medicineWordsOf(written);
  std::vector<std::string> near;
  for (std::size_t i = 0; i < words.size();) {
    std::vector<int> ignored;
    if (const std::size_t taken = takeName(words, i, ignored)) {
      i += taken;
      continue;
    }
    const std::string& word = words[i++];
    if (word.size() < kShortest || words_.isDose(word) || words_.isSalt(word) || words_.routeOf(word) >= 0)
      continue;
    for (std::string& name : base::nearNames(word, names)) {
      if (std::find(near.begin(), near.end(), name) == near.end()) near.push_back(std::move(name));
    }
  }
  return near;
}

int MedicineClasses::find(std::string_view id) const {
  for (std::size_t i = 0; i < classes_.size(); ++i) {
    if (classes_[i].id == id) return static_cast<int>(i);
  }
  return -1;
}

int MedicineClasses::findByOption(std::string_view code) const {
  for (std::size_t i = 0; i < classes_.size(); ++i) {
    std::string option;
    bool isUpper = false;
    for (const char letter : classes_[i].id) {
      if (letter == '-') {
        isUpper = true;
        continue;
      }
      const bool isSmall = letter >= 'a' && letter <= 'z';
      option += isUpper && isSmall ? static_cast<char>(letter - 'a' + 'A') : letter;
      isUpper = false;
    }
    if (option == code) return static_cast<int>(i);
  }
  return -1;
}

}  // namespace stile::facts
