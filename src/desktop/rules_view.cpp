#include "desktop/rules_view.h"

#include <algorithm>
#include <sstream>

#include "documents/decision_words.h"
#include "documents/rule_book.h"
#include "records/client.h"

namespace stile::desktop {
namespace {

std::string topicWords(std::string topic) {
  std::replace(topic.begin(), topic.end(), '-', ' ');
  return documents::capitalized(topic);
}

}  // namespace

std::vector<std::pair<std::string, std::string>> ruleTopicsOf(const screening::Content& content) {
  std::vector<std::pair<std::string, std::string>> topics;
  for (const auto& rule : content.rules.rules)
    if (std::none_of(topics.begin(), topics.end(), [&rule](const auto& topic) { return topic.first == rule.topic; })) topics.emplace_back(rule.topic, topicWords(rule.topic));
  return topics;
}

std::vector<const rules::Rule*> rulesFound(const screening::Content& content, const std::string& topic, const std::string& words) {
  std::vector<std::string> wanted;
  std::istringstream all(records::searchable(words));
  for (std::string word; all >> word;) wanted.push_back(word);
  const auto has = [&wanted](const std::string& text) {
    return std::all_of(wanted.begin(), wanted.end(), [&text](const std::string& word) { return text.find(word) != std::string::npos; });
  };
  std::vector<const rules::Rule*> found;
  for (const auto& rule : content.rules.rules) {
    if (!topic.empty() && rule.topic != topic) continue;
    const std::string text = wanted.empty() ? "" : records::searchable(rule.title + " " + rule.id + " " + documents::conditionInWords(rule.when.text(), content.dictionary) + " " + rule.say.clinician + " " + rule.say.client);
    if (has(text)) found.push_back(&rule);
  }
  // What is looked for in a title is mostly what was meant.
  std::stable_partition(found.begin(), found.end(), [&has](const rules::Rule* rule) { return has(records::searchable(rule->title)); });
  return found;
}

std::string lastFired(const records::ClientRecord& record, const std::string& rule) {
  for (auto at = record.screenings.rbegin(); at != record.screenings.rend(); ++at)
    if (std::find(at->rules.begin(), at->rules.end(), rule) != at->rules.end()) return at->date.toLongText();
  return {};
}

}  // namespace stile::desktop
