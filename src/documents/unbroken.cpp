#include "documents/unbroken.h"

#include <algorithm>

namespace stile::documents {
namespace {

constexpr std::size_t kLongestWord = 9, kLongestRange = 24;

bool isDigit(char c) {
  return c >= '0' && c <= '9';
}
bool endsInDigit(std::string_view word) {
  return !word.empty() && isDigit(word.back());
}
bool isYear(std::string_view word) {
  while (!word.empty() && !isDigit(word.back())) word.remove_suffix(1);
  return word.size() == 4 && std::all_of(word.begin(), word.end(), isDigit) &&
         (word.starts_with("19") || word.starts_with("20"));
}
bool isName(std::string_view word) {
  return !word.empty() && word.front() >= 'A' && word.front() <= 'Z';
}
bool isSeparator(std::string_view word) {
  return word == "·" || word == "–";
}

bool isNumber(std::string_view word) {
  return !word.empty() && isDigit(word.front());
}

/// A version or a record number: "2026.11-3382cf34".
bool isReference(std::string_view word) {
  return word.size() <= kLongestRange && word.find('-') != std::string_view::npos && std::any_of(word.begin(), word.end(), isDigit);
}

/// True when the two words that follow each other belong together; `isGroup`: the first of them ends groups
/// of digits.
bool isOne(std::string_view word, std::string_view next, bool isGroup) {
  if (isSeparator(next)) return true;
  if (next.size() > kLongestWord) return false;
  if (isNumber(next)) return endsInDigit(word) || (isName(word) && isYear(next));
  return endsInDigit(word) && !isGroup && !isYear(word);
}

}  // namespace

std::vector<std::pair<std::size_t, std::size_t>> unbrokenRanges(std::string_view text) {
  std::vector<std::pair<std::size_t, std::size_t>> ranges;
  std::size_t wordAt = 0;
  bool isGroup = false;
  for (std::size_t space = text.find(' '); space != std::string_view::npos; space = text.find(' ', wordAt)) {
    const std::size_t nextAt = space + 1, nextEnd = std::min(text.find_first_of(" \n", nextAt), text.size());
    std::string_view word = text.substr(wordAt, space - wordAt);
    word.remove_prefix(word.rfind('\n') + 1);  // npos + 1 is 0: a word without a line end is whole
    const std::string_view next = text.substr(nextAt, nextEnd - nextAt);
    const bool isJoined = isOne(word, next, isGroup);
    isGroup = isJoined && endsInDigit(word) && isNumber(next);
    if (isJoined) {
      if (!ranges.empty() && ranges.back().second == space && nextEnd - ranges.back().first <= kLongestRange)
        ranges.back().second = nextEnd;
      else if (nextEnd - wordAt <= kLongestRange)
        ranges.emplace_back(wordAt, nextEnd);
    }
    wordAt = nextAt;
  }
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find_first_of(" \n", at), text.size());
    if (isReference(text.substr(at, end - at))) ranges.emplace_back(at, end);
    at = end + 1;
  }
  return ranges;
}

}  // namespace stile::documents
