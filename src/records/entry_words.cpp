#include "records/entry_words.h"

#include <map>

namespace stile::records {
namespace {

using Words = std::map<std::string, std::string, std::less<>>;

std::string wordsIn(const Words& words, std::string_view id) {
  const auto at = words.find(id);
  return at == words.end() ? std::string(id) : at->second;
}

}  // namespace

std::string memberWords(std::string_view member) {
  static const Words kWords{{"date", "Day"},
                            {"what", "What"},
                            {"given", "Given"},
                            {"how", "How"},
                            {"to", "To whom"},
                            {"from", "From whom"},
                            {"reason", "Reason"},
                            {"urgency", "Urgency"},
                            {"limits", "Limits it states"},
                            {"medicines", "Medicines it names"},
                            {"readings", "Readings"},
                            {"scope", "What it clears"},
                            {"outcome", "Outcome"},
                            {"because", "Because"},
                            {"differences", "What differed"},
                            {"settled", "How it was settled"},
                            {"done", "What was done"},
                            {"told", "Who was told"},
                            {"at", "At what time"},
                            {"acceptedBy", "Accepted by"},
                            {"complete", "This completes it"},
                            {"sessionsDone", "Sessions done"},
                            {"effort", "Effort, 0 to 10"},
                            {"painNextMorning", "Pain the next morning, 0 to 10"},
                            {"symptoms", "New symptoms"},
                            {"usualPain", "Usual pain, 0 to 10"},
                            {"weeksMissed", "Weeks missed"},
                            {"illness", "An illness"},
                            {"note", "Note"},
                            {"reached", "Reached"},
                            {"doing", "What they were doing"},
                            {"time", "At what time"},
                            {"called", "Who was called"},
                            {"witness", "Witness"},
                            {"state", "State"},
                            {"text", "Text"},
                            {"instead", "Instead"},
                            {"rule", "Rule"},
                            {"until", "Until"},
                            {"action", "Action"}};
  return wordsIn(kWords, member);
}

std::string choiceWords(std::string_view word) {
  static const Words kWords{{"physician", "sharing with the physician"},
                            {"carer", "speaking to a carer"},
                            {"text", "text messages"},
                            {"keeping", "keeping the record"},
                            {"chestPain", "chest pain"},
                            {"lowGlucose", "low blood sugar"},
                            {"defibrillatorShock", "shock of the defibrillator"},
                            {"sameDay", "same day"},
                            {"withinDays", "within days"}};
  return wordsIn(kWords, word);
}

}  // namespace stile::records
