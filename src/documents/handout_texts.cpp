#include "documents/handout_texts.h"

#include <algorithm>
#include <set>
#include <type_traits>

#include "json/reader.h"

namespace stile::documents {
namespace {

using json::Node;
using json::ObjectReader;

/// A required list: `read` makes one of each object in it.
template <class Read>
auto readEach(ObjectReader& reader, const char* member, base::Issues& issues, Read read) {
  std::vector<std::invoke_result_t<Read, ObjectReader&, const Node&>> all;
  reader.require(member);
  for (const Node& one : reader.array(member)) {
    ObjectReader entry(one, member, issues);
    all.push_back(read(entry, one));
    entry.finish();
  }
  return all;
}

std::vector<ClientSentence> readSentences(ObjectReader& reader, const char* member, base::Issues& issues) {
  std::set<std::string> ids;
  auto sentences = readEach(reader, member, issues, [&](ObjectReader& entry, const Node& one) {
    ClientSentence sentence;
    sentence.id = entry.requireString("id");
    entry.setSubject(sentence.id);
    sentence.say = entry.requireString("say");
    sentence.insteadOf = entry.string("insteadOf");
    sentence.ifRules = entry.strings("ifRules");
    sentence.unlessRules = entry.strings("unlessRules");
    sentence.sources = entry.strings("sources");
    if (sentence.sources.empty())
      entry.issue(one, "the sentence names no source",
                  "name one, or \"" + std::string(rules::kNoSource) + "\"");
    if (!ids.insert(sentence.id).second)
      entry.issue(one, "the id stands twice", "give one of the two another id");
    return sentence;
  });
  if (const auto node = reader.find(member); node && sentences.empty())
    reader.issue(*node, std::string(member) + " is empty", "write at least one sentence");
  return sentences;
}

LetterSizeLine readLetterSize(ObjectReader& entry, const Node& one) {
  LetterSizeLine line;
  entry.setSubject(entry.requireString("id"));
  line.fact = entry.requireString("fact");
  line.is = entry.string("is");
  line.points = static_cast<int>(entry.integer("points").value_or(0));
  line.say = entry.string("say");
  if (line.points != 14 && line.points != 18 && line.points != 24)
    entry.issue(one, "letters have no such size", "use 14, 18 or 24 points");
  return line;
}

EffortLine readEffortLine(ObjectReader& entry, const Node& one) {
  EffortLine line;
  const std::string bay = entry.requireString("bay");
  if (bay == idOf(limits::Bay::Aerobic))
    line.bay = limits::Bay::Aerobic;
  else if (bay == idOf(limits::Bay::Strength))
    line.bay = limits::Bay::Strength;
  else if (bay != "both")
    entry.issue(one, "unknown bay \"" + bay + "\"", "use both, aerobic or strength");
  const std::string upTo = entry.requireString("upTo");
  const auto rung = limits::rungOf(upTo);
  if (!rung || *rung == limits::Rung::Vigorous)
    entry.issue(one, "unknown ceiling \"" + upTo + "\"", "use none, light or moderate");
  line.upTo = rung.value_or(limits::Rung::None);
  line.what = entry.requireString("what");
  line.instead = entry.requireString("instead");
  return line;
}

/// Every ceiling below vigorous has its words in either bay; for both at once, light and moderate do.
void checkEffortLines(const std::vector<EffortLine>& lines, ObjectReader& reader) {
  using limits::Bay;
  using limits::Rung;
  const auto has = [&](std::optional<Bay> bay, Rung rung) {
    return std::any_of(lines.begin(), lines.end(),
                       [&](const EffortLine& line) { return line.bay == bay && line.upTo == rung; });
  };
  for (const Rung rung : {Rung::None, Rung::Light, Rung::Moderate}) {
    for (const Bay bay : limits::kBays)
      if (!has(bay, rung))
        reader.issue(reader.node(),
                     std::string("effortLines have no words for ") + idOf(bay) + " up to " + idOf(rung),
                     "add them");
    if (rung != Rung::None && !has(std::nullopt, rung))
      reader.issue(reader.node(), std::string("effortLines have no words for both up to ") + idOf(rung),
                   "add them");
  }
}

}  // namespace

HandoutTexts HandoutTexts::load(const std::string& text, const std::string& file, base::Issues& issues) {
  HandoutTexts texts;
  const auto document = json::Document::parse(text, file, issues);
  if (!document) return texts;
  ObjectReader reader(document->root(), "handout", issues);
  if (const auto node = reader.require("titles")) {
    ObjectReader titles(*node, "titles", issues);
    texts.handoutTitle = titles.requireString("handout");
    texts.waitingTitle = titles.requireString("waitingSheet");
    texts.weekPlanTitle = titles.requireString("weekPlan");
    texts.recordTitle = titles.requireString("recordSheet");
    texts.carerTitle = titles.requireString("carerSheet");
    titles.finish();
  }
  if (const auto node = reader.require("useFor")) {
    ObjectReader useFor(*node, "useFor", issues);
    const auto value = useFor.integer("value");
    const auto unit = base::calendarUnit(useFor.requireString("unit"));
    if (value && unit && *value > 0 && *value < 1000)
      texts.useFor = {static_cast<int>(*value), *unit};
    else
      useFor.issue(*node, "useFor is no length of time", "write a value and d, wk, mo or a");
    useFor.finish();
  }
  texts.headings = PhraseBook::read(reader, "headings", kHeadings, issues);
  texts.phrases = PhraseBook::read(reader, "phrases", kPhrasesOfHandout, issues);
  texts.letterSizes = readEach(reader, "letterSizes", issues, readLetterSize);
  texts.effortLines = readEach(reader, "effortLines", issues, readEffortLine);
  checkEffortLines(texts.effortLines, reader);
  texts.emergency = readSentences(reader, "emergency", issues);
  texts.stopAndCall = readSentences(reader, "stopAndCall", issues);
  texts.carer = readSentences(reader, "carer", issues);
  texts.pain = readSentences(reader, "pain", issues);
  texts.mayGoOn = readSentences(reader, "mayGoOn", issues);
  texts.whoCallsHeld = readSentences(reader, "whoCallsHeld", issues);
  texts.whoCallsOpen = readSentences(reader, "whoCallsOpen", issues);
  texts.whoCallsEmergency = readSentences(reader, "whoCallsEmergency", issues);
  texts.whoCallsToday = readSentences(reader, "whoCallsToday", issues);
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

base::Issues HandoutTexts::check(const rules::RuleSet& rules) const {
  base::Issues issues;
  for (const auto* list : {&emergency, &stopAndCall, &pain, &mayGoOn, &whoCallsHeld, &whoCallsOpen,
                           &whoCallsToday, &whoCallsEmergency, &carer}) {
    for (const ClientSentence& sentence : *list) {
      const auto isIt = [&](const ClientSentence& other) { return other.id == sentence.insteadOf; };
      if (!sentence.insteadOf.empty() && std::none_of(list->begin(), list->end(), isIt))
        issues.error({}, sentence.id, "there is no sentence " + sentence.insteadOf + " to stand in place of",
                     "name one of the same list");
      for (const auto* ids : {&sentence.ifRules, &sentence.unlessRules})
        for (const std::string& id : *ids)
          if (rules.find(id) == nullptr)
            issues.error({}, sentence.id, "there is no rule " + id, "name a rule that exists");
      for (const std::string& id : sentence.sources)
        if (id != rules::kNoSource && rules.sources.find(id) == rules.sources.end())
          issues.error({}, sentence.id, "there is no source " + id, "name a source that exists");
    }
  }
  return issues;
}

std::string HandoutTexts::heading(std::string_view key, const std::map<std::string, std::string>& slots) const {
  return headings.say(key, slots);
}

std::string HandoutTexts::phrase(std::string_view key, const std::map<std::string, std::string>& slots) const {
  return phrases.say(key, slots);
}

std::vector<std::string> HandoutTexts::wordsOf(std::string_view key) const {
  std::vector<std::string> words;
  const std::string text = phrase(key);
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    if (end > at) words.push_back(text.substr(at, end - at));
    at = end + 1;
  }
  return words;
}

std::string HandoutTexts::date(base::Date day) const {
  const auto months = wordsOf("months");
  const auto index = static_cast<std::size_t>(day.month() - 1);
  return phrase("date", {{"day", std::to_string(day.day())},
                         {"month", index < months.size() ? months[index] : std::to_string(day.month())},
                         {"year", std::to_string(day.year())}});
}

std::string HandoutTexts::number(std::string digits) const {
  const std::string mark = phrase("decimalMark");
  if (const auto at = digits.find('.'); at != std::string::npos && !mark.empty()) digits.replace(at, 1, mark);
  return digits;
}

std::vector<std::string> HandoutTexts::chosen(const std::vector<ClientSentence>& sentences,
                                              const screening::Screening& screening, Choice choice) {
  const auto stands = [&](const std::string& ruleId, Choice which) {
    return std::any_of(
        screening.findings.begin(), screening.findings.end(), [&](const rules::Finding& finding) {
          return finding.rule->id == ruleId &&
                 (which == Choice::AllFindings || finding.standing == rules::Standing::Certain);
        });
  };
  // What is only not ruled out may add a sentence, but never take one away.
  const auto adds = [&](const std::string& id) { return stands(id, choice); };
  const auto removes = [&](const std::string& id) { return stands(id, Choice::CertainOnly); };
  std::vector<const ClientSentence*> standing;
  for (const ClientSentence& sentence : sentences) {
    if (!sentence.ifRules.empty() && std::none_of(sentence.ifRules.begin(), sentence.ifRules.end(), adds))
      continue;
    if (std::any_of(sentence.unlessRules.begin(), sentence.unlessRules.end(), removes)) continue;
    standing.push_back(&sentence);
  }
  std::vector<std::string> said;
  for (const ClientSentence* sentence : standing)
    if (std::none_of(standing.begin(), standing.end(),
                     [&](const ClientSentence* other) { return other->insteadOf == sentence->id; }))
      said.push_back(sentence->say);
  return said;
}

}  // namespace stile::documents
