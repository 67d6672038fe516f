// Reading grade by the Flesch-Kincaid formula (Kincaid 1975): 0.39 words/sentence + 11.8
// syllables/word - 15.59, not below 0. Syllables are estimated from groups of vowels.
#pragma once

#include <algorithm>
#include <cctype>
#include <string>
#include <string_view>

namespace stile::test {

inline int syllablesOf(std::string word) {
  const std::size_t size = word.size();
  const bool endsInEs = size > 3 && word.substr(size - 2) == "es";
  if (endsInEs && std::string_view("szxhcg").find(word[size - 3]) == std::string_view::npos) word.pop_back();
  int groups = 0;
  bool wasVowel = false;
  for (const char letter : word) {
    const bool isVowel = std::string_view("aeiouy").find(letter) != std::string_view::npos;
    if (isVowel && !wasVowel) ++groups;
    wasVowel = isVowel;
  }
  if (groups > 1 && word.back() == 'e' && word.substr(word.size() - 2) != "le") --groups;
  return std::max(1, groups);
}

/// Of `text`; sentences end at . ? ! and :.
inline double readingGrade(const std::string& text) {
  int words = 0;
  int sentences = 0;
  int syllables = 0;
  std::string word;
  for (const char letter : text + " ") {
    if (std::isalnum(static_cast<unsigned char>(letter)) != 0) {
      word += static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
      continue;
    }
    if (!word.empty()) {
      ++words;
      syllables += syllablesOf(word);
      word.clear();
    }
    if (std::string_view(".?!:").find(letter) != std::string_view::npos) ++sentences;
  }
  const double grade = 0.39 * words / std::max(1, sentences) + 11.8 * syllables / std::max(1, words) - 15.59;
  return std::max(0.0, grade);
}

}  // namespace stile::test
