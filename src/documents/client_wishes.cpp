#include "documents/client_wishes.h"

#include <algorithm>

#include "documents/decision_words.h"
#include "documents/limit_words.h"
#include "facts/fact_display.h"

namespace stile::documents {

std::vector<std::string> gateSentences(const ClientRequest& request) {
  const limits::Limits& limits = request.screening.floor.limits;
  const HandoutTexts& texts = request.texts;
  std::vector<std::string> sentences;
  for (const auto& [measure, gate] : limits.gates) {
    std::string text =
        texts.phrase("gate", {{"measure", termWords(request.content.rules.vocabulary.measures, measure, true)}});
    for (const std::string& condition : gate.client) text += " " + asSentence(condition);
    sentences.push_back(std::move(text));
  }
  return sentences;
}

std::vector<std::string> checkSentences(const ClientRequest& request) {
  const limits::Limits& limits = request.screening.floor.limits;
  const HandoutTexts& texts = request.texts;
  std::vector<std::string> sentences;
  for (const std::string& id : limits.checks) {
    const auto check = request.content.rules.checks.find(id);
    sentences.push_back(check == request.content.rules.checks.end() ? id : check->second.say.client);
  }
  for (const auto& [key, value] : limits.stopValues) {
    const std::string unit = facts::unitWords(key.unit);
    sentences.push_back(
        texts.phrase(key.below ? "stopBelow" : "stopAbove",
                      {{"measure", termWords(request.content.rules.vocabulary.measures, key.measure, true)},
                       {"value", texts.number(value.toText(2)) + (unit.empty() || unit == "%" ? "" : " ") + unit}}));
  }
  return sentences;
}

std::vector<std::string> keepToSentences(const ClientRequest& request) {
  const limits::Limits& limits = request.screening.floor.limits;
  const HandoutTexts& texts = request.texts;
  std::vector<std::string> sentences;
  if (limits.loadKilograms)
    sentences.push_back(texts.phrase("loadKilograms", {{"kilograms", texts.number(limits.loadKilograms->toText(1))}}));
  if (limits.loadPercentOfMaximum)
    sentences.push_back(
        texts.phrase("loadPercent", {{"percent", texts.number(limits.loadPercentOfMaximum->toText(0))}}));
  if (limits.heartRatePerMinute)
    sentences.push_back(texts.phrase("heartRate", {{"perMinute", texts.number(limits.heartRatePerMinute->toText(0))}}));
  if (limits.effortGuide == limits::EffortGuide::EffortOnly)
    sentences.push_back(texts.phrase("effortOnly"));
  for (const std::string& id : limits.timing)
    sentences.push_back(
        texts.phrase("timing", {{"timing", termWords(request.content.rules.vocabulary.timing, id, true)}}));
  // A walk with a telephone is still a walk alone: what not to do alone is said as what to do, too.
  if (limits.settings.contains("alone")) sentences.push_back(texts.phrase("notAlone"));
  if (limits.supervision == limits::Supervision::InPerson)
    sentences.push_back(texts.phrase("supervisionInPerson"));
  if (limits.supervision == limits::Supervision::TelephoneCheck)
    sentences.push_back(texts.phrase("supervisionTelephone"));
  return sentences;
}

std::vector<std::string> measuresOf(const ClientRequest& request) {
  std::vector<std::string> measures;
  const auto add = [&](const std::string& id) {
    if (id.empty()) return;
    const std::string words = capitalized(termWords(request.content.rules.vocabulary.measures, id, true));
    if (std::find(measures.begin(), measures.end(), words) == measures.end()) measures.push_back(words);
  };
  for (const auto& [measure, gate] : request.screening.floor.limits.gates) add(measure);
  for (const std::string& id : request.screening.floor.limits.checks)
    if (const auto check = request.content.rules.checks.find(id); check != request.content.rules.checks.end())
      add(check->second.measure);
  // More columns than a page has room for help nobody; the sheet's notes take the rest.
  if (measures.size() > 3) measures.resize(3);
  return measures;
}

}  // namespace stile::documents
