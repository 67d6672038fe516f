#include "rules/rule_set.h"

#include "json/reader.h"
#include "rules/rule_checker.h"
#include "rules/rule_reader.h"

namespace stile::rules {
namespace {

constexpr std::string_view kRuleFolders[] = {"rules/screening/", "rules/conditions/", "rules/medicines/",
                                             "rules/measurements/", "rules/function/"};
constexpr std::string_view kClasses = "rules/medicines/classes.json";

bool isRuleFile(const std::string& path) {
  if (path == kClasses) return false;
  for (const auto folder : kRuleFolders)
    if (path.rfind(folder, 0) == 0) return true;
  return false;
}

/// Reads one file into the set; files are independent of each other.
class FileReader {
 public:
  FileReader(RuleSet& ruleSet, const facts::Dictionary& dictionary, base::Issues& issues)
      : set_(ruleSet), dictionary_(dictionary), issues_(issues) {}

  void readRules(const std::string& path, const std::string& text) {
    const auto document = json::Document::parse(text, path, issues_);
    if (!document) return;
    json::ObjectReader reader(document->root(), path, issues_);
    const std::string topic = reader.requireString("topic");
    for (const json::Node& node : reader.array("checks")) {
      Check check = readCheck(node, set_.vocabulary, issues_);
      addOnce(set_.checks, check, node, "check");
    }
    for (const json::Node& node : reader.array("rules"))
      if (auto rule = readRule(node, topic, path, dictionary_, set_.vocabulary, issues_)) {
        if (!ids_.insert(rule->id).second)
          issues_.error(node.place(), rule->id, "two rules have this id", "give one of them another id");
        set_.rules.push_back(std::move(*rule));
      }
    reader.finish();
  }

  void readSources(const std::string& path, const std::string& text) {
    const auto document = json::Document::parse(text, path, issues_);
    if (!document) return;
    json::ObjectReader reader(document->root(), path, issues_);
    for (const json::Node& node : reader.array("sources")) {
      Source source = readSource(node, issues_);
      addOnce(set_.sources, source, node, "source");
    }
    reader.finish();
  }

  void readPolicies(const std::string& path, const std::string& text) {
    const auto document = json::Document::parse(text, path, issues_);
    if (!document) return;
    json::ObjectReader reader(document->root(), path, issues_);
    for (const json::Node& node : reader.array("policies")) set_.policies.push_back(readPolicy(node, issues_));
    reader.finish();
  }

 private:
  template <class T>
  void addOnce(std::map<std::string, T, std::less<>>& into, T entry, json::Node node, const std::string& what) {
    const std::string id = entry.id;
    if (!into.emplace(id, std::move(entry)).second)
      issues_.error(node.place(), id, "two entries define this " + what, "remove one, or give it another id");
  }

  RuleSet& set_;
  const facts::Dictionary& dictionary_;
  base::Issues& issues_;
  std::set<std::string> ids_;
};

}  // namespace

const Rule* RuleSet::find(std::string_view id) const {
  for (const Rule& rule : rules)
    if (rule.id == id) return &rule;
  return nullptr;
}

std::string RuleSet::cite(std::string_view sourceId) const {
  const auto at = sources.find(sourceId);
  if (at == sources.end()) return std::string(sourceId);
  return at->second.citation + " (" + at->second.seen + ")";
}

RuleSet RuleSet::load(const std::map<std::string, std::string>& files, const facts::Dictionary& dictionary,
                      base::Issues& issues) {
  RuleSet set;
  if (const auto at = files.find("rules/vocabulary.json"); at != files.end())
    set.vocabulary = Vocabulary::load(at->second, at->first, issues);
  else
    issues.error({"rules/vocabulary.json", 0, 0, {}}, "", "the vocabulary is missing", "restore rules/vocabulary.json");

  FileReader reader(set, dictionary, issues);
  for (const auto& [path, text] : files) {
    if (path == "rules/policy.json")
      reader.readPolicies(path, text);
    else if (path.rfind("rules/sources/", 0) == 0)
      reader.readSources(path, text);
    else if (isRuleFile(path))
      reader.readRules(path, text);
  }
  checkRules(set, dictionary, issues);
  return set;
}

}  // namespace stile::rules
