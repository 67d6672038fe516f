// Which facts and options the content makes use of: rules, doses, exercises, papers, and derived
// facts that lead to one of these.
#pragma once

#include <cctype>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "../support/content.h"

namespace stile::test {

/// The words of an expression or a sentence that may be fact ids.
inline std::set<std::string> wordsOf(const std::string& text) {
  std::set<std::string> words;
  std::string word;
  for (const char letter : text + " ") {
    if (std::isalnum(static_cast<unsigned char>(letter)) != 0)
      word += letter;
    else if (!word.empty())
      words.insert(std::exchange(word, {}));
  }
  return words;
}

inline void collectStrings(json::Node node, std::vector<std::string>& strings) {
  if (node.isString()) strings.push_back(node.string());
  for (std::size_t i = 0; i < node.size(); ++i) collectStrings(node.at(i), strings);
}

inline bool startsWith(const std::string& text, std::string_view beginning) {
  return text.compare(0, beginning.size(), beginning) == 0;
}

/// Every string of the content that may name facts, and what it makes of them.
class UseOfFacts {
 public:
  UseOfFacts();

  /// Read by a rule, a dose, an exercise, a paper or another form item, perhaps through derived facts.
  bool isRead(const std::string& fact) const { return read_.contains(fact); }
  /// `code` of a choice leads to something: compared with, shown, or passed on as it is.
  bool isOptionUsed(const std::string& fact, const std::string& code) const;

 private:
  void readContent();
  void readForms();
  void closeOverDerived();
  void take(const std::string& text);

  std::set<std::string> read_;
  std::vector<std::string> texts_;                               ///< strings that are themselves read
  std::map<std::string, std::vector<std::string>> derivedFrom_;  ///< fact -> strings of its derivation
  std::set<std::pair<std::string, std::string>> asked_;          ///< fact and code that open another question
};

inline UseOfFacts::UseOfFacts() {
  readContent();
  readForms();
  closeOverDerived();
}

inline void UseOfFacts::readContent() {
  const auto files = application::readContentFolder(STILE_SOURCE_DIR);
  if (!files) throw std::runtime_error(files.failure().message);
  for (const auto& [path, text] : files.value()) {
    if (!startsWith(path, "rules/") || startsWith(path, "rules/sources/") || startsWith(path, "rules/norms/"))
      continue;
    if (path == "rules/policy.json" || path == "rules/medicines/classes.json") continue;
    const auto document = parsed(text, path);
    if (!startsWith(path, "rules/facts/")) {
      std::vector<std::string> strings;
      collectStrings(document->root(), strings);
      for (const std::string& one : strings) take(one);
      continue;
    }
    const auto facts = document->root().find("facts");
    for (std::size_t i = 0; facts && i < facts->size(); ++i) {
      const json::Node fact = facts->at(i);
      auto& strings = derivedFrom_[fact.find("id")->string()];
      if (const auto derived = fact.find("derived")) collectStrings(*derived, strings);
      // What makes a fact optional decides, for as long as the fact itself does.
      if (const auto optional = fact.find("optional"))
        if (const auto when = optional->find("when")) strings.push_back(when->string());
    }
  }
}

inline void UseOfFacts::take(const std::string& text) {
  texts_.push_back(text);
  for (const std::string& word : wordsOf(text))
    if (content().dictionary.find(word)) read_.insert(word);
}

inline void UseOfFacts::readForms() {
  for (const auto& form : content().forms.forms()) {
    for (const auto* item : form->inOrder()) {
      for (const auto& condition : item->enableWhen) {
        if (condition.text) asked_.emplace(condition.question, *condition.text);
        read_.insert(condition.question);
      }
    }
  }
}

inline void UseOfFacts::closeOverDerived() {
  const auto& dictionary = content().dictionary;
  std::set<std::string> done;
  for (bool changed = true; changed;) {
    changed = false;
    const std::set<std::string> now = read_;
    for (const std::string& id : now) {
      if (!done.insert(id).second) continue;
      changed = true;
      const facts::Definition* fact = dictionary.find(id);
      if (fact && fact->isOption()) read_.insert(dictionary.at(fact->derived.of).id);
      // Medicine classes read the medicines.
      if (fact && fact->derived.kind == facts::DerivedKind::ClassMember) {
        take("medicineName");
        take("medicineLookedUp");
      }
      const auto derived = derivedFrom_.find(id);
      if (derived == derivedFrom_.end()) continue;
      for (const std::string& text : derived->second) take(text);
    }
  }
}

inline bool UseOfFacts::isOptionUsed(const std::string& fact, const std::string& code) const {
  if (asked_.contains({fact, code})) return true;
  std::string option = fact + code;
  option[fact.size()] = static_cast<char>(std::toupper(static_cast<unsigned char>(option[fact.size()])));
  if (read_.contains(option)) return true;
  for (const std::string& text : texts_) {
    if (text == fact || text == "%" + fact || text.find("{" + fact + "}") != std::string::npos) return true;
    if (text.find("'" + code + "'") != std::string::npos && wordsOf(text).contains(fact)) return true;
  }
  return false;
}

}  // namespace stile::test
