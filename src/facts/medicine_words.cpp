#include "facts/medicine_words.h"

#include <algorithm>
#include <optional>

#include "json/reader.h"

namespace stile::facts {
namespace {

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

}  // namespace

std::vector<std::string> medicineWordsOf(std::string_view text) {
  std::vector<std::string> words;
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

std::string joinedWords(const std::vector<std::string>& words, std::size_t first, std::size_t count) {
  std::string text;
  for (std::size_t i = first; i < first + count; ++i) text += (i == first ? "" : " ") + words[i];
  return text;
}

MedicineWords MedicineWords::read(const std::optional<json::Node>& words,
                                  const std::vector<json::Node>& routes, base::Issues& issues) {
  MedicineWords result;
  if (words) {
    json::ObjectReader reader(*words, "medicine words", issues);
    for (const std::string& word : reader.strings("dose")) result.dose_.insert(word);
    for (const std::string& word : reader.strings("salts")) result.salts_.insert(word);
    reader.finish();
  }
  for (const json::Node& node : routes) {
    json::ObjectReader reader(node, "medicine route", issues);
    MedicineRoute route{reader.requireString("id"), reader.requireString("title"), reader.strings("words"),
                        reader.strings("impliedBy")};
    reader.finish();
    if (result.findRoute(route.id) >= 0)
      reader.issue(node, "there is a route \"" + route.id + "\" already", "join the two");
    for (const std::string& word : route.words) {
      if (result.routeOf(word) >= 0 || result.isDose(word))
        reader.issue(node, "the word \"" + word + "\" has a meaning already", "list it once");
    }
    result.routes_.push_back(std::move(route));
  }
  return result;
}

bool MedicineWords::isDose(const std::string& word) const {
  return (word[0] >= '0' && word[0] <= '9') || dose_.contains(word);  // "50", "50mg", "0.5%"
}

int MedicineWords::routeOf(std::string_view word) const {
  for (std::size_t i = 0; i < routes_.size(); ++i) {
    const auto& words = routes_[i].words;
    if (std::find(words.begin(), words.end(), word) != words.end()) return static_cast<int>(i);
  }
  return -1;
}

int MedicineWords::impliedRoute(std::string_view name) const {
  for (std::size_t i = 0; i < routes_.size(); ++i) {
    const auto& names = routes_[i].impliedBy;
    if (std::find(names.begin(), names.end(), name) != names.end()) return static_cast<int>(i);
  }
  return -1;
}

int MedicineWords::findRoute(std::string_view id) const {
  for (std::size_t i = 0; i < routes_.size(); ++i) {
    if (routes_[i].id == id) return static_cast<int>(i);
  }
  return -1;
}

}  // namespace stile::facts
