#include "facts/medicine_class.h"

#include <algorithm>
#include <array>

#include "json/reader.h"

namespace stile::facts {
namespace {

using Words = std::vector<std::string>;

// Words of dose, form and time. They say how a medicine is taken, never which medicine it is, so
// they may stand beside a name without leaving it in doubt.
constexpr std::array<std::string_view, 66> kDoseWords{
    "mg",         "mcg",    "ug",      "µg",      "g",       "ml",      "unit",     "units",   "iu",
    "%",          "tablet", "tablets", "tab",     "tabs",    "capsule", "capsules", "cap",     "caps",
    "pill",       "pills",  "patch",   "patches", "spray",   "puff",    "puffs",    "inhaler", "injection",
    "injections", "drop",   "drops",   "cream",   "gel",     "syrup",   "pen",      "once",    "twice",
    "times",      "daily",  "a",       "per",     "day",     "days",    "week",     "weekly",  "month",
    "monthly",    "every",  "each",    "other",   "morning", "evening", "night",    "noon",    "at",
    "in",         "the",    "bedtime", "as",      "needed",  "od",      "bd",       "tds",     "sr",
    "xl",         "mr",     "hourly"};

bool isDoseWord(const std::string& word) {
  if (word[0] >= '0' && word[0] <= '9') return true;  // "50", "50mg", "1x"
  return std::find(kDoseWords.begin(), kDoseWords.end(), word) != kDoseWords.end();
}

char lowerCase(char letter) {
  return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
}

bool isSeparator(char letter) {
  return letter == '/' || letter == '+' || letter == ',' || letter == '&' || letter == ';';
}

bool isBlank(char letter) {
  return letter == ' ' || letter == '\t' || letter == '\n' || letter == '\r' || letter == '(' ||
         letter == ')';
}

/// Lower-case words without the dots that end abbreviations; separators become a word of their own, "/".
Words wordsOf(std::string_view text) {
  Words words;
  std::string word;
  const auto close = [&] {
    while (!word.empty() && word.back() == '.') word.pop_back();
    if (word == "and") word = "/";
    if (!word.empty()) words.push_back(std::move(word));
    word.clear();
  };
  for (const char letter : text) {
    if (isSeparator(letter)) {
      close();
      words.emplace_back("/");
    } else if (isBlank(letter)) {
      close();
    } else {
      word += lowerCase(letter);
    }
  }
  close();
  return words;
}

std::string joined(const Words& words, std::size_t first, std::size_t count) {
  std::string text;
  for (std::size_t i = first; i < first + count; ++i) text += (i == first ? "" : " ") + words[i];
  return text;
}

}  // namespace

MedicineClasses MedicineClasses::read(json::Node root, base::Issues& issues) {
  MedicineClasses result;
  json::ObjectReader file(root, "medicine classes", issues);
  for (const json::Node& node : file.array("classes")) {
    json::ObjectReader reader(node, "medicine class", issues);
    MedicineClass one;
    one.id = reader.requireString("id");
    if (!one.id.empty()) reader.setSubject(one.id);
    one.title = reader.requireString("title");
    one.names = reader.strings("names");
    one.sources = reader.strings("sources");
    if (one.names.empty()) reader.issue(node, "the class has no names", "list generic names in \"names\"");
    if (one.sources.empty())
      reader.issue(node, "the class names no source", "list the ids of its sources in \"sources\"");
    reader.finish();
    if (one.id.empty()) continue;
    if (result.find(one.id) >= 0) {
      reader.issue(node, "there is a class \"" + one.id + "\" already", "join the two");
      continue;
    }
    const int index = static_cast<int>(result.classes_.size());
    for (std::string& name : one.names) {
      const Words words = wordsOf(name);
      const std::string normal = joined(words, 0, words.size());
      if (normal.empty() || normal.find('/') != std::string::npos) {
        reader.issue(node, "\"" + name + "\" is no single name",
                     "list every medicine of a combination by itself");
        continue;
      }
      auto& classes = result.byName_[normal];
      if (classes.empty() || classes.back() != index) classes.push_back(index);
      result.longestName_ = std::max(result.longestName_, words.size());
      name = normal;
    }
    result.classes_.push_back(std::move(one));
  }
  file.require("classes");
  file.finish();
  return result;
}

MedicineMatch MedicineClasses::match(std::string_view written) const {
  const Words words = wordsOf(written);
  MedicineMatch match;
  bool anyName = false;
  bool anyOther = false;
  for (std::size_t i = 0; i < words.size();) {
    std::size_t taken = 0;
    for (std::size_t count = std::min(longestName_, words.size() - i); count > 0 && taken == 0; --count) {
      const auto found = byName_.find(joined(words, i, count));
      if (found == byName_.end()) continue;
      match.classes.insert(match.classes.end(), found->second.begin(), found->second.end());
      anyName = true;
      taken = count;
    }
    if (taken == 0) {
      anyOther = anyOther || (words[i] != "/" && !isDoseWord(words[i]));
      taken = 1;
    }
    i += taken;
  }
  std::sort(match.classes.begin(), match.classes.end());
  match.classes.erase(std::unique(match.classes.begin(), match.classes.end()), match.classes.end());
  match.isResolved = anyName && !anyOther;
  return match;
}

int MedicineClasses::find(std::string_view id) const {
  for (std::size_t i = 0; i < classes_.size(); ++i) {
    if (classes_[i].id == id) return static_cast<int>(i);
  }
  return -1;
}

}  // namespace stile::facts
