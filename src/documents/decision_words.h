// The words of a decision: scales, the decision sentence, what opens a rung. Interface words only;
// clinical sentences come with the findings.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "limits/scale.h"
#include "rules/rule.h"
#include "screening/screening.h"

namespace stile::documents {

const char* wordsOf(limits::Action action);        ///< "within days"
const char* wordsOf(limits::Bay bay);              ///< "aerobic"
const char* wordsOf(limits::Rung rung);            ///< "light"; None is "rest"
const char* wordsOf(limits::Clearance clearance);  ///< "before vigorous work"
const char* wordsOf(limits::Within within);        ///< "within days"
/// In two words what opens a rung, for the notice that hangs there: "after clearance".
const char* noticeOf(rules::KeyKind key);

/// The decision in one or two sentences: "Open to moderate. Strength: light for now."
std::string decisionSentence(const screening::Screening& screening);
/// What is sure and what may still come, or that nothing can change it any more.
std::string intervalSentence(const screening::Screening& screening);
/// "Action today: routine. Could still become: same day."
std::string actionSentence(const screening::Screening& screening);

/// The finding that by itself shuts every rung, the gravest if there are several: one notice serves
/// them all. nullopt while some rung is not shut, or shut for another reason.
std::optional<screening::RungReason> heldBy(const screening::Screening& screening);
bool isEmergency(const screening::Screening& screening);
/// The rung, as it stands in the list of the screening; nullptr when it is not there.
const screening::RungView* rungAt(const screening::Screening& screening, limits::Bay bay, limits::Rung rung);

std::string capitalized(std::string text);
/// For the middle of a sentence; abbreviations ("INR") stay as they are.
std::string uncapitalized(std::string text);
/// "a", "a and b", "a, b and c".
std::string listed(const std::vector<std::string>& items);
/// Ends with a full stop unless it ends with a mark of its own.
std::string asSentence(const std::string& text);
/// "1 question", "2 questions".
std::string counted(std::size_t count, const std::string& singular);

}  // namespace stile::documents
