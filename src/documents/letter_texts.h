// The sentences of letters: rules/letters.json. Read strictly; no clinical sentence stands in C++.
#pragma once

#include <array>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "base/date.h"
#include "base/issue.h"
#include "documents/phrase_book.h"
#include "limits/scale.h"
#include "rules/rule_set.h"

namespace stile::documents {

/// What one kind of letter is called and opens with. `to` is a service of the vocabulary, "other"
/// for those without a letter of their own, or "referrer".
struct LetterKind {
  std::string to, title, question;
};

struct LetterTexts {
  base::Period replyWithin;
  PhraseBook headings, phrases;
  std::map<limits::Rung, std::pair<std::string, std::string>> intensities;  ///< words, what they mean
  std::vector<std::string> sources;
  std::vector<LetterKind> letters;

  static LetterTexts load(const std::string& text, const std::string& file, base::Issues& issues);
  /// Services and sources that the letters name and `rules` does not have.
  base::Issues check(const rules::RuleSet& rules) const;
  /// The kind for that service, or that of "other".
  const LetterKind& kindFor(std::string_view service) const;
};

inline constexpr std::array<KeyAndSlots, 19> kLetterHeadings{{{"whyAsked", ""},   {"symptoms", ""},
                                                              {"conditions", ""}, {"medicines", ""},
                                                              {"measured", ""},   {"answeredNo", ""},
                                                              {"planned", ""},    {"meanwhile", ""},
                                                              {"asked", ""},      {"decided", ""},
                                                              {"plan", ""},       {"checks", ""},
                                                              {"next", ""},       {"reply", ""},
                                                              {"toWhom", ""},     {"theQuestion", ""},
                                                              {"opening", ""},    {"added", ""},
                                                              {"why", ""}}};
inline constexpr std::array<KeyAndSlots, 46> kLetterPhrases{{{"question", "client intensity"},
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
                                                             {"eventReply", ""}}};

}  // namespace stile::documents
