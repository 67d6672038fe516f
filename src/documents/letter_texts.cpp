#include "documents/letter_texts.h"

#include <algorithm>

namespace stile::documents {
namespace {

using json::Node;
using json::ObjectReader;

constexpr const char* kOther = "other";
constexpr const char* kReferrer = "referrer";
/// Passages that not every reader needs.
constexpr std::array<std::string_view, 3> kPassages{"symptoms", "measured", "answeredNo"};

base::Period readPeriod(ObjectReader& reader, const char* member, base::Issues& issues) {
  const auto node = reader.require(member);
  if (!node) return {};
  ObjectReader entry(*node, member, issues);
  const auto value = entry.integer("value");
  const auto unit = base::calendarUnit(entry.requireString("unit"));
  if (!value || !unit || *value < 1 || *value > 365)
    entry.issue(*node, std::string(member) + " is no length of time", "write a value and d, wk or mo");
  entry.finish();
  return value && unit ? base::Period{static_cast<int>(*value), *unit} : base::Period{};
}

bool isTopic(const facts::Dictionary& dictionary, const std::string& topic) {
  for (int slot = 0; slot < dictionary.size(); ++slot)
    if (dictionary.at(slot).topic == topic) return true;
  return false;
}

/// An object of words by id.
std::map<std::string, std::string> readWords(ObjectReader& reader, const char* member, base::Issues& issues) {
  std::map<std::string, std::string> words;
  const auto node = reader.require(member);
  if (!node) return words;
  ObjectReader entry(*node, member, issues);
  for (std::size_t i = 0; i < node->size(); ++i) words[node->keyAt(i)] = entry.requireString(node->keyAt(i));
  entry.finish();
  return words;
}

}  // namespace

LetterTexts LetterTexts::load(const std::string& text, const std::string& file, base::Issues& issues) {
  LetterTexts texts;
  const auto document = json::Document::parse(text, file, issues);
  if (!document) return texts;
  ObjectReader reader(document->root(), "letters", issues);
  texts.replyWithin = readPeriod(reader, "replyWithin", issues);
  texts.replySoon = readPeriod(reader, "replySoon", issues);
  texts.headings = PhraseBook::read(reader, "headings", kLetterHeadings, issues);
  texts.phrases = PhraseBook::read(reader, "phrases", kLetterPhrases, issues);
  for (const Node& one : reader.array("intensities")) {
    ObjectReader entry(one, "intensities", issues);
    const std::string rung = entry.requireString("rung");
    const std::string words = entry.requireString("words"), means = entry.requireString("means");
    if (const auto known = limits::rungOf(rung); known && *known != limits::Rung::None)
      texts.intensities[*known] = {words, means};
    else
      entry.issue(one, "unknown intensity \"" + rung + "\"", "use light, moderate or vigorous");
    entry.finish();
  }
  if (texts.intensities.size() != 3)
    reader.issue(reader.node(), "intensities do not stand for every rung", "write light, moderate and vigorous");
  texts.sources = reader.strings("intensitySources");
  for (const Node& one : reader.array("letters")) {
    ObjectReader entry(one, "letters", issues);
    LetterKind kind;
    kind.to = entry.requireString("to");
    kind.title = entry.requireString("title");
    kind.question = entry.requireString("question");
    kind.address = entry.string("address");
    kind.hasTests = entry.boolean("tests").value_or(false);
    kind.facts = entry.strings("facts");
    for (auto [member, list] : {std::pair("conditions", &kind.conditions), std::pair("medicines", &kind.medicines)})
      if (entry.find(member)) *list = entry.strings(member);
    kind.without = entry.strings("without");
    entry.finish();
    texts.letters.push_back(std::move(kind));
  }
  for (const char* needed : {kOther, kReferrer})
    if (std::none_of(texts.letters.begin(), texts.letters.end(), [&](const auto& kind) { return kind.to == needed; }))
      reader.issue(reader.node(), std::string("there is no letter to \"") + needed + "\"", "write one");
  if (const auto node = reader.require("conditions")) {
    ObjectReader entry(*node, "conditions", issues);
    texts.conditions.topics = entry.strings("topics");
    texts.conditions.also = entry.strings("also");
    texts.conditions.words = readWords(entry, "words", issues);
    texts.conditions.belongsTo = readWords(entry, "belongsTo", issues);
    entry.finish();
  }
  if (const auto node = reader.require("reviewed")) {
    ObjectReader reviewed(*node, "reviewed", issues);
    reviewed.requireString("date");
    reviewed.requireString("by");
    reviewed.boolean("licensed");
    reviewed.finish();
  }
  reader.finish();
  return texts;
}

base::Issues LetterTexts::check(const rules::RuleSet& rules, const facts::Dictionary& dictionary) const {
  base::Issues issues;
  for (const LetterKind& kind : letters)
    if (kind.to != kOther && kind.to != kReferrer && !rules.vocabulary.services.contains(kind.to))
      issues.error({}, kind.to, "there is no service " + kind.to, "name a service of the vocabulary");
  for (const LetterKind& kind : letters) {
    for (const std::string& id : kind.facts)
      if (dictionary.find(id) == nullptr) issues.error({}, kind.to, "there is no fact " + id, "name a fact of the dictionary");
    for (const std::string& id : kind.conditions.value_or(std::vector<std::string>{}))
      if (dictionary.find(id) == nullptr && !isTopic(dictionary, id))
        issues.error({}, kind.to, "there is no fact or topic " + id, "name one of the dictionary");
    for (const std::string& id : kind.medicines.value_or(std::vector<std::string>{}))
      if (dictionary.medicines().find(id) < 0)
        issues.error({}, kind.to, "there is no class of medicine " + id, "name one of the medicine classes");
    for (const std::string& key : kind.without)
      if (std::find(kPassages.begin(), kPassages.end(), key) == kPassages.end())
        issues.error({}, kind.to, "no letter can do without " + key, "name symptoms, measured or answeredNo");
  }
  for (const std::string& id : sources)
    if (id != rules::kNoSource && !rules.sources.contains(id))
      issues.error({}, "intensitySources", "there is no source " + id, "name a source that exists");
  return issues;
}

const LetterKind& LetterTexts::kindFor(std::string_view service) const {
  static const LetterKind kNone;
  const LetterKind* other = &kNone;
  for (const LetterKind& kind : letters) {
    if (kind.to == service) return kind;
    if (kind.to == kOther) other = &kind;
  }
  return *other;
}

}  // namespace stile::documents
