// Content in another language: rules/phrases/<lang>.json and the files of the folder rules/phrases/<lang>
// put over the sentences that clients read.
//
// Only words are replaced, never conditions, numbers or ids, so the decision stays the same. What has
// no translation, or whose English has changed since it was translated, stays English and says so on
// the paper.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "base/issue.h"
#include "base/result.h"
#include "json/document.h"

namespace stile::application {

/// A sentence as it was when it was translated, and its translation.
struct Phrase {
  std::string of, say;
};

struct Translation {
  std::string language;  ///< BCP 47
  std::string notice;    ///< stands on every paper while nobody licensed has reviewed it
  std::string missing;   ///< stands before a sentence without a translation: "(en inglés) "
  std::map<std::string, Phrase, std::less<>> texts;  ///< by key, see DEVELOPERS.md
  bool isReviewed = false;

  /// Everything `files` (path -> text) hold for the language; nullopt when there is nothing. Keys that
  /// stand twice are issues.
  static std::optional<Translation> load(const std::map<std::string, std::string>& files, const std::string& language,
                                         base::Issues& issues);
};

/// What was found on the way over the content.
struct TranslationCount {
  std::size_t sentences = 0, missing = 0, changed = 0;
  std::vector<std::string> toDo;  ///< keys of those missing or changed
};

/// The sentences of a translation as they are used, and what is wrong with them.
class PhraseUse {
 public:
  PhraseUse(const Translation& translation, TranslationCount& count, base::Issues& issues) : translation_(translation), count_(count), issues_(issues) {}

  /// The translation of a sentence by its key; the sentence itself with the words of `missing` before it
  /// where there is none, or where it has changed since.
  std::string say(json::Node sentence, const std::string& key);
  /// Keys of this part of the translation that named no sentence are issues.
  void checkUnused(const std::function<bool(const std::string&)>& isOfPart);

 private:
  const Translation& translation_;
  TranslationCount& count_;
  base::Issues& issues_;
  std::set<std::string, std::less<>> used_;
};

/// Whether the key is of a sentence in a form; the others are of rules, plans and papers.
bool isFormPhrase(const std::string& key);

/// The files of a content folder with the client's sentences of rules, plans and papers in the other
/// language; for forms see translated_forms.h. Keys that name no
/// sentence, and translations with other slots than the original, are issues.
std::map<std::string, std::string> translated(const std::map<std::string, std::string>& files,
                                              const Translation& translation, TranslationCount& count,
                                              base::Issues& issues);

}  // namespace stile::application
