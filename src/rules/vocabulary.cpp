#include "rules/vocabulary.h"

#include "json/reader.h"

namespace stile::rules {
namespace {

std::map<std::string, Term, std::less<>> readTerms(json::ObjectReader& reader, const char* key, bool isBan,
                                                   base::Issues& issues) {
  std::map<std::string, Term, std::less<>> terms;
  for (const json::Node& node : reader.array(key)) {
    json::ObjectReader entry(node, key, issues);
    Term term;
    term.id = entry.requireString("id");
    entry.setSubject(term.id);
    term.clinician = entry.requireString("clinician");
    term.client = entry.requireString("client");
    term.instead = isBan ? entry.requireString("instead") : entry.string("instead");
    term.insteadNot = entry.strings("insteadNot");
    term.hasSides = entry.boolean("sides").value_or(false);
    term.facts = entry.strings("facts");
    entry.finish();
    if (!terms.emplace(term.id, term).second)
      issues.error(node.place(), term.id, "this word stands twice in the vocabulary", "remove one of the two");
  }
  return terms;
}

}  // namespace

Vocabulary Vocabulary::load(const std::string& text, const std::string& file, base::Issues& issues) {
  Vocabulary vocabulary;
  const auto document = json::Document::parse(text, file, issues);
  if (!document) return vocabulary;
  json::ObjectReader reader(document->root(), "vocabulary", issues);
  vocabulary.movements = readTerms(reader, "movements", false, issues);
  vocabulary.bans = readTerms(reader, "bans", true, issues);
  vocabulary.settings = readTerms(reader, "settings", false, issues);
  vocabulary.timing = readTerms(reader, "timing", false, issues);
  vocabulary.measures = readTerms(reader, "measures", false, issues);
  vocabulary.services = readTerms(reader, "services", false, issues);
  reader.finish();
  for (const auto* terms : {&vocabulary.bans, &vocabulary.settings})
    for (const auto& [id, term] : *terms)
      for (const std::string& ban : term.insteadNot)
        if (!vocabulary.bans.contains(ban))
          issues.error(document->root().place(), id, "there is no ban " + ban, "name in insteadNot a ban of this vocabulary");
  return vocabulary;
}

}  // namespace stile::rules
