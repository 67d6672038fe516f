// Limits in words, part by part, with the findings that hold them.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "limits/limits.h"
#include "rules/rule_set.h"
#include "screening/screening.h"

namespace stile::documents {

/// One limit in words, under a term, with the findings that hold it, gravest first. None: it comes
/// from a physician's reply.
struct LimitLine {
  std::string term;
  std::string text;
  std::vector<const rules::Finding*> holders;

  /// Held by a certain finding or a reply, not only by unanswered questions.
  bool isCertain() const;
};

/// "left knee" style prefix: "", "left " or "right ".
std::string sideWords(limits::Side side);
/// Words after a movement for the way it is done: "", ", loaded" …
std::string qualifierWords(limits::Qualifier qualifier);
/// The vocabulary's words, or the id where the vocabulary has none. `forClient` chooses the reader.
std::string termWords(const std::map<std::string, rules::Term, std::less<>>& terms, const std::string& id,
                      bool forClient);
/// "hip flexion, loaded: 90 degrees at most", with the side.
std::string capWords(const rules::Vocabulary& vocabulary, const limits::CapKey& key,
                     const base::Rational& degrees);
std::string doseWords(const std::string& name, const base::Rational& value, bool isFloor);
/// "restingSaturation under 88 %" in words.
std::string stopWords(const rules::Vocabulary& vocabulary, const limits::StopKey& key,
                      const base::Rational& value, bool forClient);

/// Findings that put something into the cautious end, gravest first, certain before open.
std::vector<const rules::Finding*> holdersOf(const screening::Screening& screening,
                                             const std::function<bool(const limits::Limits&)>& holds);
/// Title of a finding with its place: "Knee replacement (left)".
std::string titleOf(const rules::Finding& finding);

/// Every hold of the cautious end that is no check and no gate, in a fixed order.
std::vector<LimitLine> limitLinesOf(const screening::Screening& screening, const rules::RuleSet& rules);
/// Stands before the session gates.
inline constexpr const char* kGateTerm = "Before the first session";
/// Session gates and checks for the clinician, gates first.
std::vector<LimitLine> checkLinesOf(const screening::Screening& screening, const rules::RuleSet& rules);

}  // namespace stile::documents
