// A checked, versioned collection of rules with everything they refer to.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "base/issue.h"
#include "facts/dictionary.h"
#include "rules/rule.h"
#include "rules/vocabulary.h"

namespace stile::rules {

/// One entry of the bibliography, rules/sources/*.json.
struct Source {
  std::string id;
  std::string citation;
  std::string seen;        ///< read, second-hand, from memory, policy
  std::string confidence;  ///< H, M, L
  std::string note;
};
inline constexpr std::string_view kNoSource = "common practice, no source";

struct Policy {
  std::string id, title, question, value, decides;
  std::vector<std::pair<std::string, std::string>> alternatives;  ///< code, display
  std::vector<std::string> sources;
};

/// Always true: rules stand in file order (files sorted by path), ids are unique, every condition
/// is compiled, every name they use exists.
struct RuleSet {
  std::vector<Rule> rules;
  std::map<std::string, Check, std::less<>> checks;
  std::map<std::string, Source, std::less<>> sources;
  std::vector<Policy> policies;
  Vocabulary vocabulary;

  const Rule* find(std::string_view id) const;
  /// "Author. Title. (read)" for papers; the id itself when it is kNoSource.
  std::string cite(std::string_view sourceId) const;

  /// Loads every rule file, policy.json, sources/*.json and vocabulary.json from `files` (path
  /// under the content folder -> text), and checks the whole: unknown facts, types, units, option
  /// codes, missing sources, sentences whose slots may be unknown, modes that contradict the
  /// dictionary, unknown movements, bans, checks and services. All issues are collected.
  static RuleSet load(const std::map<std::string, std::string>& files, const facts::Dictionary& dictionary,
                      base::Issues& issues);
};

}  // namespace stile::rules
