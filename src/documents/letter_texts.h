// The sentences of letters: rules/letters.json. Read strictly; no clinical sentence stands in C++.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/date.h"
#include "base/issue.h"
#include "documents/phrase_book.h"
#include "facts/dictionary.h"
#include "limits/scale.h"
#include "rules/rule_set.h"

namespace stile::documents {

/// What one kind of letter is called and opens with. `to` is a service of the vocabulary, "other"
/// for those without a letter of their own, or "referrer".
struct LetterKind {
  std::string to, title, question;
  std::string address;             ///< "the heart clinic"; "" = the service's own words
  bool hasTests = false;           ///< the results of the tests stand in it
  std::vector<std::string> facts;  ///< facts that stand in it by their labels, also when unknown
  /// What its reader needs: topics and facts of the conditions told, classes of medicine. Nothing given:
  /// all of them. A medicine whose name is not known always stands.
  std::optional<std::vector<std::string>> conditions, medicines;
  std::vector<std::string> without;  ///< headings of passages that it does without
};

/// Which answers a letter counts as conditions told, and in which words.
struct ConditionWords {
  std::vector<std::string> topics, also;          ///< topics of the dictionary, and single facts of others
  std::map<std::string, std::string> words;       ///< in place of a question's label, by fact
  std::map<std::string, std::string> belongsTo;   ///< a fact or group that stands in brackets behind another
};

struct LetterTexts {
  base::Period replyWithin, replySoon;  ///< as a routine matter, and within days
  PhraseBook headings, phrases;
  std::map<limits::Rung, std::pair<std::string, std::string>> intensities;  ///< words, what they mean
  std::vector<std::string> sources;
  std::vector<LetterKind> letters;
  ConditionWords conditions;

  static LetterTexts load(const std::string& text, const std::string& file, base::Issues& issues);
  /// Services and sources that the letters name and `rules` does not have; facts, topics and classes of
  /// medicine that are not in `dictionary`.
  base::Issues check(const rules::RuleSet& rules, const facts::Dictionary& dictionary) const;
  /// The kind for that service, or that of "other".
  const LetterKind& kindFor(std::string_view service) const;
};

inline constexpr std::array<KeyAndSlots, 21> kLetterHeadings{{{"whyAsked", ""},   {"symptoms", ""},
                                                              {"conditions", ""}, {"medicines", ""},
                                                              {"measured", ""},   {"answeredNo", ""},
                                                              {"planned", ""},    {"meanwhile", ""},
                                                              {"whyAndAsked", ""}, {"decided", ""},
                                                              {"plan", ""},       {"checks", ""},
                                                              {"next", ""},       {"reply", ""},
                                                              {"toWhom", ""},     {"theQuestion", ""},
                                                              {"opening", ""},    {"added", ""},
                                                              {"why", ""},        {"tests", ""},
                                                              {"limitsKept", ""}}};
inline constexpr std::array<KeyAndSlots, 54> kLetterPhrases{{{"question", "client intensity"},
                                                             {"aboutClient", ""},
                                                             {"replyBy", "date"},
                                                             {"dear", "recipient"},
                                                             {"noSymptoms", ""},
                                                             {"symptomsOpen", ""},
                                                             {"newWithin", "symptom"},
                                                             {"noMedicines", ""},
                                                             {"medicinesOpen", ""},
                                                             {"allergies", "allergies"},
                                                             {"plannedHome", "by aerobic strength intensity"},
                                                             {"plannedAerobic", "minutes days effort"},
                                                             {"plannedStrength", "rounds repetitions days"},
                                                             {"meanwhileOpen", "aerobic strength"},
                                                             {"meanwhileShut", ""},
                                                             {"opinion", ""},
                                                             {"opensNothing", ""},
                                                             {"regards", ""},
                                                             {"copies", ""},
                                                             {"consent", ""},
                                                             {"slip", "client clinic"},
                                                             {"slipRoute", "route"},
                                                             {"answerColumn", ""},
                                                             {"covers", ""},
                                                             {"upTo", ""},
                                                             {"from", ""},
                                                             {"until", ""},
                                                             {"heartRate", ""},
                                                             {"systolic", ""},
                                                             {"load", ""},
                                                             {"other", ""},
                                                             {"signature", ""},
                                                             {"signatureDate", ""},
                                                             {"noFinding", ""},
                                                             {"result", ""},
                                                             {"limitsAnswer", ""},
                                                             {"cannotComment", ""},
                                                             {"outcomeThanks", "client date"},
                                                             {"outcomeNoPlan", "because"},
                                                             {"thisClinic", ""},
                                                             {"outcomeReview", ""},
                                                             {"reworded", "passages"},
                                                             {"plannedLater", "intensity"},
                                                             {"lessWeight", "count"},
                                                             {"eventTitle", ""},
                                                             {"eventReply", ""},
                                                             {"outcomeNotYet", ""},
                                                             {"outcomeReferrals", "services"},
                                                             {"outcomeService", "service within"},
                                                             {"stillOpen", "questions"},
                                                             {"notKnown", ""},
 {"asks", "why ask"},
 {"otherConditions", "count"},
 {"otherMedicines", "count"}}};

}  // namespace stile::documents
