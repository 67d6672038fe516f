// Content in another language: rules/phrases/<lang>.json put over the sentences that clients read.
//
// Only words are replaced, never conditions, numbers or ids, so the decision stays the same. What has
// no translation stays English and says so on the paper.
#pragma once

#include <map>
#include <string>

#include "base/issue.h"
#include "base/result.h"

namespace stile::application {

struct Translation {
  std::string language;  ///< BCP 47
  std::string notice;    ///< stands on every paper while nobody licensed has reviewed it
  std::string missing;   ///< stands before a sentence without a translation: "(en inglés) "
  std::map<std::string, std::string, std::less<>> texts;  ///< by key, see DEVELOPERS.md
  bool isReviewed = false;

  static Translation load(const std::string& text, const std::string& file, base::Issues& issues);
};

/// What was found on the way over the content.
struct TranslationCount {
  std::size_t sentences = 0, missing = 0;
};

/// The files of a content folder with the client's sentences in the other language. Keys that name no
/// sentence, and translations with other slots than the original, are issues.
std::map<std::string, std::string> translated(const std::map<std::string, std::string>& files,
                                              const Translation& translation, TranslationCount& count,
                                              base::Issues& issues);

}  // namespace stile::application
