// The sentences of the client's papers: rules/handout.json. Headings, phrases with slots, stop signs,
// pain rules, what may go on while waiting. Read strictly; no sentence for a client stands in C++.
#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/date.h"
#include "base/issue.h"
#include "documents/phrase_book.h"
#include "limits/scale.h"
#include "rules/rule_set.h"
#include "screening/screening.h"

namespace stile::documents {

/// One sentence for clients. It stands on a paper only if a finding of one of `ifRules` exists (when
/// any are named) and no certain one of `unlessRules`. A stricter sentence may stand in place of another.
struct ClientSentence {
  std::string id;
  std::string say;
  std::string insteadOf;  ///< id of the milder sentence of the same list that then falls away, or ""
  std::vector<std::string> ifRules, unlessRules;
  std::vector<std::string> sources;
};

/// What is not for now above a ceiling. Without a bay: the same ceiling holds for both.
struct EffortLine {
  std::optional<limits::Bay> bay;
  limits::Rung upTo = limits::Rung::None;
  std::string what, instead;
};

/// An answer that asks for letters of another size than usual, and what is said of it on the papers.
struct LetterSizeLine {
  std::string fact;  ///< a yes, or the option `is`
  std::string is;
  int points = 14;  ///< 14, 18 or 24
  std::string say;  ///< "" where the client asked for it
};

/// Which findings add sentences: all of them, or only certain ones.
enum class Choice { AllFindings, CertainOnly };

struct HandoutTexts {
  std::string handoutTitle, waitingTitle, weekPlanTitle, recordTitle, carerTitle;
  base::Period useFor;
  PhraseBook headings, phrases;
  std::vector<EffortLine> effortLines;
  std::vector<LetterSizeLine> letterSizes;  ///< the first that holds decides
  std::vector<ClientSentence> emergency, stopAndCall, pain, mayGoOn, whoCallsHeld, whoCallsOpen,
      whoCallsToday, whoCallsEmergency, carer;

  /// Unknown members, missing headings and phrases, and slots that a phrase cannot fill are issues.
  static HandoutTexts load(const std::string& text, const std::string& file, base::Issues& issues);
  /// Rules and sources that the sentences name and `rules` does not have.
  base::Issues check(const rules::RuleSet& rules) const;

  /// The heading or phrase with its slots filled in; "" for a key that does not exist.
  std::string heading(std::string_view key, const std::map<std::string, std::string>& slots = {}) const;
  std::string phrase(std::string_view key, const std::map<std::string, std::string>& slots = {}) const;
  /// The words of a phrase that is a list between spaces: "Mon Tue Wed …".
  std::vector<std::string> wordsOf(std::string_view key) const;
  /// A day in the reader's words: "25 November 2026".
  std::string date(base::Date day) const;
  /// Digits with the reader's decimal mark.
  std::string number(std::string digits) const;
  /// The sentences that apply to these findings, in order.
  static std::vector<std::string> chosen(const std::vector<ClientSentence>& sentences,
                                         const screening::Screening& screening, Choice choice);
};

/// Headings that must stand, and the slots each may use (between spaces).
inline constexpr std::array<KeyAndSlots, 33> kHeadings{
    {{"notForNow", ""},    {"notForNowRest", ""}, {"emergency", "emergencyNumber"},
     {"stopAndCall", ""},  {"questions", ""},     {"gates", ""},
     {"checks", ""},       {"keepTo", ""},        {"warmUp", ""},
     {"aerobic", ""},      {"strength", ""},      {"balance", ""},
     {"stretching", ""},   {"coolDown", ""},      {"breathing", ""},
     {"effort", ""},       {"week", ""},          {"weeksAhead", ""},
     {"pain", ""},         {"badDay", ""},        {"missedWeek", ""},
     {"afterIllness", ""}, {"notes", ""},         {"findings", ""},
     {"goals", ""},        {"goingOn", ""},
     {"whyWaiting", ""},   {"mayGoOn", ""},       {"whoCalls", ""},
 {"keepWhileWaiting", ""},
 {"carerHelp", ""},
 {"carerAvoid", ""},
 {"record", ""}}};
/// The same for phrases.
inline constexpr std::array<KeyAndSlots, 84> kPhrasesOfHandout{{{"madeFor", "by date until"},
                                                                {"toldUs", "by date"},
                                                                {"callAgain", ""},
                                                                {"instead", "instead"},
                                                                {"restIsOnLastPage", ""},
                                                                {"oneSide", "what side"},
                                                                {"capAny", "degrees"},
                                                                {"capLoaded", "degrees"},
                                                                {"capEndRange", "degrees"},
                                                                {"capFast", "degrees"},
                                                                {"capNoneLoaded", ""},
                                                                {"capNoneEndRange", ""},
                                                                {"capNoneFast", ""},
                                                                {"capInstead", ""},
                                                                {"capInsteadBut", ""},
                                                                {"forAll", "what"},
                                                                {"setting", "setting"},
                                                                {"timing", "timing"},
                                                                {"gate", "measure"},
                                                                {"loadKilograms", "kilograms"},
                                                                {"loadPercent", "percent"},
                                                                {"heartRate", "perMinute"},
                                                                {"stopBelow", "measure value"},
                                                                {"stopAbove", "measure value"},
                                                                {"effortOnly", ""},
                                                                {"supervisionInPerson", ""},
                                                                {"supervisionTelephone", ""},
                                                                {"equipment", "equipment"},
                                                                {"changed", "changed"},
                                                                {"overridden", ""},
                                                                {"tooHard", "title steps"},
                                                                {"tooHardNumber", "number"},
                                                                {"tooHardGeneral", ""},
                                                                {"tooHardLead", ""},
                                                                {"tooEasy", "title"},
                                                                {"tooEasyLead", ""},
                                                                {"tickWhenDone", ""},
                                                                {"weekColumn", ""},
                                                                {"planColumn", ""},
                                                                {"weeks", "from to"},
                                                                {"outOfHours", "outOfHours"},
                                                                {"emergencyLine", ""},
                                                                {"doNotStart", ""},
                                                                {"seenToday", ""},
                                                                {"callNow", "emergencyNumber"},
                                                                {"answersMissing", ""},
 {"madeForClient", "client"},
 {"date", "day month year"},
 {"months", ""},
 {"weekdays", ""},
 {"decimalMark", ""},
 {"page", "page pages"},
 {"rest", ""},
 {"name", ""},
 {"tickBox", ""},
 {"foot", "emergencyNumber telephone"},
 {"caution", ""},
 {"notReviewed", ""},
 {"version", "version"},
 {"recordDay", ""},
 {"recordDone", ""},
 {"recordEffort", ""},
 {"recordPain", ""},
 {"recordMorning", ""},
 {"recordNote", ""},
 {"born", "born"},
 {"crisisLine", "crisisLine"},
 {"crisisNoLine", "emergencyNumber"},
 {"youMeans", "client"},
 {"thePerson", ""},
 {"notAlone", ""},
 {"leaveOut", "what"},
 {"madeOn", "by date"},
 {"byEmail", "email"},
 {"yourClinic", ""},
 {"anyEmergencyNumber", ""},
 {"everyWeek", ""},
 {"listAnd", ""},
 {"listOr", ""},
 {"left", ""},
 {"right", ""},
 {"record", "record"},
 {"gridWeek", ""},
 {"gridWeeks", "to"}}};

}  // namespace stile::documents
